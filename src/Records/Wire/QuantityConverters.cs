using System.Text.Json;
using System.Text.Json.Serialization;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Records.Wire;

/// <summary>A quantity is stored as the number of its coherent SI unit, with every digit that a double has.</summary>
internal sealed class QuantityConverters : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsValueType
        && typeToConvert.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IQuantity<>));

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(QuantityConverter<>).MakeGenericType(typeToConvert))!;

    private sealed class QuantityConverter<T> : JsonConverter<T>
        where T : struct, IQuantity<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => T.FromSi(reader.GetDouble());

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Si);
    }
}

/// <summary>Two limits are stored as <c>[low, high]</c> in pascals.</summary>
internal sealed class PressureWindowConverter : JsonConverter<PressureWindow>
{
    public override PressureWindow Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize<double[]>(ref reader, options) is [var low, var high]
            ? new(Pressure.FromPascals(low), Pressure.FromPascals(high))
            : throw new JsonException("A window is two numbers.");

    public override void Write(Utf8JsonWriter writer, PressureWindow value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(value.Min.Pascals);
        writer.WriteNumberValue(value.Max.Pascals);
        writer.WriteEndArray();
    }
}

/// <summary>Money is stored as <c>"12.50 EUR"</c>: an exact decimal and its currency.</summary>
internal sealed class MoneyConverter : JsonConverter<Money>
{
    public override Money Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var parts = reader.GetString()?.Split(' ') ?? [];
        return parts.Length == 2 && decimal.TryParse(parts[0], System.Globalization.NumberStyles.Number, System.Globalization.CultureInfo.InvariantCulture, out var amount)
            ? new(amount, parts[1])
            : throw new JsonException("Money is an amount and a currency.");
    }

    public override void Write(Utf8JsonWriter writer, Money value, JsonSerializerOptions options) =>
        writer.WriteStringValue(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value.Amount} {value.Currency}"));
}
