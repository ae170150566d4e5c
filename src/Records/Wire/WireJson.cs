using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Ramwright.Records.Wire;

/// <summary>How an event becomes text and back: quantities as SI numbers, ids as texts, closed answers by the name of their case.</summary>
public static class WireJson
{
    private static readonly JsonSerializerOptions Options = Make();

    /// <summary>The event's text, to be stored under <see cref="EventNames.Of"/> its type.</summary>
    public static string Write<TEvent>(TEvent what)
        where TEvent : notnull => JsonSerializer.Serialize(what, what.GetType(), Options);

    /// <summary>The event that was stored under the name.</summary>
    /// <exception cref="UnreadableEventException">The name is of a later program, or the text is not what the name promises.</exception>
    public static TEvent Read<TEvent>(string name, string body)
        where TEvent : class
    {
        var type = EventNames.TypeOf(name) ?? throw new UnreadableEventException(name, "this program does not know the name");
        try
        {
            return JsonSerializer.Deserialize(body, type, Options) as TEvent
                ?? throw new UnreadableEventException(name, "it is no event of this kind of stream");
        }
        catch (Exception e) when (e is JsonException or ArgumentException or FormatException or InvalidOperationException)
        {
            throw new UnreadableEventException(name, e.Message, e);
        }
    }

    private static JsonSerializerOptions Make()
    {
        var resolver = new DefaultJsonTypeInfoResolver();
        resolver.Modifiers.Add(ClosedAnswers.Describe);
        var options = new JsonSerializerOptions
        {
            TypeInfoResolver = resolver,
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // stored, never put into a page as it is
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            IgnoreReadOnlyProperties = true,
            RespectNullableAnnotations = true,
            NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, // a distance may be infinite
            MaxDepth = 32,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        options.Converters.Add(new QuantityConverters());
        options.Converters.Add(new IdConverters());
        options.Converters.Add(new MoneyConverter());
        options.Converters.Add(new PressureWindowConverter());
        options.Converters.Add(new MeasuredValueConverter());
        options.Converters.Add(new EntryNumberConverter());
        options.Converters.Add(new UtcConverter());
        options.MakeReadOnly();
        return options;
    }
}

/// <summary>A stored event that this program cannot read.</summary>
public sealed class UnreadableEventException(string name, string why, Exception? inner = null)
    : Exception($"An event stored as '{name}' cannot be read: {why}.", inner)
{
    /// <summary>The stored name.</summary>
    public string Name { get; } = name;
}
