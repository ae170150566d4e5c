using System.Globalization;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>
/// Reads a time of day with or without a date before it: <c>2026-03-02 10:11:12.345</c>, <c>10:11:12,345</c>, <c>20260302T101112.5Z</c>, <c>11:12.345</c> (minutes and seconds),
/// <c>3:04:05.6 PM</c>. A stroke lasts seconds, so the date says nothing that midnight does not (see <see cref="ToGoOn"/>), and its order of day and month need not be known.
/// </summary>
internal static class ClockStamp
{
    private const double Day = 86_400;

    /// <summary>Seconds since midnight.</summary>
    public static bool TrySeconds(ReadOnlySpan<char> cell, out double seconds)
    {
        seconds = 0;
        var clock = cell;
        var split = cell.IndexOfAny('T', 't', ' ');
        if (split > 0 && char.IsAsciiDigit(cell[split - 1]) && IsDate(cell[..split]))
            clock = cell[(split + 1)..].TrimStart();
        else if (split > 0 && split < cell.IndexOf(':'))
            return false;
        var afternoon = clock.EndsWith("PM", StringComparison.OrdinalIgnoreCase) ? 43_200.0 : 0;
        var twelve = afternoon > 0 || clock.EndsWith("AM", StringComparison.OrdinalIgnoreCase);
        if (twelve)
            clock = clock[..^2].TrimEnd();
        clock = WithoutZone(clock);
        if (clock.Length >= 6 && clock.Length != cell.Length && clock.IndexOf(':') < 0)
            return Part(clock[..2], 23, out var h) && Part(clock[2..4], 59, out var m) && Seconds(clock[4..], out var s) && Sum(h, m, s, out seconds);
        var first = clock.IndexOf(':');
        if (first is < 1 or > 2)
            return false;
        var rest = clock[(first + 1)..];
        if (rest.IndexOf(':') is not (> 0 and var second))
            return Part(clock[..first], 59, out var minutes) && Seconds(rest, out var ofMinute) && Sum(0, minutes, ofMinute, out seconds);
        if (!Part(clock[..first], 23, out var hours) || !Part(rest[..second], 59, out var minute) || !Seconds(rest[(second + 1)..], out var tail))
            return false;
        return Sum(twelve && hours == 12 ? 0 : hours, minute, tail, out seconds) && (seconds += afternoon) < Day + 1;
    }

    /// <summary>Three groups of digits with one mark between them, or eight digits in one.</summary>
    public static bool IsDate(ReadOnlySpan<char> cell)
    {
        if (cell.Length is < 6 or > 10)
            return false;
        var (marks, mark) = (0, '\0');
        foreach (var sign in cell)
        {
            if (char.IsAsciiDigit(sign))
                continue;
            if (sign is not ('-' or '/' or '.') || (mark != '\0' && sign != mark))
                return false;
            (mark, marks) = (sign, marks + 1);
        }

        return marks == 2 || (marks == 0 && cell.Length == 8);
    }

    /// <summary>A time that follows another: past midnight the days go on.</summary>
    public static double ToGoOn(double seconds, double before) => seconds + (Day * Math.Max(0, Math.Round((before - seconds) / Day)));

    private static ReadOnlySpan<char> WithoutZone(ReadOnlySpan<char> clock)
    {
        if (clock is [.., 'Z' or 'z'])
            return clock[..^1];
        var sign = clock.LastIndexOfAny('+', '-');
        return sign >= 5 ? clock[..sign] : clock;
    }

    private static bool Part(ReadOnlySpan<char> digits, int most, out int value) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value <= most;

    private static bool Seconds(ReadOnlySpan<char> text, out double seconds)
    {
        seconds = 0;
        var mark = text.IndexOfAny('.', ',', ':');
        if (!Part(mark < 0 ? text : text[..mark], 60, out var whole) || text.Length > 20)
            return false;
        seconds = whole;
        if (mark < 0)
            return text.Length == 2;
        if (!long.TryParse(text[(mark + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var fraction))
            return false;
        seconds += fraction / Math.Pow(10, text.Length - mark - 1);
        return true;
    }

    private static bool Sum(int hours, int minutes, double seconds, out double total)
    {
        total = (3600.0 * hours) + (60 * minutes) + seconds;
        return true;
    }
}
