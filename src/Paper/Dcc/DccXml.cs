using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Sheets.Proof;
using Ramwright.Proving;

namespace Ramwright.Paper.Dcc;

/// <summary>
/// The figures of a proof report in the open exchange form for calibration certificates: DCC schema 3.2.0 of the Physikalisch-Technische Bundesanstalt,
/// quantities as D-SI 2.1.0 has them. A carrier for programs that read it, no claim: a proof report is no calibration certificate, and the document says so.
/// </summary>
/// <remarks>Built after the element order of the published schema; not validated with the schema itself.</remarks>
public static class DccXml
{
    public const string FileName = "dcc.xml";
    public const string SchemaVersion = "3.2.0";

    /// <summary>ISO 3166-1 leaves ZZ to its users: the records do not say in which country the house is.</summary>
    private const string NoCountry = "ZZ";

    private static readonly XNamespace Dcc = "https://ptb.de/dcc", Si = "https://ptb.de/si";

    public static byte[] Write(ProofReportInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var root = new XElement(Dcc + "digitalCalibrationCertificate",
            new XAttribute(XNamespace.Xmlns + "dcc", Dcc),
            new XAttribute(XNamespace.Xmlns + "si", Si),
            new XAttribute("schemaVersion", SchemaVersion),
            Administrative(input),
            new XElement(Dcc + "measurementResults", Measured(input)));
        using var to = new MemoryStream();
        using (var writer = XmlWriter.Create(to, new() { Indent = true, Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), NewLineChars = "\n" }))
            root.Save(writer);
        return to.ToArray();
    }

    private static XElement Administrative(ProofReportInput input) => new(Dcc + "administrativeData",
        new XElement(Dcc + "dccSoftware", new XElement(Dcc + "software", Words("name", "Ramwright"), Text("release", typeof(DccXml).Assembly.GetName().Version?.ToString(3) ?? "0"))),
        new XElement(Dcc + "coreData",
            Text("countryCodeISO3166_1", NoCountry),
            Text("usedLangCodeISO639_1", "en"),
            Text("mandatoryLangCodeISO639_1", "en"),
            Text("uniqueIdentifier", input.Number),
            new XElement(Dcc + "identifications",
                Identification("calibrationLaboratory", input.Job.Number, "job"),
                Identification("calibrationLaboratory", string.Create(CultureInfo.InvariantCulture, $"{input.Ledger.Entry} {input.Ledger.Head}"), "ledger entry and head"),
                input.Replaces is { } old ? Identification("calibrationLaboratory", old, "takes the place of") : null),
            input.Job.Received is { } received ? Text("receiptDate", Day(received)) : null,
            Text("beginPerformanceDate", Day(input.Tested)),
            Text("endPerformanceDate", Day(input.Tested)),
            Text("performanceLocation", "laboratory"),
            Text("issueDate", Day(DateOnly.FromDateTime(input.Issued.DateTime)))),
        new XElement(Dcc + "items", new XElement(Dcc + "item",
            Words("name", input.Job.Tool),
            new XElement(Dcc + "manufacturer", Words("name", "not stated")),
            new XElement(Dcc + "identifications", Identification(input.Job.Serial is null ? "other" : "manufacturer", input.Job.Serial ?? "no number", "serial number")))),
        new XElement(Dcc + "calibrationLaboratory", Contact("contact", input.House.Name, string.Join(", ", input.House.Address))),
        new XElement(Dcc + "respPersons", new XElement(Dcc + "respPerson",
            new XElement(Dcc + "person", Words("name", input.ReleasedBy.Name)),
            input.ReleasedBy.Role is { } role ? Text("role", role) : null,
            Text("mainSigner", "true"))),
        Contact("customer", input.Job.Customer, ""),
        new XElement(Dcc + "statements", new XElement(Dcc + "statement",
            Words("name", "What this document is"),
            Words("declaration", "A proof report in the form of a digital calibration certificate. It is no calibration certificate and was not issued under accreditation. "
                + $"{SafetyWords.OnlyThisItem} {SafetyWords.NoPromise} {SafetyWords.Defer}"))));

    private static XElement Measured(ProofReportInput input) => new(Dcc + "measurementResult",
        Words("name", "Proof of the opening pressure"),
        new XElement(Dcc + "usedMethods", new XElement(Dcc + "usedMethod", Words("name", "Peaks of full runs"), Words("description", input.Method + " Load: " + input.Load))),
        new XElement(Dcc + "measuringEquipments", new XElement(Dcc + "measuringEquipment",
            Words("name", input.Device.Kind),
            new XElement(Dcc + "identifications",
                Identification("calibrationLaboratory", input.Device.Id, "number in the house"),
                input.Device.Serial is { } serial ? Identification("manufacturer", serial, "serial number") : null,
                input.Device.Certificate is { } certificate ? Identification("other", certificate, "calibration certificate") : null))),
        input.BenchTemperature is { } room
            ? new XElement(Dcc + "influenceConditions", new XElement(Dcc + "influenceCondition", Words("name", "temperature at the bench"), new XElement(Dcc + "data", Quantity("temperature at the bench", Real(room.Celsius, "\\degreecelsius")))))
            : null,
        new XElement(Dcc + "results",
            input.Series.Peaks.IsEmpty ? null : Result("Peaks of the runs that count, gauge pressure", List(input.Series.Peaks)),
            input.Verdict.Mean is { } mean ? Result("Mean of the peaks", Real(mean)) : null,
            input.Verdict.StandardDeviation is { } s ? Result("Standard deviation of the peaks", Real(s)) : null,
            Result("Lower limit", Real(input.Series.Limits.Min)),
            Result("Upper limit", Real(input.Series.Limits.Max)),
            Result("How far the true peak may lie below a reading, expanded with k = 2", Real(input.Series.Systematic.BelowLimit)),
            Result("How far the true peak may lie above a reading, expanded with k = 2", Real(input.Series.Systematic.AboveLimit))),
        new XElement(Dcc + "measurementMetaData", new XElement(Dcc + "metaData",
            Words("name", "Verdict"),
            Words("declaration", $"{Signing.ProofResult.Word(input.Verdict.Conformity).Replace('-', ' ')}. {DecisionWords.Rule(input)}"),
            input.Verdict.Conformity switch { Conformity.Conforms => Text("conformity", "pass"), Conformity.DoesNotConform => Text("conformity", "fail"), _ => null })));

    private static XElement Result(string name, XElement quantity) => new(Dcc + "result", Words("name", name), new XElement(Dcc + "data", Quantity(null, quantity)));

    private static XElement Quantity(string? name, XElement value) => new(Dcc + "quantity", name is null ? null : Words("name", name), value);

    private static XElement Real(Pressure pressure) => Real(pressure.Pascals, "\\pascal");

    private static XElement Real(double value, string unit) => new(Si + "real", new XElement(Si + "value", Number(value)), new XElement(Si + "unit", unit));

    private static XElement List(IEnumerable<Pressure> pressures) =>
        new(Si + "realListXMLList", new XElement(Si + "valueXMLList", string.Join(' ', pressures.Select(p => Number(p.Pascals)))), new XElement(Si + "unitXMLList", "\\pascal"));

    private static XElement Identification(string issuer, string value, string name) => new(Dcc + "identification", Text("issuer", issuer), Text("value", value), Words("name", name));

    private static XElement Contact(string element, string name, string address) =>
        new(Dcc + element, Words("name", name), new XElement(Dcc + "location", Words("further", address.Length == 0 ? "not stated" : address)));

    private static XElement Words(string element, string words) => new(Dcc + element, new XElement(Dcc + "content", new XAttribute("lang", "en"), Clean(words)));

    private static XElement Text(string element, string text) => new(Dcc + element, Clean(text));

    /// <summary>Signs that XML cannot carry are left out; a text that must not be empty is never so.</summary>
    private static string Clean(string text) => string.Concat(text.Where(XmlConvert.IsXmlChar)).Trim() is { Length: > 0 } clean ? clean : "-";

    private static string Number(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
