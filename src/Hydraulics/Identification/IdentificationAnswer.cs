using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Identification;

/// <summary>A figure of the tool as a recording shows it.</summary>
/// <param name="Name">Such as <c>pumpFill</c>; all names are in <see cref="ParameterName"/>.</param>
/// <param name="Value">Likeliest value in <paramref name="Unit"/>.</param>
/// <param name="Low">Lower end of the 95 % interval, same unit.</param>
/// <param name="High">Upper end.</param>
/// <param name="Unit">fraction, m³/s/Pa, bar, V, Ω, N or cm³.</param>
/// <param name="Identified">The recording tells it; else value and limits are what is believed without it, or a mere limit.</param>
/// <param name="Note">What else is to be said, such as which recording would tell; empty if nothing.</param>
public sealed record IdentifiedParameter(string Name, double Value, double Low, double High, string Unit, bool Identified, string Note);

/// <summary>A fault that a recording speaks for.</summary>
/// <param name="Id">Such as <c>air-in-oil</c>; all ids are in <see cref="FaultId"/>.</param>
/// <param name="Name">In plain words.</param>
/// <param name="Probability">0 to 1.</param>
/// <param name="Reasons">What in the recording speaks for it, in plain words with figures.</param>
public sealed record FoundFault(string Id, string Name, double Probability, ImmutableArray<string> Reasons);

/// <summary>A point of the fitted curve.</summary>
/// <param name="Seconds">Time as in the recording.</param>
/// <param name="Pascals">Pressure as the sensor should have shown it, zero offset taken off.</param>
public readonly record struct FittedPoint(double Seconds, double Pascals);

/// <summary>What a recorded stroke says of the tool.</summary>
public abstract record IdentificationAnswer
{
    private IdentificationAnswer() { } // closed: these two answers and no others

    /// <summary>The recording was read.</summary>
    /// <param name="Parameters">Every figure, told or not.</param>
    /// <param name="Faults">Faults that it speaks for, likeliest first: probability 0.15 and more.</param>
    /// <param name="Fitted">The model's pressure over the parts that were fitted, in order of time.</param>
    /// <param name="NextRecording">Which recording would tell more; null when this one told all that a recording can.</param>
    public sealed record Told(ImmutableArray<IdentifiedParameter> Parameters, ImmutableArray<FoundFault> Faults, ImmutableArray<FittedPoint> Fitted, string? NextRecording) : IdentificationAnswer
    {
        /// <summary>Probability from which a fault counts as named.</summary>
        public const double Named = 0.5;

        /// <summary>A parameter by name.</summary>
        public IdentifiedParameter this[string name] => Parameters.First(p => p.Name == name);

        /// <summary>The recording contradicts the model: it is of another tool.</summary>
        public bool Contradicts => Faults.Any(f => f.Id == FaultId.OtherTool && f.Probability >= Named);
    }

    /// <summary>There is no stroke in the recording, or too little of one.</summary>
    /// <param name="Reason">Why.</param>
    /// <param name="NextRecording">Which recording would do.</param>
    public sealed record CannotTell(string Reason, string NextRecording) : IdentificationAnswer;
}

/// <summary>Names of the parameters.</summary>
public static class ParameterName
{
    public const string PumpFill = "pumpFill", HoldLeak = "holdLeak", DeliveryCheckLeak = "deliveryCheckLeak", InletLeak = "inletLeak", PistonLeak = "pistonLeak", BypassLeak = "bypassLeak",
        EntrainedAir = "entrainedAir", ReliefOpening = "reliefOpening", ReliefClosing = "reliefClosing", SupplyVoltage = "supplyVoltage", DriveResistance = "driveResistance",
        RamFriction = "ramFriction", SealFriction = "sealFriction", UsableOil = "usableOil";
}

/// <summary>Ids of the faults that a recording can show, the same as in the fault networks of the models where these have them.</summary>
public static class FaultId
{
    public const string AirInOil = "air-in-oil", DeliveryCheckLeaks = "delivery-check-leaks", InletCheckLeaks = "inlet-check-leaks", BypassLeaks = "bypass-leaks", LowFill = "low-fill",
        ReliefLow = "relief-low", ReliefHigh = "relief-high", WeakDrive = "weak-drive", OilShort = "oil-short", RamBinds = "ram-binds", SealFriction = "seal-friction",
        ReliefWeeps = "relief-weeps", ReliefSeatDamaged = "relief-seat-damaged", OtherTool = "other-tool";
}
