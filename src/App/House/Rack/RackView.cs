using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Stations;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.House.Rack;

/// <summary>A tool in its place on the rack.</summary>
/// <param name="Note">How far it is, in a few words.</param>
/// <param name="By">The promised day as people say it.</param>
/// <param name="Late">The promised day has passed.</param>
public sealed record RackLine(string Job, string Url, string Tool, string Serial, string Customer, string Note, string By, bool Late);

/// <summary>A station and the tools at it, the earliest promised first.</summary>
public sealed record RackShelf(int Number, string Name, ImmutableArray<RackLine> Lines);

/// <summary>The rack as it is read.</summary>
public static class RackView
{
    public static ImmutableArray<RackShelf> Of(IEnumerable<RackPlace> places, IReadOnlyDictionary<string, JobState> jobs, HouseState house, Bench bench) =>
    [
        .. places.GroupBy(p => p.Station).OrderBy(g => g.Key).Select(g => new RackShelf((int)g.Key + 1, g.Key.ToString(),
            [.. g.OrderBy(p => p.Promised ?? DateOnly.MaxValue).ThenBy(p => p.Job).Select(p => Line(p, jobs.GetValueOrDefault(p.Job.Value), house, bench))])),
    ];

    /// <summary>The promised day: 'late 2 d', 'today', a weekday within the week, else the date.</summary>
    public static string By(DateOnly? promised, DateOnly today) => promised is not { } day ? "no day"
        : day < today ? $"late {today.DayNumber - day.DayNumber} d"
        : day == today ? "today"
        : day.DayNumber - today.DayNumber <= 6 ? day.ToString("ddd", CultureInfo.InvariantCulture)
        : day.ToString("d MMM", CultureInfo.InvariantCulture);

    private static RackLine Line(RackPlace place, JobState? job, HouseState house, Bench bench) => new(
        place.Job.Value,
        StationOrder.Url(place.Job, place.Station),
        bench.Models.Find(place.ModelId)?.Model.Tool.Name ?? place.ModelId,
        place.Tool.Value,
        house.NameOf(place.Customer),
        Note(place, job, house, bench),
        By(place.Promised, bench.Today),
        place.Promised < bench.Today);

    private static string Note(RackPlace place, JobState? job, HouseState house, Bench bench)
    {
        if (place.Quarantined)
            return "quarantined";
        return place.Station switch
        {
            Station.Arrive => "to be made safe",
            Station.Find or Station.Plan => place.Complaint.Length == 0 ? "due" : place.Complaint,
            Station.Price => job?.Quote is null ? "to be priced" : "waits for a yes",
            Station.Strip when job?.Strip is { } strip => strip.Next is { } next ? $"step {next + 1} of {strip.Plan.Steps.Length}" : "stripped",
            Station.Rebuild when job?.Rebuild is { } rebuild => rebuild.Next is { } next ? $"step {next + 1} of {rebuild.Plan.Steps.Length}" : "together again",
            Station.Set when job is { Setting.Locked: not null } => "set and locked",
            Station.Set when job?.Setting.Runs is [.., { } last] => Wants(last.Read.What.Peak, bench.Models.Find(place.ModelId)?.Model, house),
            Station.Set => "to be set",
            Station.Prove when job?.OpenSeries is { } series => series.IsFull ? "series full" : $"run {series.Peaks.Length + 1} of {series.Places}",
            Station.Prove or Station.Release when place.Verdict is { } verdict => AnswerMark.Word(verdict),
            Station.Prove => "to be proved",
            _ => "how does it end?",
        };
    }

    private static string Wants(Pressure read, ServiceModel? model, HouseState house)
    {
        var words = new Words(house.Settings.Units);
        return words.Show(read) + (model is null ? "" : $", wants {QuantityText.Parts(model.Limits.Nominal, words.System).Number}");
    }
}
