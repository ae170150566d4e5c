using Ramwright.Planning.Strip;
using static Ramwright.Parts.Tests.Shop;

namespace Ramwright.Parts.Tests;

/// <summary>Needs from renewals. Parts are invented.</summary>
public sealed class PartsNeedTests
{
    [Fact]
    public void A_part_renewed_for_two_reasons_is_needed_once()
    {
        var model = Model([Part("wiper", "W-1", 6m), Part("screw", "X-1", 0.4m, 6)]);
        var need = PartsNeed.Of(model, [new Renewal(new("screw"), 6, RenewalCause.Rule, null), new Renewal(new("wiper"), 1, RenewalCause.Disturbed, new("ram")), new Renewal(new("screw"), 2, RenewalCause.Destroyed, null)]);
        Assert.Equal([("wiper", 1), ("screw", 6)], need.Select(n => (n.Part.Value, n.Count)));
    }

    [Fact]
    public void Supersessions_are_followed_to_their_end()
    {
        var model = Model([Part("wiper", "W-1", 6m)]) with { Supersessions = [new("W-1", "W-2", null), new("W-2", "W-3", "other lip")] };
        Assert.Equal(("W-3", "W-1"), Assert.Single(model.Need(("wiper", 1))) is var line ? (line.Number, line.SupersededNumber) : default);
    }

    [Fact]
    public void A_loop_of_supersessions_ends()
    {
        var model = Model([Part("wiper", "W-1", 6m)]) with { Supersessions = [new("W-1", "W-2", null), new("W-2", "W-1", null)] };
        Assert.Equal("W-1", ValidNumber.Of(model, "W-1"));
    }

    [Fact]
    public void A_part_that_is_not_sold_has_no_number() => Assert.Null(ValidNumber.Of(Model([]), null));

    [Fact]
    public void Everything_lists_each_part_with_its_count() => Assert.Equal(6, Assert.Single(PartsNeed.Everything(Model([Part("screw", "X-1", 0.4m, 6)]))).Count);
}
