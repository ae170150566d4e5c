using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Tests.Samples;

namespace Ramwright.ServiceModels.Tests;

public sealed class ModelReaderTests
{
    [Fact]
    public void Ten_lines_make_a_model_of_level_zero()
    {
        var read = Assert.IsType<ModelReading.Read>(ModelReader.Read("ten-lines.yaml", Sample.LevelZero));
        Assert.Equal("corrie-85", read.Model.Tool.Id);
        Assert.Equal(700, read.Model.Limits.Nominal.Bar, 1e-9);
        Assert.Equal(12, read.Model.Limits.ProofRuns);
        Assert.Empty(read.Notes);
    }

    [Fact]
    public void Ways_off_states_and_tools_are_read_as_written()
    {
        var reading = ModelReader.Read("extract.yaml", Sample.WaysOff);
        Assert.True(reading is ModelReading.Read, reading is ModelReading.Refused r ? Metrology.Input.MistakeText.Write(r.Mistakes) : "");
        var model = ((ModelReading.Read)reading).Model;
        var cap = model.FindPart(new("cap-nut"))!;
        Assert.Equal(2, cap.WaysOff.Length);
        Assert.Equal(new Holding(HoldKind.Thread, ThreadHand.Left), cap.WaysOff[0].HeldBy);
        Assert.Equal(85, cap.WaysOff[0].Breakaway!.Value.NewtonMetres, 1e-9);
        Assert.Equal(0.02, cap.WaysOff[1].Risk!.Chance, 1e-12);
        Assert.Equal(0.05, cap.Fit!.Torque!.Tolerance, 1e-12);
        var wrench = Assert.IsType<ShopTool.Made>(model.FindTool(new("hook-wrench-62")));
        Assert.Equal(62, wrench.Dimensions["for-diameter"].Millimetres, 1e-9);
        Assert.Equal(95, model.FindState(new("oil-drained"))!.Loses!.Value.Millilitres, 1e-9);
        Assert.Equal(new SealSize.Dash("ISO3601", 219), model.FindPart(new("seal-ram"))!.Size);
        Assert.Equal("upright in vice", model.Postures.Single(p => p.Id.Value == "upright-in-vice").Name);
    }
}
