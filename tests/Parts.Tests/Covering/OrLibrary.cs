using System.Globalization;
using System.Runtime.CompilerServices;
using Ramwright.Parts.Covering;

namespace Ramwright.Parts.Tests.Covering;

/// <summary>Reads weighted set covering problems as OR-Library writes them: rows and columns, column costs, then per row how many and which columns cover it.</summary>
internal static class OrLibrary
{
    public static CoverProblem Read(string name, [CallerFilePath] string here = "")
    {
        var numbers = File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "../Published/set-cover", name + ".txt"))
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(t => int.Parse(t, CultureInfo.InvariantCulture)).ToArray();
        var (rows, columns, at) = (numbers[0], numbers[1], 2);
        var costs = numbers[at..(at += columns)];
        var contents = costs.Select(_ => new List<Gives>()).ToArray();
        for (var row = 0; row < rows; row++)
        {
            var count = numbers[at++];
            foreach (var column in numbers[at..(at += count)])
                contents[column - 1].Add(new(row, 1));
        }
        Assert.Equal(numbers.Length, at);
        return new([.. Enumerable.Repeat(1, rows)], [.. costs.Select((c, i) => new CoverColumn(c, [.. contents[i]]))]);
    }
}
