using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Measurements;

/// <summary>A value to be read, as it is named and with its dimension; null for a plain number.</summary>
public sealed record ReadingName(string Name, string Meaning, Dimension? Dimension, string Example);

/// <summary>A measurement that a shop makes without a logger: what is read, what it takes, what else it makes superfluous.</summary>
/// <remarks>Minutes are from judgement. Symptoms and checks are meant by the ids that models of the house share; one that a model lacks does not matter.</remarks>
public sealed record QuickMeasurement
{
    private QuickMeasurement() { }

    /// <summary>Lower case with hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>In the imperative.</summary>
    public required string Name { get; init; }

    /// <summary>What it takes: stopwatch, dial gauge, clamp meter, voltmeter.</summary>
    public required string Device { get; init; }

    public required TimeSpan Time { get; init; }

    /// <summary>Readings that make it; all are wanted.</summary>
    public required ImmutableArray<ReadingName> Readings { get; init; }

    /// <summary>Symptoms that it shows more exactly.</summary>
    public ImmutableArray<string> InsteadOfSymptoms { get; init; } = [];

    /// <summary>Checks that it repeats.</summary>
    public ImmutableArray<string> InsteadOfChecks { get; init; } = [];

    /// <summary>The value that counts, from the readings in order.</summary>
    internal Func<double[], double> Value { get; init; } = r => r[0];

    /// <summary>Scatter from tool to tool and from reading to reading: a part of the value, and a part whatever the value; standard deviations.</summary>
    internal (double Share, double Fixed) Scatter { get; init; }

    public static QuickMeasurement AdvanceTime { get; } = new()
    {
        Id = "advance-time",
        Name = "time the advance with a stopwatch, trigger to dies closed, nothing between them",
        Device = "stopwatch",
        Time = TimeSpan.FromMinutes(2),
        Readings = [new("advance-time", "trigger to dies closed", Dimension.Time, "4.1s")],
        InsteadOfSymptoms = ["slow"],
        InsteadOfChecks = ["free-stroke"],
        Scatter = (0.05, 0.12),
    };

    public static QuickMeasurement Opening { get; } = new()
    {
        Id = "opening",
        Name = "read the pressure at which the relief opens",
        Device = "dial gauge with peak pointer",
        Time = TimeSpan.FromMinutes(5),
        Readings = [new("opening", "pressure at which the relief opens", Dimension.Pressure, "655bar")],
        InsteadOfSymptoms = ["stops-low", "stops-high"],
        InsteadOfChecks = ["opening"],
        Scatter = (0.012, 0),
    };

    public static QuickMeasurement Hold { get; } = new()
    {
        Id = "hold",
        Name = "stop near three quarters of the pressure, read the dial gauge at once and after a minute",
        Device = "dial gauge",
        Time = TimeSpan.FromMinutes(4),
        Readings = [new("hold-0", "pressure right after the stop, when the pump has run out", Dimension.Pressure, "530bar"), new("hold-60", "pressure 60 s later, the oil's cooling included", Dimension.Pressure, "455bar")],
        InsteadOfSymptoms = ["pressure-decays"],
        InsteadOfChecks = ["hold"],
        Value = r => 1 - r[1] / r[0],
        Scatter = (0.1, 0.03),
    };

    public static QuickMeasurement NoLoadCurrent { get; } = new()
    {
        Id = "no-load-current",
        Name = "clamp the pack lead and read the current of the advance",
        Device = "clamp meter",
        Time = TimeSpan.FromMinutes(3),
        Readings = [new("no-load-current", "current while the ram advances", Dimension.Current, "2.6A")],
        InsteadOfChecks = ["current"],
        Scatter = (0.08, 0.4),
    };

    public static QuickMeasurement PackResistance { get; } = new()
    {
        Id = "pack-resistance",
        Name = "read the pack's voltage at rest and under load, with the current",
        Device = "voltmeter and clamp meter",
        Time = TimeSpan.FromMinutes(3),
        Readings = [new("pack-rest", "voltage of the pack at rest", Dimension.Voltage, "18.4V"), new("pack-load", "its voltage under load", Dimension.Voltage, "16.9V"), new("load-current", "the current at that moment", Dimension.Current, "60A")],
        InsteadOfChecks = ["other-pack"],
        Value = r => (r[0] - r[1]) / r[2],
        Scatter = (0.2, 0.002),
    };

    public static QuickMeasurement StrokesPerCharge { get; } = new()
    {
        Id = "strokes-per-charge",
        Name = "count full strokes from a full charge",
        Device = "time",
        Time = TimeSpan.FromMinutes(40),
        Readings = [new("strokes-per-charge", "full strokes from a full charge", null, "200")],
        InsteadOfSymptoms = ["pack-drains"],
        Scatter = (0.2, 1),
    };

    /// <summary>Every measurement, quick ones first.</summary>
    public static ImmutableArray<QuickMeasurement> All { get; } = [AdvanceTime, NoLoadCurrent, PackResistance, Hold, Opening, StrokesPerCharge];

    /// <summary>Every reading that may be given.</summary>
    public static ImmutableArray<ReadingName> AllReadings { get; } = [.. All.SelectMany(m => m.Readings)];
}
