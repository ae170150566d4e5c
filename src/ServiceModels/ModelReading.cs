using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Levels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels;

/// <summary>What reading a service model gave: the model, or every mistake in it.</summary>
public abstract record ModelReading
{
    private ModelReading() { } // closed: these two answers and no others

    /// <summary>The model is sound. Notes are advice that refuses nothing.</summary>
    public sealed record Read(ServiceModel Model, LevelReport Levels, ImmutableArray<Mistake> Notes) : ModelReading;

    /// <summary>Nothing was loaded.</summary>
    /// <param name="Mistakes">One or more, in the order of the file.</param>
    /// <param name="Unreadable">The file could not be taken apart at all: not there, no text, too large or no YAML.</param>
    public sealed record Refused(ImmutableArray<Mistake> Mistakes, bool Unreadable) : ModelReading;
}
