namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Runs blocks of trials of a budget; one per thread, the same numbers whatever the thread.</summary>
internal sealed class TrialBlock
{
    private const int Chunk = 400; // trials at a time: what they need stays in the processor's nearest memory
    private readonly Budget budget;
    private readonly ulong seed;
    private readonly BlockMachine machine;
    private readonly double[][] inputs;
    private readonly double[][] scores;
    private readonly bool[] together;

    public TrialBlock(Budget budget, ulong seed)
    {
        (this.budget, this.seed) = (budget, seed);
        machine = new(budget.Model, Chunk);
        inputs = [.. budget.Inputs.Select(_ => new double[Chunk])];
        together = new bool[inputs.Length];
        foreach (var member in budget.Joint.SelectMany(g => g.Members))
            together[member] = true;
        scores = [.. Enumerable.Range(0, budget.Joint.Select(g => g.Members.Length).DefaultIfEmpty(0).Max()).Select(_ => new double[Chunk])];
    }

    /// <summary>Fills the results of one block.</summary>
    /// <param name="block">Its number, from 0: the random numbers depend on it and the seed alone.</param>
    /// <param name="results">One result for each trial.</param>
    public void Run(int block, Span<double> results)
    {
        var random = new RandomStream(seed, (ulong)block);
        for (var done = 0; done < results.Length; done += Chunk)
        {
            for (var i = 0; i < inputs.Length; i++)
            {
                Array.Fill(inputs[i], budget.Inputs[i].Estimate);
                if (!together[i])
                    foreach (var component in budget.Inputs[i].Components)
                        Draws.Add(component, random, inputs[i]);
            }

            foreach (var group in budget.Joint)
                DrawTogether(group, random);
            var wanted = Math.Min(Chunk, results.Length - done);
            machine.Run(inputs)[..wanted].CopyTo(results[done..]);
        }
    }

    /// <summary>Jointly normal draws (JCGM 101:2008, 6.4.8, clause from memory): x = estimate + u·(L·z).</summary>
    private void DrawTogether(JointInputs group, RandomStream random)
    {
        for (var row = 0; row < group.Members.Length; row++)
        {
            Array.Clear(scores[row]);
            Draws.AddNormal(1, random, scores[row]);
        }

        for (var row = 0; row < group.Members.Length; row++)
        {
            var input = inputs[group.Members[row]];
            var standard = budget.Inputs[group.Members[row]].Standard;
            for (var column = 0; column <= row; column++)
            {
                var factor = standard * group.Factor[row][column];
                for (var i = 0; i < Chunk; i++)
                    input[i] += factor * scores[column][i];
            }
        }
    }
}
