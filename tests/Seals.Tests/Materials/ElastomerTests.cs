using Ramwright.Seals.Materials;

namespace Ramwright.Seals.Tests.Materials;

public sealed class ElastomerTests
{
    // ISO 1629 codes as listed in seal guides
    [Fact]
    public void Every_published_code_is_known_by_its_polymer()
    {
        foreach (var row in PublishedRows.Of("elastomer-codes.csv"))
            Assert.Equal(row["polymer"], Elastomer.Find(row["iso1629_code"])?.Polymer);
    }

    [Fact]
    public void A_plastic_is_no_elastomer() => Assert.Null(Elastomer.Find("PTFE"));
}
