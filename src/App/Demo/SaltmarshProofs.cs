using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Set;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Demo;

/// <summary>Carries a tool of the made-up house on through Set and Prove. All readings are invented.</summary>
public sealed class SaltmarshProofs(Bench bench)
{
    /// <summary>What the runs read beside the nominal pressure, as a share of it.</summary>
    private static readonly double[] Beside = [0.0017, -0.0021, 0.0040, -0.0004, 0.0009, -0.0030, 0.0026, 0.0013, -0.0013, 0.0024, -0.0017, 0.0006, -0.0009, 0.0019, -0.0024];

    private readonly SetStation set = new(bench);
    private readonly ProveStation prove = new(bench);

    /// <summary>One run, as found and too low.</summary>
    public async Task ReadAsFoundAsync(JobId id, double bar, InstrumentId device) =>
        DemoAct.Must(await set.ReadAsync(Sign(), id, Pressure.FromBar(bar), device));

    /// <summary>Sets and locks the screw, opens a series and takes runs; with all of them the series is closed and the job stands at Release.</summary>
    public async Task ProveAsync(JobId id, ServiceModel model, InstrumentId device, int runs)
    {
        DemoAct.Must(await set.ReadAsync(Sign(), id, model.Limits.Nominal, device));
        DemoAct.Must(await set.LockAsync(Sign(), id));
        DemoAct.Must(await set.ReadAsync(Sign(), id, Peak(model, 1), device));
        DemoAct.Must(await set.FinishAsync(Sign(), id));
        DemoAct.Must(await prove.OpenAsync(Sign(), id, new SeriesWish(device, "dies closed on nothing", Temperature.FromCelsius(20), null)));
        for (var run = 0; run < runs; run++)
            DemoAct.Must(await prove.TakeRunsAsync(Sign(), id, [new GivenRun(Peak(model, run))]));
        if (runs < model.Limits.ProofRuns)
            return;
        DemoAct.Must(await prove.CloseAsync(Sign(), id));
        DemoAct.Must(await prove.GoAsync(Sign(), id, Station.Release, null));
    }

    private static Pressure Peak(ServiceModel model, int run) => (1 + Beside[run % Beside.Length]) * model.Limits.Nominal;

    private static Signature Sign() => new(SubmitToken.New(), SaltmarshHouse.Lead);
}
