using System.Globalization;
using System.Text;
using Ramwright.Metrology.Input;

namespace Ramwright.Instruments.Tests;

/// <summary>Short ways to read invented samples.</summary>
internal static class Sample
{
    public static ReadingsAnswer Read(string text, ReadingsOptions? options = null) => Readings.Read("sample.csv", Encoding.UTF8.GetBytes(text), options);

    public static ReadingsAnswer.Taken Taken(string text, ReadingsOptions? options = null) => Read(text, options) switch
    {
        ReadingsAnswer.Taken taken => taken,
        ReadingsAnswer.Refused refused => throw new InvalidOperationException(string.Join('\n', refused.Mistakes.Select(Line))),
        _ => throw new InvalidOperationException("No such answer."),
    };

    public static IReadOnlyList<Mistake> Mistakes(string text, ReadingsOptions? options = null) => Assert.IsType<ReadingsAnswer.Refused>(Read(text, options)).Mistakes;

    /// <summary>The peaks in bar, to three places, with a blank between.</summary>
    public static string Bars(this ReadingsAnswer.Taken taken) => string.Join(' ', taken.Readings.Select(r => r.Peak.Bar.ToString("0.###", CultureInfo.InvariantCulture)));

    /// <summary>A mistake as <c>line:column+length code</c>.</summary>
    public static string At(this Mistake m) => $"{m.At.Line}:{m.At.Column}+{m.At.Length} {m.Code}";

    /// <summary>Several mistakes, with | between.</summary>
    public static string Marks(this IEnumerable<Mistake> mistakes) => string.Join('|', mistakes.Select(At));

    private static string Line(Mistake m) => $"{At(m)}: {m.What}; {m.Mend}";
}
