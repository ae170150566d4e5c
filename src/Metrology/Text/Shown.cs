using System.Globalization;

namespace Ramwright.Metrology.Text;

/// <summary>A number as a person reads it and its unit, apart, for tables and forms; together by <see cref="ToString"/>.</summary>
/// <param name="Number">Rounded, thousands grouped by a comma, a true minus sign.</param>
/// <param name="Unit">The unit's symbol, such as <c>bar</c>.</param>
public readonly record struct Shown(string Number, string Unit)
{
    /// <summary>Number, space, unit; the degree sign of an angle stands without a space (ISO 80000-1, 7.1.4, from memory).</summary>
    public override string ToString() => Unit is "°" or "" ? Number + Unit : Number + " " + Unit;

    /// <summary>A number in an invariant form: <paramref name="decimals"/> fixed places, or up to <paramref name="most"/> when null.</summary>
    /// <remarks>Rounded half away from zero, as people round. A value that rounds to nothing has no sign.</remarks>
    internal static Shown Of(double value, string unit, int? decimals, int most)
    {
        var places = decimals ?? most;
        ArgumentOutOfRangeException.ThrowIfNegative(places, nameof(decimals));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(places, 12, nameof(decimals));
        var rounded = Math.Abs(value) < 1e15 ? Math.Round(value, places, MidpointRounding.AwayFromZero) : value;
        if (rounded == 0)
            rounded = 0; // drops a negative zero
        var pattern = "#,##0" + (places == 0 ? "" : "." + new string(decimals is null ? '#' : '0', places));
        return new(rounded.ToString(pattern, CultureInfo.InvariantCulture).Replace('-', '\u2212'), unit);
    }
}
