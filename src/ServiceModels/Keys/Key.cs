using System.Collections.Immutable;
using Ramwright.ServiceModels.Forms;

namespace Ramwright.ServiceModels.Keys;

/// <summary>
/// A key of the format. The reader, the JSON Schema and the reference page are all made from these entries, so none can say what another does not.
/// </summary>
/// <param name="Name">As written before the colon.</param>
/// <param name="Form">What its value may be.</param>
/// <param name="Meaning">One line for the reference page.</param>
/// <param name="Example">As written after the colon.</param>
internal sealed record Key(string Name, KeyForm Form, string Meaning, string Example)
{
    public bool Required { get; init; }

    /// <summary>What holds when the key is absent, in words; null when nothing is assumed.</summary>
    public string? Default { get; init; }
}

/// <summary>A group of keys.</summary>
/// <param name="Name">How the reference page calls it, such as 'a way off'.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Level">The level whose facts it holds, 0 to 3.</param>
/// <param name="Keys">In the order of the reference page.</param>
internal sealed record Section(string Name, string Meaning, int Level, ImmutableArray<Key> Keys)
{
    public Key? Find(string name) => Keys.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.Ordinal));
}
