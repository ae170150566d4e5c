using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Bench.Stroke;

/// <summary>The peers' programs: what they are given, how they are made and run, and what they print.</summary>
internal static class PeerStroke
{
    /// <summary>Name and value a line, SI, in the order in which the C program reads them.</summary>
    public static IEnumerable<string> Parameters(StrokeParameters tool, StrokePlan plan)
    {
        if (tool.WeepLeak > 0 || plan.PausePascals is not null || plan.Load is not StrokeLoad.DiesClose)
            throw new ArgumentException("The peers know closing dies, no pause and no weeping.", nameof(tool));
        var (limits, behind) = (double.IsFinite(tool.CurrentLimitAmperes), tool.InletLeak + tool.PistonLeak);
        (string Name, double Value)[] all =
        [
            ("volts", tool.SupplyVolts), ("ohms", tool.ResistanceOhms), ("torque", tool.TorqueConstant), ("motorFriction", tool.MotorFrictionNewtonMetres), ("inertia", tool.Inertia),
            ("gear", tool.GearRatio), ("efficiency", tool.GearEfficiency), ("limitAmperes", limits ? tool.CurrentLimitAmperes : 1e9),
            ("limitEnds", limits ? (tool.SupplyVolts - tool.ResistanceOhms * tool.CurrentLimitAmperes) / tool.TorqueConstant : -1), ("stall", Math.Min(tool.CurrentLimitAmperes, tool.SupplyVolts / tool.ResistanceOhms)),
            ("filled", tool.Filling * tool.DisplacementCubicMetres), ("chamber", tool.ChamberCubicMetres), ("deliveryLeak", tool.DeliveryLeak), ("chamberLeak", 0.5 * behind),
            ("standingLeak", tool.Inlet == ServiceModels.Model.InletKind.Port ? tool.DeliveryLeak : tool.DeliveryLeak + behind > 0 ? tool.DeliveryLeak * behind / (tool.DeliveryLeak + behind) : 0),
            ("bypass", tool.BypassLeak), ("usable", tool.UsableOilCubicMetres), ("modulus", tool.Oil.ModulusAtZeroPascals), ("modulusSlope", tool.Oil.ModulusSlope), ("air", tool.Oil.AirShare),
            ("exponent", tool.Oil.Exponent), ("density", tool.Density), ("dead", tool.DeadCubicMetres), ("area", tool.RamSquareMetres), ("stroke", tool.StrokeMetres), ("mass", tool.MassKilograms),
            ("viscous", tool.ViscousFriction), ("dry", tool.DryFrictionNewtons), ("seal", tool.SealFrictionShare), ("preload", tool.SpringPreloadNewtons), ("spring", tool.SpringNewtonsPerMetre),
            ("frame", tool.FrameNewtonsPerMetre), ("opens", tool.ReliefPascals), ("closing", tool.ClosingRatio), ("reliefArea", tool.ReliefOpenSquareMetres), ("delay", tool.ReliefDelaySeconds),
            ("reliefSeconds", tool.ReliefSeconds), ("sensor", tool.SensorSeconds), ("stop", tool.StopDelaySeconds), ("lead", plan.LeadSeconds), ("settle", 0.25), ("longestReturn", 4), ("giveUp", plan.GiveUpSeconds),
        ];
        return all.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Name} {p.Value:R}"));
    }

    /// <summary>Compiles the C program into a folder.</summary>
    public static string Compile(string folder)
    {
        var program = Path.Combine(folder, "stroke");
        Run("gcc", ["-O2", "-std=c11", "-D_GNU_SOURCE", "-o", program, Source("stroke.c"), "-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_sunmatrixdense", "-lsundials_sunlinsoldense", "-lm"]);
        return program;
    }

    /// <summary>A peer's program text, copied beside this one when it was built.</summary>
    public static string Source(string name) => Path.Combine(AppContext.BaseDirectory, "Stroke", name);

    /// <summary>Runs to the end, one thread, and gives what it printed.</summary>
    public static string Run(string program, IEnumerable<string> words)
    {
        var start = new ProcessStartInfo(program, words) { RedirectStandardOutput = true, UseShellExecute = false };
        (start.Environment["OPENBLAS_NUM_THREADS"], start.Environment["OMP_NUM_THREADS"]) = ("1", "1");
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} does not start.");
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? text : throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
    }

    /// <summary>A line a tolerance: tolerance, seconds, steps, refused, slopes, then the events' times.</summary>
    public static WorkPrecision Read(string name, string printed, ImmutableArray<double> reference)
    {
        var points = ImmutableArray.CreateBuilder<WorkPoint>();
        foreach (var line in printed.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            double[] cells = [.. line.Split(' ').Select(c => c is "nan" or "-nan" ? double.NaN : double.Parse(c, CultureInfo.InvariantCulture))];
            points.Add(new(cells[0], cells[1], (int)cells[2], (int)cells[3], WorkPrecision.Off([.. cells[5..]], reference)));
        }

        return new(name, points.ToImmutable());
    }
}
