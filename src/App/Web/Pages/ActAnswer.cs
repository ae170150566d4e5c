using System.Collections.Immutable;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Web.Pages;

/// <summary>What became of an act at a station.</summary>
public abstract record ActAnswer
{
    private ActAnswer() { }

    /// <summary>In the ledger, under this number.</summary>
    public sealed record Done(JobId? Job, EntryNumber Entry, bool Repeated) : ActAnswer;

    /// <summary>Something runs now that writes its entries by itself; the page that shows it.</summary>
    public sealed record Begun(string Page) : ActAnswer;

    /// <summary>Not recorded: what was given has mistakes.</summary>
    public sealed record Refused(ImmutableArray<FormMistake> Mistakes) : ActAnswer;

    /// <summary>Not recorded: others signed something since the form was drawn.</summary>
    public sealed record Overtaken(ImmutableArray<Entry<JobEvent>> Since) : ActAnswer;

    public static ActAnswer Of(Appended answer) => answer switch
    {
        Appended.Written w => new Done(w.Job, w.Numbers.IsEmpty ? w.Head.Number : w.Numbers[^1], w.Repeated),
        Appended.Conflict c => new Overtaken(c.Since),
        Appended.Refused r => Refuse("", r.What, r.Mend),
        _ => throw new InvalidOperationException($"The ledger answered with {answer.GetType().Name}."),
    };

    public static ActAnswer Refuse(string field, string what, string? mend = null) => new Refused([new FormMistake(field, what, mend)]);

    public static ActAnswer Refuse(FormMistakes mistakes) => new Refused([.. mistakes]);
}
