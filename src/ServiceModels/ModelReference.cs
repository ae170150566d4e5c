using System.Text;
using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels;

/// <summary>The tables of docs/service-model.md, made from the reader's own table of keys; a test holds the page against them.</summary>
public static class ModelReference
{
    /// <summary>One table for each group of keys, then the list of hazards, as Markdown.</summary>
    public static string Write()
    {
        var text = new StringBuilder();
        foreach (var section in ModelKeys.Sections())
            WriteSection(text, section);
        text.Append("### hazards\n\nWords for `hazard`. Another word is taken, with a note, and gets the general sign.\n\n| word | what it says |\n|---|---|\n");
        foreach (var (word, meaning, _) in Hazards.All)
            text.Append("| `").Append(word).Append("` | ").Append(meaning).Append(" |\n");
        return text.ToString();
    }

    private static void WriteSection(StringBuilder text, Section section)
    {
        text.Append("### ").Append(section.Name).Append("\n\n").Append(section.Meaning).Append(FormattableString.Invariant($" Level {section.Level}.\n\n"));
        text.Append("| key | meaning | value and unit | default | example |\n|---|---|---|---|---|\n");
        foreach (var key in section.Keys)
        {
            var fallback = key.Required ? "**required**" : key.Default ?? "none";
            text.Append("| `").Append(key.Name).Append("` | ").Append(Cell(key.Meaning)).Append(" | ").Append(Cell(Linked(key.Form))).Append(" | ")
                .Append(Cell(fallback)).Append(" | `").Append(Cell(key.Example)).Append("` |\n");
        }

        text.Append('\n');
    }

    private static string Linked(KeyForm form) => form switch
    {
        SectionForm s => Link(s.Section),
        ListForm { Item: SectionForm s } => $"list of {Link(s.Section)}",
        IdMapForm { Item: SectionForm s } => $"by id: {Link(s.Section)}",
        IdMapForm { Item: ToolForm t } => $"by id: {Link(t.Bought)} or {Link(t.Made)}",
        _ => form.Words,
    };

    private static string Link(Section section) => $"[{section.Name}](#{section.Name.Replace(' ', '-')})";

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
