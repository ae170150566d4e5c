using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.Bench;

/// <summary>What is wrong with the valve of a made-up tool.</summary>
internal enum SettingFault
{
    None,

    /// <summary>The screw moves nothing.</summary>
    Dead,

    /// <summary>Something else stops the run, at a pressure between the level as found and the lower limit.</summary>
    StopsBelow,
}

/// <summary>What a population of made-up tools is drawn from.</summary>
/// <param name="HalfWidth">Limits about the nominal 700 bar, as a share.</param>
/// <param name="Maximum">How far the maximum lies above the nominal pressure, as a share.</param>
/// <param name="Data">Whether the advisor has the relief's data (a prior) or limits alone.</param>
/// <param name="DeviceBar">Standard deviation of what the device is off, the same for all runs of a job.</param>
internal sealed record SettingJobs(string Name, double HalfWidth, double Maximum, bool Data = true, double DeviceBar = 2)
{
    public const double Nominal = 700;

    public double LeastScatter { get; init; } = 0.002;
    public double MostScatter { get; init; } = 0.015;

    /// <summary>Share of the tools that were found above the window, up to 15 % over nominal.</summary>
    public double FoundHigh { get; init; } = 0.15;

    public SettingFault Fault { get; init; }

    public Limits Limits => new()
    {
        Pressure = new(Pressure.FromBar(Nominal * (1 - HalfWidth)), Pressure.FromBar(Nominal * (1 + HalfWidth))),
        Nominal = Pressure.FromBar(Nominal),
        Maximum = Pressure.FromBar(Nominal * (1 + Maximum)),
        ProofRuns = 12,
        Rest = TimeSpan.FromSeconds(40),
    };
}

/// <summary>A made-up tool whose truth nobody sees: gain within 40 % of the computed one, play up to 30°, scatter, a level as found, a device a little off.</summary>
internal sealed class SettingTool
{
    private readonly Random _random;
    private readonly double _gain, _play, _device;
    private readonly SettingFault _fault;
    private readonly double _stop = double.PositiveInfinity;
    private double _screw, _seat, _mean;

    public SettingTool(SettingJobs jobs, int seed)
    {
        _random = new Random(seed);
        var limits = jobs.Limits;
        ComputedGain = 25 * Math.Pow(150.0 / 25, _random.NextDouble()); // bar per turn
        _gain = ComputedGain * (0.6 + 0.8 * _random.NextDouble());
        _play = 30 / 360.0 * _random.NextDouble();
        _seat = -_play * _random.NextDouble();
        ScatterShare = jobs.LeastScatter + (jobs.MostScatter - jobs.LeastScatter) * _random.NextDouble();
        _mean = _random.NextDouble() < jobs.FoundHigh
            ? limits.Pressure.Max.Bar + (1.15 * SettingJobs.Nominal - limits.Pressure.Max.Bar) * _random.NextDouble()
            : SettingJobs.Nominal * (0.6 + 0.35 * _random.NextDouble());
        _device = jobs.DeviceBar * Score();
        _fault = jobs.Fault;
        if (_fault == SettingFault.StopsBelow)
            _stop = _mean + (limits.Pressure.Min.Bar - _mean) * _random.NextDouble();
        Relief = jobs.Data ? ReliefOf(ComputedGain) : null;
    }

    public double ComputedGain { get; }

    public double ScatterShare { get; }

    public ReliefData? Relief { get; }

    /// <summary>The true mean, bar.</summary>
    public double Mean => Math.Min(_mean, _stop);

    public double ScrewTurns => _screw;

    public void Turn(double turns)
    {
        _screw += turns;
        var seat = Math.Min(_screw, Math.Max(_screw - _play, _seat));
        _mean += _fault == SettingFault.Dead ? 0 : _gain * (seat - _seat);
        _seat = seat;
    }

    public SettingRun Run() => new(Angle.FromTurns(_screw), Pressure.FromBar(Math.Max(1, Mean + _device + ScatterShare * SettingJobs.Nominal * Score())));

    private static ReliefData ReliefOf(double gain) => new()
    {
        ContactDiameter = Length.FromMillimetres(2.5),
        ContactDiameterSpread = 0.06,
        SpringRate = Stiffness.FromNewtonsPerMetre(gain * 1e5 * Area.OfCircle(Length.FromMillimetres(2.5)).SquareMetres / 0.75e-3),
        Pitch = Length.FromMillimetres(0.75),
        ClockwiseRaises = true,
    };

    private double Score() => Normal.Quantile(Math.Max(1e-12, _random.NextDouble()));
}
