using System.Text;

namespace Ramwright.App.Verbs;

/// <summary>Names of an enumeration as they stand in JSON: <c>FailedInspection</c> becomes <c>failed-inspection</c>.</summary>
internal static class Kebab
{
    public static string Of<T>(T value)
        where T : struct, Enum
    {
        var text = new StringBuilder();
        foreach (var c in value.ToString())
        {
            if (char.IsAsciiLetterUpper(c) && text.Length > 0)
                text.Append('-');
            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }
}
