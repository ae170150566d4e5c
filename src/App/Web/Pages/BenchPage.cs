using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Ramwright.App.Web.Frame;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Web.Pages;

/// <summary>A page that knows the house and who is at the vice.</summary>
public abstract class BenchPage(Bench bench) : SheetPage
{
    public const string PersonCookie = "person";

    public Bench Bench { get; } = bench;

    public HouseState House { get; private set; } = HouseState.Empty;

    /// <summary>Who is at this tablet's vice; null until somebody was chosen.</summary>
    public PersonRegistered? Person { get; private set; }

    /// <summary>How quantities are shown in this house.</summary>
    public Words Words => new(House.Settings.Units);

    public override bool NeedsPerson => Person is null;

    /// <summary>Fetches what the page is drawn from; called before the page is drawn, also after a refused post.</summary>
    protected virtual Task<IActionResult?> DrawAsync() => Task.FromResult<IActionResult?>(null);

    public async Task<IActionResult> OnGetAsync() => await DrawAsync() ?? Page();

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        House = await Bench.Ledger.HouseAsync(HttpContext.RequestAborted);
        if (PersonId.TryParse(Request.Cookies[PersonCookie], out var id) && House.Find(id) is { Works: true } person)
            Person = person;
        if (await PrepareAsync() is { } instead)
            context.Result = instead;
        else
            await next();
    }

    /// <summary>What must be there before any handler runs; a result given here is shown instead of the page.</summary>
    protected virtual Task<IActionResult?> PrepareAsync() => Task.FromResult<IActionResult?>(null);

    /// <summary>Takes a post: reads token, version and person, acts, then redirects; a refusal draws the page again with what was typed.</summary>
    /// <param name="next">Where it goes on, from the answer; the entry number is added.</param>
    protected async Task<IActionResult> TakeAsync(Func<Signature, Task<ActAnswer>> act, Func<ActAnswer.Done, string> next)
    {
        ArgumentNullException.ThrowIfNull(act);
        ArgumentNullException.ThrowIfNull(next);
        if (!SubmitToken.TryParse(Request.Form["Token"], out var token))
            return StatusCode(StatusCodes.Status400BadRequest);
        EntryNumber? seen = EntryNumber.TryParse(Request.Form["Seen"], out var number) ? number : null;
        if (Person is null)
        {
            Mistakes.Add("", "Nobody is at the vice yet, so nobody could sign.", "Choose who signs under People, then send this again.");
            return await AgainAsync(StatusCodes.Status422UnprocessableEntity);
        }

        switch (await act(new(token, Person.Person, seen)))
        {
            case ActAnswer.Done done:
                var url = next(done);
                return LocalRedirect(url + (url.Contains('?', StringComparison.Ordinal) ? "&" : "?") + "entry=" + done.Entry);
            case ActAnswer.Begun begun:
                return LocalRedirect(begun.Page);
            case ActAnswer.Refused refused:
                foreach (var mistake in refused.Mistakes)
                    Mistakes.Add(mistake);
                return await AgainAsync(StatusCodes.Status422UnprocessableEntity);
            case ActAnswer.Overtaken overtaken:
                foreach (var entry in overtaken.Since)
                    Mistakes.Add("", $"{House.NameOf(entry.By)} signed entry {entry.Number} at {At(entry.At)}: {EventWords.Of(entry.What)}.");
                Mistakes.Add("", "This page was drawn before that.", "Look at the job as it stands now, then sign again.");
                return await AgainAsync(StatusCodes.Status409Conflict);
            default:
                return StatusCode(StatusCodes.Status500InternalServerError);
        }
    }

    /// <summary>A moment as the clock on the wall shows it.</summary>
    public string At(DateTimeOffset moment) => TimeZoneInfo.ConvertTime(moment, Bench.Clock.LocalTimeZone).ToString("d MMM HH:mm", CultureInfo.InvariantCulture);

    private async Task<IActionResult> AgainAsync(int status)
    {
        if (await PrepareAsync() is { } instead)
            return instead;
        if (await DrawAsync() is { } other)
            return other;
        Response.StatusCode = status;
        return Page();
    }

    /// <summary>The fields that every title block of the house begins with.</summary>
    protected BlockField PersonField => new("At the vice", Person?.Name ?? "nobody yet", Link: "/people?back=" + Uri.EscapeDataString(Request.Path), Less: Person is not null);

    protected BlockField HouseField => new("House", House.Settings.ShopName);

    protected BlockField DayField => new("Day", Bench.Today.ToString("ddd d MMM", CultureInfo.InvariantCulture));

    /// <summary>Words for the stations.</summary>
    public static string NameOf(Station station) => station.ToString();
}
