using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.House;

/// <summary>Kinds of instruments; the first four can stand in a proof's reference chain.</summary>
public enum InstrumentKind { ForceCell, PortGauge, PeakHoldGauge, ToolMemory, TorqueWrench, Calliper, Thermometer, Scale, Other }

/// <summary>An instrument of the house, or new facts of one: the last one counts.</summary>
/// <param name="Reads">The kind of quantity that it reads.</param>
public sealed record InstrumentRegistered(InstrumentId Instrument, string Name, InstrumentKind Kind, MeasuredKind Reads) : HouseEvent
{
    public string? Maker { get; init; }
    public string? SerialNumber { get; init; }

    /// <summary>Upper end of the range, in SI of <see cref="Reads"/>.</summary>
    public MeasuredValue? Range { get; init; }

    /// <summary>Smallest step shown.</summary>
    public MeasuredValue? Resolution { get; init; }

    /// <summary>Time constant of a first-order lag; null when not known.</summary>
    public TimeSpan? Response { get; init; }

    /// <summary>Time between two samples; null for an instrument that does not sample.</summary>
    public TimeSpan? SamplingInterval { get; init; }

    /// <summary>Where its readings come from: <c>hand</c>, <c>simulated</c>, or an address that the Instruments room understands.</summary>
    public string Connection { get; init; } = "hand";

    /// <summary>False once it is withdrawn; what was read with it stays.</summary>
    public bool InUse { get; init; } = true;
}

/// <summary>An instrument was calibrated.</summary>
/// <param name="Due">The last day on which the house relies on it.</param>
/// <param name="Expanded">Expanded uncertainty (k = 2) from the certificate, at its worst point in use.</param>
public sealed record InstrumentCalibrated(InstrumentId Instrument, DateOnly On, DateOnly Due, string Certificate, string Laboratory, MeasuredValue Expanded) : HouseEvent
{
    /// <summary>Drift between this calibration and the one before, per year; null when it is the first.</summary>
    public MeasuredValue? DriftPerYear { get; init; }

    /// <summary>Change of the reading per kelvin away from 20 °C, as the certificate or maker states.</summary>
    public MeasuredValue? PerKelvin { get; init; }

    /// <summary>Whether the laboratory found it, before it adjusted anything, within what the calibration before had promised; null when that is not known.</summary>
    public bool? AsFoundWithin { get; init; }

    /// <summary>The points of the certificate, as the instrument was left, in SI of what it reads; null where none were written down.</summary>
    public ImmutableArray<CalibrationPoint>? Points { get; init; }

    /// <summary>How the correction runs through the points; null: a straight line.</summary>
    public CurveForm? Curve { get; init; }

    /// <summary>Whether the laboratory adjusted it: then its points tell nothing of drift since the calibration before. Null when that is not known.</summary>
    public bool? Adjusted { get; init; }
}
