namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>What is asked of a simulation.</summary>
public sealed record MonteCarloAsk
{
    /// <summary>Blocks start from it; the same seed gives the same answer on any number of cores.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Share that the interval shall hold, above 0 and below 1.</summary>
    public double Coverage { get; init; } = 0.95;

    public IntervalKind Interval { get; init; } = IntervalKind.Symmetric;

    /// <summary>Digits of the standard uncertainty that shall stand firm, 1 or 2.</summary>
    public int Digits { get; init; } = 2;

    /// <summary>How much smaller than half the last of those digits the simulation's own error shall be: a factor, 1 or more.</summary>
    public double Finer { get; init; } = 1;

    /// <summary>The most trials, 20,000 to 20,000,000.</summary>
    public int MostTrials { get; init; } = 4_000_000;
}

/// <summary>What the simulated results show, in the result's unit.</summary>
/// <param name="Mean">Their mean, which need not be the model at the estimates.</param>
/// <param name="Standard">Their standard deviation.</param>
/// <param name="Low">Lower end of the coverage interval.</param>
/// <param name="High">Upper end.</param>
/// <param name="Trials">How many.</param>
/// <param name="OwnError">Twice the standard deviation of the least settled of the four figures, from block to block; 0 when there is one block only.</param>
public sealed record MonteCarloFigures(double Mean, double Standard, double Low, double High, int Trials, double OwnError);

/// <summary>What propagating the distributions by simulation gave.</summary>
public abstract record MonteCarloAnswer
{
    private MonteCarloAnswer() { }

    /// <summary>All four figures stand firm to the digits asked.</summary>
    public sealed record Settled(MonteCarloFigures Figures) : MonteCarloAnswer;

    /// <summary>The most trials were reached before they stood firm; the figures say how far they got.</summary>
    public sealed record AtLimit(MonteCarloFigures Figures) : MonteCarloAnswer;

    /// <summary>In some trials the model has no finite value, such as √ of a negative number: there is no distribution to speak of.</summary>
    public sealed record NotEverywhere(int Failed, int Trials) : MonteCarloAnswer;
}
