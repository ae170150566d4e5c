using System.Xml.Linq;

namespace Ramwright.House.Tests;

public sealed class RoomsTests
{
    /// <summary>What each room may name directly; what those name comes along.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Metrology"] = [],
        ["Fluids"] = ["Metrology"],
        ["Seals"] = ["Metrology"],
        ["ServiceModels"] = ["Metrology", "Fluids", "Seals"],
        ["Planning"] = ["Metrology", "ServiceModels"],
        ["Hydraulics"] = ["Metrology", "Fluids", "ServiceModels"],
        ["Diagnosis"] = ["Metrology", "ServiceModels", "Planning", "Hydraulics"],
        ["Setting"] = ["Metrology", "ServiceModels"],
        ["Proving"] = ["Metrology", "ServiceModels"],
        ["Parts"] = ["Metrology", "ServiceModels", "Planning"],
        ["Instruments"] = ["Metrology"],
        ["Records"] = ["Metrology", "ServiceModels", "Planning", "Parts", "Setting", "Proving", "Instruments"],
        ["Paper"] = ["Metrology", "ServiceModels", "Planning", "Hydraulics", "Parts", "Setting", "Proving", "Records"],
        ["App"] = ["Metrology", "Fluids", "Seals", "ServiceModels", "Planning", "Hydraulics", "Diagnosis", "Setting", "Proving", "Parts", "Instruments", "Records", "Paper"],
    };

    [Fact]
    public void A_room_references_only_rooms_below_it()
    {
        var broken = new List<Broken>();
        foreach (var room in House.Rooms)
        {
            var project = Path.Combine(House.Root, "src", room, room + ".csproj");
            var named = XDocument.Load(project).Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value));
            broken.AddRange(named.Where(n => !MayUse[room].Contains(n, StringComparer.Ordinal)).Select(n => new Broken($"src/{room}/{room}.csproj", 1, $"{room} may not use {n}")));
        }

        Broken.None(broken, "References point down only: move the type to the lower room, or pass what is needed as a value.");
    }

    [Fact]
    public void Every_room_has_its_page_and_its_tests()
    {
        var broken = new List<Broken>();
        foreach (var room in House.Rooms)
        {
            if (!File.Exists(Path.Combine(House.Root, "src", room, "README.md")))
                broken.Add(new($"src/{room}", 1, "no README.md"));
            if (!House.Code($"tests/{room}.Tests").Any())
                broken.Add(new($"tests/{room}.Tests", 1, "no test"));
        }

        Broken.None(broken, "A room says on one page what it answers and where its formulas come from, and has tests of its own.");
    }

    [Fact]
    public void Computing_rooms_know_no_files_sockets_or_clock()
    {
        string[] pure = ["Metrology", "Fluids", "Seals", "Planning", "Hydraulics", "Diagnosis", "Setting", "Proving", "Parts"];
        string[] barred = ["System.IO", "System.Net", "File.", "Console.", "Environment."];
        var broken = pure.SelectMany(room => House.Code($"src/{room}"))
            .SelectMany(file => file.Lines.Select((line, i) => (file, line, i)))
            .Where(at => !at.line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .SelectMany(at => barred.Where(b => Names(at.line, b)).Select(b => new Broken(at.file.Path, at.i + 1, b)));
        Broken.None(broken, "Pure computation knows no I/O: take the text, the time or the numbers as arguments.");
    }

    private static bool Names(string line, string word)
    {
        var at = line.IndexOf(word, StringComparison.Ordinal);
        return at >= 0 && (at == 0 || !(char.IsLetterOrDigit(line[at - 1]) || line[at - 1] is '.' or '_' or '"'));
    }
}
