using System.Net;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Mvc.Razor;
using Ramwright.App.Demo;
using Ramwright.App.Devices;
using Ramwright.App.Installed;
using Ramwright.App.Papers;
using Ramwright.App.Papers.Check;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Stations.Find;
using Ramwright.App.Stations.Find.Recordings;
using Ramwright.App.Stations.Plan;
using Ramwright.App.Stations.Price;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Prove.Live;
using Ramwright.App.Stations.Rebuild;
using Ramwright.App.Stations.Release;
using Ramwright.App.Stations.Set;
using Ramwright.App.Stations.Strip;
using Ramwright.App.Web.Assets;
using Ramwright.App.Web.Errors;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Security;
using Ramwright.App.Web.Tablet;
using Ramwright.Records.Store;

namespace Ramwright.App.Web;

/// <summary>The one door to the web bench.</summary>
public static class WebHost
{
    /// <summary>A bench ready to run; the caller starts it.</summary>
    public static WebApplication Build(ServeOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(WebHost).Assembly.GetName().Name, ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders().AddSimpleConsole(o => o.SingleLine = true).SetMinimumLevel(LogLevel.Warning);
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting", LogLevel.None); // what stops the start is thrown, and said once in plain words
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Logging.AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Error);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 8 * 1024 * 1024;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            kestrel.Listen(options.Address is "localhost" ? IPAddress.Loopback : IPAddress.Parse(options.Address), options.Port);
        });

        AddServices(builder.Services, options);
        var app = builder.Build();
        app.UseSecurityHeaders();
        app.UseHostCheck(options.Address);
        app.UseErrorPages();
        app.UseRouting();
        app.MapAssets();
        app.MapPapers();
        app.MapCheckPage();
        app.MapLiveSeries();
        app.MapGet("/tablet.css", (HttpContext http) => Results.Text(TabletCookie.Of(http.Request.Cookies[TabletCookie.Name]).Css(), "text/css; charset=utf-8"));
        app.MapRazorPages();
        return app;
    }

    private static void AddServices(IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton(options.Clock);
        services.AddSingleton(new Ledger(Path.Combine(Directory.CreateDirectory(options.DataFolder).FullName, DataFolder.LedgerFile), options.Clock));
        services.AddSingleton(new ShopModels(Path.Combine(options.DataFolder, "models"), BundledModels.Folder));
        services.AddSingleton(s => new PaperArchive(Path.Combine(options.DataFolder, "papers"), s.GetRequiredService<Ledger>()));
        services.AddSingleton<Bench>();
        if (options.Demo)
            services.AddHostedService<DemoFiller>();
        services.AddSingleton<ArriveStation>();
        services.AddSingleton<FindStation>();
        services.AddSingleton<Diagnosing>();
        services.AddSingleton<StrokeReader>();
        services.AddSingleton(new StrokeFiles(Path.Combine(options.DataFolder, "recordings")));
        services.AddSingleton<PlanStation>();
        services.AddSingleton<PriceStation>();
        services.AddSingleton<StripStation>();
        services.AddSingleton<RebuildStation>();
        services.AddSingleton<SetStation>();
        services.AddSingleton<ProveStation>();
        services.AddSingleton<ReferenceStation>();
        services.AddSingleton<SeriesRunner>();
        services.AddSingleton<ReleaseStation>();
        services.AddSingleton(new SimulatedBench(options.Clock, options.DevicePace));

        // Forms drawn before a restart must still be taken after it: their keys are kept with the data.
        services.AddDataProtection().SetApplicationName("ramwright").PersistKeysToFileSystem(Directory.CreateDirectory(Path.Combine(options.DataFolder, "keys")));
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = "form";
            o.Cookie.SameSite = SameSiteMode.Strict;
            o.Cookie.HttpOnly = true;
        });
        services.AddRazorPages(o => o.RootDirectory = "/");
        services.Configure<RazorViewEngineOptions>(o =>
        {
            o.PageViewLocationFormats.Add("/Web/Parts/{0}.cshtml");
            o.PageViewLocationFormats.Add("/Web/Frame/{0}.cshtml");
            o.PageViewLocationFormats.Add("/Stations/{0}.cshtml");
        });
        services.Configure<Microsoft.AspNetCore.Http.Features.FormOptions>(o =>
        {
            o.ValueCountLimit = 2000;
            o.ValueLengthLimit = 64 * 1024;
            o.MultipartBodyLengthLimit = 8 * 1024 * 1024;
        });
    }
}
