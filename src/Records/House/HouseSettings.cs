using Ramwright.Metrology.Quantities;
using Ramwright.Parts;
using Ramwright.Planning;

namespace Ramwright.Records.House;

/// <summary>Units that people see.</summary>
public enum UnitSystem { Metric, Imperial }

/// <summary>Size of the paper in the printer.</summary>
public enum PaperSize { A4, Letter }

/// <summary>What the house decides once for all its jobs.</summary>
public sealed record HouseSettings
{
    public required string ShopName { get; init; }

    /// <summary>Lines under the name on paper.</summary>
    public string ShopAddress { get; init; } = "";

    /// <summary>Letters before the job number, one to four capitals.</summary>
    public string JobLetters { get; init; } = "J";

    /// <summary>Number of the first job, for a house that goes on from its paper books; 1 or more.</summary>
    public int FirstJobNumber { get; init; } = 1;

    public required Money LabourPerHour { get; init; }

    /// <summary>0.19 is 19 %.</summary>
    public double TaxRate { get; init; }

    public TimeSpan QuoteValidFor { get; init; } = TimeSpan.FromDays(30);
    public TimeSpan ToolChange { get; init; } = TimeSpan.FromSeconds(30);
    public TimeSpan PostureChange { get; init; } = TimeSpan.FromSeconds(45);
    public UnitSystem Units { get; init; }
    public PaperSize Paper { get; init; }

    /// <summary>Coverage asked of a proof where the model says nothing, above 0 and below 1.</summary>
    public double Coverage { get; init; } = 0.95;

    /// <summary>Confidence asked of a proof where the model says nothing, above 0 and below 1.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Greatest chance (0 to 1) that a setting run may have of passing the maximum pressure.</summary>
    public double ChancePastMaximum { get; init; } = 0.001;

    /// <summary>Most force of the bench press, for the guard in front of it; null where there is none.</summary>
    public Force? PressLimit { get; init; }

    /// <summary>ISO 4217 code of the house's money.</summary>
    public string Currency => LabourPerHour.Currency;

    public Rates Rates => new() { LabourPerHour = LabourPerHour, ToolChange = ToolChange, PostureChange = PostureChange };

    public PriceSettings Prices => new(LabourPerHour, TaxRate, QuoteValidFor);

    /// <summary>A house that has not been set up yet: no name, labour at 60 euro an hour, 20 % tax.</summary>
    public static HouseSettings Unset { get; } = new() { ShopName = "Unnamed shop", LabourPerHour = new(60, "EUR"), TaxRate = 0.20 };
}
