using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Release;

/// <summary>What a job rests on and can rest on no longer, because a calibration found an instrument off since: peaks of its proof, torques of its rebuild.</summary>
public static class Doubts
{
    /// <summary>A sentence for each; empty where all holds.</summary>
    /// <param name="zone">Where the shop is: days are those of its wall clock.</param>
    public static ImmutableArray<string> Of(JobState job, HouseState house, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(house);
        var said = ImmutableArray.CreateBuilder<string>();
        if (job.StandingProof is { Opened: var opened } && Found(opened.What.Device, opened.At) is { } reference)
            said.Add($"{reference}: the proof rests on what it read.");
        foreach (var (step, signed) in job.Rebuild?.Signed ?? ImmutableSortedDictionary<int, Records.Events.Entry<Records.Events.RebuildStepSigned>>.Empty)
        {
            if (signed.What.Wrench is { } wrench && Found(wrench, signed.At) is { } found)
                said.Add($"{found}: the torque of rebuild step {step + 1} is void.");
        }

        return said.ToImmutable();

        string? Found(InstrumentId id, DateTimeOffset at)
        {
            var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);
            return house.Find(id)?.InDoubt is { } days && day >= days.Since && day <= days.Until ? $"{id} was found off on {Words.Day(days.Until)}" : null;
        }
    }
}
