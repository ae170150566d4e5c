using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.Records.Jobs;

/// <summary>Who may sign: people of the register; a release only by those who may authorise one. In a house without people anybody may write the first of them.</summary>
internal static class SignerRules
{
    public static Appended.Refused? Refuse(HouseState house, PersonId by, IReadOnlyList<JobEvent> events)
    {
        var person = house.Find(by);
        if (events.Any(e => e is JobEnded { End: JobEnd.Released }) && person is not { MayAuthoriseRelease: true })
            return JobRules.No("may-not-release", $"{house.NameOf(by)} may not authorise a release.", "Let somebody sign who may.");
        return Known(house, by);
    }

    public static Appended.Refused? Refuse(HouseState house, PersonId by, IReadOnlyList<HouseEvent> events)
    {
        foreach (var what in events)
        {
            if (what is SettingsChanged { Settings.JobLetters: var letters, Settings.FirstJobNumber: var first } && (first < 1 || first > 9_000_000 || !JobId.TryParse($"{letters}-0001", out _)))
                return JobRules.No("job-letters", $"'{letters}' and {first} give no job number.", "Take one to four capitals, and a first number from 1 to 9,000,000.");
        }

        return Known(house, by);
    }

    private static Appended.Refused? Known(HouseState house, PersonId by)
    {
        if (house.PeopleById.Count == 0)
            return null;
        return house.Find(by) switch
        {
            null => JobRules.No("unknown-signer", $"{by} is not among the people who sign.", "Choose a person, or register this one first."),
            { Works: false } gone => JobRules.No("unknown-signer", $"{gone.Name} no longer works here.", "Let somebody sign who does."),
            _ => null,
        };
    }
}
