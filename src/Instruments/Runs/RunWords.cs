namespace Ramwright.Instruments.Runs;

/// <summary>Why a run was not taken, in words.</summary>
public static class RunWords
{
    public static string Of(WhyNotTaken why) => why switch
    {
        WhyNotTaken.ShortOfFull => "it stayed below a full run",
        WhyNotTaken.Interrupted => "the device was lost while it went on",
        WhyNotTaken.BeginningNotSeen => "it was under way when the device was reached",
        WhyNotTaken.Gap => "readings are missing where the pressure was high",
        WhyNotTaken.Jump => "readings jumped as no stroke does, or came too far apart",
        WhyNotTaken.TooLong => "it did not end in the time that a run takes",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "No such reason."),
    };
}
