namespace Ramwright.App.Web.Security;

/// <summary>The headers that every answer carries: nothing comes from elsewhere, nothing goes elsewhere, nothing runs inline.</summary>
public static class SecurityHeaders
{
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(), payment=(), usb=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (!http.Request.Path.StartsWithSegments("/fonts", StringComparison.Ordinal))
            headers.CacheControl = "no-store";
        return next(http);
    });
}
