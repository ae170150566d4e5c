using System.Globalization;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Arrive;

/// <summary>The form as it was typed.</summary>
public sealed class IntakeForm
{
    public string? Serial { get; set; }
    public string? ModelId { get; set; }
    public string? Customer { get; set; }
    public string? Complaint { get; set; }
    public string? Condition { get; set; }
    public string? Promised { get; set; }
    public string? Lot { get; set; }
    public string? Reference { get; set; }

    /// <summary>The intake, or null with every mistake noted.</summary>
    public Intake? Read(Bench bench, FormMistakes mistakes)
    {
        var serialSound = ToolSerial.TryParse(Trim(Serial), out var serial);
        if (Trim(Serial) is null)
            mistakes.Add("Serial", "The serial number is missing.", "It is stamped on the tool. Where it cannot be read, give the tool one of your own and mark the tool with it.");
        else if (!serialSound)
            mistakes.Add("Serial", $"'{Short(Serial)}' cannot be a serial number.", $"Write {ToolSerial.Form}.");

        var model = bench.Models.Find(Trim(ModelId) ?? "");
        if (model is null)
            mistakes.Add("ModelId", "Say which tool it is.", "When its model is missing, a file of ten lines is enough to begin with: see Help.");

        if (Trim(Customer) is not { } customer)
            mistakes.Add("Customer", "Whose tool is it?", "Write the customer's name.");
        else if (CustomerIds.Of(customer) is null)
            mistakes.Add("Customer", $"'{Short(customer)}' has no letter or digit in it.", "Write the customer's name.");
        if (Trim(Condition) is null)
            mistakes.Add("Condition", "Say in what condition it came in.", "Complete or not, damage, oil outside, anything missing: it will stand on the report.");

        DateOnly? promised = null;
        if (Trim(Promised) is { } day)
        {
            if (!DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
                mistakes.Add("Promised", $"'{Short(day)}' is no day.", "Write it as 2026-11-30, or leave it empty.");
            else if (read < bench.Today)
                mistakes.Add("Promised", $"{Words.Day(read)} has passed.", "Promise today or a later day, or leave it empty.");
            else
                promised = read;
        }

        LotId? lot = null;
        if (Trim(Lot) is { } text)
        {
            if (LotId.TryParse(text, out var read))
                lot = read;
            else
                mistakes.Add("Lot", $"'{Short(text)}' cannot be the number of a lot.", $"Write {LotId.Form}, or leave it empty.");
        }

        return mistakes.Count > 0 ? null : new()
        {
            Tool = serial,
            ModelId = model!.Model.Tool.Id,
            Customer = Trim(Customer)!,
            Complaint = Trim(Complaint) ?? "",
            Condition = Trim(Condition)!,
            Promised = promised,
            Lot = lot,
            Reference = Trim(Reference),
        };
    }

    private static string? Trim(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static string Short(string? text) => text is { Length: > 40 } ? text[..40] + " …" : text ?? "";
}
