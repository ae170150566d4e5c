using System.Runtime.CompilerServices;
using CsCheck;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;
using static Ramwright.Parts.Tests.Shop;

namespace Ramwright.Parts.Tests;

/// <summary>Quotes. Tools, times and prices are invented.</summary>
public sealed class QuoteMakerTests
{
    private static readonly PriceSettings s_settings = new(Eur(78), 0.19, TimeSpan.FromDays(30));

    [Fact]
    public void Without_a_plan_setting_and_proving_are_quoted()
    {
        // By hand: 5 min; 10 min; 5 min + 12 x 15 s + 11 x 40 s = 15 min 20 s; at 78 an hour: 0.08, 0.17, 0.26 h.
        var quote = QuoteMaker.Make(Model([]), null, null, s_settings);
        Assert.Equal([6.24m, 13.26m, 20.28m], quote.Firm.Select(l => l.Price.Amount));
        Assert.Equal((39.78m, 7.56m, 47.34m), (quote.FirmNet.Amount, quote.FirmTax.Amount, quote.FirmGross.Amount));
        Assert.Equal((40m, 7.60m, 47.60m), (quote.NotToExceedNet.Amount, quote.NotToExceedTax.Amount, quote.NotToExceedGross.Amount));
        Assert.Empty(quote.OnCondition);
    }

    [Fact]
    public void A_bad_inspection_adds_its_parts_and_the_way_to_them()
    {
        var model = Chain(new Inspection { Id = new("rod-marks"), Look = "look", Reuse = "none", ChanceBad = 0.25, RenewsWhenBad = [new("rod")], AddsWhenBad = [new("core")] });
        var quote = Quoted(model, "rod");
        var line = Assert.Single(quote.OnCondition);
        // The rod at 60 by 0.25; the core 12 min off and 12 min back on at 78 an hour: 0.40 h.
        Assert.Equal((60m, 31.20m, 0.25), (line.Parts.Amount, line.Labour.Amount, line.Chance));
        Assert.Equal(quote.FirmNet.Amount + 22.80m, quote.ExpectedNet.Amount);
        Assert.Equal(decimal.Ceiling(quote.FirmNet.Amount + 91.20m), quote.NotToExceedNet.Amount);
    }

    [Fact]
    public void A_spare_that_two_inspections_count_on_is_limited_for_both()
    {
        // The kit bought anyway leaves one ring over: each inspection alone adds nothing, both together a loose ring of 50.
        var model = Model(
            [
                Part("cap", "C", 3m) with { WaysOff = [Way()], Renew = RenewalRule.Always, Inspections = [Look("a", "ring-a")] },
                Part("body", "B", 3m) with { WaysOff = [Way("cap")], Inspections = [Look("b", "ring-b")] },
                Part("ring-a", "R", 50m), Part("ring-b", "R", 50m),
            ],
            Kit("kit", 2m, ("cap", 1), ("ring-a", 1))) with
        { States = [] };
        var quote = Quoted(model, "body");
        Assert.Equal([0m, 0m], quote.OnCondition.Select(l => l.Parts.Amount));
        Assert.Equal(decimal.Ceiling(quote.FirmNet.Amount + 2m), quote.NotToExceedNet.Amount); // a second kit is cheaper than the ring
    }

    [Fact]
    public void Two_inspections_that_renew_the_same_part_share_a_line_and_cost_it_once()
    {
        var model = Chain(Look("scores", "rod")) is var chain
            ? chain with { Parts = [.. chain.Parts.Select(p => p.Id.Value == "rod" ? p with { Inspections = [Look("scores", "rod"), Look("bend", "rod")] } : p)] }
            : null!;
        var quote = Quoted(model, "rod");
        Assert.Equal(1 - (0.7 * 0.7), Assert.Single(quote.OnCondition).Chance!.Value, 1e-12);
        Assert.Equal(decimal.Ceiling(quote.FirmNet.Amount + 60m), quote.NotToExceedNet.Amount);
    }

    [Fact]
    public void What_has_no_price_is_said_apart()
    {
        var bad = new Inspection { Id = new("rod-marks"), Look = "look", Reuse = "none", RenewsWhenBad = [new("core")] };
        var model = Chain(bad) is var chain ? chain with { Parts = [.. chain.Parts.Select(p => p.Id.Value == "core" ? p with { Price = null } : p)], Fluid = new("HM", 32, null) } : null!;
        var strip = Strip(model, "rod");
        var rebuild = Rebuild(model, strip) with { OilFilled = Volume.FromMillilitres(95) };
        var quote = QuoteMaker.Make(model, strip, rebuild, s_settings);
        Assert.Equal("core", Assert.Single(quote.UnpricedOnCondition).Part.Value);
        Assert.Equal(95, quote.UnpricedOil!.Value.Millilitres, 1e-9);
        var priced = QuoteMaker.Make(model with { Fluid = new("HM", 32, null) { PricePerLitre = Eur(12.40m) } }, strip, rebuild, s_settings);
        Assert.Equal((0.095m, 1.18m), priced.Firm.Single(l => l.Kind == QuoteLineKind.Oil) is var oil ? (oil.Quantity, oil.Price.Amount) : default);
    }

    [Theory]
    [InlineData("corrie-85")]
    [InlineData("corrie-120")]
    [InlineData("skerry-52")]
    public void Each_bundled_model_can_be_quoted(string id)
    {
        var model = Assert.IsType<ModelReading.Read>(Bundled(id)).Model;
        var settings = s_settings with { LabourPerHour = new(78, model.Parts.First(p => p.Price is not null).Price!.Value.Currency) };
        foreach (var part in model.Parts.Where(p => !p.WaysOff.IsEmpty).Where((_, i) => i % 6 == 0))
        {
            if (StripPlanner.Plan(new() { Model = model, Rates = new() { LabourPerHour = settings.LabourPerHour }, Targets = [part.Id] }) is StripAnswer.Planned planned)
                AddsUp(QuoteMaker.Make(model, planned.Plan, RebuildOrNone(model, planned.Plan), settings));
        }
    }

    [Fact]
    public void Lines_add_up_to_the_cent_and_the_limit_holds_the_firm_part() =>
        Gen.Select(Gen.Int[0, 20_000], Gen.Int[0, 1_000], Gen.Int[1, 9_999].Array[1, 6], Gen.Int[0, 5_000], Gen.Int[1, 100]).ForAll((rate, tax, prices, oil, runs) =>
        {
            var parts = prices.Select((p, i) => Part($"p{i}", $"N{i}", p / 100m, 1 + i % 3) with
            {
                WaysOff = [i == 0 ? Way() : Way($"p{i - 1}")],
                Renew = i % 2 == 0 ? RenewalRule.Always : RenewalRule.OnCondition,
                Inspections = i % 2 == 1 ? [Look($"i{i}", $"p{i}")] : [],
            });
            var model = Model(parts, Kit("kit", 20m, ("p0", 2))) with { Fluid = new("HM", 32, null) { PricePerLitre = Eur(oil / 100m) } };
            model = model with { Limits = model.Limits with { ProofRuns = runs } };
            var strip = Strip(model, $"p{prices.Length - 1}");
            AddsUp(QuoteMaker.Make(model, strip, Rebuild(model, strip) with { OilFilled = Volume.FromMillilitres(oil / 7.0) }, new(Eur(rate / 100m), tax / 1000.0, TimeSpan.FromDays(30))));
        }, iter: 300);

    [Fact]
    public void An_answer_with_a_limit_covers_work_up_to_it()
    {
        var quote = QuoteMaker.Make(Model([]), null, null, s_settings);
        var yes = new QuoteAnswer(true, "N. Example", "by telephone", DateTimeOffset.UnixEpoch, null);
        Assert.True(yes.Covers(quote, quote.NotToExceedNet));
        Assert.False(yes.Covers(quote, quote.NotToExceedNet + Eur(0.01m)));
        Assert.False((yes with { Limit = Eur(30) }).Covers(quote, Eur(31)));
        Assert.False((yes with { Accepted = false }).Covers(quote, Eur(1)));
    }

    private static void AddsUp(Quote quote)
    {
        var tax = (decimal)quote.Settings.TaxRate;
        Assert.All(quote.Firm, l => Assert.Equal(decimal.Round(l.Quantity * l.UnitPrice.Amount, 2, MidpointRounding.ToEven), l.Price.Amount));
        Assert.Equal(quote.Firm.Sum(l => l.Price.Amount), quote.FirmNet.Amount);
        Assert.Equal(decimal.Round(tax * quote.FirmNet.Amount, 2, MidpointRounding.ToEven), quote.FirmTax.Amount);
        Assert.Equal(quote.FirmNet.Amount + quote.FirmTax.Amount, quote.FirmGross.Amount);
        Assert.Equal(decimal.Truncate(quote.NotToExceedNet.Amount), quote.NotToExceedNet.Amount);
        Assert.All(quote.OnCondition, l => Assert.True(quote.NotToExceedNet.Amount >= quote.FirmNet.Amount + l.Price.Amount));
        Assert.Equal(decimal.Round(tax * quote.NotToExceedNet.Amount, 2, MidpointRounding.ToEven), quote.NotToExceedTax.Amount);
        Assert.Equal(quote.NotToExceedNet.Amount + quote.NotToExceedTax.Amount, quote.NotToExceedGross.Amount);
        Assert.InRange(quote.ExpectedNet.Amount, quote.FirmNet.Amount, quote.NotToExceedNet.Amount);
        Assert.Equal(quote.Cover.Price.Amount, quote.Firm.Where(l => l.Kind is QuoteLineKind.Kit or QuoteLineKind.Part).Sum(l => l.Price.Amount));
    }

    private static WayOff Way(params string[] needs) => new() { Needs = [.. needs.Select(n => new NodeId(n))], Time = TimeSpan.FromMinutes(12) };

    private static Inspection Look(string id, string renews) => new() { Id = new(id), Look = "look", Reuse = "no mark", ChanceBad = 0.3, RenewsWhenBad = [new(renews)] };

    /// <summary>cap, rod behind it, core behind the rod; each twelve minutes.</summary>
    private static ServiceModel Chain(Inspection atRod) => Model(
    [
        Part("cap", "C-1", 20m) with { WaysOff = [Way()] },
        Part("rod", "C-2", 60m) with { WaysOff = [Way("cap")], Inspections = [atRod] },
        Part("core", "C-3", 35m) with { WaysOff = [Way("rod")] },
    ]);

    private static Quote Quoted(ServiceModel model, string target) => QuoteMaker.Make(model, Strip(model, target), Rebuild(model, Strip(model, target)), s_settings);

    private static StripPlan Strip(ServiceModel model, string target) =>
        Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(new() { Model = model, Rates = new() { LabourPerHour = s_settings.LabourPerHour }, Targets = [new(target)] })).Plan;

    private static RebuildPlan Rebuild(ServiceModel model, StripPlan strip) => RebuildOrNone(model, strip)!;

    private static RebuildPlan? RebuildOrNone(ServiceModel model, StripPlan strip) => (RebuildPlanner.Plan(
        new() { Model = model, Rates = new() { LabourPerHour = s_settings.LabourPerHour }, Done = [.. strip.Steps.Select(s => s.Node)], Renewals = strip.Renewals }) as RebuildAnswer.Planned)?.Plan;

    private static ModelReading Bundled(string id, [CallerFilePath] string here = "") => ModelReader.ReadFile(Path.Combine(Path.GetDirectoryName(here)!, "../../models", id + ".yaml"));
}
