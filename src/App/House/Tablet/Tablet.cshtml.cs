using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Tablet;

namespace Ramwright.App.House.Tablet;

/// <summary>A bank card held to the screen tells how large a millimetre is on this tablet.</summary>
public sealed class TabletPage(Bench bench) : BenchPage(bench)
{
    /// <summary>Widths offered for the card, CSS pixels.</summary>
    public static ImmutableArray<int> Widths { get; } = [.. Enumerable.Range(0, 33).Select(i => 300 + (10 * i))];

    public TabletCookie Tablet { get; private set; } = TabletCookie.Standard;

    public int CardPixels => (int)Math.Round(Tablet.PixelsPerMillimetre * TabletCookie.CardMillimetres);

    /// <summary>The width offered that is nearest to the one kept.</summary>
    public int Nearest => Widths.MinBy(w => Math.Abs(w - CardPixels));

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "This tablet",
        Eyebrow = "How large is a millimetre here? A bank card knows: it is 85.6 mm wide",
        Place = "house",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, new("Card", $"{CardPixels} px"), new("Millimetre", Tablet.PixelsPerMillimetre.ToString("0.00", CultureInfo.InvariantCulture) + " px"), PersonField],
    };

    public IActionResult OnPost(string? card, Scheme scheme)
    {
        var pixels = double.TryParse(card, NumberStyles.Float, CultureInfo.InvariantCulture, out var read) ? read : 0;
        var size = pixels / TabletCookie.CardMillimetres;
        if (size is not (>= TabletCookie.Least and <= TabletCookie.Most) || !Enum.IsDefined(scheme))
        {
            Mistakes.Add("card", "No screen has a card of that width.", $"Choose a width from {TabletCookie.Least * TabletCookie.CardMillimetres:0} to {TabletCookie.Most * TabletCookie.CardMillimetres:0} px.");
            Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            Read();
            return Page();
        }

        Response.Cookies.Append(TabletCookie.Name, new TabletCookie(size, scheme).ToString(),
            new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, IsEssential = true, MaxAge = TimeSpan.FromDays(3650), Path = "/" });
        return LocalRedirect("/tablet");
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        Read();
        return base.DrawAsync();
    }

    private void Read() => Tablet = TabletCookie.Of(Request.Cookies[TabletCookie.Name]);
}
