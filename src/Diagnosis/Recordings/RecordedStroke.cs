using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Hydraulics.Identification;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Recordings;

/// <summary>What an identified stroke weighs among the faults of a model.</summary>
/// <remarks>
/// Identification gives each fault the probability that its figure lies beyond what a sound tool has, the fault's rate not counted. It is taken as the probability at
/// even odds: the factor P(recording | fault) / P(recording | sound) is its odds. A fault that identification looked for and did not name keeps a probability of 5 %: faint
/// ones are missed.
/// </remarks>
public static class RecordedStroke
{
    private const double LeastProbability = 0.05, MostProbability = 0.995;

    /// <param name="told">Of a tool of this model.</param>
    public static RecordingEvidence Evidence(ServiceModel model, IdentificationAnswer.Told told)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(told);
        var factors = ImmutableDictionary.CreateBuilder<ServiceModels.Model.FaultId, double>();
        foreach (var fault in model.Faults)
        {
            var named = told.Faults.FirstOrDefault(f => f.Id == fault.Id.Value)?.Probability;
            if (named is null && !LookedFor(fault.Id.Value, told))
                continue;
            var p = Math.Clamp(named ?? 0, LeastProbability, MostProbability);
            factors[fault.Id] = p / (1 - p);
        }

        return new(factors.ToImmutable(), [.. Shows(told).Where(s => model.Symptoms.Any(m => m.Id == s))], [.. Measures(told)]);
    }

    /// <summary>Whether the recording tells the figure that the fault would change: then not naming it speaks against it.</summary>
    private static bool LookedFor(string fault, IdentificationAnswer.Told told) => fault switch
    {
        Hydraulics.Identification.FaultId.AirInOil => told[ParameterName.EntrainedAir].Identified,
        Hydraulics.Identification.FaultId.LowFill => told[ParameterName.PumpFill].Identified,
        Hydraulics.Identification.FaultId.DeliveryCheckLeaks => told[ParameterName.DeliveryCheckLeak].Identified,
        Hydraulics.Identification.FaultId.InletCheckLeaks => told[ParameterName.InletLeak].Identified,
        Hydraulics.Identification.FaultId.BypassLeaks => told[ParameterName.BypassLeak].Identified || told[ParameterName.HoldLeak].Identified,
        Hydraulics.Identification.FaultId.ReliefLow or Hydraulics.Identification.FaultId.ReliefHigh => told[ParameterName.ReliefOpening].Identified,
        Hydraulics.Identification.FaultId.ReliefSeatDamaged => told[ParameterName.ReliefClosing].Identified,
        Hydraulics.Identification.FaultId.WeakDrive => told[ParameterName.DriveResistance].Identified,
        Hydraulics.Identification.FaultId.OilShort => told[ParameterName.PumpFill].Identified,
        Hydraulics.Identification.FaultId.RamBinds => told[ParameterName.RamFriction].Identified,
        _ => false,
    };

    private static IEnumerable<SymptomId> Shows(IdentificationAnswer.Told told)
    {
        List<string> shows = [];
        if (told[ParameterName.PumpFill].Identified)
            shows.AddRange(["slow", "short-stroke"]);
        if (told[ParameterName.HoldLeak].Identified)
            shows.Add("pressure-decays");
        if (told[ParameterName.ReliefOpening].Identified)
            shows.AddRange(["stops-low", "stops-high", "slow-under-load"]);
        if (told[ParameterName.EntrainedAir].Identified)
            shows.Add("spongy-rise");
        return shows.Select(s => new SymptomId(s));
    }

    private static IEnumerable<string> Measures(IdentificationAnswer.Told told)
    {
        if (told[ParameterName.PumpFill].Identified)
            yield return "advance-time";
        if (told[ParameterName.HoldLeak].Identified)
            yield return "hold";
        if (told[ParameterName.ReliefOpening].Identified)
            yield return "opening";
        if (told[ParameterName.DriveResistance].Identified)
            yield return "no-load-current";
    }
}
