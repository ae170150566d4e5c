using System.CommandLine;
using System.Text;
using Ramwright.App.CommandLine;
using Ramwright.Instruments.Connections;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary>The CONNECTION argument: the text itself in quotes, or a file that holds it.</summary>
internal static class ConnectionArgument
{
    public static Argument<string> Create() => new("CONNECTION") { Description = "how the device is reached: a connection text in quotes, or a file that holds one (docs/reference/instrument-connections.md)" };

    /// <summary>The connection, or null with its mistakes added to <paramref name="found"/>.</summary>
    public static async Task<Connection?> ReadAsync(string given, List<Mistake> found, CancellationToken cancel)
    {
        var (name, text) = ("CONNECTION", given);
        if (!given.Contains(' ', StringComparison.Ordinal) && (File.Exists(given) || Directory.Exists(given)))
        {
            switch (await InputFile.ReadAsync(given, ConnectionText.Longest, cancel))
            {
                case InputFile.Missing missing:
                    found.Add(missing.Why);
                    return null;
                case InputFile.Got got:
                    (name, text) = (given, Encoding.UTF8.GetString(got.Bytes));
                    break;
            }
        }
        switch (ConnectionText.Read(name, text))
        {
            case ConnectionAnswer.Read read:
                return read.Connection;
            case ConnectionAnswer.Refused refused:
                found.AddRange(refused.Mistakes);
                return null;
            default:
                throw new InvalidOperationException("A connection is read or refused.");
        }
    }

    /// <summary>A time such as <c>60s</c> or <c>5 min</c>; null with a mistake added when it is none.</summary>
    public static TimeSpan? ReadTime(string option, string? typed, List<Mistake> found)
    {
        if (typed is null)
            return null;
        if (QuantityReader.Read(typed, Dimension.Time) is TextReading<double>.Good { Value: >= 0.1 and <= 1e6 } good)
            return TimeSpan.FromSeconds(good.Value);
        found.Add(new Mistake(Place.Whole(option), $"'{typed}' is no time that can be waited", "write 0.1 s or more with its unit, such as 60s or 5min", "usage"));
        return null;
    }
}
