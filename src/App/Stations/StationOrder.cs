using System.Collections.Immutable;
using Ramwright.App.Web.Frame;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations;

/// <summary>Which of the nine stations a job passes: a model that knows little leads past those it cannot serve.</summary>
public static class StationOrder
{
    /// <summary>Whether a job with a model of this level stops at the station.</summary>
    /// <param name="strips">False once it was decided that nothing is to be stripped.</param>
    public static bool Serves(int level, bool strips, Station station) => station switch
    {
        Station.Find or Station.Price => level >= 1,
        Station.Plan or Station.Strip or Station.Rebuild => level >= 2 && strips,
        _ => true,
    };

    public static bool Serves(int level, JobState job, Station station) => Serves(level, Strips(job), station);

    /// <summary>The next station that the job stops at after this one; Release at the end.</summary>
    public static Station After(int level, JobState job, Station station) => After(level, Strips(job), station);

    /// <inheritdoc cref="After(int, JobState, Station)"/>
    public static Station After(int level, bool strips, Station station)
    {
        for (var next = station + 1; next < Station.Release; next++)
        {
            if (Serves(level, strips, next))
                return next;
        }

        return Station.Release;
    }

    /// <summary>The address of a station's page.</summary>
    public static string Url(Records.Ids.JobId job, Station station) => $"/jobs/{job}/{station.ToString().ToLowerInvariant()}";

    /// <summary>The route as the frame draws it.</summary>
    public static StationRoute Draw(JobState job, int level, Station? seen)
    {
        var furthest = job.Route.Count == 0 ? job.Station : job.Route.Max(r => r.What.Station);
        HashSet<Station> visited = [Station.Arrive, job.Station, .. job.Route.Select(r => r.What.Station)];
        return new([.. Enum.GetValues<Station>().Select(s => new Stop((int)s + 1, s.ToString(), StateOf(s), s <= furthest && (visited.Contains(s) || Serves(level, job, s)) ? Url(job.Id, s) : null, s == seen))]);

        StopState StateOf(Station s) =>
            s == job.Station && job.IsOpen ? StopState.Here
            : s <= job.Station && visited.Contains(s) ? StopState.Passed
            : !Serves(level, job, s) || s < job.Station || !job.IsOpen ? StopState.Skipped
            : StopState.Ahead;
    }

    /// <summary>The route of a job that is not opened yet.</summary>
    public static StationRoute Unopened { get; } = new([.. Enum.GetValues<Station>().Select(s => new Stop((int)s + 1, s.ToString(), s == Station.Arrive ? StopState.Here : StopState.Ahead, null, s == Station.Arrive))]);

    /// <summary>Whether anything is to be stripped, as far as it was decided.</summary>
    private static bool Strips(JobState job) => job.Targets is not { What.Parts.IsEmpty: true };

    /// <summary>Stations behind and at the job, in words for those who cannot see the route.</summary>
    public static ImmutableArray<Station> Served(int level, JobState job) => [.. Enum.GetValues<Station>().Where(s => Serves(level, job, s))];
}
