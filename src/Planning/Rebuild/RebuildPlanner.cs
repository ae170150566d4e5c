namespace Ramwright.Planning.Rebuild;

/// <summary>Finds a good order in which the tool goes together again.</summary>
public static class RebuildPlanner
{
    public static RebuildAnswer Plan(RebuildJob job) => throw new NotSupportedException("The planner is being built.");
}
