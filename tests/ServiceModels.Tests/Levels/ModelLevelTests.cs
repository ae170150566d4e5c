using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Levels;
using Ramwright.ServiceModels.Tests.Samples;

namespace Ramwright.ServiceModels.Tests.Levels;

public sealed class ModelLevelTests
{
    [Fact]
    public void Ten_lines_reach_level_zero_and_parts_would_unlock_most()
    {
        var levels = Of(Sample.LevelZero);
        Assert.Equal(0, levels.Reached);
        Assert.Equal(["Arrive", "Set", "Prove", "Release"], levels.Levels[0].Unlocks);
        Assert.Equal("parts", levels.Missing[0].Fact);
    }

    [Fact]
    public void Parts_with_number_and_price_reach_level_one()
    {
        var levels = Of(Sample.LevelZero + "parts:\n  seal: { number: C85-1, price: 1.20 EUR }\n  body: { renew: never }\n");
        Assert.Equal(1, levels.Reached);
        Assert.Equal("ways off", levels.Missing[0].Fact);
    }

    [Fact]
    public void A_price_that_only_a_kit_has_is_a_price()
    {
        const string Part = "parts:\n  seal: { name: seal }\n";
        Assert.Equal(0, Of(Sample.LevelZero + Part).Reached);
        Assert.Equal(1, Of(Sample.LevelZero + Part + "kits:\n  seal-kit: { number: C85-9, price: 9 EUR, contents: { seal: 1 } }\n").Reached);
    }

    [Fact]
    public void Behaviour_above_a_gap_counts_as_complete_but_not_as_reached()
    {
        var levels = Of(Sample.LevelZero + """
            behaviour:
              ram: { diameter: 39.3 mm, stroke: 20 mm, dead-volume: 5 cm³ }
              pump: { displacement: 0.14 cm³, inlet: check }
              drive: { supply: 18 V, resistance: 45 mΩ, torque-constant: 0.009 N·m/A, gear-ratio: 7 }
              relief: { contact-diameter: 3.2 mm, spring-rate: 60 N/mm, pitch: 1 mm, clockwise: raises }
              oil: { bulk-modulus: 1.6 GPa, bulk-modulus-slope: 10, density: 870 kg/m³ }
            faults: { relief-low: { rate: 4 % } }
            symptoms: { weak: { group: pressure, causes: { relief-low: 80 % } } }
            checks: { hold: { minutes: 3, outcomes: { falls: { when-sound: 5 % }, holds: { when-sound: 95 % } } } }

            """);
        Assert.Equal(0, levels.Reached);
        Assert.True(levels.Levels[3].Complete);
    }

    [Theory]
    [InlineData("corrie-85", 3)]
    [InlineData("corrie-120", 2)]
    [InlineData("skerry-52", 3)]
    public void A_bundled_model_reaches_the_level_that_it_is_made_for(string id, int level)
    {
        var reading = new ModelShelf(Repository.Folder("models")).Read(id);
        var read = reading as ModelReading.Read;
        Assert.True(read is not null, reading is ModelReading.Refused r ? MistakeText.Write(r.Mistakes) : "");
        Assert.True(read.Levels.Reached == level, $"level {read.Levels.Reached}: {string.Join("; ", read.Levels.Levels.SelectMany(l => l.KeptBackBy))}");
    }

    private static LevelReport Of(string text)
    {
        var reading = ModelReader.Read("m.yaml", text);
        return reading is ModelReading.Read read ? read.Levels : throw new InvalidOperationException(MistakeText.Write(((ModelReading.Refused)reading).Mistakes));
    }
}
