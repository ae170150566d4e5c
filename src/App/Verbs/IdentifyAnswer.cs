using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Recordings;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>What a recorded stroke says, in words and as JSON.</summary>
internal static class IdentifyAnswer
{
    public static Answer Of(ServiceModel model, IdentificationAnswer answer, ImmutableArray<RecordingNote> notes) => answer switch
    {
        IdentificationAnswer.Told told => new(told.Contradicts ? Exit.Undecided : Exit.Yes, Text(model, told, notes), Json(model, told, notes)),
        IdentificationAnswer.CannotTell cannot => new(Exit.Undecided, $"cannot tell: {cannot.Reason}\n  record {cannot.NextRecording}{Notes(notes)}", new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["parameters"] = new JsonObject(),
            ["faults"] = new JsonArray(),
            ["reason"] = cannot.Reason,
            ["nextRecording"] = cannot.NextRecording,
            ["notes"] = NotesJson(notes),
        }),
        _ => throw new InvalidOperationException("A stroke is told or not."),
    };

    private static JsonObject Json(ServiceModel model, IdentificationAnswer.Told told, ImmutableArray<RecordingNote> notes)
    {
        var parameters = new JsonObject();
        foreach (var p in told.Parameters)
        {
            parameters[p.Name] = new JsonObject
            {
                ["value"] = Digits(p.Value),
                ["low"] = Digits(p.Low),
                ["high"] = Digits(p.High),
                ["unit"] = p.Unit,
                ["identified"] = p.Identified,
                ["note"] = p.Note,
            };
        }

        return new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["parameters"] = parameters,
            ["faults"] = new JsonArray([.. told.Faults.Select(f => new JsonObject
            {
                ["id"] = f.Id,
                ["name"] = f.Name,
                ["probability"] = Math.Round(f.Probability, 4),
                ["reasons"] = new JsonArray([.. f.Reasons.Select(r => JsonValue.Create(r))]),
            })]),
            ["nextRecording"] = told.NextRecording,
            ["notes"] = NotesJson(notes),
        };
    }

    private static string Text(ServiceModel model, IdentificationAnswer.Told told, ImmutableArray<RecordingNote> notes)
    {
        var text = new StringBuilder();
        var named = told.Faults.Where(f => f.Probability >= IdentificationAnswer.Told.Named).ToList();
        text.Append(told.Contradicts ? $"this is no recording of a {model.Tool.Name}"
            : named.Count == 0 ? "nothing in this recording speaks for a fault"
            : string.Join("; ", named.Select(f => f.Name))).Append(CultureInfo.InvariantCulture, $" ({model.Tool.Name})\n");
        foreach (var fault in told.Faults)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {100 * fault.Probability,3:0} %  {fault.Name}\n");
            foreach (var reason in fault.Reasons)
                text.Append("         ").Append(reason).Append('\n');
        }

        text.Append('\n');
        foreach (var p in told.Parameters.Where(p => p.Identified))
            text.Append(CultureInfo.InvariantCulture, $"  {Words(p.Name),-26} {Shown(p.Value, p.Unit),10} {p.Unit,-9} {Shown(p.Low, p.Unit)} to {Shown(p.High, p.Unit)}\n");
        foreach (var p in told.Parameters.Where(p => !p.Identified))
            text.Append(string.Create(CultureInfo.InvariantCulture, $"  {Words(p.Name),-26} {"not told",10}  {p.Note}").TrimEnd()).Append('\n');
        text.Append("  limits hold with 95 %; leaks: flow by pressure, at the pressure of the pause");
        if (told.NextRecording is { } next)
            text.Append("\n  more would tell: ").Append(next);
        return text.Append(Notes(notes)).ToString();
    }

    private static string Notes(ImmutableArray<RecordingNote> notes) => string.Concat(notes.Select(n => "\n  file: " + n.Words));

    private static JsonArray NotesJson(ImmutableArray<RecordingNote> notes) => new([.. notes.Select(n => JsonValue.Create(n.Words))]);

    private static string Words(string name) => name switch
    {
        ParameterName.PumpFill => "filling of the pump",
        ParameterName.HoldLeak => "leak in a pause",
        ParameterName.DeliveryCheckLeak => "leak of the delivery check",
        ParameterName.InletLeak => "leak of the inlet check",
        ParameterName.PistonLeak => "leak of the pump piston",
        ParameterName.BypassLeak => "leak past ram or relief",
        ParameterName.EntrainedAir => "air in the oil",
        ParameterName.ReliefOpening => "relief opened at",
        ParameterName.ReliefClosing => "relief closed at",
        ParameterName.SupplyVoltage => "supply without load",
        ParameterName.DriveResistance => "resistance of the drive",
        ParameterName.RamFriction => "dry friction of the ram",
        ParameterName.SealFriction => "friction of the seals",
        _ => "oil that the pump can draw",
    };

    private static string Shown(double value, string unit) => value.ToString(unit switch
    {
        "fraction" => "0.000",
        "bar" or "cm³" => "0.0",
        "V" => "0.00",
        "Ω" => "0.0000",
        "N" => "0",
        _ => "0.0e-0",
    }, CultureInfo.InvariantCulture);

    private static double Digits(double value) => value == 0 || !double.IsFinite(value) ? 0 : double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
