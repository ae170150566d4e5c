using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>What is to be done in a rebuild, not yet in order.</summary>
internal sealed class RebuildNodes
{
    private readonly RebuildJob job;
    private readonly Dictionary<NodeId, int> back = [];
    private readonly Dictionary<NodeId, int> onUnit = [];

    public RebuildNodes(RebuildJob job)
    {
        this.job = job;
        var off = job.Model.Parts.Where(p => job.Done.Contains(p.Id)).ToList();
        var inPlace = job.Model.Parts.Where(p => !job.Done.Contains(p.Id) && job.Renewals.Any(r => r.Part == p.Id)).ToList();
        foreach (var unit in job.Model.Units)
            AddUnit(unit, [.. off.Where(p => p.Fit?.Unit == unit.Id)], [.. inPlace.Where(p => p.Fit?.Unit == unit.Id)]);
        foreach (var part in off.Concat(inPlace).Where(p => !back.ContainsKey(p.Id)))
            AddPart(part);
        foreach (var state in job.Model.States.Where(s => s.Undo is not null && job.Done.Contains(s.Id)))
            back[state.Id] = Add(new RebuildNode.StateEnded(state, state.Undo!));
    }

    public List<RebuildNode> All { get; } = [];

    /// <summary>The act after which a part is in the tool again, or a state ended; null where there is none.</summary>
    public int? Back(NodeId id) => back.TryGetValue(id, out var node) ? node : null;

    /// <summary>The act that puts a part on its unit, where it is made up with others.</summary>
    public int? OnUnit(NodeId id) => onUnit.TryGetValue(id, out var node) ? node : null;

    /// <summary>By which way a part came off: as told, or the quickest that the parts off allow.</summary>
    public WayOff? WayUsed(Part part) => job.WaysUsed.TryGetValue(part.Id, out var used) && used >= 0 && used < part.WaysOff.Length
        ? part.WaysOff[used]
        : part.WaysOff.Where(w => w.Needs.All(job.Done.Contains)).MinBy(w => w.Time);

    private int Add(RebuildNode node)
    {
        All.Add(node);
        return All.Count - 1;
    }

    /// <summary>A unit is made up when two or more of its parts are off, or one on which another is renewed; a single part goes in by itself.</summary>
    private void AddUnit(MadeUpUnit unit, List<Part> off, List<Part> inPlace)
    {
        var members = off.Concat(inPlace.Where(p => SitsOn(p, off, unit))).ToList();
        if (members.Count < 2)
            return;
        foreach (var part in members)
        {
            var (tool, posture, time) = HowToFit(part);
            onUnit[part.Id] = Add(new RebuildNode.PartOnUnit(part, WayUsed(part), unit, IsInPlace(part), tool, posture, time));
        }

        var unitIn = Add(new RebuildNode.UnitIn(unit, [.. members]));
        foreach (var part in members)
            back[part.Id] = unitIn;
    }

    /// <summary>Whether a part left in its place lies on the bench, on parts of its unit that are off.</summary>
    private bool SitsOn(Part part, List<Part> off, MadeUpUnit unit)
    {
        var (seen, open) = (new HashSet<NodeId> { part.Id }, new Stack<Part>([part]));
        while (open.TryPop(out var at))
        {
            if (off.Contains(at))
                return true;
            foreach (var need in at.WaysOff.SelectMany(w => w.Needs).Where(seen.Add))
            {
                if (job.Model.FindPart(need) is { } further && further.Fit?.Unit == unit.Id)
                    open.Push(further);
            }
        }

        return false;
    }

    private void AddPart(Part part)
    {
        var (tool, posture, time) = HowToFit(part);
        var unit = IsInPlace(part) ? null : job.Model.Units.FirstOrDefault(u => u.Id == part.Fit?.Unit);
        back[part.Id] = Add(new RebuildNode.PartIn(part, WayUsed(part), unit, IsInPlace(part),
            tool ?? unit?.Tool, posture ?? unit?.Posture, time + (unit?.Time ?? TimeSpan.Zero)));
    }

    private bool IsInPlace(Part part) => !job.Done.Contains(part.Id);

    /// <summary>Where the model does not say: as it came off, but with bare hands what no thread, clamp, lock screw or press fit holds.</summary>
    /// <remarks>What is renewed in its place must come off first, which no step of the strip has counted.</remarks>
    private (ToolId? Tool, PostureId? Posture, TimeSpan Time) HowToFit(Part part)
    {
        var way = WayUsed(part) ?? part.WaysOff.MinBy(w => w.Time);
        var sameTool = way?.HeldBy?.Kind is HoldKind.Thread or HoldKind.Clamp or HoldKind.LockScrew or HoldKind.PressFit;
        var off = part.WaysOff.Select(w => w.Time).DefaultIfEmpty(TimeSpan.Zero).Min();
        return (part.Fit?.Tool ?? (sameTool ? way!.Tool : null), part.Fit?.Posture ?? way?.Posture,
            (part.Fit?.Time ?? off) + (IsInPlace(part) ? off : TimeSpan.Zero));
    }
}
