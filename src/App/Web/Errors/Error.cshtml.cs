using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;

namespace Ramwright.App.Web.Errors;

/// <summary>Errors in the same hand as everything else, without a trace of the program's inside.</summary>
[IgnoreAntiforgeryToken]
[ResponseCache(NoStore = true)]
public sealed class ErrorPage(TimeProvider clock) : SheetPage
{
    public ErrorWords Words { get; private set; } = ErrorWords.For(500);

    private int status = 500;

    public override Sheet Sheet => new()
    {
        Title = Words.Title,
        Eyebrow = $"{status}",
        Wide = true,
        Block = [new("Sheet", $"{status}"), new("At", clock.GetLocalNow().ToString("ddd d MMM, HH:mm", System.Globalization.CultureInfo.InvariantCulture)), new("Path", HttpContext.Features.Get<IStatusCodeReExecuteFeature>()?.OriginalPath ?? HttpContext.Features.Get<IExceptionHandlerPathFeature>()?.Path ?? "")],
    };

    public void OnGet(int status) => Say(status);

    public void OnPost(int status) => Say(status);

    private void Say(int asked)
    {
        status = asked is >= 400 and <= 599 ? asked : 404;
        Words = ErrorWords.For(status);
        Response.StatusCode = status;
    }
}
