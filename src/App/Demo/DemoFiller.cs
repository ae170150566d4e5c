using Ramwright.App.Papers;
using Ramwright.App.Web.Pages;

namespace Ramwright.App.Demo;

/// <summary>Fills the made-up house before the first page is asked for.</summary>
internal sealed class DemoFiller(Bench bench, PaperArchive archive) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken) => new SaltmarshRack(bench, archive).FillAsync();

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
