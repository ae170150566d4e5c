namespace Ramwright.App.Papers;

/// <summary>Hands out the papers that were issued.</summary>
public static class PaperEndpoints
{
    public static void MapPapers(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/papers/{name}", (string name, PaperArchive archive, HttpContext http) =>
        {
            var number = name.EndsWith(".pdf", StringComparison.Ordinal) ? name[..^4] : "";
            if (number.Length is 0 or > 40 || !number.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') || archive.Find(number) is not { } path)
                return Results.NotFound();
            http.Response.Headers.ContentDisposition = $"inline; filename=\"{name}\"";
            return Results.File(path, "application/pdf");
        });
}
