namespace Ramwright.Hydraulics.Phases;

/// <summary>What the tool is doing.</summary>
public enum PhaseKind
{
    /// <summary>Before the trigger is pulled.</summary>
    Standstill,

    /// <summary>The ram goes out against its spring.</summary>
    Advance,

    /// <summary>A connector is pressed; pressure climbs, and ever more slowly.</summary>
    Squeeze,

    /// <summary>The dies are closed and pressure climbs fast.</summary>
    Build,

    /// <summary>The motor is off with the ram out: pressure is left alone.</summary>
    Hold,

    /// <summary>The relief has opened and pressure falls away.</summary>
    Opening,

    /// <summary>The spring drives the ram home.</summary>
    Return,

    /// <summary>After the ram is home, or where it stays.</summary>
    Rest,
}

/// <summary>A part of a stroke.</summary>
/// <param name="Nth">Counts phases of a kind from 1: the second build is the one after a hold.</param>
/// <param name="FromSeconds">On the clock of the recording.</param>
/// <param name="ToSeconds">After <paramref name="FromSeconds"/>; where the next phase begins.</param>
public sealed record StrokePhase(PhaseKind Kind, int Nth, double FromSeconds, double ToSeconds)
{
    /// <summary>Length in seconds.</summary>
    public double Seconds => ToSeconds - FromSeconds;
}

/// <summary>A moment that parts the phases.</summary>
public enum PhaseEventKind
{
    TriggerPulled,

    /// <summary>The dies touch a connector; only where they close on it later, or where pressure tells it apart.</summary>
    LoadTouched,
    DiesClosed,

    /// <summary>Let go for a pause.</summary>
    TriggerReleased,
    TriggerPulledAgain,
    ReliefOpened,

    /// <summary>The motor stops for good.</summary>
    MotorOff,
    ReliefClosed,
    RamHome,
}

/// <summary>When something happened.</summary>
/// <param name="Seconds">On the clock of the recording.</param>
/// <param name="WithinSeconds">How far off the moment may be, about 2 standard deviations; above 0.</param>
public sealed record PhaseEvent(PhaseEventKind Kind, double Seconds, double WithinSeconds);

/// <summary>What makes phases or moments less sure.</summary>
public enum PhaseNoteKind
{
    /// <summary>Told by pressure alone: the motor is not seen.</summary>
    MotorNotSeen,

    /// <summary>Told by current alone.</summary>
    PressureNotSeen,

    /// <summary>Too little standstill to know the zero of the sensors.</summary>
    NoStandstill,

    /// <summary>Another stroke begins; it was left out.</summary>
    AnotherStroke,

    /// <summary>The relief closed unseen, at the latest when the ram was home.</summary>
    ClosedUnseen,

    /// <summary>The ram stays out.</summary>
    RamStaysOut,

    /// <summary>The motor stopped before the relief opened.</summary>
    GivenUp,

    /// <summary>The pump gives no more oil.</summary>
    RunsDry,

    /// <summary>The recording ends before the ram is home.</summary>
    EndsInReturn,

    /// <summary>Rows are missing around a moment.</summary>
    RowsMissing,

    /// <summary>Rows come so seldom that moments are coarse.</summary>
    SlowRate,
}

/// <summary>What makes phases or moments less sure, in words without a full stop.</summary>
public sealed record PhaseNote(PhaseNoteKind Kind, string Words);
