namespace Ramwright.Hydraulics.Identification;

/// <summary>Which recording would tell what this one could not; the one that tells most first.</summary>
internal static class NextRecording
{
    public static string? Of(Findings f)
    {
        var (evidence, signal, marks) = (f.Evidence, f.Evidence.Signal, f.Evidence.Marks);
        if (signal.Pascals is null)
            return "the same stroke with the pressure as well, at 1,000 rows per second";
        if (signal.Amperes is null)
            return "the same stroke with the battery current as well, at 1,000 rows per second";
        if (!evidence.TurnsAreSeen)
            return "the same stroke at 1,000 rows per second, so that each stroke of the pump is seen";
        if (f.Advance.DrySeconds is not null)
            return "after topping up and bleeding: a stroke that closes the dies on nothing, with a pause of five seconds near 60 % of the opening pressure";
        if (marks.Foot < 0)
            return "a stroke from standstill until the dies are closed and the relief opens";
        if (marks.Opened < 0)
            return "a stroke with the trigger held until the relief opens";
        if (evidence.TopIsMissing)
            return "the same stroke with a sensor that reaches a third above the opening pressure";
        if (marks.Connector)
            return "a stroke that closes the dies on nothing, with a pause of five seconds near 60 % of the opening pressure";
        if (evidence.Pauses.Count == 0)
            return "a stroke with the trigger let go near 60 % of the opening pressure, five seconds of waiting, then on until the relief opens";
        if (f.Closing is null)
            return "a stroke recorded until the ram is home";
        return null;
    }
}
