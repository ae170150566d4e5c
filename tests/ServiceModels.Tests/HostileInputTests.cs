using System.Diagnostics;
using System.Text;
using CsCheck;
using Ramwright.ServiceModels.Tests.Samples;

namespace Ramwright.ServiceModels.Tests;

/// <summary>Files that are no models, by accident or by design: each gets an answer, soon.</summary>
public sealed class HostileInputTests
{
    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void Deep_nesting_is_refused_soon(char bracket)
    {
        var clock = Stopwatch.StartNew();
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("deep.yaml", new string(bracket, 200_000)));
        Assert.Equal("too-deep", refused.Mistakes[0].Code);
        Assert.True(refused.Unreadable);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), $"{clock.Elapsed}");
    }

    [Fact]
    public void Block_nesting_is_refused_too()
    {
        var text = new StringBuilder();
        for (var i = 0; i < 300; i++)
            text.Append(' ', i).Append("a:\n");
        Assert.Equal("too-deep", CodeOf(Encoding.UTF8.GetBytes(text.ToString())));
    }

    [Fact]
    public void A_file_of_100_megabytes_is_refused_by_its_size_before_it_is_read()
    {
        var path = Path.GetTempFileName();
        try
        {
            using (var file = File.OpenWrite(path))
                file.SetLength(100_000_000);
            var refused = Assert.IsType<ModelReading.Refused>(ModelReader.ReadFile(path));
            Assert.Equal("too-large", refused.Mistakes[0].Code);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_bomb_of_aliases_is_refused_at_its_anchors()
    {
        var bomb = "a: &a [x,x,x,x,x,x,x,x,x]\n" + string.Concat(Enumerable.Range(1, 20).Select(i => $"{(char)('a' + i)}: &{(char)('a' + i)} [{string.Join(',', Enumerable.Repeat($"*{(char)('a' + i - 1)}", 9))}]\n"));
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("bomb.yaml", bomb));
        Assert.Contains(refused.Mistakes, m => m.Code == "alias");
    }

    [Fact]
    public void Two_hundred_thousand_values_are_too_many() => Assert.Equal("too-large", CodeOf(Encoding.UTF8.GetBytes("a: [" + string.Concat(Enumerable.Repeat("1,", 300_000)) + "1]")));

    [Fact]
    public void Bytes_that_are_no_text_are_refused_with_their_place()
    {
        Assert.Equal("not-text", CodeOf([.. "format: ramwright/1\nx: "u8, 0xff, 0xfe]));
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("nul.yaml", "format: ram\0wright/1"));
        Assert.Equal(("not-text", 1, 12), (refused.Mistakes[0].Code, refused.Mistakes[0].At.Line, refused.Mistakes[0].At.Column));
    }

    [Theory]
    [InlineData("", "empty-file")]
    [InlineData("just words", "wrong-form")]
    [InlineData("[1, 2]", "wrong-form")]
    [InlineData("? [a, b]\n: 1", "bad-key")]
    [InlineData("%YAML 9.9\n---\na: 1", "yaml-syntax")]
    public void What_is_no_model_says_so(string text, string code) =>
        Assert.Contains(Assert.IsType<ModelReading.Refused>(ModelReader.Read("x.yaml", text)).Mistakes, m => m.Code == code);

    [Fact]
    public void Many_names_that_nothing_answers_take_no_time_to_speak_of()
    {
        var clock = Stopwatch.StartNew();
        var parts = string.Concat(Enumerable.Range(0, 12_000).Select(i => $"  p{i}: {{ ways-off: [ {{ needs: [q{i}], minutes: 1 }} ] }}\n"));
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("many.yaml", Sample.LevelZero + "parts:\n" + parts));
        Assert.InRange(refused.Mistakes.Length, 900, 1001);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"{clock.Elapsed}");
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_answers()
    {
        Assert.Equal("no-file", Assert.IsType<ModelReading.Refused>(ModelReader.ReadFile(Path.Combine(Path.GetTempPath(), "no-such-model.yaml"))).Mistakes[0].Code);
        Assert.Equal("unreadable-file", Assert.IsType<ModelReading.Refused>(ModelReader.ReadFile(Path.GetTempPath())).Mistakes[0].Code);
    }

    [Fact]
    public void A_damaged_model_never_throws()
    {
        var whole = Encoding.UTF8.GetBytes(Sample.WaysOff);
        byte[][] pieces = [.. ((string[])["[", "]", "{", "}", ":", ",", "-", "\n", "\t", "{ a: b\n  c: d }", "\"", "'", "&a ", "*a", "!t ", "|", "? ", "#", "\r", " ", "0", "..", "±", "%"]).Select(Encoding.UTF8.GetBytes)];
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Int[0, 40], Gen.Int[0, pieces.Length - 1], Gen.Byte, Gen.Int[0, 2]).Array[1, 4].ForAll(
            edits =>
            {
                var bytes = whole.ToList();
                foreach (var (at, cut, piece, raw, kind) in edits)
                {
                    var from = Math.Min(at, bytes.Count - 1);
                    if (kind == 0)
                        bytes.RemoveRange(from, Math.Min(cut, bytes.Count - from - 1));
                    else if (kind == 1)
                        bytes.InsertRange(from, pieces[piece]);
                    else
                        bytes[from] = raw;
                }

                var reading = ModelReader.Read("damaged.yaml", bytes.ToArray());
                return reading is ModelReading.Read || (reading is ModelReading.Refused { Mistakes: var mistakes } && !mistakes.IsEmpty && mistakes.All(m => m.At.Line >= 0 && m.At.Column >= 0));
            },
            iter: 2000);
    }

    private static string CodeOf(byte[] bytes) => Assert.IsType<ModelReading.Refused>(ModelReader.Read("x.yaml", bytes)).Mistakes[0].Code;
}
