using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Wire;

/// <summary>An id is stored as its text, whether it is one of the records' own (checked on reading) or one of a service model.</summary>
internal sealed class IdConverters : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => IsRecordId(typeToConvert) || FromText(typeToConvert) is not null;

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) => (JsonConverter)(IsRecordId(typeToConvert)
        ? Activator.CreateInstance(typeof(RecordIdConverter<>).MakeGenericType(typeToConvert))!
        : Activator.CreateInstance(typeof(ModelIdConverter<>).MakeGenericType(typeToConvert))!);

    private static bool IsRecordId(Type type) => type.IsValueType
        && type.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IRecordId<>));

    /// <summary>The ids of service models are structs around one text called Value.</summary>
    private static ConstructorInfo? FromText(Type type) =>
        type.IsValueType && type.Name.EndsWith("Id", StringComparison.Ordinal) && type.GetProperty("Value")?.PropertyType == typeof(string)
            ? type.GetConstructor([typeof(string)])
            : null;

    private sealed class RecordIdConverter<T> : JsonConverter<T>
        where T : struct, IRecordId<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => IdText.Checked<T>(reader.GetString() ?? "");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Value ?? throw new ArgumentException($"An empty {typeof(T).Name} cannot be stored.", nameof(value)));
    }

    private sealed class ModelIdConverter<T> : JsonConverter<T>
        where T : struct
    {
        private static readonly ConstructorInfo Make = FromText(typeof(T))!;

        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => (T)Make.Invoke([reader.GetString()]);

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
    }
}

/// <summary>A ledger number is stored as a number.</summary>
internal sealed class EntryNumberConverter : JsonConverter<EntryNumber>
{
    public override EntryNumber Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetInt64());

    public override void Write(Utf8JsonWriter writer, EntryNumber value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Value);
}

/// <summary>A measured value is stored as <c>{"kind":"length","si":0.0123}</c>.</summary>
internal sealed class MeasuredValueConverter : JsonConverter<MeasuredValue>
{
    private sealed record Stored(MeasuredKind Kind, double Si);

    public override MeasuredValue Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize<Stored>(ref reader, options) is { } stored ? new(stored.Kind, stored.Si) : throw new JsonException("A measured value is a kind and a number.");

    public override void Write(Utf8JsonWriter writer, MeasuredValue value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new Stored(value.Kind, value.Si), options);
}

/// <summary>An instant is stored in UTC as text, <c>2026-03-02T08:15:00.0000000Z</c>, so that texts sort as instants do.</summary>
internal sealed class UtcConverter : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => UtcText.Read(reader.GetString() ?? "");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) => writer.WriteStringValue(UtcText.Write(value));
}

/// <summary>Instants as text.</summary>
public static class UtcText
{
    public const string Format = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    public static string Write(DateTimeOffset at) => at.UtcDateTime.ToString(Format, CultureInfo.InvariantCulture);

    /// <exception cref="FormatException">The text has another form.</exception>
    public static DateTimeOffset Read(string text) =>
        new(DateTime.SpecifyKind(DateTime.ParseExact(text, Format, CultureInfo.InvariantCulture), DateTimeKind.Utc));
}
