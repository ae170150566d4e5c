namespace Ramwright.Metrology.Input.Tables;

/// <summary>Words that programs write in place of a number.</summary>
public static class NumberWords
{
    private static readonly HashSet<string> s_notFinite = new(StringComparer.OrdinalIgnoreCase)
    {
        "nan", "-nan", "+nan", "inf", "+inf", "-inf", "infinity", "+infinity", "-infinity", "∞", "-∞", "+∞", "1.#inf", "1.#qnan", "#num!", "#div/0!", "#value!", "#ref!",
    };

    private static readonly HashSet<string> s_missing = new(StringComparer.OrdinalIgnoreCase) { "", "-", "--", "---", "–", "—", "na", "n/a", "#n/a", "null", "none", "missing", "?", "overload", "ol" };

    public static bool IsNotFinite(string text) => s_notFinite.Contains(text);

    public static bool IsMissing(string text) => s_missing.Contains(text);

    public static bool IsNoNumber(string text) => IsNotFinite(text) || IsMissing(text);
}
