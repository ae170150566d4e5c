using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Now;

/// <summary>Leads to the station where the job is; an entry number just written goes along.</summary>
public sealed class NowPage(Bench bench) : PageModel
{
    public async Task<IActionResult> OnGetAsync(string job)
    {
        if (!JobId.TryParse(job, out var id) || await bench.Ledger.ReadAsync(id, HttpContext.RequestAborted) is not { } state)
            return NotFound();
        return LocalRedirect((state.IsOpen ? StationOrder.Url(id, state.Station) : $"/jobs/{id}") + Request.QueryString);
    }
}
