using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.House.People;

/// <summary>Who is at this tablet's vice, and who works in the house. A signature is a name that was chosen, no password: the tablets are the house's own.</summary>
public sealed class PeoplePage(Bench bench) : BenchPage(bench)
{
    public ImmutableArray<PersonRegistered> People => [.. House.PeopleById.Values.Where(p => p.Works).OrderBy(p => p.Name, StringComparer.Ordinal)];

    public string Back { get; private set; } = "/";

    public string? Name { get; private set; }
    public string? Role { get; private set; }
    public bool MayRelease { get; private set; }

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = People.IsEmpty ? "Who works here?" : "Who is at the vice?",
        Eyebrow = "Every signature bears this name until another is chosen",
        Place = "people",
        Wide = true,
        Block = [HouseField, DayField, PersonField, new("People", $"{People.Length}", Less: true), new("Sheet", "people", Less: true)],
    };

    public IActionResult OnPostChoose(string? person, string? back)
    {
        if (!PersonId.TryParse(person, out var id) || House.Find(id) is not { Works: true })
            return StatusCode(StatusCodes.Status400BadRequest);
        Sign(id);
        return LocalRedirect(Safe(back));
    }

    public async Task<IActionResult> OnPostRegisterAsync(string? name, string? role, bool release, string? back)
    {
        (Name, Role, MayRelease, Back) = (name, role, release, Safe(back));
        var mistakes = Mistakes;
        var id = CustomerIds.Of(name ?? "") is { } slug ? PersonId.Parse(slug.Value) : (PersonId?)null;
        if (string.IsNullOrWhiteSpace(name) || id is null)
            mistakes.Add("name", "The name is missing.", "Write it as it is to stand on the papers, such as M. Orme.");
        if (string.IsNullOrWhiteSpace(role))
            mistakes.Add("role", "Say what this person does.", "Such as: technician, lead, apprentice.");
        if (id is { } taken && House.Find(taken) is { Works: true })
            mistakes.Add("name", $"{House.NameOf(taken)} works here already.", "Choose the name above, or write it in another way.");
        if (mistakes.Count > 0 || !SubmitToken.TryParse(Request.Form["Token"], out var token))
        {
            Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            return Page();
        }

        // The first person of a house registers themselves; later ones are registered by whoever is at the vice.
        await Bench.Ledger.AppendOnceAsync(token, Person?.Person ?? id!.Value, new PersonRegistered(id!.Value, name!.Trim(), role!.Trim(), release));
        if (Person is null)
            Sign(id.Value);
        return LocalRedirect(Person is null ? Back : "/people");
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        Back = Safe(Request.Query["back"]);
        return base.DrawAsync();
    }

    private void Sign(PersonId id) => Response.Cookies.Append(PersonCookie, id.Value,
        new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true, MaxAge = TimeSpan.FromHours(16), Path = "/" });

    private string Safe(string? back) => back is { Length: > 0 and < 300 } && Url.IsLocalUrl(back) ? back : "/";
}
