using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class SensorSheetTests
{
    internal static SensorSheetInput Input(double allowedBar)
    {
        // Invented: three levels, twice up and once down, the tool 2 bar high at the top.
        ImmutableArray<SensorPoint> points = [.. new[] { (0, 200e5, 200.5e5), (1, 450e5, 451e5), (2, 725e5, 727e5) }.SelectMany(l => new SensorPoint[] { new(l.Item1, l.Item2, l.Item3, true), new(l.Item1, l.Item2, l.Item3 + 2e4, true), new(l.Item1, l.Item2, l.Item3 + 5e4, false) })];
        var task = new SensorTask { AllowedPascals = allowedBar * 1e5, ReferenceStandardPascals = 1.25e5, ResolutionPascals = 1e5 };
        return new SensorSheetInput
        {
            Number = "SM-0409-C1",
            House = House.Header,
            Job = House.Job,
            Points = points,
            Task = task,
            Answer = SensorCheck.Examine(points, task),
            Reference = new() { Kind = "port gauge", Id = "PG-1", Serial = "19-1188", Calibrated = new(2026, 6, 1), CalibrationDue = new(2027, 6, 1), Certificate = "K-2288, a made-up laboratory" },
            Compared = new(2026, 11, 25),
            ComparedBy = new("J. Fenn"),
            Issued = House.Noon,
            Ledger = House.Ledger,
        };
    }

    [Theory]
    [InlineData(7, "The sensor is fit.")]
    [InlineData(3, "Fit or not cannot be told.")]
    [InlineData(0.1, "Fit or not cannot be told.")]
    public void Says_the_answer_with_its_figures_on_one_page(double allowed, string head)
    {
        var pdf = SensorSheet.Render(Input(allowed), PaperSize.A4, UnitSystem.Metric);
        var text = Run.Text(pdf);
        foreach (var said in new[] { "Sensor check", head, "SM-0409-C1", "J. Fenn", "PG-1, no. 19-1188", "1 Jun 2027", "from above", "727.5", "hysteresis", "This is no proof report", "not issued under accreditation" })
            Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Equal(1, Run.Pages(pdf));
    }
}
