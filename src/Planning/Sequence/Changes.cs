namespace Ramwright.Planning.Sequence;

/// <summary>Which changes of tool and posture let some waiting step go on.</summary>
internal static class Changes
{
    /// <summary>Each pair once, in the order of the steps. Nothing is changed that the step does not ask for: a change made early is never cheaper.</summary>
    public static List<(int Tool, int Posture)> From(SequenceProblem problem, NodeSet done, int tool, int posture)
    {
        var changes = new List<(int, int)>();
        for (var step = 0; step < problem.Count; step++)
        {
            if (done[step] || !problem.BeforeSets[step].IsSubsetOf(done))
                continue;
            var change = (problem.Tool[step] == SequenceProblem.None ? tool : problem.Tool[step],
                problem.Posture[step] == SequenceProblem.None ? posture : problem.Posture[step]);
            if (!changes.Contains(change))
                changes.Add(change);
        }

        return changes;
    }
}
