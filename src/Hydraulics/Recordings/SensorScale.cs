using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>A sensor's straight line from its signal to what it measures.</summary>
/// <param name="Signal">Voltage or current: what the logger wrote down.</param>
/// <param name="Measured">Pressure or current.</param>
/// <param name="PerSignal">Measured quantity per signal, both in SI (Pa/V, Pa/A, A/V); not 0.</param>
/// <param name="SignalAtZero">Signal in V or A at which the measured quantity is zero.</param>
public sealed record SensorScale(Dimension Signal, Dimension Measured, double PerSignal, double SignalAtZero)
{
    /// <summary>The measured quantity in SI.</summary>
    /// <param name="signal">In V or A.</param>
    public double Of(double signal) => (signal - SignalAtZero) * PerSignal;

    /// <summary>Reads <c>100 bar/V</c>, <c>10 mV/A</c>, or two points, <c>0.5 V = 0 bar, 4.5 V = 1000 bar</c>.</summary>
    /// <param name="measured">What the sensor measures.</param>
    public static TextReading<SensorScale> Read(string text, Dimension measured)
    {
        ArgumentNullException.ThrowIfNull(text);
        var points = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return text.Contains('=', StringComparison.Ordinal)
            ? points.Length == 2 ? Point(points[0], measured).Then(a => Point(points[1], measured).Then(b => Line(text, measured, a, b))) : Bad(text, "a scale by points has two of them")
            : PerUnit(text.Trim(), measured);
    }

    private static TextReading<SensorScale> PerUnit(string text, Dimension measured)
    {
        var slash = text.LastIndexOf('/');
        if (slash < 0 || UnitTable.Find(text[(slash + 1)..].Trim()) is not { } below)
            return Bad(text, $"'{text}' is no scale");
        return QuantityReader.ReadAny(text[..slash]).Then<SensorScale>(above => above.Unit is not { } unit || above.Number == 0 || !double.IsFinite(above.Number)
            ? Bad(text, $"'{text}' is no scale")
            : unit.Dimension == measured && IsSignal(below.Dimension, measured)
                ? new TextReading<SensorScale>.Good(new(below.Dimension, measured, above.Number * unit.Factor / below.Factor, 0))
                : below.Dimension == measured && IsSignal(unit.Dimension, measured)
                    ? new TextReading<SensorScale>.Good(new(unit.Dimension, measured, below.Factor / (above.Number * unit.Factor), 0))
                    : Bad(text, $"'{text}' does not lead from a signal to a {measured.ToString().ToLowerInvariant()}"));
    }

    private static TextReading<(double Signal, double Measured, Dimension Kind)> Point(string text, Dimension measured)
    {
        var sides = text.Split('=', StringSplitOptions.TrimEntries);
        if (sides.Length != 2)
            return BadPoint(text);
        return QuantityReader.ReadAny(sides[0]).Then(signal => QuantityReader.Read(sides[1], measured).Then<(double Signal, double Measured, Dimension Kind)>(value =>
            signal.Unit is { } unit && IsSignal(unit.Dimension, measured)
                ? new TextReading<(double, double, Dimension)>.Good((unit.ToSi(signal.Number), value, unit.Dimension))
                : BadPoint(text)));
    }

    private static TextReading<SensorScale> Line(string text, Dimension measured, (double Signal, double Measured, Dimension Kind) a, (double Signal, double Measured, Dimension Kind) b)
    {
        if (a.Kind != b.Kind || a.Signal == b.Signal || a.Measured == b.Measured)
            return Bad(text, "the two points give no line");
        var slope = (b.Measured - a.Measured) / (b.Signal - a.Signal);
        return new TextReading<SensorScale>.Good(new(a.Kind, measured, slope, a.Signal - (a.Measured / slope)));
    }

    private static bool IsSignal(Dimension signal, Dimension measured) => signal is Dimension.Voltage || (signal is Dimension.Current && measured is Dimension.Pressure);

    private static TextReading<SensorScale>.Bad Bad(string text, string what) =>
        new(new(0, Math.Max(1, text.Length), what, "write it as 100 bar/V, as 10 mV/A, or by two points: 4 mA = 0 bar, 20 mA = 1000 bar", "usage"));

    private static TextReading<(double Signal, double Measured, Dimension Kind)>.Bad BadPoint(string text) =>
        new(new(0, Math.Max(1, text.Length), $"'{text}' is no point of a scale", "write signal = value, such as 0.5 V = 0 bar", "usage"));
}
