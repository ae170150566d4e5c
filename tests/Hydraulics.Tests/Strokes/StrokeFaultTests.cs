using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Tests.Strokes;

public sealed class StrokeFaultTests
{
    [Fact]
    public void Every_example_is_taken_and_changes_the_tool() =>
        Assert.All(StrokeFault.All, fault => Assert.NotEqual(ReferenceTool.Healthy, Assert.IsType<TextReading<StrokeParameters>.Good>(StrokeFault.Apply($"{fault.Name}={fault.Example}", ReferenceTool.Healthy)).Value));

    [Theory]
    [InlineData("air=4%", 0.04)]
    [InlineData("air=0.04", 0.04)]
    public void Air_is_a_share(string word, double share) =>
        Assert.Equal(share, Assert.IsType<TextReading<StrokeParameters>.Good>(StrokeFault.Apply(word, ReferenceTool.Healthy)).Value.Oil.AirShare, 12);

    [Theory]
    [InlineData("aire=4%", "no fault of the stroke model is called 'aire'", "write air")]
    [InlineData("air", "air has no value", "write air=4%")]
    [InlineData("air=70%", "air of 70% is out of range", "write 0 % to 30 %, such as air=4%")]
    [InlineData("relief=590", "'590' has no unit", "write one of")]
    [InlineData("supply=16 bar", "bar measures", "write one of V, mV")]
    public void What_cannot_be_taken_is_said_with_the_remedy(string word, string what, string mend)
    {
        var fault = Assert.IsType<TextReading<StrokeParameters>.Bad>(StrokeFault.Apply(word, ReferenceTool.Healthy)).Fault;
        Assert.StartsWith(what, fault.What, StringComparison.Ordinal);
        Assert.StartsWith(mend, fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pump_with_an_inlet_port_has_no_inlet_check_to_leak() =>
        Assert.IsType<TextReading<StrokeParameters>.Bad>(StrokeFault.Apply("inlet-check=3e-15", ReferenceTool.Healthy with { Inlet = ServiceModels.Model.InletKind.Port }));

    [Fact]
    public void Noise_is_the_same_for_the_same_seed()
    {
        var sample = new StrokeSample(1, 100e5, 20, 100e5, 0.01);
        Assert.Equal(new RecordingNoise(7).Of(sample), new RecordingNoise(7).Of(sample));
        Assert.NotEqual(new RecordingNoise(7).Of(sample), new RecordingNoise(8).Of(sample));
    }
}
