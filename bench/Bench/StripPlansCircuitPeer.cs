using Google.OrTools.Sat;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Bench;

/// <summary>The order as a circuit over the ways used, with what is in hand carried along; it knows which way can never follow which.</summary>
internal sealed class StripPlansCircuitPeer(StripJob job) : StripPlansPeer(job)
{
    protected override void Changes(BoolVar[] used, Dictionary<NodeId, IntVar> rank)
    {
        var inHand = modes.Select((m, i) => Carried(m.Tool, tools, i)).ToArray();
        var held = modes.Select((m, i) => Carried(m.Posture, postures, i)).ToArray();
        var newTool = modes.Select(m => m.Tool is { } t ? Change(job.Rates.ChangeTime(job.Model, t)) : null).ToArray();
        var newPosture = modes.Select(m => m.Posture is { } p ? Change(job.Rates.ChangeTime(job.Model, p)) : null).ToArray();
        var circuit = model.AddCircuit();
        for (var j = 0; j < modes.Count; j++)
        {
            circuit.AddArc(j + 1, j + 1, used[j].Not());
            circuit.AddArc(j + 1, 0, model.NewBoolVar($"last{j}"));
            var first = model.NewBoolVar($"first{j}");
            circuit.AddArc(0, j + 1, first);
            Follow(first, null, inHand[j], modes[j].Tool, tools, newTool[j]);
            Follow(first, null, held[j], modes[j].Posture, postures, newPosture[j]);
            for (var i = 0; i < modes.Count; i++)
            {
                if (i == j || modes[i].Node == modes[j].Node || modes[i].Needs.Contains(modes[j].Node))
                    continue;
                var follows = model.NewBoolVar($"{i}-{j}");
                circuit.AddArc(i + 1, j + 1, follows);
                model.Add(rank[modes[j].Node] >= rank[modes[i].Node] + 1).OnlyEnforceIf(follows);
                Follow(follows, inHand[i], inHand[j], modes[j].Tool, tools, newTool[j]);
                Follow(follows, held[i], held[j], modes[j].Posture, postures, newPosture[j]);
            }
        }
    }

    /// <summary>For each thing that may be in hand after a way, whether it is.</summary>
    private ILiteral[] Carried<T>(T? own, T?[] all, int index) where T : struct
    {
        if (own is not null)
            return [.. all.Select(a => Nullable.Equals(a, own) ? model.TrueLiteral() : model.FalseLiteral())];
        ILiteral[] carried = [.. all.Select((_, k) => model.NewBoolVar($"carried{index}.{k}"))];
        model.AddExactlyOne(carried);
        return carried;
    }

    private void Follow<T>(ILiteral follows, ILiteral[]? before, ILiteral[] after, T? own, T?[] all, BoolVar? change) where T : struct
    {
        if (own is not null)
        {
            var had = before?[Array.IndexOf(all, own)] ?? model.FalseLiteral();
            model.AddBoolOr([follows.Not(), had, change!]);
            return;
        }

        for (var k = 0; k < all.Length; k++)
        {
            var had = before?[k] ?? (k == 0 ? model.TrueLiteral() : model.FalseLiteral());
            model.AddBoolOr([follows.Not(), had.Not(), after[k]]);
        }
    }
}
