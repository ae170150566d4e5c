using Ramwright.Metrology.Calibration;

namespace Ramwright.Metrology.Text;

/// <summary>What a comparison shows, in words.</summary>
public static class SensorText
{
    /// <summary>The answer, as a heading.</summary>
    public static string Head(SensorAnswer answer) => answer switch
    {
        SensorAnswer.Fit => "The sensor is fit",
        SensorAnswer.Unfit => "The sensor is not fit",
        SensorAnswer.CannotTell => "Fit or not cannot be told",
        _ => "Too little was compared",
    };

    /// <summary>Why, in a sentence.</summary>
    public static string Explain(SensorAnswer answer) => answer switch
    {
        SensorAnswer.Fit => "Even with its uncertainty added, no level is off by more than allowed.",
        SensorAnswer.Unfit => "A level is off by more than allowed, even with the uncertainty taken off.",
        SensorAnswer.CannotTell => "The uncertainty of the comparison is too large to tell: a better reference or more repeats would.",
        SensorAnswer.TooFew few => $"{few.Levels} {(few.Levels == 1 ? "level" : "levels")}, and {few.Fewest} at the one with the fewest from one side: that is too little.",
        _ => "",
    };

    /// <summary>The figures of an answer; null where too little was compared.</summary>
    public static SensorFigures? Figures(SensorAnswer answer) => answer switch
    {
        SensorAnswer.Fit x => x.Figures,
        SensorAnswer.Unfit x => x.Figures,
        SensorAnswer.CannotTell x => x.Figures,
        _ => null,
    };
}
