namespace Ramwright.ServiceModels.Tests;

public sealed class ModelShelfTests
{
    private readonly ModelShelf shelf = new(Repository.Folder("models"));

    [Fact]
    public void A_model_is_found_by_its_id_and_by_its_path()
    {
        Assert.Contains("corrie-85", shelf.Ids(), StringComparer.Ordinal);
        Assert.IsType<ModelReading.Read>(shelf.Read("corrie-85"));
        Assert.IsType<ModelReading.Read>(shelf.Read(Path.Combine(Repository.Folder("models"), "corrie-85.yaml")));
    }

    [Fact]
    public void An_id_is_the_name_of_its_file()
    {
        foreach (var id in shelf.Ids())
            if (shelf.Read(id) is ModelReading.Read read)
                Assert.Equal(id, read.Model.Tool.Id);
    }

    [Theory]
    [InlineData("corrie-58", "write corrie-85")]
    [InlineData("", "the models here are")]
    public void An_id_that_is_none_is_answered_with_those_that_are(string id, string mend)
    {
        var mistake = Assert.Single(Assert.IsType<ModelReading.Refused>(shelf.Read(id)).Mistakes);
        Assert.Equal("unknown-model", mistake.Code);
        Assert.StartsWith(mend, mistake.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shelf_that_is_not_there_is_empty() => Assert.Empty(new ModelShelf(Path.Combine(Path.GetTempPath(), "no-such-shelf")).Ids());
}
