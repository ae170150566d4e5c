using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ramwright.Paper.Signing;

/// <summary>The one form of a JSON document that is signed: no white space, members in order of UTF-16 code units, numbers as ECMAScript writes them (RFC 8785).</summary>
public static class CanonicalJson
{
    /// <summary>Reads a document; null when it is none, is nested too deeply or names a member twice.</summary>
    public static JsonObject? Read(ReadOnlySpan<byte> utf8)
    {
        try
        {
            return JsonNode.Parse(utf8, null, new JsonDocumentOptions { AllowDuplicateProperties = false, MaxDepth = 32 }) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    public static byte[] Write(JsonNode? node)
    {
        var to = new StringBuilder();
        Write(to, node);
        return Encoding.UTF8.GetBytes(to.ToString());
    }

    private static void Write(StringBuilder to, JsonNode? node)
    {
        switch (node)
        {
            case null:
                to.Append("null");
                break;
            case JsonObject members:
                to.Append('{');
                foreach (var (i, (name, value)) in members.OrderBy(m => m.Key, StringComparer.Ordinal).Index())
                {
                    to.Append(i == 0 ? "" : ",").Append(Quoted(name)).Append(':');
                    Write(to, value);
                }

                to.Append('}');
                break;
            case JsonArray items:
                to.Append('[');
                foreach (var (i, item) in items.Index())
                {
                    to.Append(i == 0 ? "" : ",");
                    Write(to, item);
                }

                to.Append(']');
                break;
            default:
                to.Append(node.GetValueKind() switch
                {
                    JsonValueKind.String => Quoted(node.GetValue<string>()),
                    JsonValueKind.Number => Number(double.Parse(node.ToJsonString(), CultureInfo.InvariantCulture)),
                    JsonValueKind.True => "true",
                    _ => "false",
                });
                break;
        }
    }

    /// <summary>RFC 8785, 3.2.2.2: only quotation mark, backslash and control characters are escaped, the short way where there is one.</summary>
    private static string Quoted(string text)
    {
        var to = new StringBuilder("\"");
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' => to.Append("\\\""),
                '\\' => to.Append("\\\\"),
                '\b' => to.Append("\\b"),
                '\f' => to.Append("\\f"),
                '\n' => to.Append("\\n"),
                '\r' => to.Append("\\r"),
                '\t' => to.Append("\\t"),
                < ' ' => to.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => to.Append(c),
            };
        }

        return to.Append('"').ToString();
    }

    /// <summary>ECMA-262, Number::toString: the shortest digits that read back as the same double, plain from 1e-6 up to below 1e21.</summary>
    /// <param name="value">A number without a unit: what it means is said by its member's name.</param>
    public static string Number(double value)
    {
        if (value == 0)
            return "0";
        var round = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture);
        var digits = round.Split('E')[0].Replace(".", "", StringComparison.Ordinal).Trim('0');
        var point = Exponent(round) + 1;
        var sign = value < 0 ? "-" : "";
        if (point is > 0 and <= 21)
            return sign + (digits.Length <= point ? digits.PadRight(point, '0') : digits[..point] + "." + digits[point..]);
        if (point is > -6 and <= 0)
            return sign + "0." + new string('0', -point) + digits;
        var e = (point - 1).ToString("+0;-0", CultureInfo.InvariantCulture);
        return sign + digits[0] + (digits.Length > 1 ? "." + digits[1..] : "") + "e" + e;
    }

    /// <summary>The power of ten of the first digit that is not nought.</summary>
    private static int Exponent(string round)
    {
        var parts = round.Split('E');
        var shift = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
        var dot = parts[0].IndexOf('.', StringComparison.Ordinal) is var d && d < 0 ? parts[0].Length : d;
        var first = parts[0].IndexOfAny(['1', '2', '3', '4', '5', '6', '7', '8', '9']);
        return shift + (first < dot ? dot - first - 1 : dot - first);
    }
}
