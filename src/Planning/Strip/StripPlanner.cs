namespace Ramwright.Planning.Strip;

/// <summary>Finds the cheapest way to free what is asked for.</summary>
public static class StripPlanner
{
    public static StripAnswer Plan(StripJob job) => throw new NotSupportedException("The planner is being built.");
}
