using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Networks;

/// <summary>Reads the tables of probabilities, and at the end sees that each variable has one and none waits for itself.</summary>
internal sealed class BifTables(BifWalk walk, BifVariables variables)
{
    private const double MostCells = 4e6, RowSlack = 0.01;
    private readonly List<(int Variable, NetworkTable Table)> read = [];
    private double cells;

    /// <summary>By variable; all there once <see cref="Close"/> found no mistake.</summary>
    public NetworkTable?[] All { get; private set; } = [];

    public bool ReadOne()
    {
        var parents = new List<BifWord>();
        if (!walk.Expect("(") || !walk.Name("a variable", out var name))
            return false;
        if (walk.Next.Is("|"))
            walk.Take();
        if (!walk.Names("a parent", ")", parents) || !walk.Expect("{"))
            return false;
        var variable = variables.PlaceOf(name);
        int[] above = [.. parents.Select(variables.PlaceOf)];
        if (variable < 0 || above.Contains(-1))
            return false;
        if (above.Append(variable).Distinct().Count() <= above.Length)
        {
            walk.Add(name.At, $"a variable stands twice in the table of '{name.Text}'", "name each parent once, and not the variable itself", "network-name");
            return false;
        }

        var rows = above.Aggregate(1.0, (n, p) => n * variables.All[p].States.Length);
        var own = variables.All[variable].States.Length;
        if ((cells += rows * own) > MostCells)
        {
            walk.Add(name.At, $"with the table of '{name.Text}' the network has more than 4 million cells", "give a smaller network", "network-too-large");
            return false;
        }

        var table = new RowTable((int)rows, own);
        while (!walk.Next.Is("}"))
        {
            if (!ReadRow(above, table))
                return false;
        }

        var end = walk.Take();
        if (table.FirstMissing() is { } missing)
            walk.Add(end.At, $"the table of '{name.Text}' has no row for ({StatesOf(above, missing)})", "add the row, or a default", "network-table");
        read.Add((variable, new([.. above], table.Filled())));
        return true;
    }

    /// <summary>Each variable has one table, and following parents leads to an end.</summary>
    public void Close(string file)
    {
        All = new NetworkTable?[variables.All.Count];
        foreach (var (variable, table) in read)
        {
            if (All[variable] is not null)
                walk.Add(Place.Whole(file), $"'{variables.All[variable].Name}' has two tables", "take one away", "network-table");
            All[variable] = table;
        }

        foreach (var (variable, i) in variables.All.Select((v, i) => (v, i)).Where(v => All[v.i] is null).Take(10))
            walk.Add(Place.Whole(file), $"'{variable.Name}' has no table", "add a probability block for it", "network-table");
        if (walk.Mistakes.Count == 0 && Waiting() is [var first, ..])
            walk.Add(Place.Whole(file), $"'{variables.All[first].Name}' is its own ancestor, or below such a variable", "take one parent of the circle away", "network-circle");
        if (walk.Mistakes.Count == 0 && variables.All.Count == 0)
            walk.Add(Place.Whole(file), "there is no variable in it", "give a network in BIF text", "network-form");
    }

    private bool ReadRow(int[] above, RowTable table)
    {
        var word = walk.Take();
        switch (word.Text)
        {
            case "property":
                return walk.SkipProperty();
            case "table" when above.Length > 0:
                walk.Add(word.At, "a table without rows for a variable with parents", "write one row for each combination: (yes, no) 0.2, 0.8;", "network-table");
                return false;
            case "table":
                return Numbers(table, word, out var values) && Put(table, 0, values, word);
            case "default":
                return Numbers(table, word, out var others) && table.Default(others);
            case "(":
                var states = new List<BifWord>();
                return walk.Names("a state", ")", states) && RowOf(above, states, word, out var row) && Numbers(table, word, out var given) && Put(table, row, given, word);
            default:
                return walk.Wrong(word, "a row, table or default");
        }
    }

    private bool RowOf(int[] above, List<BifWord> states, BifWord at, out int row)
    {
        row = 0;
        if (states.Count != above.Length)
        {
            walk.Add(at.At, $"{states.Count} states for {above.Length} parents", "write one state of each parent, in the order of the parents", "network-table");
            return false;
        }

        for (var i = 0; i < above.Length; i++)
        {
            var parent = variables.All[above[i]];
            var state = parent.StateIndex(states[i].Text);
            if (state < 0)
            {
                walk.Add(states[i].At, $"{parent.Name} has no state '{states[i].Text}'", $"write one of {string.Join(", ", parent.States.Take(12))}", "network-name");
                return false;
            }

            row = row * parent.States.Length + state;
        }

        return true;
    }

    private bool Put(RowTable table, int row, double[] values, BifWord at)
    {
        if (table.Put(row, values))
            return true;
        walk.Add(at.At, "this row stands there twice", "take one away", "network-table");
        return false;
    }

    private bool Numbers(RowTable table, BifWord at, out double[] values)
    {
        var words = new List<BifWord>();
        values = [];
        if (!walk.Names("a probability", ";", words))
            return false;
        values = new double[words.Count];
        for (var i = 0; i < values.Length; i++)
        {
            if (!words[i].TryNumber(out values[i]) || values[i] is not (>= 0 and <= 1))
            {
                walk.Add(words[i].At, $"'{words[i].Text}' is no probability", "write a number from 0 to 1", "network-table");
                return false;
            }
        }

        var sum = values.Sum();
        if (values.Length == table.Own && Math.Abs(sum - 1) <= RowSlack)
            return true;
        walk.Add(at.At, string.Create(CultureInfo.InvariantCulture, $"{values.Length} probabilities that sum to {sum:0.####}; {table.Own} that sum to 1 are wanted"), "write one probability for each state", "network-table");
        return false;
    }

    /// <summary>Variables that are left when those are taken away, again and again, whose parents are gone.</summary>
    private List<int> Waiting()
    {
        var waits = All.Select(t => t!.Parents.Length).ToArray();
        var children = All.SelectMany((t, v) => t!.Parents.Select(p => (p, v))).ToLookup(l => l.p, l => l.v);
        var free = new Stack<int>(Enumerable.Range(0, waits.Length).Where(v => waits[v] == 0));
        while (free.TryPop(out var v))
        {
            foreach (var child in children[v])
            {
                if (--waits[child] == 0)
                    free.Push(child);
            }
        }

        return [.. Enumerable.Range(0, waits.Length).Where(v => waits[v] > 0)];
    }

    private string StatesOf(int[] above, int row)
    {
        var states = new Stack<string>();
        foreach (var parent in above.Reverse().Select(p => variables.All[p]))
        {
            states.Push(parent.States[row % parent.States.Length]);
            row /= parent.States.Length;
        }

        return string.Join(", ", states);
    }
}
