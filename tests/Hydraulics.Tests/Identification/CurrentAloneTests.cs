using Ramwright.Hydraulics.Identification;

namespace Ramwright.Hydraulics.Tests.Identification;

/// <summary>The recordings with their pressure taken away: what a clamp on the pack's lead tells, nothing opened. Truth: Recordings/truth.json.</summary>
public sealed class CurrentAloneTests
{
    private static readonly Dictionary<string, IdentificationAnswer.Told> Kept = [];

    public static TheoryData<string> Names => Planted.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_opening_lies_within_its_limits_or_is_not_told(string name)
    {
        var read = Read(name)[ParameterName.ReliefOpening];
        if (Planted.Of(name).Outcome("relief_open_bar") is not { } bar)
            Assert.False(read.Identified);
        else if (read.Identified)
            Assert.True(bar >= read.Low && bar <= read.High && read.High - read.Low < 0.5 * bar, $"{read.Low:0} to {read.High:0} bar, it was {bar:0}");
        else
            Assert.Equal("relief-set-low", name); // the second pull ends before the motor has settled
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_filling_is_told_within_two_percent_where_the_dies_close_on_nothing(string name)
    {
        var (planted, read) = (Planted.Of(name), Read(name)[ParameterName.PumpFill]);
        if (read.Identified)
            Assert.InRange(read.Value / planted.Parameter("fill"), 0.98, 1.02);
        else
            Assert.True(planted.Connector || !planted.Closes || name is "weak-drive", name);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_it_names_was_planted(string name)
    {
        var named = Read(name).Faults.Where(f => f.Probability >= IdentificationAnswer.Told.Named).Select(f => f.Id).ToHashSet();
        Assert.Subset(Planted.Of(name).Faults("faults").Union(Planted.Of(name).Faults("acceptable_also")).ToHashSet(), named);
        foreach (var seen in new[] { FaultId.LowFill, FaultId.WeakDrive, FaultId.OilShort }.Where(Planted.Of(name).Faults("faults").Contains))
            Assert.Contains(seen, named);
    }

    [Fact]
    public void Pressure_by_torque_follows_the_gauge()
    {
        var planted = Planted.Of("healthy-straight");
        var off = new List<double>();
        foreach (var point in Read("healthy-straight").Fitted)
        {
            var row = planted.Recording.Seconds.IndexOf(planted.Recording.Seconds.MinBy(s => Math.Abs(s - point.Seconds)));
            if (planted.Recording.Pascals!.Value[row] is > 300e5 and < 650e5 and var read)
                off.Add(point.Pascals / read - 1);
        }

        Assert.True(off.Count > 100);
        Assert.InRange(off.Average(), -0.05, 0.05);
        Assert.InRange(off.Select(Math.Abs).Average(), 0, 0.12);
    }

    private static IdentificationAnswer.Told Read(string name)
    {
        lock (Kept)
        {
            var planted = Planted.Of(name);
            return Kept.TryGetValue(name, out var kept) ? kept : Kept[name] = Assert.IsType<IdentificationAnswer.Told>(StrokeIdentifier.Read(planted.Recording with { Pascals = null }, planted.Tool));
        }
    }
}
