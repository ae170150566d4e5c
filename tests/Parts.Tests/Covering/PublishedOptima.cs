using Ramwright.Parts.Covering;

namespace Ramwright.Parts.Tests.Covering;

public sealed class PublishedOptima
{
    // Weighted set covering, OR-Library problem sets 4 to 6; optima as published by Beasley, An algorithm for set covering problem,
    // European Journal of Operational Research 31 (1987) 85-93. Instances and source: tests/Parts.Tests/Published/set-cover.
    [Theory]
    [InlineData("scp41", 429)]
    [InlineData("scp43", 516)]
    [InlineData("scp46", 560)]
    [InlineData("scp410", 514)]
    [InlineData("scp51", 253)]
    [InlineData("scp61", 138)]
    public void The_published_optimum_is_found_and_proven(string name, long optimum)
    {
        var problem = OrLibrary.Read(name);
        var solution = CoverSearch.Solve(problem, nodeLimit: 50_000);
        Assert.Equal(optimum, solution.Cost);
        Assert.True(solution.ProvenOptimal, $"lower bound {solution.LowerBound} after {solution.Nodes} nodes");
    }
}
