using Ramwright.Hydraulics.Identification;

namespace Ramwright.Hydraulics.Tests.Identification;

/// <summary>
/// Seventeen recordings of the invented reference tool, made by an independent and richer simulation than the model that reads them; what was planted is known
/// (Recordings/README.md, truth.json). Nothing in the reading is fitted to them file by file.
/// </summary>
public sealed class SeventeenRecordings
{
    public static TheoryData<string> Names => Planted.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_fault_that_can_be_seen_is_named_and_no_other(string name)
    {
        var planted = Planted.Of(name);
        var named = planted.Answer.Faults.Where(f => f.Probability >= IdentificationAnswer.Told.Named).Select(f => f.Id).ToHashSet();
        Assert.Subset(named, planted.Faults("faults").Except(planted.Faults("may_miss")).ToHashSet());
        Assert.Subset(planted.Faults("faults").Union(planted.Faults("acceptable_also")).ToHashSet(), named);
        Assert.All(planted.Answer.Faults, f => Assert.NotEmpty(f.Reasons));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_opening_is_read_within_six_thousandths(string name)
    {
        var planted = Planted.Of(name);
        var read = planted.Answer[ParameterName.ReliefOpening];
        Assert.Equal(planted.Outcome("relief_open_bar") is not null, read.Identified);
        if (planted.Outcome("relief_open_bar") is { } bar)
            Assert.InRange(read.Value, bar * 0.994, bar * 1.006);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_filling_is_read_within_one_percent_and_two_on_a_connector(string name)
    {
        var planted = Planted.Of(name);
        var read = planted.Answer[ParameterName.PumpFill];
        Assert.Equal(planted.Closes, read.Identified);
        if (planted.Closes)
            Assert.InRange(read.Value / planted.Parameter("fill"), planted.Connector ? 0.98 : 0.99, planted.Connector ? 1.02 : 1.01);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_leak_in_a_pause_is_read_within_a_fifth(string name)
    {
        var planted = Planted.Of(name);
        var read = planted.Answer[ParameterName.HoldLeak];
        if (read.Identified)
            Assert.InRange(read.Value, planted.HoldLeak() - Math.Max(1.5e-16, 0.2 * planted.HoldLeak()), planted.HoldLeak() + Math.Max(1.5e-16, 0.2 * planted.HoldLeak()));
        else
            Assert.Contains(name, new[] { "healthy-straight", "oil-short" }); // no pause
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Air_is_read_within_a_quarter_or_said_not_to_be_told(string name)
    {
        var planted = Planted.Of(name);
        var read = planted.Answer[ParameterName.EntrainedAir];
        Assert.Equal(planted.Closes && !planted.Connector, read.Identified);
        var air = planted.Parameter("air");
        if (read.Identified)
            Assert.InRange(read.Value, air - Math.Max(0.005, 0.25 * air), air + Math.Max(0.005, 0.25 * air));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_closing_pressure_is_a_limit_where_the_ram_comes_home(string name)
    {
        var planted = Planted.Of(name);
        var read = planted.Answer[ParameterName.ReliefClosing];
        var bar = planted.Parameter("pset_bar") * planted.Parameter("resetratio");
        Assert.InRange(bar, read.Low, read.High);
        Assert.Equal(name == "ram-binding", read.Identified);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Supply_and_resistance_are_read_within_one_and_six_percent(string name)
    {
        var planted = Planted.Of(name);
        Assert.InRange(planted.Answer[ParameterName.SupplyVoltage].Value / planted.Parameter("vbat"), 0.99, 1.01);
        Assert.InRange(planted.Answer[ParameterName.DriveResistance].Value / planted.Parameter("r"), 0.94, 1.06);
    }

    // Limits of 95 %: one in twenty may miss. 17 recordings with up to 12 figures that are told.
    [Fact]
    public void Of_all_limits_one_in_twenty_misses_at_most()
    {
        var (held, told) = (0, 0);
        foreach (var planted in Names.Select(n => Planted.Of(n.Data)))
        {
            foreach (var (name, truth) in new[]
            {
                (ParameterName.PumpFill, planted.Parameter("fill")), (ParameterName.HoldLeak, planted.HoldLeak()), (ParameterName.DeliveryCheckLeak, planted.Parameter("cdel")),
                (ParameterName.InletLeak, planted.Parameter("cin")), (ParameterName.BypassLeak, planted.Parameter("cram")), (ParameterName.EntrainedAir, planted.Parameter("air")),
                (ParameterName.ReliefOpening, planted.Parameter("pset_bar")), (ParameterName.SupplyVoltage, planted.Parameter("vbat")), (ParameterName.DriveResistance, planted.Parameter("r")),
                (ParameterName.RamFriction, planted.Parameter("fc")),
            })
            {
                if (planted.Answer[name] is not { Identified: true } read)
                    continue;
                told++;
                held += truth >= read.Low && truth <= read.High ? 1 : 0;
            }
        }

        Assert.InRange((double)held / told, 0.9, 1);
        Assert.True(told > 100);
    }

    [Fact]
    public void The_reservoir_that_ran_dry_is_read_within_a_tenth() =>
        Assert.InRange(Planted.Of("oil-short").Answer[ParameterName.UsableOil].Value, 0.9 * 22, 1.1 * 22);

    [Fact]
    public void What_would_tell_more_is_said_where_something_is_open()
    {
        Assert.Contains("five seconds", Planted.Of("healthy-straight").Answer.NextRecording, StringComparison.Ordinal);
        Assert.Contains("on nothing", Planted.Of("healthy-connector").Answer.NextRecording, StringComparison.Ordinal);
        Assert.Null(Planted.Of("healthy-hold").Answer.NextRecording);
    }
}
