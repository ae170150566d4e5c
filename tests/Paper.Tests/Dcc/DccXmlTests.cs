using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Ramwright.Paper.Dcc;
using Ramwright.Paper.Tests.Saltmarsh;
using Ramwright.Paper.Tests.Signing;

namespace Ramwright.Paper.Tests.Dcc;

/// <summary>The carrier for other programs, held against the element order of DCC schema 3.2.0. The schema itself is not here.</summary>
public sealed class DccXmlTests
{
    private static readonly XNamespace Dcc = "https://ptb.de/dcc", Si = "https://ptb.de/si";

    // dcc.xsd 3.2.0 (PTB): the sequence of each type, as far as it is used; * marks what must be there.
    private static readonly Dictionary<string, string[]> Sequences = new(StringComparer.Ordinal)
    {
        ["digitalCalibrationCertificate"] = ["administrativeData*", "measurementResults*"],
        ["administrativeData"] = ["dccSoftware*", "coreData*", "items*", "calibrationLaboratory*", "respPersons*", "customer*", "statements"],
        ["software"] = ["name*", "release*"],
        ["coreData"] = ["countryCodeISO3166_1*", "usedLangCodeISO639_1*", "mandatoryLangCodeISO639_1*", "uniqueIdentifier*", "identifications", "receiptDate", "beginPerformanceDate*", "endPerformanceDate*", "performanceLocation*", "issueDate", "previousReport"],
        ["identification"] = ["issuer*", "value*", "name"],
        ["item"] = ["name*", "description", "manufacturer*", "model", "identifications*"],
        ["contact"] = ["name*", "eMail", "phone", "fax", "location*"],
        ["customer"] = ["name*", "eMail", "phone", "fax", "location*"],
        ["respPerson"] = ["person*", "description", "role", "mainSigner"],
        ["statement"] = ["name", "description", "declaration"],
        ["measurementResult"] = ["name*", "description", "usedMethods", "usedSoftware", "measuringEquipments", "influenceConditions", "results*", "measurementMetaData"],
        ["usedMethod"] = ["name*", "description"],
        ["measuringEquipment"] = ["name*", "description", "certificate", "manufacturer", "model", "identifications"],
        ["influenceCondition"] = ["name*", "description", "status", "certificate", "data*"],
        ["result"] = ["name*", "description", "data*"],
        ["metaData"] = ["name", "description", "declaration", "conformity"],
        ["real"] = ["label", "value*", "unit*"],
        ["realListXMLList"] = ["labelXMLList", "valueXMLList*", "unitXMLList*"],
    };

    private static XElement Root(byte[] xml) => XDocument.Parse(Encoding.UTF8.GetString(xml)).Root!;

    [Fact]
    public void Each_element_has_what_it_must_in_the_order_of_the_schema()
    {
        foreach (var input in new[] { Proofs.Report, Proofs.Report with { Job = House.Job with { Serial = null, Received = null, Customer = " \u0001 " }, BenchTemperature = null, Replaces = "SM-0409-P0" } })
        {
            foreach (var element in Root(DccXml.Write(input)).DescendantsAndSelf().Where(e => Sequences.ContainsKey(e.Name.LocalName)))
            {
                var order = Sequences[element.Name.LocalName].Select(n => n.TrimEnd('*')).ToList();
                var places = element.Elements().Select(c => order.IndexOf(c.Name.LocalName)).ToList();
                Assert.DoesNotContain(-1, places);
                Assert.Equal(places.Order(), places);
                Assert.All(Sequences[element.Name.LocalName].Where(n => n.EndsWith('*')), must => Assert.Contains(element.Elements(), c => c.Name.LocalName == must[..^1]));
            }
        }
    }

    [Fact]
    public void Says_the_figures_in_pascals_and_that_it_is_no_certificate()
    {
        var root = Root(DccXml.Write(Proofs.Report));
        Assert.Equal("3.2.0", (string?)root.Attribute("schemaVersion"));
        var peaks = ((string)root.Descendants(Si + "valueXMLList").Single()).Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture) / 1e5);
        Assert.Equal(Proofs.AsLeft, peaks.Select(p => Math.Round(p, 6)));
        Assert.Equal("pass", (string?)root.Descendants(Dcc + "conformity").Single());
        Assert.Contains("no calibration certificate", root.Value, StringComparison.Ordinal);
        var undecided = Root(DccXml.Write(Proofs.Report with { Verdict = Proofs.Conforms with { Conformity = Ramwright.Proving.Conformity.Undecided } }));
        Assert.Empty(undecided.Descendants(Dcc + "conformity"));
    }

    [Fact]
    public void Travels_inside_the_signed_file()
    {
        using var folder = new Folder();
        var path = Path.Combine(folder.Path, "dcc.xml");
        Run.Tool("pdfdetach", Signed.Report.Pdf, "-savefile", DccXml.FileName, "-o", path, "FILE");
        Assert.Equal(Signed.Report.Dcc, File.ReadAllBytes(path));
    }
}
