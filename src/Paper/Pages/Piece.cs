namespace Ramwright.Paper.Pages;

/// <summary>Something that stands on one page, never broken. Measures in points.</summary>
public abstract class Piece
{
    /// <summary>Height, zero or more.</summary>
    public abstract double Height { get; }

    /// <summary>Must not be the last on its page: a heading, a caution before its step.</summary>
    public bool KeepWithNext { get; init; }

    /// <summary>Drawn at the head of the next page when its table goes on there; shared by the rows of a table.</summary>
    public Piece? RepeatAtTop { get; init; }

    /// <summary>Space that vanishes at the top of a page.</summary>
    public virtual bool IsSpace => false;

    /// <summary>What follows begins on a new page.</summary>
    public virtual bool IsPageBreak => false;

    /// <summary>Draws it with its upper left corner at the place given.</summary>
    public abstract void Draw(Canvas canvas, double x, double y);
}

/// <summary>The end of a page.</summary>
public sealed class PageBreakPiece : Piece
{
    public override double Height => 0;

    public override bool IsSpace => true;

    public override bool IsPageBreak => true;

    public override void Draw(Canvas canvas, double x, double y)
    {
    }
}

/// <summary>Empty space.</summary>
public sealed class SpacePiece(double height) : Piece
{
    public override double Height => height;

    public override bool IsSpace => true;

    public override void Draw(Canvas canvas, double x, double y)
    {
    }
}
