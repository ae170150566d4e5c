using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Pages;

/// <summary>Lines to write on, each with its label below: name, date, signature.</summary>
public sealed class SignaturePiece(double width, params ImmutableArray<(string Label, double Share)> lines) : Piece
{
    private const double Room = 26;

    public override double Height => Room + TextStyle.Label.Leading + 4;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Open(new Tag(TagKind.Paragraph));
        const double gap = 14;
        var left = x;
        var unit = (width - (gap * (lines.Length - 1))) / lines.Sum(l => l.Share);
        foreach (var (label, share) in lines)
        {
            canvas.Words(label, TextStyle.Label, x, y + Room + 1);
            x += (unit * share) + gap;
        }

        canvas.AsDecoration(() => DrawLines(canvas, left, y + Room, unit, gap));
    }

    private void DrawLines(Canvas canvas, double x, double y, double unit, double gap)
    {
        foreach (var (_, share) in lines)
        {
            canvas.Line(Ink.Field, x, y, x + (unit * share), y);
            x += (unit * share) + gap;
        }
    }
}

/// <summary>A place to pause after a few steps: what was done was seen by someone, at a time.</summary>
public sealed class PausePiece(double width, string words) : Piece
{
    public override double Height => 27;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Open(new Tag(TagKind.Paragraph));
        canvas.Words(words, TextStyle.Strong, x, y + 10);
        canvas.Words("initials", TextStyle.Label, x + width - 170, y + 13);
        canvas.Words("time", TextStyle.Label, x + width - 76, y + 13);
        canvas.AsDecoration(() =>
        {
            canvas.Line(Ink.Field, x + width - 140, y + 22, x + width - 86, y + 22);
            canvas.Line(Ink.Field, x + width - 56, y + 22, x + width, y + 22);
            canvas.Line(Ink.Field, x, y + 26, x + width, y + 26);
        });
    }
}

/// <summary>Large figures side by side, each under its label.</summary>
public sealed class FiguresPiece(double width, params ImmutableArray<(string Label, string Figure, string? Note)> figures) : Piece
{
    public override double Height => 46;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Open(new Tag(TagKind.Paragraph));
        var each = width / figures.Length;
        for (var i = 0; i < figures.Length; i++)
        {
            var left = x + (each * i) + (i == 0 ? 0 : 10);
            canvas.Words(figures[i].Label, TextStyle.Label, left, y + 5);
            canvas.Words(figures[i].Figure, TextStyle.Sum, left, y + 14);
            if (figures[i].Note is { } note)
                canvas.Words(note, TextStyle.Label, left, y + 32);
        }

        canvas.AsDecoration(() =>
        {
            canvas.Line(Ink.Field, x, y + 1, x + width, y + 1);
            canvas.Line(Ink.Field, x, y + 45, x + width, y + 45);
            for (var i = 1; i < figures.Length; i++)
                canvas.Line(Ink.Rule, x + (each * i), y + 1, x + (each * i), y + 45);
        });
    }
}

/// <summary>A verdict: its mark, the answer in large words, and the sentences that say what it means.</summary>
public sealed class AnswerPiece : Piece
{
    private const double Side = 46;
    private readonly ImmutableArray<SetLine> lines;
    private readonly Picture mark;
    private readonly string word;

    public AnswerPiece(Picture mark, string word, string sentences, double width)
    {
        (this.mark, this.word) = (mark, word);
        lines = TextSetter.Set(new Span(sentences, TextStyle.Body with { Size = 9.8, Leading = 13.6 }), width - Side - 16);
    }

    public override double Height => Math.Max(Side, TextStyle.Answer.Leading + 1 + lines.Sum(l => l.Leading)) + 12;

    public override void Draw(Canvas canvas, double x, double y)
    {
        canvas.Figure("Mark: " + word, x, y + 4, Side, Side, () => canvas.Picture(mark, x, y + 4, Side / 48));
        canvas.Open(new Tag(TagKind.Heading2));
        canvas.Words(word, TextStyle.Answer, x + Side + 16, y);
        canvas.Open(new Tag(TagKind.Paragraph));
        var at = y + TextStyle.Answer.Leading + 1;
        foreach (var line in lines)
        {
            canvas.Words(line, x + Side + 16, at);
            at += line.Leading;
        }
    }
}
