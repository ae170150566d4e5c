using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>One thing known, counted once.</summary>
public abstract record Datum
{
    private Datum() { }

    public sealed record Seen(SymptomId Symptom) : Datum;

    public sealed record NotSeen(SymptomId Symptom) : Datum;

    public sealed record Checked(CheckId Check, string Outcome) : Datum;

    /// <summary>A quick measurement, from one reading or several.</summary>
    /// <param name="Measurement">Its id in <c>QuickMeasurement</c>.</param>
    /// <param name="Value">In its own SI unit: s, Pa, A, Ω; a share for a fall, a number for strokes.</param>
    public sealed record Measured(string Measurement, double Value) : Datum;

    public sealed record Recorded(RecordingEvidence Recording) : Datum;
}

/// <summary>A datum that was left out because a finer one tells the same.</summary>
public sealed record CountedWith(Datum LeftOut, Datum Finer);
