using System.Globalization;
using Ramwright.Simulate;

// dotnet run -c Release --project bench/Simulate -- NAME [SERIES]
// The tables of docs/explanation/how-often-a-verdict-is-wrong.md; seeded, one thread.
var series = args.Length > 1 && int.TryParse(args[1], CultureInfo.InvariantCulture, out var asked) && asked > 0 ? asked : 20_000;
switch (args is [var name, ..] ? name : "")
{
    case "own":
        OwnScatter.FalseAccepts(series);
        return 0;
    case "moderated":
        Moderated.FalseAccepts(series);
        return 0;
    case "good":
        GoodTools.Print(series);
        return 0;
    default:
        Console.Error.WriteLine("Give a name: own, moderated or good");
        return 2;
}
