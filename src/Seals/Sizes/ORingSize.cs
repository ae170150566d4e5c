using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Seals.Sizes;

/// <summary>An O-ring of the inch series, by the dash number that ISO 3601-1 and AS568 share.</summary>
/// <param name="Dash">1 to 475.</param>
/// <param name="InnerDiameter">Inside diameter d1.</param>
/// <param name="InnerTolerance">Plus/minus tolerance of d1, class A.</param>
/// <param name="Section">Cross-section d2.</param>
/// <param name="SectionTolerance">Plus/minus tolerance of d2, class A.</param>
/// <remarks>ISO 3601-1:2012, class A; 349 sizes from the list beside this file.</remarks>
public sealed record ORingSize(int Dash, Length InnerDiameter, Length InnerTolerance, Length Section, Length SectionTolerance)
{
    private static readonly Lazy<ImmutableArray<ORingSize>> Table = new(() => ReadTable("iso3601-sizes.csv"));

    /// <summary>All sizes by rising dash number.</summary>
    public static ImmutableArray<ORingSize> All => Table.Value;

    /// <summary>The size by its dash number; null when there is none (the numbers have gaps).</summary>
    public static ORingSize? ByDash(int dash)
    {
        var (low, high) = (0, All.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (All[middle].Dash == dash)
                return All[middle];
            if (All[middle].Dash < dash)
                low = middle + 1;
            else
                high = middle - 1;
        }

        return null;
    }

    /// <summary>The size by its name, <c>ISO3601-219</c> or <c>AS568-219</c>; null when there is none.</summary>
    public static ORingSize? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        foreach (var standard in (ReadOnlySpan<string>)["ISO3601-", "AS568-"])
            if (name.StartsWith(standard, StringComparison.Ordinal) && name.Length == standard.Length + 3
                && int.TryParse(name.AsSpan(standard.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var dash))
                return ByDash(dash);
        return null;
    }

    /// <summary>The dash sizes that a measured ring could be: both measures within the tolerance widened by <paramref name="allowance"/>, the nearest first.</summary>
    /// <param name="inner">Measured inside diameter.</param>
    /// <param name="section">Measured cross-section.</param>
    /// <param name="allowance">What wear, set and measuring may add, zero or more.</param>
    public static ImmutableArray<ORingSize> Candidates(Length inner, Length section, Length allowance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(allowance.Metres, nameof(allowance));
        return
        [
            .. All.Where(s => Math.Abs((s.InnerDiameter - inner).Metres) <= (s.InnerTolerance + allowance).Metres
                    && Math.Abs((s.Section - section).Metres) <= (s.SectionTolerance + allowance).Metres)
                .OrderBy(s => Math.Abs((s.InnerDiameter - inner) / s.InnerDiameter) + Math.Abs((s.Section - section) / s.Section)),
        ];
    }

    private static ImmutableArray<ORingSize> ReadTable(string resource)
    {
        using var stream = typeof(ORingSize).Assembly.GetManifestResourceStream(resource) ?? throw new InvalidOperationException($"{resource} is not in the assembly.");
        using var reader = new StreamReader(stream);
        var sizes = ImmutableArray.CreateBuilder<ORingSize>(349);
        var header = true;
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('#') || line.Length == 0)
                continue;
            if (!header)
                sizes.Add(ReadRow(line.Split(',')));
            header = false;
        }

        return sizes.DrainToImmutable();
    }

    private static ORingSize ReadRow(string[] cells)
    {
        var mm = cells.Skip(1).Select(c => Length.FromMillimetres(double.Parse(c, CultureInfo.InvariantCulture))).ToArray();
        return new(int.Parse(cells[0], CultureInfo.InvariantCulture), mm[0], mm[1], mm[2], mm[3]);
    }
}
