namespace Ramwright.ServiceModels.Tests;

/// <summary>docs/service-model.md says what the reader does.</summary>
public sealed class ReferencePageTests
{
    private const string Begin = "<!-- keys: begin -->\n";
    private const string End = "<!-- keys: end -->\n";

    [Fact]
    public void The_tables_of_the_page_are_those_of_the_reader()
    {
        var path = Path.Combine(Repository.Folder("docs"), "service-model.md");
        var page = File.ReadAllText(path);
        var from = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var to = page.IndexOf(End, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("WRITE_REFERENCE") is not null)
            File.WriteAllText(path, page[..from] + "\n" + ModelReference.Write() + "\n" + page[to..]);
        else
            Assert.True(page[from..to].Trim() == ModelReference.Write().Trim(), "The keys changed: run this test once with WRITE_REFERENCE=1 and look at what it writes.");
    }

    [Fact]
    public void Whole_models_on_the_page_read_without_a_mistake()
    {
        var models = File.ReadAllText(Path.Combine(Repository.Folder("docs"), "service-model.md")).Split("```yaml\n").Skip(1).Select(b => b[..b.IndexOf("```", StringComparison.Ordinal)]).ToList();
        Assert.NotEmpty(models);
        foreach (var model in models)
        {
            var reading = ModelReader.Read("service-model.md", Samples.Sample.Whole(model));
            Assert.True(reading is ModelReading.Read, reading is ModelReading.Refused r ? Metrology.Input.MistakeText.Write(r.Mistakes) : "");
        }
    }
}
