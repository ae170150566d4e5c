using System.Diagnostics.CodeAnalysis;

namespace Ramwright.Records.Ids;

/// <summary>The serial number stamped on a customer's tool.</summary>
public readonly record struct ToolSerial : IRecordId<ToolSerial>
{
    private ToolSerial(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.PlateForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static ToolSerial Parse(string text) => IdText.Checked<ToolSerial>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out ToolSerial id)
    {
        id = IdText.IsPlate(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}

/// <summary>A measuring instrument of the house by its inventory number, such as <c>FC-2</c>.</summary>
public readonly record struct InstrumentId : IRecordId<InstrumentId>
{
    private InstrumentId(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.PlateForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static InstrumentId Parse(string text) => IdText.Checked<InstrumentId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out InstrumentId id)
    {
        id = IdText.IsPlate(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}

/// <summary>A batch of seals or oil by the number on its label.</summary>
public readonly record struct BatchId : IRecordId<BatchId>
{
    private BatchId(string value) => Value = value;

    public string Value { get; }

    public static string Form => IdText.PlateForm;

    /// <exception cref="FormatException">The text is no such id.</exception>
    public static BatchId Parse(string text) => IdText.Checked<BatchId>(text);

    public static bool TryParse([NotNullWhen(true)] string? text, out BatchId id)
    {
        id = IdText.IsPlate(text) ? new(text) : default;
        return id.Value is not null;
    }

    public override string ToString() => Value ?? "";
}
