using System.Collections.Immutable;

namespace Ramwright.Paper.Drawing;

/// <summary>The house's few colours by meaning: on screen the custom property of the page, on paper the light palette.</summary>
public enum Tint { Ink, Quiet, Rule, Faint, Lit, Pencil, Paper, Caution, CautionPaper, SignBlack, SignBlue, SignWhite }

/// <summary>How an ink is drawn. Width and dashes in picture units.</summary>
public sealed record Pen(Tint? Fill, Tint? Stroke, double Width, ImmutableArray<double> Dashes)
{
    public bool Round { get; init; }
}

/// <summary>The one table of how each ink looks.</summary>
/// <remarks>Line types as in ISO 128-2:2020 (numbers from memory: 01 continuous, 02 dashed, 04 long-dash dotted, 05 long-dash double-dotted).</remarks>
public static class Pens
{
    /// <summary>The pen for an ink.</summary>
    public static Pen For(Ink ink) => ink switch
    {
        Ink.Body => Line(Tint.Ink, 1.5, Tint.Paper),
        Ink.Cut => Line(Tint.Ink, 1.5, Tint.Paper),
        Ink.Hatch => Line(Tint.Quiet, 0.6),
        Ink.Hidden => Line(Tint.Ink, 1.2, null, 5, 3),
        Ink.Gone => Line(Tint.Rule, 1.1, null, 12, 3, 2, 3, 2, 3),
        Ink.Next => Line(Tint.Lit, 1.5, Tint.Lit),
        Ink.Target => Line(Tint.Lit, 2.6, Tint.Paper),
        Ink.Renew => Line(Tint.Pencil, 1.5, Tint.Pencil),
        Ink.Axis => Line(Tint.Quiet, 0.9, null, 16, 4, 2, 4),
        Ink.Detail => Line(Tint.Ink, 0.8),
        Ink.Leader => Line(Tint.Ink, 0.7),
        Ink.LeaderDot => Solid(Tint.Ink),
        Ink.Balloon => Line(Tint.Ink, 1.2, Tint.Paper),
        Ink.BalloonNext => Line(Tint.Lit, 1.5, Tint.Lit),
        Ink.BalloonTarget => Line(Tint.Lit, 2.4, Tint.Paper),
        Ink.BalloonRenew => Line(Tint.Pencil, 2, Tint.Paper),
        Ink.BalloonGone => Line(Tint.Rule, 1, Tint.Paper),
        Ink.Limit => Line(Tint.Ink, 2),
        Ink.Maximum => Line(Tint.Pencil, 2, null, 9, 3),
        Ink.Guard => Line(Tint.Quiet, 0.6),
        Ink.Run => Line(Tint.Paper, 0.8, Tint.Lit),
        Ink.AsFound => Line(Tint.Ink, 1.5, Tint.Paper),
        Ink.Void => Line(Tint.Pencil, 1.5),
        Ink.Empty => Line(Tint.Rule, 1.4, null, 2, 2.4),
        Ink.Divider => Line(Tint.Rule, 1, null, 1.5, 3),
        Ink.Fit => Line(Tint.Lit, 1.5),
        Ink.Band => Solid(Tint.Faint),
        Ink.Window => Line(Tint.Quiet, 0.6),
        Ink.Advised => Line(Tint.Lit, 2, Tint.Paper),
        Ink.Frame => Line(Tint.Ink, 1.5),
        Ink.Field => Line(Tint.Ink, 0.8),
        Ink.Rule => Line(Tint.Rule, 0.8),
        Ink.Grid => Line(Tint.Faint, 0.8),
        Ink.Word => Solid(Tint.Ink),
        Ink.QuietWord => Solid(Tint.Quiet),
        Ink.PaperWord => Solid(Tint.Paper),
        Ink.PencilWord => Solid(Tint.Pencil),
        Ink.Mark => Solid(Tint.Ink),
        Ink.MarkCutOut => Line(Tint.Paper, 5),
        Ink.MarkRing => Line(Tint.Ink, 3, Tint.Paper),
        Ink.CautionBand => Line(Tint.Ink, 1.2, Tint.CautionPaper),
        Ink.SignYellow => Line(Tint.SignBlack, 2.6, Tint.Caution) with { Round = true },
        Ink.SignBlack => Solid(Tint.SignBlack),
        Ink.SignBlackLine => Line(Tint.SignBlack, 2.6) with { Round = true },
        Ink.SignBlue => Solid(Tint.SignBlue),
        Ink.SignWhite => Solid(Tint.SignWhite),
        Ink.SignWhiteLine => Line(Tint.SignWhite, 2.6) with { Round = true },
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "An ink without a pen."),
    };

    /// <summary>The light palette, as on paper: 0xRRGGBB.</summary>
    public static int OnPaper(Tint tint) => tint switch
    {
        Tint.Ink => 0x14212b,
        Tint.Quiet => 0x4d5c66,
        Tint.Rule => 0xa9b2b4,
        Tint.Faint => 0xdfe1dc,
        Tint.Lit => 0x164a80,
        Tint.Pencil => 0xa83216,
        Tint.Paper or Tint.SignWhite => 0xffffff,
        Tint.Caution => 0xf9c80e,
        Tint.CautionPaper => 0xfff7d6,
        Tint.SignBlack => 0x101418,
        Tint.SignBlue => 0x005b99,
        _ => throw new ArgumentOutOfRangeException(nameof(tint), tint, "A tint without a colour."),
    };

    /// <summary>The class name of an ink in SVG: <c>d-balloon-next</c>.</summary>
    public static string ClassOf(Ink ink) => "d-" + Kebab(ink.ToString());

    internal static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) && i > 0 ? "-" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));

    private static Pen Line(Tint stroke, double width, Tint? fill = null, params ImmutableArray<double> dashes) => new(fill, stroke, width, dashes);

    private static Pen Solid(Tint fill) => new(fill, null, 0, []);
}
