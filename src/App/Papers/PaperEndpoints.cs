namespace Ramwright.App.Papers;

/// <summary>Hands out the papers that were issued, and what lies beside a proof report: its result and its DCC.</summary>
public static class PaperEndpoints
{
    private static readonly (string Ending, string MediaType)[] Forms = [(".pdf", "application/pdf"), (".dcc.xml", "application/xml"), (".json", "application/json")];

    public static void MapPapers(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/papers/{name}", (string name, PaperArchive archive, HttpContext http) =>
        {
            var (ending, type) = Forms.FirstOrDefault(f => name.EndsWith(f.Ending, StringComparison.Ordinal));
            var number = ending is null ? "" : name[..^ending.Length];
            if (number.Length is 0 or > 40 || !number.All(c => char.IsAsciiLetterOrDigit(c) || c == '-') || archive.Find(number) is not { } pdf)
                return Results.NotFound();
            var path = Path.ChangeExtension(pdf, ending);
            if (!File.Exists(path))
                return Results.NotFound();
            http.Response.Headers.ContentDisposition = $"inline; filename=\"{name}\"";
            return Results.File(path, type);
        });
}
