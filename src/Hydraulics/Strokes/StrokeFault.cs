using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>Something that can be wrong with a tool, as a change of one figure of the stroke model.</summary>
public sealed class StrokeFault
{
    private readonly Func<string, TextReading<double>> _read;
    private readonly Func<StrokeParameters, double, StrokeParameters> _change;
    private readonly double _least, _most;

    private StrokeFault(string name, string meaning, string example, (double Least, double Most, string Words) range, Func<string, TextReading<double>> read, Func<StrokeParameters, double, StrokeParameters> change)
    {
        (Name, Meaning, Example, Range) = (name, meaning, example, range.Words);
        (_least, _most, _read, _change) = (range.Least, range.Most, read, change);
    }

    /// <summary>Lower case with hyphens.</summary>
    public string Name { get; }

    /// <summary>In plain words, with what the figure is.</summary>
    public string Meaning { get; }

    /// <summary>A value as it is written.</summary>
    public string Example { get; }

    /// <summary>Values taken, as a person reads them.</summary>
    public string Range { get; }

    /// <summary>Every fault that the stroke model can show.</summary>
    public static ImmutableArray<StrokeFault> All { get; } =
    [
        Share("air", "free air in the oil, share of the volume at atmospheric pressure", "4%", 0, 0.3, (t, v) => t with { Oil = t.Oil with { AirShare = v } }),
        Leak("bypass", "leak past the ram seal or the relief seat, always", (t, v) => t with { BypassLeak = v }),
        Leak("delivery-check", "leak back through the delivery check", (t, v) => t with { DeliveryLeak = v }),
        Leak("inlet-check", "leak back through the inlet check", (t, v) => t with { InletLeak = v }),
        Leak("piston", "leak through the clearance of the pump piston", (t, v) => t with { PistonLeak = v }),
        Share("filling", "share of the displacement that is filled", "60%", 0.05, 1, (t, v) => t with { Filling = v }),
        Of("relief", "pressure at which the relief opens", "590bar", Dimension.Pressure, 20e5, 1500e5, "20 to 1,500 bar", (t, v) => t with { ReliefPascals = v }),
        Leak("relief-weep", "leak of the relief above 60 % of its set pressure, by pressure above that", (t, v) => t with { WeepLeak = v }),
        Share("relief-closing", "closing over opening pressure; a damaged seat raises it", "30%", 0, 0.95, (t, v) => t with { ClosingRatio = v }),
        Of("supply", "voltage of the pack at rest", "16V", Dimension.Voltage, 1, 200, "1 to 200 V", (t, v) => t with { SupplyVolts = v }),
        Of("resistance", "resistance of pack, leads and winding together", "200mΩ", Dimension.Resistance, 1e-3, 10, "1 mΩ to 10 Ω", (t, v) => t with { ResistanceOhms = v }),
        Of("motor-friction", "friction at the motor shaft", "0.1N·m", Dimension.Torque, 0, 5, "0 to 5 N·m", (t, v) => t with { MotorFrictionNewtonMetres = v }),
        Of("oil", "oil that the reservoir can give", "22ml", Dimension.Volume, 1e-7, 1e-2, "0.1 ml to 10 l", (t, v) => t with { UsableOilCubicMetres = v }),
        Of("ram-friction", "dry friction of a ram that binds", "1800N", Dimension.Force, 0, 1e5, "0 to 100 kN", (t, v) => t with { DryFrictionNewtons = v }),
        Share("seal-friction", "seal friction as a share of pressure × ram area", "6%", 0, 0.5, (t, v) => t with { SealFrictionShare = v }),
        Of("spring", "preload of the return spring", "700N", Dimension.Force, 0, 1e5, "0 to 100 kN", (t, v) => t with { SpringPreloadNewtons = v }),
    ];

    /// <summary>Reads <c>NAME=VALUE</c> and changes the tool accordingly.</summary>
    /// <returns>The changed tool, or what is wrong and how to mend it.</returns>
    public static TextReading<StrokeParameters> Apply(string word, StrokeParameters tool)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(tool);
        var equals = word.IndexOf('=', StringComparison.Ordinal);
        var name = (equals < 0 ? word : word[..equals]).Trim();
        if (All.FirstOrDefault(f => f.Name == name) is not { } fault)
            return Bad(word, $"no fault of the stroke model is called '{name}'", NearName.Find(name, All.Select(f => f.Name)) is { } near ? $"write {near}" : $"write one of {string.Join(", ", All.Select(f => f.Name))}");
        if (equals < 0)
            return Bad(word, $"{name} has no value", $"write {name}={fault.Example}");
        if (name == "inlet-check" && tool.Inlet == ServiceModels.Model.InletKind.Port)
            return Bad(word, "this pump takes oil in through a port and has no inlet check", "leave inlet-check out; delivery-check and piston are there");
        return fault._read(word[(equals + 1)..]).Then<StrokeParameters>(value => value >= fault._least && value <= fault._most
            ? new TextReading<StrokeParameters>.Good(fault._change(tool, value))
            : Bad(word, $"{name} of {word[(equals + 1)..].Trim()} is out of range", $"write {fault.Range}, such as {name}={fault.Example}"));
    }

    private static TextReading<StrokeParameters>.Bad Bad(string word, string what, string mend) => new(new TextFault(0, word.Length, what, mend, "usage"));

    private static StrokeFault Of(string name, string meaning, string example, Dimension dimension, double least, double most, string range, Func<StrokeParameters, double, StrokeParameters> change) =>
        new(name, meaning, example, (least, most, range), text => QuantityReader.Read(text, dimension), change);

    private static StrokeFault Share(string name, string meaning, string example, double least, double most, Func<StrokeParameters, double, StrokeParameters> change) =>
        new(name, meaning, example, (least, most, string.Create(CultureInfo.InvariantCulture, $"{100 * least:0.##} % to {100 * most:0.##} %")), QuantityReader.ReadShare, change);

    private static StrokeFault Leak(string name, string meaning, Func<StrokeParameters, double, StrokeParameters> change) =>
        new(name, meaning + ", m³/s per pascal", "3e-15", (0, 1e-10, "0 to 1e-10"), QuantityReader.ReadPlain, change);
}
