namespace Ramwright.App.Papers;

/// <summary>Hands out the papers in the drawer.</summary>
public static class PaperEndpoints
{
    public static void MapPapers(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/papers/{name}", (string name, PaperDrawer drawer, HttpContext http) =>
        {
            if (!name.EndsWith(".pdf", StringComparison.Ordinal) || drawer.Find(name[..^4]) is not { } pdf)
                return Results.NotFound();
            http.Response.Headers.ContentDisposition = $"inline; filename=\"{name}\"";
            return Results.Bytes(pdf, "application/pdf");
        });
}
