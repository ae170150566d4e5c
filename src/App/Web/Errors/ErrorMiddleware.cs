using Microsoft.AspNetCore.Diagnostics;
using Ramwright.Records.Store;

namespace Ramwright.App.Web.Errors;

/// <summary>Turns statuses and exceptions into pages.</summary>
public static class ErrorMiddleware
{
    public static void UseErrorPages(this WebApplication app)
    {
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = http => Reexecute(http, StatusOf(http.Features.Get<IExceptionHandlerFeature>()?.Error)),
            AllowStatusCode404Response = true,
            SuppressDiagnosticsCallback = c => StatusOf(c.Exception) < 500,
        });
        app.UseStatusCodePagesWithReExecute("/error/{0}");
    }

    /// <summary>Which answer an exception means: input that cannot be read 400, a ledger that cannot be written 503, else our own fault.</summary>
    public static int StatusOf(Exception? error) => error switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        InvalidDataException => 400,
        LedgerUnavailableException or IOException => 503,
        _ => 500,
    };

    private static Task Reexecute(HttpContext http, int status)
    {
        http.Response.StatusCode = status; // the status pages around this draw the sheet
        return Task.CompletedTask;
    }
}
