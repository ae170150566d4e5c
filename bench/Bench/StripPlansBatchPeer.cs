using Google.OrTools.Sat;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Bench;

/// <summary>The order as a row of batches, each with one tool and one posture in hand; a way falls in a batch that has what it takes.</summary>
/// <remarks>It is told how many batches are enough, which no planner knows beforehand: that makes its problem smaller than ours.</remarks>
/// <param name="batches">How many batches at the most, 1 or more.</param>
internal sealed class StripPlansBatchPeer(StripJob job, int batches) : StripPlansPeer(job)
{
    protected override void Changes(BoolVar[] used, Dictionary<NodeId, IntVar> rank)
    {
        var tool = Held(tools, t => job.Rates.ChangeTime(job.Model, t));
        var posture = Held(postures, p => job.Rates.ChangeTime(job.Model, p));
        var at = modes.Select((_, m) => Enumerable.Range(0, batches).Select(k => model.NewBoolVar($"at{m}.{k}")).ToArray()).ToArray();
        for (var m = 0; m < modes.Count; m++)
        {
            model.Add(LinearExpr.Sum(at[m]) == used[m]);
            for (var k = 0; k < batches; k++)
            {
                if (modes[m].Tool is { } t)
                    model.AddImplication(at[m][k], tool[k][Array.IndexOf(tools, t)]);
                if (modes[m].Posture is { } p)
                    model.AddImplication(at[m][k], posture[k][Array.IndexOf(postures, p)]);
            }
        }

        Needs(at, rank.Keys);
    }

    /// <summary>What a way needs is done in its batch or before; within a batch the ranks keep the order.</summary>
    private void Needs(BoolVar[][] at, IEnumerable<NodeId> nodes)
    {
        var by = nodes.ToDictionary(n => n, _ => Enumerable.Range(0, batches).Select(k => model.NewBoolVar($"by{k}")).ToArray());
        foreach (var (node, done) in by)
        {
            var ways = Enumerable.Range(0, modes.Count).Where(m => modes[m].Node == node).ToArray();
            for (var k = 0; k < batches; k++)
            {
                var now = LinearExpr.Sum(ways.Select(m => at[m][k]));
                model.Add(done[k] == (k == 0 ? now : now + done[k - 1]));
            }
        }

        for (var m = 0; m < modes.Count; m++)
        {
            foreach (var need in modes[m].Needs)
            {
                for (var k = 0; k < batches; k++)
                    model.AddImplication(at[m][k], by[need][k]);
            }
        }
    }

    /// <summary>For each batch which of all is in hand; taking it up costs. Nothing is in hand only as long as nothing was.</summary>
    private BoolVar[][] Held<T>(T?[] all, Func<T, TimeSpan> change) where T : struct
    {
        var held = Enumerable.Range(0, batches).Select(k => all.Select((_, i) => model.NewBoolVar($"held{k}.{i}")).ToArray()).ToArray();
        for (var k = 0; k < batches; k++)
        {
            model.AddExactlyOne(held[k]);
            for (var i = 0; i < all.Length; i++)
            {
                if (all[i] is { } some)
                    model.AddBoolOr(k == 0 ? [held[k][i].Not(), Change(change(some))] : [held[k][i].Not(), held[k - 1][i], Change(change(some))]);
                else if (k > 0)
                    model.AddImplication(held[k][i], held[k - 1][i]);
            }
        }

        return held;
    }
}
