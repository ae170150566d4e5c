using System.CommandLine;
using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>What an hour of labour costs, for verbs that plan.</summary>
internal static class RateOption
{
    private const decimal Most = 10_000m;

    public static Option<decimal> Create() => new("--rate") { Description = "labour per hour, in the model's currency", HelpName = "MONEY", DefaultValueFactory = _ => 66m };

    /// <summary>The rates that follow, or null with a mistake added.</summary>
    public static Rates? Read(decimal perHour, ServiceModel model, List<Mistake> found)
    {
        if (perHour is >= 0 and <= Most)
            return new Rates { LabourPerHour = new Money(perHour, ModelCurrency.Of(model)) };
        found.Add(new Mistake(Place.Whole("--rate"), string.Create(CultureInfo.InvariantCulture, $"{perHour} an hour is no labour rate"), "write an amount from 0 to 10,000", "usage"));
        return null;
    }
}
