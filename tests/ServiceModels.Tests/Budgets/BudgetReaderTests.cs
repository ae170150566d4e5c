using System.Globalization;
using System.Text;
using CsCheck;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.ServiceModels.Budgets;

namespace Ramwright.ServiceModels.Tests.Budgets;

public sealed class BudgetReaderTests
{
    private const string Head = "format: ramwright-budget/1\nresult: { name: force, unit: N }\n";

    private static BudgetReading Read(string text) => BudgetReader.Read("b.yaml", Encoding.UTF8.GetBytes(text));

    private static BudgetFile Good(string text) => Read(text) switch
    {
        BudgetReading.Read read => read.File,
        BudgetReading.Refused refused => throw new InvalidOperationException(MistakeText.Write(refused.Mistakes)),
        _ => throw new InvalidOperationException(),
    };

    [Fact]
    public void The_example_reads_and_says_what_is_worked_out_by_hand()
    {
        var file = Good(File.ReadAllText(Path.Combine(Repository.Folder("docs"), "getting-started", "output-force.yaml")));
        var answer = Assert.IsType<LinearAnswer.Evaluated>(Propagation.Evaluate(file.Budget, file.Coverage));
        Assert.Equal(70e6 * 12.566e-4 - 2_050, answer.Estimate, 1e-9);
        // pressure: 1.4², (1.5² + 0.8²)/3, systematic in bar; 0.5²/3, 1.6², random
        var area = 12.566e-4;
        Assert.Equal(Math.Sqrt(Math.Pow(area * 1e5, 2) * (1.96 + (2.25 + 0.64) / 3) + Math.Pow(70e6 * 0.012e-4, 2) / 3 + Math.Pow(1450 * 0.05, 2) / 3), answer.Systematic, 1e-8);
        Assert.Equal(Math.Sqrt(Math.Pow(area * 1e5, 2) * (0.25 / 3 + 2.56) + 300 * 300 / 6.0), answer.Random, 1e-8);
    }

    [Fact]
    public void Readings_give_value_uncertainty_and_degrees_of_freedom()
    {
        var file = Good("""
            format: ramwright-budget/1
            result: { name: temperature, unit: °C }
            model: t
            inputs:
              t: { parts: { repeats: { readings: [20 °C, 22 °C, 24 °C], effect: random }, thermometer: { rectangular: 0.5 °C, effect: systematic } } }
            """);
        var answer = Assert.IsType<LinearAnswer.Evaluated>(Propagation.Evaluate(file.Budget));
        Assert.Equal(295.15, answer.Estimate, 1e-9);
        Assert.Equal(2 / Math.Sqrt(3), answer.Random, 1e-9);
        Assert.Equal(0.5 / Math.Sqrt(3), answer.Systematic, 1e-12); // a difference in °C is one in K
        Assert.Equal(2, file.Budget.Inputs[0].Components[0].DegreesOfFreedom);
    }

    // What stands at the mistake's line, column and length, and its code
    [Theory]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { rectangular: NaN, effect: systematic } } }, A: { value: 12 cm² } }", "4:NaN bad-number")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { rectangular: -2 bar, effect: systematic } } }, A: { value: 12 cm² } }", "4:-2 bar negative-uncertainty")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { gaussian: 2 bar, effect: systematic } } }, A: { value: 12 cm² } }", "4:g one-shape, 4:gaussian unknown-key")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2 bar, rectangular: 1 bar, effect: systematic } } }, A: { value: 12 cm² } }", "4:rectangular one-shape")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2 bar, dof: 0, effect: systematic } } }, A: { value: 12 cm² } }", "4:0 out-of-range")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2 bar, effect: sometimes } } }, A: { value: 12 cm² } }", "4:sometimes unknown-word")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2 bar } } }, A: { value: 12 cm² } }", "4:g missing-key")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { expanded: 2 bar, k: 0, effect: random } } }, A: { value: 12 cm² } }", "4:0 out-of-range")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2 N, effect: random } } }, A: { value: 12 cm² } }", "4:N wrong-dimension")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar, parts: { g: { normal: 2, effect: random } } }, A: { value: 12 cm² } }", "4:2 missing-unit")]
    [InlineData("model: p * B\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² } }", "3:B unknown-input")]
    [InlineData("model: p * A + sqr(p)\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² } }", "3:sqr unknown-function")]
    [InlineData("model: p * (A\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² } }", "3:( bad-formula")]
    [InlineData("model: p * A\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² }, c: { value: 3 } }", "4:c unused-input")]
    [InlineData("model: p + A\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² } }", "3:+ unit-clash")]
    [InlineData("model: p / A\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² } }", "2:N wrong-dimension")]
    [InlineData("model: p * A / z\ninputs: { p: { value: 700 bar }, A: { value: 12 cm² }, z: { value: 0 } }", "3:p * A / z no-value")]
    [InlineData("model: f * sqrt(z)\ninputs: { f: { value: 7 N }, z: { value: 0, parts: { g: { normal: 1, effect: random } } } }", "3:f * sqrt(z) no-value")]
    [InlineData("model: f * z\ninputs: { f: { value: 7 N }, z: { value: 0, parts: { g: { normal: 3 %, effect: random } } } }", "4:3 % out-of-range")]
    [InlineData("model: f\ninputs: { f: { parts: {} } }", "4:f missing-key")]
    [InlineData("model: f\ninputs: { f: { parts: { g: { rectangular: 5 %, effect: random } } } }", "4:5 % missing-key")]
    [InlineData("model: f\ninputs: { f: { parts: { r: { readings: [7 N, 8 N], effect: random }, g: { rectangular: 5 %, effect: random } } } }", "4:5 % missing-key")]
    [InlineData("model: f\ninputs: { f: { value: 7 newton } }", "4:newton unknown-unit")]
    [InlineData("model: f\ninputs: { f-1: { value: 7 N } }", "3:f unknown-input, 4:f-1 bad-id")]
    [InlineData("model: f\ncoverage: 150 %\ninputs: { f: { value: 7 N } }", "4:150 % out-of-range")]
    [InlineData("model: f\ninput: { f: { value: 7 N } }", "1:f missing-key, 3:f unknown-input, 4:input unknown-key")]
    [InlineData("model: f + g\ninputs: { f: { value: 7 N }, g: { value: 7 N } }\ncorrelations: [ { between: [f, h], coefficient: 2 } ]", "5:h unknown-input, 5:2 out-of-range")]
    [InlineData("model: f + g\ninputs: { f: { value: 7 N }, g: { value: 7 N } }\ncorrelations: [ { between: [f, f], coefficient: 1 } ]", "5:{ correlation-impossible")]
    public void A_mistake_points_to_its_characters(string rest, string expected)
    {
        var refused = Assert.IsType<BudgetReading.Refused>(Read(Head + rest));
        Assert.Equal(expected, string.Join(", ", refused.Mistakes.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.At.Line}:{m.Excerpt!.AsSpan(m.At.Column - 1, m.At.Length)} {m.Code}"))));
        Assert.All(refused.Mistakes, m => Assert.NotEmpty(m.Mend));
    }

    [Fact]
    public void Correlations_are_taken_or_refused_together()
    {
        const string Three = Head + "model: a + b + c\ninputs:\n  a: { value: 1 N, parts: { x: { normal: 1 N, effect: systematic } } }\n  b: { value: 1 N, parts: { x: { normal: 1 N, effect: systematic } } }\n"
            + "  c: { value: 1 N, parts: { x: { normal: 1 N, effect: random } } }\ncorrelations:\n  - { between: [a, b], coefficient: 1 }\n";
        Assert.Equal(Math.Sqrt(5), Assert.IsType<LinearAnswer.Evaluated>(Propagation.Evaluate(Good(Three).Budget)).Standard, 1e-12);
        Assert.Equal("correlation-mixed", Assert.Single(Assert.IsType<BudgetReading.Refused>(Read(Three + "  - { between: [a, c], coefficient: 0.2 }\n")).Mistakes).Code);
        Assert.Equal("duplicate-key", Assert.Single(Assert.IsType<BudgetReading.Refused>(Read(Three + "  - { between: [b, a], coefficient: 0.2 }\n")).Mistakes).Code);
        var opposed = Three.Replace("effect: random", "effect: systematic", StringComparison.Ordinal) + "  - { between: [b, c], coefficient: 0.9 }\n  - { between: [a, c], coefficient: -0.9 }\n";
        Assert.Equal("correlation-impossible", Assert.Single(Assert.IsType<BudgetReading.Refused>(Read(opposed)).Mistakes).Code);
    }

    [Fact]
    public void A_slip_anywhere_is_an_answer()
    {
        var example = File.ReadAllText(Path.Combine(Repository.Folder("docs"), "getting-started", "output-force.yaml"));
        Gen.Select(Gen.Int[0, example.Length - 1], Gen.Int[0, 6], Gen.Char["{}[]:,#-*&!%'\"\t\n 0a·"]).Array[1, 4].ForAll(slips =>
        {
            var text = example;
            foreach (var (at, length, instead) in slips)
                text = text.Length == 0 ? "" : text[..(at % text.Length)] + instead + text[Math.Min(text.Length, at % text.Length + length)..];
            return Read(text) switch
            {
                BudgetReading.Read read => Propagation.Evaluate(read.File.Budget, read.File.Coverage) is LinearAnswer.Evaluated,
                BudgetReading.Refused refused => refused.Mistakes.Length > 0 && refused.Mistakes.All(m => m.At.Line >= 0 && m.Mend.Length > 0),
                _ => false,
            };
        }, iter: 20_000);
    }

    [Fact]
    public void Hostile_files_are_answers_in_good_time()
    {
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var million = new StringBuilder(Head + "model: f\ninputs:\n  f:\n    value: 7 N\n    parts:\n");
        for (var i = 0; i < 1_000_000; i++)
            million.Append("      c").Append(i).Append(": { normal: 1 N, effect: random }\n");
        var manyInputs = Head + "model: f\ninputs: {" + string.Join(", ", Enumerable.Range(0, 15_000).Select(i => $"x{i}: {{value: 1}}")) + "}";
        var manyParts = Head + "model: f\ninputs:\n  f:\n    value: 7 N\n    parts:\n" + string.Concat(Enumerable.Range(0, 1_500).Select(i => $"      c{i}: {{ normal: 1 N, effect: random }}\n"));
        foreach (var (text, code) in ((string, string)[])[(million.ToString(), "too-large"), (manyInputs, "too-many-parts"), (manyParts, "too-many-parts"), ("", "empty-file"), ("\0", "not-text"), (new string('[', 100), "too-deep"), ("a: &x 1\nb: *x", "alias")])
            Assert.Contains(Assert.IsType<BudgetReading.Refused>(Read(text)).Mistakes, m => m.Code == code);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10), $"{clock.Elapsed.TotalSeconds:0.0} s");
    }
}
