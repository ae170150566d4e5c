using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Paper.Sheets;

/// <summary>How dates, shares and hashes are written on the house's paper.</summary>
internal static class SheetText
{
    /// <summary><c>25 Nov 2026</c></summary>
    public static string Date(DateOnly date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary><c>25 Nov 2026</c> in the offset it was written in.</summary>
    public static string Date(DateTimeOffset at) => at.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary><c>25 Nov 2026, 14:02</c></summary>
    public static string Moment(DateTimeOffset at) => at.ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    /// <summary><c>95 %</c>; as many places as tell it from 100 %, four at most.</summary>
    public static string Percent(double share, int most = 1)
    {
        var value = share * 100;
        while (most < 4 && share < 1 && Math.Round(value, most) >= 100)
            most++;
        return share < 1 && Math.Round(value, most) >= 100 ? "more than 99.9999 %" : value.ToString("0." + new string('#', most), CultureInfo.InvariantCulture) + " %";
    }

    public static string Factor(double k) => k.ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>A hash as people read it aloud: its first eight signs in fours.</summary>
    public static string ShortHash(string hash) => hash.Length >= 8 ? $"{hash[..4]} {hash[4..8]}" : hash;

    /// <summary>Entry and short head of the ledger.</summary>
    public static string Ledger(LedgerMark? mark) => mark is null ? "not in the ledger" : string.Create(CultureInfo.InvariantCulture, $"no. {mark.Entry:#,##0} · {ShortHash(mark.Head)}").Replace(',', ' ');

    public static string Tool(JobHeader job) => job.Serial is null ? $"{job.Tool}, no number" : $"{job.Tool}, no. {job.Serial}";

    /// <summary>A pressure difference, always in one place more than a pressure.</summary>
    public static string Spread(Pressure p, UnitSystem units) => QuantityText.Show(p, units, units == UnitSystem.Metric ? 2 : 1);

    /// <summary>Starts with a capital and ends with a full stop.</summary>
    public static string Sentence(string words)
    {
        var trimmed = words.Trim();
        return trimmed.Length == 0 ? "" : char.ToUpperInvariant(trimmed[0]) + trimmed[1..] + (trimmed[^1] is '.' or '?' ? "" : ".");
    }
}
