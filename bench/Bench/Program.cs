using Ramwright.Bench;
using Ramwright.Bench.Finding;
using Ramwright.Bench.Stroke;

// dotnet run -c Release --project bench/Bench -- NAME
switch (args is [var name, ..] ? name : "")
{
    case "plans":
        StripPlans.Run(args.ElementAtOrDefault(1) ?? "models");
        return 0;
    case "factor":
        ToleranceFactors.Run();
        return 0;
    case "trials":
        BudgetTrials.Run(args.ElementAtOrDefault(1) ?? "/usr/bin/python3");
        return 0;
    case "setting":
        if (args is [_, "time", ..])
            SettingSimulation.Time();
        else // setting [COUNT [rarer]]
            SettingSimulation.Run(args is [_, var count, ..] ? int.Parse(count, System.Globalization.CultureInfo.InvariantCulture) : 2_000, rarer: args is [_, _, "rarer", ..]);
        return 0;
    case "finding": // finding [PYTHON]
        PosteriorSpeed.Run(args.ElementAtOrDefault(1) ?? "/usr/bin/python3");
        AdviceSpeed.Run("models");
        return 0;
    case "stroke": // stroke [PLOT.svg]
        StrokeSpeed.Run("models", "/usr/bin/python3", args.ElementAtOrDefault(1));
        return 0;
    case "events": // events [COUNT]
        MissedEvents.Run(args is [_, var tools, ..] ? int.Parse(tools, System.Globalization.CultureInfo.InvariantCulture) : 10_000, "models");
        return 0;
    default:
        Console.Error.WriteLine("Give a name: plans, factor, trials, setting, finding, stroke, events");
        return 2;
}
