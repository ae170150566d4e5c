using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>Setting and proving in a story. The peaks are invented: a mean and a scatter, drawn with a fixed seed.</summary>
internal static class StoryProof
{
    private static readonly SystematicUncertainty Device = new(Pressure.FromBar(2.5), Pressure.FromBar(4), Pressure.FromBar(0.6));

    /// <summary>Found low, turned up by what the spring and seat say, read again; locked when asked.</summary>
    /// <param name="found">Mean as found, as a share of the nominal pressure, 0 to 1.</param>
    public static Story Set(this Story story, double found, bool locked = true)
    {
        var nominal = story.Model.Limits.Nominal;
        var low = found * nominal;
        story.Signed(SaltmarshHouse.Technician, new AsFoundRead([low, low + Pressure.FromBar(1.5), low - Pressure.FromBar(0.5)], SaltmarshHouse.PortGauge, null)).Later(4);
        story.Signed(SaltmarshHouse.Technician, new SettingPeakRead(low + Pressure.FromBar(0.5), SaltmarshHouse.PortGauge)).Later(2);
        story.Signed(SaltmarshHouse.Technician, new ReliefTurned(TurnFor(story.Model, nominal - low)), new SettingPeakRead(nominal - Pressure.FromBar(6.5), SaltmarshHouse.PortGauge)).Later(2);
        if (!locked)
            return story;
        story.Signed(SaltmarshHouse.Technician, new ReliefTurned(TurnFor(story.Model, Pressure.FromBar(6))), new SettingPeakRead(nominal - Pressure.FromBar(1), SaltmarshHouse.PortGauge));
        return story.Signed(SaltmarshHouse.Technician, new ReliefLocked(), new SettingPeakRead(nominal + Pressure.FromBar(0.5), SaltmarshHouse.PortGauge));
    }

    /// <summary>Opens a series and takes so many runs; when all planned ones are there, closes it with the verdict that the decision gives.</summary>
    public static Story Prove(this Story story, int runs, int seed)
    {
        var limits = story.Model.Limits;
        story.Acts(SaltmarshHouse.Technician, state =>
        [
            new SeriesOpened
            {
                Series = state.NextSeries, PlannedRuns = limits.ProofRuns, Limits = limits.Pressure, Maximum = limits.Maximum, Device = SaltmarshHouse.PortGauge, Systematic = Device,
                Coverage = 0.95, Confidence = 0.95, Rule = limits.Rule, Load = "die-close stop", Room = Temperature.FromCelsius(20.5), Oil = Temperature.FromCelsius(31),
            },
        ]);
        var chance = new Random(seed);
        for (var run = 1; run <= Math.Min(runs, limits.ProofRuns); run++)
        {
            var peak = limits.Nominal + 0.0025 * Normal(chance) * limits.Nominal;
            var number = run;
            story.Acts(SaltmarshHouse.Technician, state => [new RunTaken(state.OpenSeries!.Number, number, Pressure.FromBar(Math.Round(peak.Bar * 2) / 2), SaltmarshHouse.PortGauge)]).Later(-2);
        }

        return runs < limits.ProofRuns
            ? story
            : story.Acts(SaltmarshHouse.Lead, state => [new SeriesClosed(state.OpenSeries!.Number, ProofDecision.Decide(state.OpenSeries.ToProofSeries()))]);
    }

    /// <summary>Turn that raises the opening pressure: rise × (contact area − stem area) / (spring rate × pitch), in whole twelfths of a turn.</summary>
    private static Angle TurnFor(ServiceModel model, Pressure rise)
    {
        var barPerTurn = 45.0; // about what a spring of 25 N/mm, a pitch of 0.75 mm and a seat of 4.2 mm² give
        var up = 1;
        if (model.Behaviour?.Relief is { } relief)
        {
            var stem = relief.StemDiameter is { } d ? Area.OfCircle(d).SquareMetres : 0;
            var force = relief.SpringRate * relief.Pitch;
            barPerTurn = force.Newtons / (Area.OfCircle(relief.ContactDiameter).SquareMetres - stem) / 1e5;
            up = relief.ClockwiseRaises ? 1 : -1;
        }

        return Angle.FromTurns(up * Math.Round(12 * rise.Bar / barPerTurn) / 12);
    }

    /// <summary>A normal deviate by Box and Muller.</summary>
    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
