using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Learning;

/// <summary>What a closed job knows about the faults of its tool.</summary>
/// <param name="Network">The fault network of its model.</param>
/// <param name="Evidence">What was seen, checked and measured before the repair.</param>
/// <param name="Examined">Faults that somebody looked for: true when it was there. An unexamined fault is not an absent one: it is left out here.</param>
public sealed record ClosedJob(FaultNetwork Network, Evidence Evidence, ImmutableDictionary<FaultId, bool> Examined);
