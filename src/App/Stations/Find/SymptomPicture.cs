namespace Ramwright.App.Stations.Find;

/// <summary>A small drawing for each heading under which symptoms are offered; decoration, the heading says it all. 40 units wide and high, in the ink of the page.</summary>
public static class SymptomPicture
{
    private const string Open = "<svg class=\"pic\" viewBox=\"0 0 40 40\" aria-hidden=\"true\" focusable=\"false\"><g fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.6\" stroke-linejoin=\"round\" stroke-linecap=\"round\">", Close = "</g></svg>";

    /// <summary>Markup of our own, nothing of a model in it.</summary>
    public static string Of(string group) => Open + (group.ToUpperInvariant() switch
    {
        "OIL" => "<path d=\"M20 5c5.500 7.500 9 12 9 17a9 9 0 0 1-18 0c0-5 3.500-9.500 9-17z\"/><path d=\"M15 23a5 5 0 0 0 4 4.800\"/><path d=\"M5 35h30\"/>",
        "PRESSURE" => "<circle cx=\"20\" cy=\"18\" r=\"13\"/><path d=\"M11.500 26.500l2.200-2.200M8 18h3M20 6v3M32 18h-3M28.500 26.500l-2.200-2.200M20 18l6-8M17 31h6v5h-6z\"/><circle cx=\"20\" cy=\"18\" r=\"1.800\" fill=\"currentColor\"/>",
        "MOVEMENT" => "<path d=\"M4 10h16v20H4zM20 15h12v10H20zM32 12h4v16h-4z\"/><path d=\"M24 6h10m-3-3l3 3-3 3M34 35H24m3-3l-3 3 3 3\"/>",
        "SOUND" => "<path d=\"M5 15h6l8-7v24l-8-7H5z\"/><path d=\"M24 14a8.500 8.500 0 0 1 0 12M28 9.500a15 15 0 0 1 0 21\"/>",
        "DRIVE" => "<path d=\"M6 12h22v16H6zM28 17h4v6h-4M18 12l-4 9h6l-4 7\"/><path d=\"M10 8v4M14 8v4M20 8v4M24 8v4\"/>",
        "HEAD" => "<path d=\"M8 34V14a12 12 0 0 1 24 0v4h-6v-3a6 6 0 0 0-12 0v19z\"/><path d=\"M20 34h12v-9H20z\"/><circle cx=\"11\" cy=\"30\" r=\"1.600\"/>",
        _ => "<circle cx=\"20\" cy=\"20\" r=\"13\"/><path d=\"M20 13v9M20 27v.1\"/>",
    }) + Close;
}
