using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Tests.Identification;

/// <summary>What a richer simulated stroke has that the reading model lacks, and how it is recorded.</summary>
internal sealed record RicherPlan
{
    /// <summary>Leak flow grows with pressure to this power; the coefficients hold at 400 bar.</summary>
    public double LeakPower { get; init; } = 1;

    /// <summary>What cooling takes in a pause as a share of its pressure, and its two time constants in seconds.</summary>
    public double CoolingShare { get; init; } = 0.006;

    public double CoolingSeconds { get; init; } = 1;

    public double SlowCoolingSeconds { get; init; } = 6;

    /// <summary>The missing part of a poor filling is a void that closes first, not a smaller stroke.</summary>
    public bool VoidFirst { get; init; }

    public double? PauseBar { get; init; } = 420;

    /// <summary>Plateau force of a connector in N; null when the dies close on nothing.</summary>
    public double? ConnectorNewtons { get; init; }

    public double StartAngle { get; init; }

    public double LeadSeconds { get; init; } = 0.3;

    public double RowsPerSecond { get; init; } = 1000;

    public double NoiseBar { get; init; } = 1.2;

    public double OffsetBar { get; init; }

    public double ClippedBar { get; init; } = double.PositiveInfinity;

    public int Seed { get; init; }
}

/// <summary>
/// A second, brute simulation for tests: 10 µs steps, chamber pressure, each pump stroke, the ram's inertia and sticking, oil that cools, other leak laws.
/// It shares no code with the reading model nor with the stroke simulator; data made by it are invented.
/// </summary>
internal sealed class RicherStroke(StrokeParameters tool, RicherPlan plan)
{
    private const double H = 1e-5, Atmosphere = 101325;

    private readonly List<double> _seconds = [], _pascals = [], _amperes = [];
    private double _speed, _angle, _chamber, _p, _x, _v, _drawn, _lift, _shown, _coolFast, _coolSlow, _current;
    private bool _home = true;

    public static Recording Record(StrokeParameters tool, RicherPlan plan) => new RicherStroke(tool, plan).Run();

    private Recording Run()
    {
        var random = new Random(plan.Seed);
        _angle = plan.StartAngle;
        double now = 0, offAt = double.PositiveInfinity, opened = double.PositiveInfinity, pull = plan.LeadSeconds, endAt = 60, nextRow = 0;
        var (on, paused, open) = (false, plan.PauseBar is null, false);
        while (now < endAt)
        {
            if (!on && now >= pull)
                (on, pull) = (true, double.PositiveInfinity);
            if (on && !paused && _p > plan.PauseBar * 1e5)
                (on, paused, pull, _coolFast, _coolSlow) = (false, true, now + 5, plan.CoolingShare * _p, 0.5 * plan.CoolingShare * _p);
            if (!open && _p > tool.ReliefPascals)
                (open, opened, offAt) = (true, now, Math.Min(offAt, now + tool.StopDelaySeconds));
            if (open && _p < tool.ClosingRatio * tool.ReliefPascals)
                (open, opened) = (false, double.PositiveInfinity);
            if (now >= offAt)
                (on, offAt, endAt) = (false, double.PositiveInfinity, Math.Min(endAt, now + 1.2));
            if (on && now > plan.LeadSeconds + 22)
                (on, endAt) = (false, now + 0.5);
            Step(on, open && now > opened + tool.ReliefDelaySeconds);
            if (now >= nextRow - 1e-9)
            {
                _seconds.Add(Math.Round(now, 6));
                _pascals.Add(Reading(random));
                _amperes.Add(0.1 * Math.Round((_current + 0.25 * Normal(random)) / 0.1));
                nextRow += 1 / plan.RowsPerSecond;
            }

            now += H;
        }

        return new Recording([.. _seconds], _pascals.ToImmutableArray(), _amperes.ToImmutableArray());
    }

    private void Step(bool on, bool lifts)
    {
        var limit = Math.Min(tool.CurrentLimitAmperes, (tool.SupplyVolts - tool.TorqueConstant * _speed) / tool.ResistanceOhms);
        _current = on ? Math.Max(0, limit) : 0;
        var motor = on ? tool.TorqueConstant * _current : -tool.TorqueConstant * tool.TorqueConstant / tool.ResistanceOhms * _speed;
        var rate = _speed / tool.GearRatio;
        var sine = Math.Sin(_angle);
        var filled = tool.Filling * tool.DisplacementCubicMetres;
        var swept = sine > 0 ? Swept(sine, filled) * rate : 0;
        var load = sine > 0 ? Swept(sine, filled) * _chamber / (tool.GearRatio * tool.GearEfficiency) : 0;
        _speed = Math.Max(0, _speed + H / tool.Inertia * (motor - (_speed > 0 || on ? tool.MotorFrictionNewtonMetres : 0) - load));
        _angle += rate * H;

        // Chamber: piston, leaks, the two valves.
        var left = tool.ChamberCubicMetres + filled * 0.5 * (1 + Math.Cos(_angle));
        var modulus = tool.Oil.ModulusAtZeroPascals + tool.Oil.ModulusSlope * Math.Max(0, _chamber);
        var dry = _drawn >= tool.UsableOilCubicMetres;
        var back = tool.DeliveryLeak * Law(_p - _chamber);
        var out_ = (tool.InletLeak + tool.PistonLeak) * Law(_chamber);
        var volume = sine > 0 ? swept : 0.5 * filled * sine * rate;
        var pumped = 0.0;
        if (rate < 1e-9 && tool.Inlet == InletKind.Port)
            _chamber = 0;
        else
            _chamber += H * modulus / left * (volume + back - out_);
        if (_chamber < 0)
            _chamber = 0;
        if (_chamber > _p)
        {
            pumped = (_chamber - _p) * left / modulus / H;
            _chamber = _p;
        }

        if (dry)
            (pumped, back) = (0, 0);
        var jet = _lift * tool.ReliefOpenSquareMetres * Math.Sqrt(2 * Math.Max(_p, 0) / tool.Density);
        _lift += H / tool.ReliefSeconds * ((lifts ? 1 : 0) - _lift);
        var weep = tool.WeepLeak * Math.Max(0, _p - tool.WeepFromShare * tool.ReliefPascals);
        var net = pumped - back - tool.BypassLeak * Law(_p) - weep - jet;
        var oil = tool.DeadCubicMetres + tool.RamSquareMetres * _x;
        var cooled = on ? 0 : _coolFast / plan.CoolingSeconds * H + _coolSlow / plan.SlowCoolingSeconds * H;
        if (!on)
            (_coolFast, _coolSlow) = (_coolFast * (1 - H / plan.CoolingSeconds), _coolSlow * (1 - H / plan.SlowCoolingSeconds));
        MoveRam();
        _p += H * Modulus(_p) / oil * (net - tool.RamSquareMetres * _v) - cooled;
        _p = Math.Max(_p, 0);
        _drawn += H * net;
        _shown += H / tool.SensorSeconds * (_p - _shown);
    }

    private double Swept(double sine, double filled)
    {
        if (!plan.VoidFirst)
            return 0.5 * filled * sine;
        var gone = 0.5 * tool.DisplacementCubicMetres * (1 - Math.Cos(_angle));
        return gone < tool.DisplacementCubicMetres - filled ? 0 : 0.5 * tool.DisplacementCubicMetres * sine;
    }

    private void MoveRam()
    {
        var push = tool.RamSquareMetres * _p - tool.SpringPreloadNewtons - tool.SpringNewtonsPerMetre * _x;
        if (_x > tool.StrokeMetres)
            push -= tool.FrameNewtonsPerMetre * (_x - tool.StrokeMetres);
        if (plan.ConnectorNewtons is { } plateau && _x > 0.55 * tool.StrokeMetres && _v >= 0)
            push -= plateau * (1 - Math.Exp(-(_x - 0.55 * tool.StrokeMetres) / (0.175 * tool.StrokeMetres)));
        var friction = tool.DryFrictionNewtons + tool.SealFrictionShare * tool.RamSquareMetres * _p;
        var sticks = Math.Abs(_v) < 1e-7 && Math.Abs(push) <= friction;
        if (sticks || (_home && push < friction))
        {
            _v = 0;
            return;
        }

        var before = _v;
        var way = _v != 0 ? Math.Sign(_v) : Math.Sign(push);
        _v = (_v + H / tool.MassKilograms * (push - way * friction)) / (1 + H * tool.ViscousFriction / tool.MassKilograms);
        if (before != 0 && Math.Sign(_v) != Math.Sign(before))
            _v = 0;
        _x += H * _v;
        _home = _x <= 0;
        if (_home)
            (_x, _v) = (0, 0);
    }

    private double Law(double pascals) => pascals <= 0 ? 0 : plan.LeakPower == 1 ? pascals : 400e5 * Math.Pow(pascals / 400e5, plan.LeakPower);

    private double Modulus(double gauge)
    {
        var absolute = Math.Max(gauge, 0) + Atmosphere;
        var gas = tool.Oil.AirShare * Math.Pow(Atmosphere / absolute, 1 / tool.Oil.Exponent);
        var share = gas / (1 - tool.Oil.AirShare + gas);
        return 1 / ((1 - share) / (tool.Oil.ModulusAtZeroPascals + tool.Oil.ModulusSlope * Math.Max(gauge, 0)) + share / (tool.Oil.Exponent * absolute));
    }

    private double Reading(Random random)
    {
        var bar = 0.25 * Math.Round((_shown / 1e5 + plan.OffsetBar + plan.NoiseBar * Normal(random)) / 0.25);
        return bar >= plan.ClippedBar ? double.NaN : bar * 1e5;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
