using System.Globalization;
using System.Text;
using Ramwright.Instruments.Connections;

namespace Ramwright.Instruments.Practice;

/// <summary>One client of a device that answers lines.</summary>
internal static class LineSession
{
    private const int LongestLine = 256;

    /// <summary>Answers each line until the client leaves, or sends a line without end.</summary>
    public static async Task RunAsync(Stream stream, Dialogue.Line dialogue, Func<double> number, CancellationToken cancel)
    {
        var (buffer, count) = (new byte[LongestLine], 0);
        while (count < buffer.Length && await stream.ReadAsync(buffer.AsMemory(count), cancel) is var got and > 0)
        {
            count += got;
            while (buffer.AsSpan(0, count).IndexOfAny((byte)'\n', (byte)'\r') is var end and >= 0)
            {
                var line = Encoding.Latin1.GetString(buffer, 0, end).Trim();
                buffer.AsSpan(end + 1, count - end - 1).CopyTo(buffer);
                count -= end + 1;
                if (line.Length == 0)
                    continue;
                var answer = line == dialogue.Question.Trim() ? number().ToString("0.000000E+00", CultureInfo.InvariantCulture) : "ERROR";
                await stream.WriteAsync(Encoding.ASCII.GetBytes(answer + "\n"), cancel);
            }
        }
    }
}
