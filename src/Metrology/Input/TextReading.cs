namespace Ramwright.Metrology.Input;

/// <summary>What is wrong inside a short text: which characters (from 0), what, how to mend it, and the code.</summary>
public sealed record TextFault(int Start, int Length, string What, string Mend, string Code);

/// <summary>What reading a short text gave: the value, or what is wrong with it.</summary>
public abstract record TextReading<T>
{
    private TextReading() { }

    public sealed record Good(T Value) : TextReading<T>;

    public sealed record Bad(TextFault Fault) : TextReading<T>;

    /// <summary>Goes on with a good value; a fault stays what it is.</summary>
    public TextReading<TNext> Then<TNext>(Func<T, TextReading<TNext>> next) => this switch
    {
        Good good => next(good.Value),
        Bad bad => new TextReading<TNext>.Bad(bad.Fault),
        _ => throw new InvalidOperationException("A reading is good or bad."),
    };

    /// <summary>Converts a good value; a fault stays what it is.</summary>
    public TextReading<TNext> Map<TNext>(Func<T, TNext> convert) => Then(v => (TextReading<TNext>)new TextReading<TNext>.Good(convert(v)));
}
