using Microsoft.AspNetCore.Mvc.RazorPages;

namespace Ramwright.App.Web.Frame;

/// <summary>A page in the frame: it says what the frame shows around it.</summary>
public abstract class SheetPage : PageModel
{
    public abstract Sheet Sheet { get; }
}
