using System.Net;

namespace Ramwright.App.Web.Security;

/// <summary>
/// On loopback only the names of this machine are answered to: a page elsewhere whose name was pointed at 127.0.0.1
/// must not be able to talk to the bench (DNS rebinding).
/// </summary>
public static class HostCheck
{
    public static IApplicationBuilder UseHostCheck(this IApplicationBuilder app, string address)
    {
        var loopback = address is "localhost" || (IPAddress.TryParse(address, out var ip) && IPAddress.IsLoopback(ip));
        if (!loopback)
            return app;
        return app.Use(async (http, next) =>
        {
            if (http.Request.Host.Host is "localhost" or "127.0.0.1" or "[::1]" or "::1")
            {
                await next(http);
                return;
            }

            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            http.Response.ContentType = "text/plain; charset=utf-8";
            await http.Response.WriteAsync("This bench answers to 127.0.0.1 and localhost only. Start it with --address to let other tablets in.\n", http.RequestAborted);
        });
    }
}
