using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>The lines that are due whatever the inspections say.</summary>
internal static class FirmLines
{
    public static ImmutableArray<QuoteLine> Of(ServiceModel model, StripPlan? strip, RebuildPlan? rebuild, PriceSettings settings, QuoteOptions options, Cover cover, Volume oil, Money? oilPrice)
    {
        var runs = model.Limits.ProofRuns;
        var proof = options.ProofPreparation + runs * options.RunTime + Math.Max(0, runs - 1) * model.Limits.Rest;
        var lines = ImmutableArray.CreateBuilder<QuoteLine>();
        AddLabour(QuoteLineKind.Labour, "take in and make safe", options.ArriveTime);
        AddLabour(QuoteLineKind.Labour, "strip", strip?.LikelyTime ?? TimeSpan.Zero);
        AddLabour(QuoteLineKind.Labour, "inspect", strip is null ? TimeSpan.Zero : InspectionTime(model, strip));
        AddLabour(QuoteLineKind.Labour, "rebuild, prime and bleed", rebuild?.LikelyTime ?? TimeSpan.Zero);
        AddLabour(QuoteLineKind.Labour, "set the relief valve", options.SettingTime);
        AddLabour(QuoteLineKind.Proof, string.Create(CultureInfo.InvariantCulture, $"prove with {runs} full runs"), proof);
        foreach (var line in cover.Lines)
            lines.Add(Line(line.Kit is null ? QuoteLineKind.Part : QuoteLineKind.Kit, line.Name, line.Number, line.Count, "pc", line.UnitPrice));
        if (oilPrice is { } price && oil.CubicMetres > 0)
            lines.Add(Line(QuoteLineKind.Oil, OilName(model), null, Litres(oil), "l", price));
        return lines.ToImmutable();

        void AddLabour(QuoteLineKind kind, string text, TimeSpan time)
        {
            if (Hours(time) is > 0 and var hours)
                lines.Add(Line(kind, text, null, hours, "h", settings.LabourPerHour));
        }
    }

    /// <summary>What labour costs as it is printed: hours to 0.01, then money to 0.01.</summary>
    public static Money Labour(TimeSpan time, PriceSettings settings) => (Hours(time) * settings.LabourPerHour).Rounded();

    public static TimeSpan InspectionTime(ServiceModel model, StripPlan strip) => strip.Inspections
        .Select(i => model.FindPart(i.Part)?.Inspections.FirstOrDefault(x => x.Id == i.Inspection)?.Time ?? TimeSpan.Zero)
        .Aggregate(TimeSpan.Zero, (sum, time) => sum + time);

    private static decimal Hours(TimeSpan time) => decimal.Round(time.Ticks / (decimal)TimeSpan.TicksPerHour, 2, MidpointRounding.ToEven);

    /// <summary>Whole millilitres, rounded up, in litres.</summary>
    private static decimal Litres(Volume oil) => decimal.Ceiling(decimal.Round((decimal)oil.Millilitres, 6)) / 1000;

    private static string OilName(ServiceModel model) => model.Fluid is { Grade: { } grade } fluid
        ? string.Create(CultureInfo.InvariantCulture, $"hydraulic oil {fluid.Class} {grade}")
        : $"hydraulic oil {model.Fluid?.Class}";

    private static QuoteLine Line(QuoteLineKind kind, string text, string? number, decimal quantity, string unit, Money price) =>
        new(kind, text, number, quantity, unit, price, (quantity * price).Rounded());
}
