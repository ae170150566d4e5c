using Ramwright.App.CommandLine;

namespace Ramwright.App.Tests.CommandLine;

public sealed class HelpTests
{
    [Fact]
    public async Task Every_verb_shows_its_examples_before_its_options()
    {
        foreach (var verb in Verbs())
        {
            var run = await Run.Line($"{verb.Name} --help");
            Assert.Equal(0, run.Exit);
            Assert.Contains($"$ ramwright {verb.Examples[0].Line}", run.Data, StringComparison.Ordinal);
            Assert.True(run.Data.IndexOf('$') < run.Data.IndexOf("use: ramwright", StringComparison.Ordinal), verb.Name);
        }
    }

    [Fact]
    public async Task Every_example_ends_with_the_status_it_states()
    {
        foreach (var verb in Verbs())
        {
            foreach (var example in verb.Examples.Where(e => e.RunsAlone))
            {
                using var folder = new TemporaryFolder();
                var line = example.Line;
                foreach (var (name, text) in example.Files)
                    line = line.Replace(name, folder.Write(name, text), StringComparison.Ordinal);
                var run = await Run.Line(line);
                Assert.True((int)example.Exit == run.Exit, $"ramwright {example.Line}: {run.Exit}\n{run.Data}\n{run.Words}");
                Assert.False(string.IsNullOrWhiteSpace(run.Data), example.Line);
            }
        }
    }

    [Fact]
    public async Task Every_verb_answers_bad_use_with_status_2_and_the_remedy()
    {
        foreach (var verb in Verbs())
        {
            var run = await Run.Line($"{verb.Name} --no-such-option --json");
            Assert.Equal((int)Exit.BadInput, run.Exit);
            Assert.Equal("usage", (string?)run.Json["mistakes"]![0]!["code"]);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("--help")]
    public async Task Without_a_verb_the_verbs_are_listed(string line)
    {
        var run = await Run.Line(line);
        Assert.Equal(0, run.Exit);
        foreach (var verb in Verbs())
            Assert.Contains(verb.Summary, run.Data, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("polish", "'polish' is no verb")]
    [InlineData("kernel", "'kernel' wants a second word")]
    [InlineData("kernel polish", "'polish' is no verb")]
    public async Task A_word_that_is_no_verb_is_answered_with_those_that_are(string line, string what)
    {
        var run = await Run.Line(line);
        Assert.Equal((int)Exit.BadInput, run.Exit);
        Assert.Contains(what, run.Words, StringComparison.Ordinal);
        Assert.Contains("write one of: ", run.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_reference_page_is_what_the_verbs_say()
    {
        var page = CommandLineReference.Write(Verbs());
        var path = Path.Combine(Checkout.Root, "docs", "reference", "cli.md");
        if (Environment.GetEnvironmentVariable("RAMWRIGHT_REWRITE_DOCS") == "1")
            File.WriteAllText(path, page);
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), page);
    }

    private static IReadOnlyCollection<Verb> Verbs() => new RamwrightCommand(TextWriter.Null, TextWriter.Null).Verbs;
}
