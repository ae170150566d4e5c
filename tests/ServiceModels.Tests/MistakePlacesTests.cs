using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Tests.Samples;

namespace Ramwright.ServiceModels.Tests;

/// <summary>Text, line and column of mistakes, as an editor counts them.</summary>
public sealed class MistakePlacesTests
{
    // The sample head has ten lines; what is tested begins in line 11.
    [Theory]
    [InlineData("parts:\n  ram: { ways-off: [ { needs: [cap-nutt], minutes: 1 } ] }\n  cap-nut: { ways-off: [ { minutes: 2 } ] }", "12:32+8 unknown-part: no part or state is called 'cap-nutt'")]
    [InlineData("parts:\n  cap-nut: { fit: { torqe: 85 N·m } }", "12:21+5 unknown-key: a fit has no key 'torqe'")]
    [InlineData("parts:\n  cap-nut: { fit: { torque: 85 } }", "12:29+2 missing-unit: '85' has no unit")]
    [InlineData("parts:\n  cap-nut: { fit: { torque: 85 bar } }", "12:32+3 wrong-dimension: bar measures a pressure; a torque is wanted")]
    [InlineData("parts:\n  cap-nut: { fit: { torque: \"85 N·m ± 5 bar\" } }", "12:41+3 wrong-dimension: bar measures a pressure; a torque is wanted")]
    [InlineData("parts:\n  cap-nut: { price: \"1,40 EUR\" }", "12:22+8 bad-number: '1,40 EUR' holds a comma, which could be a decimal sign or a thousands separator")]
    [InlineData("parts:\n  cap-nut: { renew: sometimes }", "12:21+9 unknown-word: 'sometimes' is no renewal rule")]
    [InlineData("parts:\n  cap-nut: { count: 1, count: 2 }", "12:24+5 duplicate-key: 'count' stands here a second time")]
    [InlineData("parts:\n  cap-nut: { ways-off: [ { needs: [] } ] }", "12:26+1 missing-key: 'minutes' is missing in a way off: time for the whole group, without fetching the tool or turning the work")]
    [InlineData("parts:\n  oil: {}\nstates:\n  oil: {}", "14:3+3 duplicate-id: 'oil' is already the id of a part (line 12)")]
    [InlineData("parts:\n  seal-ram: { size: AS568-999 }", "12:21+9 unknown-size: AS568-999 is in no table of O-ring sizes")]
    [InlineData("parts:\n  ram: *other", "12:8+6 alias: '*other' is an alias; aliases are not read")]
    [InlineData("fluid: HEES", "11:8+4 wrong-form: the fluid (keys with values) is wanted here, and a single value stands there")]
    [InlineData("parts:\n  a: { ways-off: [ { needs: [b], minutes: 1 } ] }\n  b: { ways-off: [ { needs: [a], minutes: 1 } ] }", "12:3+1 circle: two ways off wait for each other, so none can start\na (12) needs b (13) needs a")]
    [InlineData("parts:\n\tcap-nut: {}", "12:1+1 tab: a tab indents this line; YAML knows spaces only")]
    public void A_mistake_points_to_its_characters(string sections, string expected)
    {
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("m.yaml", Sample.LevelZero + sections));
        var mistake = Assert.Single(refused.Mistakes);
        Assert.Equal(expected, string.Create(CultureInfo.InvariantCulture, $"{mistake.At.Line}:{mistake.At.Column}+{mistake.At.Length} {mistake.Code}: {mistake.What}"));
    }

    [Fact]
    public void All_mistakes_are_told_at_once_with_excerpt_carets_remedy_and_count()
    {
        var refused = Assert.IsType<ModelReading.Refused>(ModelReader.Read("models/c.yaml", Sample.LevelZero + """
            parts:
              o-ring-ram-rod: { material: NBR, renew: always }
              ram:
                ways-off:
                  - { needs: [oring-ram-rod], minutes: two }

            """));
        Assert.Equal("""
            models/c.yaml:15:19: no part or state is called 'oring-ram-rod'                       [unknown-part]
                15 |       - { needs: [oring-ram-rod], minutes: two }
                   |                   ^^^^^^^^^^^^^
                mend: write o-ring-ram-rod (line 12), or add the part or state under parts: or states:
            models/c.yaml:15:44: 'two' does not begin with a number                               [bad-number]
                15 |       - { needs: [oring-ram-rod], minutes: two }
                   |                                            ^^^
                mend: write a number with a decimal point, such as 2.5
            2 mistakes in 1 file; nothing was loaded

            """, MistakeText.Write(refused.Mistakes));
    }

    [Fact]
    public void Line_ends_of_any_kind_and_a_byte_order_mark_do_not_shift_places()
    {
        var text = Sample.LevelZero + "parts:\n  cap-nut: { renew: sometimes }\n";
        var plain = Assert.IsType<ModelReading.Refused>(ModelReader.Read("m.yaml", text)).Mistakes[0];
        var windows = Assert.IsType<ModelReading.Refused>(ModelReader.Read("m.yaml", "\uFEFF" + text.ReplaceLineEndings("\r\n"))).Mistakes[0];
        Assert.Equal(plain, windows);
    }
}
