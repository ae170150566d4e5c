using System.Globalization;
using System.Text;
using Ramwright.Instruments.Connections;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Lines;

/// <summary>A line of text out, a line with a number back. An echo of the question is passed over once.</summary>
/// <remarks>Numbers as in IEEE 488.2 (NR1, NR2, NR3); 9.91E37 is SCPI's 'not a number', 9.9E37 its infinity (SCPI-1999, volume 1, 7.2.1, from memory).</remarks>
internal sealed class LineExchange(IByteLine line, Dialogue.Line dialogue, ReadingUnit unit, TimeSpan within) : IExchange
{
    /// <summary>Longest answer, in bytes.</summary>
    public const int LongestAnswer = 512;

    private readonly byte[] _question = Encoding.ASCII.GetBytes(dialogue.Question + dialogue.End switch { LineEnd.CrLf => "\r\n", LineEnd.Cr => "\r", _ => "\n" });
    private readonly byte[] _buffer = new byte[LongestAnswer];

    public Task<Exchanged> AskAsync(CancellationToken cancel) => Timed.RunAsync(within, async token =>
    {
        line.DiscardInput();
        await line.WriteAsync(_question, token);
        var (count, seen, mayEcho) = (0, 0, true);
        while (true)
        {
            for (; seen < count; seen++)
            {
                if (_buffer[seen] is not ((byte)'\n' or (byte)'\r'))
                    continue;
                var text = _buffer.AsSpan(0, seen);
                if (!text.IsEmpty && !(mayEcho && IsEcho(text)))
                    return Judge(text, unit);
                mayEcho &= text.IsEmpty;
                _buffer.AsSpan(seen + 1, count - seen - 1).CopyTo(_buffer);
                (count, seen) = (count - seen - 1, -1);
            }
            if (count == _buffer.Length)
                return new Exchanged.Broken(DeviceFault.Garbled, $"more than {LongestAnswer} bytes came without the end of a line");
            count += await line.ReadSomeAsync(_buffer.AsMemory(count), token);
        }
    }, cancel);

    public ValueTask DisposeAsync() => line.DisposeAsync();

    /// <summary>The number in an answer: alone, or followed by its unit.</summary>
    internal static Exchanged Judge(ReadOnlySpan<byte> answer, ReadingUnit unit)
    {
        foreach (var b in answer)
        {
            if (b is not ((>= 32 and <= 126) or (byte)'\t'))
                return new Exchanged.Bad(DeviceFault.Garbled, "the answer is no text");
        }
        var words = Encoding.ASCII.GetString(answer).Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length is 0 or > 2 || !double.TryParse(words[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            return new Exchanged.Bad(DeviceFault.Garbled, $"'{Showable.Short(string.Join(' ', words))}' is no number");
        if (words.Length == 2 && ReadingUnits.Find(words[1]) != unit)
            return new Exchanged.Bad(DeviceFault.Garbled, $"the device says '{Showable.Short(words[1])}', and {unit.Symbol()} is expected");
        return Math.Abs(number) >= 9.9e37 ? new Exchanged.Value(double.NaN) : new Exchanged.Value(number);
    }

    private bool IsEcho(ReadOnlySpan<byte> text) => Encoding.ASCII.GetString(text).Trim() == dialogue.Question.Trim();
}
