using System.Globalization;
using System.Text;

namespace Ramwright.Bench.Stroke;

/// <summary>Processor time against the worst event time, both in decades, a line and a mark of its own for each method.</summary>
internal static class WorkPrecisionPlot
{
    private const double Width = 760, Height = 470, Left = 70, Right = 150, Top = 20, Bottom = 60;

    /// <summary>A mark around (0, 0), and how its line is broken: the methods are told apart without colour.</summary>
    private static readonly (string Mark, string Dash)[] Marks =
    [
        ("M-5,0A5,5 0 1 0 5,0A5,5 0 1 0 -5,0Z", ""), ("M-4.5,-4.5H4.5V4.5H-4.5Z", "7 3"), ("M0,-5.5L5,4H-5Z", "2 3"), ("M0,5.5L5,-4H-5Z", "7 3 2 3"), ("M0,-6L5,0L0,6L-5,0Z", "1 4"),
        ("M-5,-5L5,5M-5,5L5,-5", "12 3"), ("M0,-6V6M-6,0H6", "4 2"),
    ];

    /// <param name="rows">The methods; the first is drawn in the accent.</param>
    /// <param name="askedSeconds">The error at which they are compared, an upright line.</param>
    public static string Draw(IReadOnlyList<WorkPrecision> rows, double askedSeconds)
    {
        var shown = rows.SelectMany(r => r.Points).Where(p => Shown(p)).ToList();
        var (least, most) = ((int)Math.Floor(shown.Min(p => Math.Log10(p.OffSeconds))), (int)Math.Ceiling(shown.Max(p => Math.Log10(p.OffSeconds))));
        var (cheap, dear) = ((int)Math.Floor(shown.Min(p => Math.Log10(p.Seconds))), (int)Math.Ceiling(shown.Max(p => Math.Log10(p.Seconds))));
        double X(double seconds) => Left + (Math.Log10(seconds) - least) / (most - least) * (Width - Left - Right);
        double Y(double seconds) => Height - Bottom - (Math.Log10(seconds) - cheap) / (dear - cheap) * (Height - Top - Bottom);

        var svg = new StringBuilder();
        void Add(FormattableString line) => svg.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
        Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" font-family=\"sans-serif\" font-size=\"13\" role=\"img\" aria-label=\"Processor time of one stroke against the worst event time error\">");
        Add($"<rect width=\"{Width}\" height=\"{Height}\" fill=\"#fff\"/>");
        for (var decade = least; decade <= most; decade++)
            Add($"<path d=\"M{X(Math.Pow(10, decade)):0.0},{Top}V{Height - Bottom}\" stroke=\"#d5dbe1\"/><text x=\"{X(Math.Pow(10, decade)):0.0}\" y=\"{Height - Bottom + 20}\" text-anchor=\"middle\" fill=\"#14212b\">{Short(Math.Pow(10, decade), "s")}</text>");
        for (var decade = cheap; decade <= dear; decade++)
            Add($"<path d=\"M{Left},{Y(Math.Pow(10, decade)):0.0}H{Width - Right}\" stroke=\"#d5dbe1\"/><text x=\"{Left - 8}\" y=\"{Y(Math.Pow(10, decade)) + 4:0.0}\" text-anchor=\"end\" fill=\"#14212b\">{Short(Math.Pow(10, decade), "s")}</text>");
        Add($"<path d=\"M{X(askedSeconds):0.0},{Top}V{Height - Bottom}\" stroke=\"#14212b\" stroke-dasharray=\"4 4\"/>");
        Add($"<text x=\"{Left}\" y=\"{Height - 12}\" fill=\"#14212b\">worst event time against the reference →</text><text x=\"{Left + 6}\" y=\"{Top + 12}\" fill=\"#14212b\">processor time of one stroke ↑</text>");
        for (var i = 0; i < rows.Count; i++)
        {
            var ((mark, dash), ink, points) = (Marks[i], i == 0 ? "#b3400e" : "#14212b", rows[i].Points.Where(Shown).ToList());
            Add($"<path d=\"M{string.Join('L', points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{X(p.OffSeconds):0.0},{Y(p.Seconds):0.0}")))}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"1.5\" stroke-dasharray=\"{dash}\"/>");
            foreach (var point in points)
                Add($"<path d=\"{mark}\" transform=\"translate({X(point.OffSeconds):0.0} {Y(point.Seconds):0.0})\" fill=\"{(i == 0 ? ink : "#fff")}\" stroke=\"{ink}\" stroke-width=\"1.5\"/>");
            Add($"<path d=\"{mark}\" transform=\"translate({Width - Right + 22} {Top + 30 + 24 * i})\" fill=\"{(i == 0 ? ink : "#fff")}\" stroke=\"{ink}\" stroke-width=\"1.5\"/><text x=\"{Width - Right + 36}\" y=\"{Top + 35 + 24 * i}\" fill=\"{ink}\">{rows[i].Name}</text>");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static bool Shown(WorkPoint point) => point.OffSeconds is > 1e-12 and < 1 && double.IsFinite(point.Seconds);

    private static string Short(double value, string unit) => value switch
    {
        >= 0.999 => $"{value:0} {unit}",
        >= 0.999e-3 => $"{1e3 * value:0} m{unit}",
        >= 0.999e-6 => $"{1e6 * value:0} µ{unit}",
        >= 0.999e-9 => $"{1e9 * value:0} n{unit}",
        _ => $"{1e12 * value:0} p{unit}",
    };
}
