using System.Collections;

namespace Ramwright.App.Web.Parts;

/// <summary>Something wrong in a form: which field, what is wrong, how to mend it.</summary>
/// <param name="Field">The id of the field, which is also its name in the form; empty when it is about the whole form.</param>
public sealed record FormMistake(string Field, string What, string? Mend = null);

/// <summary>All mistakes of one post, at once. What was typed stays in its field.</summary>
public sealed class FormMistakes : IReadOnlyList<FormMistake>
{
    private readonly List<FormMistake> all = [];

    public int Count => all.Count;

    public FormMistake this[int index] => all[index];

    public void Add(string field, string what, string? mend = null) => all.Add(new(field, what, mend));

    public void Add(FormMistake mistake) => all.Add(mistake);

    /// <summary>The first mistake about a field, or null.</summary>
    public FormMistake? At(string field) => all.Find(m => m.Field == field);

    public IEnumerator<FormMistake> GetEnumerator() => all.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
