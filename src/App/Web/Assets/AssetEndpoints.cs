namespace Ramwright.App.Web.Assets;

/// <summary>Serves the embedded files; an address with the right tag may be kept for a year.</summary>
public static class AssetEndpoints
{
    public static void MapAssets(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sheet.css", Serve);
        routes.MapGet("/favicon.svg", Serve);
        routes.MapGet("/fonts/{name}", Serve);
        routes.MapGet("/js/{name}", Serve);
        routes.MapGet("/favicon.ico", () => Results.Redirect("/favicon.svg", permanent: true));
    }

    private static async Task Serve(HttpContext http)
    {
        if (EmbeddedAssets.Find(http.Request.Path.Value ?? "") is not { } asset)
        {
            http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        var answer = http.Response;
        var tag = $"\"{asset.Tag}\"";
        answer.Headers.ETag = tag;
        answer.Headers.CacheControl = http.Request.Query["v"] == asset.Tag ? "public, max-age=31536000, immutable" : "no-cache";
        if (http.Request.Headers.IfNoneMatch == tag)
        {
            answer.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        answer.ContentType = asset.MediaType;
        var bytes = asset.Bytes;
        if (asset.Brotli is { } packed)
        {
            answer.Headers.Vary = "Accept-Encoding";
            if (http.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal))
            {
                answer.Headers.ContentEncoding = "br";
                bytes = packed;
            }
        }

        answer.ContentLength = bytes.Length;
        await answer.Body.WriteAsync(bytes, http.RequestAborted);
    }
}
