namespace Ramwright.Paper.Drawing;

/// <summary>What a shape means. How that looks stands once, in <see cref="Pens"/>, for the screen's style sheet and for paper.</summary>
public enum Ink
{
    /// <summary>Outline of a part in sight, filled with the paper.</summary>
    Body,

    /// <summary>Outline of a part that is cut; its hatching is laid over it.</summary>
    Cut,

    /// <summary>Hatching of a cut, and of what is not known.</summary>
    Hatch,

    /// <summary>Out of sight: dashes (ISO 128).</summary>
    Hidden,

    /// <summary>Taken off already: double-dotted chain.</summary>
    Gone,

    /// <summary>Comes off next.</summary>
    Next,

    /// <summary>What the work is for.</summary>
    Target,

    /// <summary>Renewed: the red pencil.</summary>
    Renew,

    /// <summary>An axis or a nominal value: long-dash chain.</summary>
    Axis,

    /// <summary>Thin line of detail on a part: thread, spring, edge.</summary>
    Detail,

    /// <summary>Leader line from a balloon to its part.</summary>
    Leader,

    /// <summary>The dot at the end of a leader line.</summary>
    LeaderDot,
    Balloon,
    BalloonNext,
    BalloonTarget,
    BalloonRenew,
    BalloonGone,

    /// <summary>A limit that a tool must keep: strong line.</summary>
    Limit,

    /// <summary>Pressure above which a tool is quarantined.</summary>
    Maximum,

    /// <summary>Hatching of what is counted against the tool.</summary>
    Guard,

    /// <summary>A valid run.</summary>
    Run,

    /// <summary>A run before any work: open ring.</summary>
    AsFound,

    /// <summary>A run that does not count, for a cause recorded: cross.</summary>
    Void,

    /// <summary>A place not yet filled: dotted ring.</summary>
    Empty,

    /// <summary>Dotted line between two things that are not to be compared at a glance.</summary>
    Divider,

    /// <summary>Fitted line.</summary>
    Fit,

    /// <summary>Region in which the fitted line may lie.</summary>
    Band,

    /// <summary>Region that is wanted.</summary>
    Window,

    /// <summary>The point advised next.</summary>
    Advised,
    Frame,

    /// <summary>Outline of a field to write in or tick, and a line to sign on.</summary>
    Field,
    Rule,
    Grid,

    /// <summary>Text in full ink.</summary>
    Word,

    /// <summary>Text read once: captions, ticks.</summary>
    QuietWord,

    /// <summary>Text upon a filled shape.</summary>
    PaperWord,

    /// <summary>Text about what is renewed, late or corrected.</summary>
    PencilWord,

    /// <summary>Solid mark of a verdict.</summary>
    Mark,

    /// <summary>What is cut out of a solid mark.</summary>
    MarkCutOut,

    /// <summary>The ring of an undecided verdict.</summary>
    MarkRing,

    /// <summary>The band on which a caution stands.</summary>
    CautionBand,
    SignYellow,
    SignBlack,
    SignBlackLine,
    SignBlue,
    SignWhite,
    SignWhiteLine,
}
