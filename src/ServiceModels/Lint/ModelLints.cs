using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Looks for what parses but cannot work.</summary>
internal static class ModelLints
{
    /// <param name="draft">The model as far as it could be built.</param>
    /// <param name="mistakes">What refuses the model.</param>
    /// <param name="notes">Advice that refuses nothing.</param>
    public static void Run(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        LimitsLint.Look(draft, mistakes, notes);
        SealLint.Look(draft, mistakes, notes);
        ReachLint.Look(draft, mistakes, notes);
        SupplyLint.Look(draft, mistakes);
        WorkLint.Look(draft, mistakes, notes);
        FindLint.Look(draft, mistakes, notes);
    }
}
