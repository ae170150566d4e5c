using System.Globalization;
using System.Text;
using CsCheck;

namespace Ramwright.Instruments.Tests;

/// <summary>Whatever is in a file, there is an answer; and what was written is what is read.</summary>
public sealed class ReadingsFuzzTests
{
    private static readonly Gen<string> Scraps = Gen.OneOf("peak_bar", "run", "void", "1", "2", "701.2", "698,4", "7O4", ",", ";", "\t", "\"", "\n", "\r\n", "#", " ", "NaN", "-", "kN", "[", ")", "\uFEFF", "é", "∞", "1e999", "\ud800")
        .Array[0, 40].Select(string.Concat);

    [Fact]
    public void Random_bytes_never_throw() => Gen.Byte.Array[0, 200].ForAll(bytes => Holds(Readings.Read("f", bytes)), iter: 20_000);

    [Fact]
    public void Scraps_of_files_never_throw() => Scraps.ForAll(text =>
    {
        Holds(Readings.Read("f", text));
        Holds(Readings.Read("f", text, new() { Unit = ReadingUnit.Psi, Decimal = DecimalMark.Comma }));
        Holds(Readings.ReadTyped(text, ReadingUnit.Bar));
    }, iter: 20_000);

    [Fact]
    public void What_is_written_is_read_back() =>
        Gen.Select(Gen.Int[1_000, 19_999].Array[1, 30], Gen.OneOf(',', ';', '\t'), Gen.Bool, Gen.Bool, Gen.OneOf("\n", "\r\n")).ForAll((tenths, separator, comma, runs, end) =>
        {
            if (separator == ',' && comma)
                return;
            var text = new StringBuilder(runs ? $"run{separator}peak_bar" : "peak_bar").Append(end);
            for (var i = 0; i < tenths.Length; i++)
            {
                var number = (tenths[i] / 10m).ToString("0.0", CultureInfo.InvariantCulture);
                text.Append(runs ? $"{i + 1}{separator}" : "").Append(comma ? number.Replace('.', ',') : number).Append(end);
            }
            var taken = Sample.Taken(text.ToString());
            Assert.Equal(tenths.Select(t => t / 10.0), taken.Readings.Select(r => Math.Round(r.Peak.Bar, 6)));
        }, iter: 2_000);

    /// <summary>An answer is whole: readings in range, or mistakes that point into the text.</summary>
    private static void Holds(ReadingsAnswer answer)
    {
        if (answer is ReadingsAnswer.Taken taken)
        {
            Assert.NotEmpty(taken.Readings);
            Assert.All(taken.Readings, r => Assert.InRange(r.Peak.Bar, 0.1, 2000));
        }
        else
        {
            Assert.All(Assert.IsType<ReadingsAnswer.Refused>(answer).Mistakes, m =>
            {
                Assert.True(m.At is { Line: >= 1, Column: >= 1, Length: >= 0 } && m.What.Length > 0 && m.Mend.Length > 0);
                Assert.Contains(m.Code, ReadingCodes.All, StringComparer.Ordinal);
                Assert.True(m.Excerpt is null || m.At.Column + Math.Max(1, m.At.Length) - 1 <= m.Excerpt.Length + 1, $"{m.At} in '{m.Excerpt}'");
            });
        }
    }
}
