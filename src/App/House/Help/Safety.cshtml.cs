using System.Collections.Immutable;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.House.Help;

/// <summary>What can hurt at such tools, and what comes first.</summary>
public sealed class SafetyPage(Bench bench) : BenchPage(bench)
{
    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "Safety",
        Eyebrow = "The maker’s instructions, local rules and licensed practice come first",
        Place = "help",
        Wide = true,
        Block = [HouseField, DayField, PersonField, new("Sheet", "safety", Less: true)],
    };

    public static ImmutableArray<Caution> Cautions { get; } =
    [
        new(CautionLevel.Danger, "oil-injection", "Oil at 700 bar goes through glove and skin. An injection injury is an emergency at once, however small it looks: to a hospital now, and say high-pressure injection. Never look for a leak with the hand"),
        new(CautionLevel.Warning, "stored-spring-energy", "Springs and press pins fly. Stand out of the axis, hold what is about to come loose, wear eye protection"),
        new(CautionLevel.Warning, "battery-short", "Lithium packs short and swell. The pack is the first thing off and the last thing on; a damaged one is laid outside on stone and not charged"),
        new(CautionLevel.Warning, "crush", "Blocks between the jaws, never hands. Setting and proof runs are made behind a guard"),
        new(CautionLevel.Caution, "hot-surface", "Oil and motor are hot after a series. Let them cool before the tool is opened"),
    ];
}
