using Microsoft.AspNetCore.Mvc.RazorPages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Ids;

namespace Ramwright.App.Web.Frame;

/// <summary>A page in the frame: it says what the frame shows around it, what was wrong in its form, and which entry it has just written.</summary>
public abstract class SheetPage : PageModel
{
    public abstract Sheet Sheet { get; }

    /// <summary>What was wrong in the form that was sent; shown above the work, each leading to its field.</summary>
    public FormMistakes Mistakes { get; } = new();

    /// <summary>The token of this drawing of the page: the same form sent twice is one entry.</summary>
    public SubmitToken Token { get; } = SubmitToken.New();

    /// <summary>The entry that the last act became, from <c>?entry=1234</c>.</summary>
    public EntryNumber? Written => EntryNumber.TryParse(Request.Query["entry"], out var number) && number.Value > 0 ? number : null;

    /// <summary>A sentence about the person at the vice, where somebody is needed and nobody was chosen.</summary>
    public virtual bool NeedsPerson => false;
}
