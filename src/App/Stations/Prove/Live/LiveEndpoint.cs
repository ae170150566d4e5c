using System.Globalization;
using System.Text.Json;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove.Live;

/// <summary>
/// Tells a page what its running series does, as server-sent events (WHATWG HTML, 9.2): <c>taken</c> with the number of runs in the ledger,
/// <c>figure</c> with the words beside it. The page is complete without: it then shows what stood when it was drawn.
/// </summary>
public static class LiveEndpoint
{
    /// <summary>Rising pressures are told at most so often.</summary>
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(80);

    public static void MapLiveSeries(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/jobs/{job}/prove/live", async (string job, SeriesRunner runner, Bench bench, HttpContext http) =>
        {
            if (!JobId.TryParse(job, out var id))
                return Results.NoContent(); // which also tells the browser not to ask again
            http.Response.ContentType = "text/event-stream";
            http.Response.Headers.CacheControl = "no-store";
            var words = new Words((await bench.Ledger.HouseAsync(http.RequestAborted)).Settings.Units);
            try
            {
                if (runner.Find(id) is { } live)
                    await TellAsync(http.Response, live, words, bench.Clock, http.RequestAborted);
                else
                    await WriteAsync(http.Response, "over", "", http.RequestAborted); // it ended between the page and this question: the page draws itself again
            }
            catch (OperationCanceledException)
            {
                // The page was closed.
            }

            return Results.Empty;
        });

    private static async Task TellAsync(HttpResponse to, LiveSeries live, Words words, TimeProvider clock, CancellationToken cancel)
    {
        var told = -1;
        while (true)
        {
            var (state, changed) = live.Now;
            if (state.Taken != told)
                await WriteAsync(to, "taken", state.Taken.ToString(CultureInfo.InvariantCulture), cancel);
            told = state.Taken;
            if (state.Moment is LiveMoment.Over over)
            {
                await WriteAsync(to, "over", over.Why ?? "", cancel);
                return;
            }

            await WriteAsync(to, "figure", FigureOf(state, words, clock), cancel);
            await Task.Delay(Between, clock, cancel);
            if (state.Moment is LiveMoment.Resting)
                await Task.WhenAny(changed, Task.Delay(TimeSpan.FromSeconds(0.5), clock, cancel));
            else
                await changed.WaitAsync(cancel);
        }
    }

    private static string FigureOf(LiveState state, Words words, TimeProvider clock) => state.Moment switch
    {
        LiveMoment.Rising rising => JsonSerializer.Serialize(new[] { words.Show(rising.Pressure), $"run {state.Taken + 1}, rising" }),
        LiveMoment.Resting resting => JsonSerializer.Serialize(new[] { "", $"run {state.Taken} · rest {Math.Max(0, (resting.Until - clock.GetUtcNow()).TotalSeconds).ToString("0", CultureInfo.InvariantCulture)} s more" }),
        LiveMoment.NotTaken not => JsonSerializer.Serialize(new[] { "", $"a run was not taken: {not.Why}" }),
        LiveMoment.Away away => JsonSerializer.Serialize(new[] { "", $"the device is lost: {away.What}; it is reached for again" }),
        _ => JsonSerializer.Serialize(new[] { "", state.Taken == 0 ? "the device is asked" : $"run {state.Taken}, taken" }),
    };

    private static async Task WriteAsync(HttpResponse to, string name, string data, CancellationToken cancel)
    {
        await to.WriteAsync($"event: {name}\ndata: {data.ReplaceLineEndings(" ")}\n\n", cancel);
        await to.Body.FlushAsync(cancel);
    }
}
