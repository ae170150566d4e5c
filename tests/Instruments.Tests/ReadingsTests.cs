using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests;

/// <summary>Files that are taken. All values are invented.</summary>
public sealed class ReadingsTests
{
    [Theory]
    [InlineData("peak_bar\n701.2\n698.4\n703\n", "701.2 698.4 703")]
    [InlineData("run,peak_bar\n1,701.2\n2,698.4\n3,703.0\n", "701.2 698.4 703")]
    [InlineData("run;peak [bar]\n1;701,2\n2;698,4\n", "701.2 698.4")]
    [InlineData("run\tpeak_MPa\n1\t70.12\n2\t69,84\n", null)]
    [InlineData("Lauf;Druck (bar)\r\n1;701,2\r\n2;698,4\r\n", "701.2 698.4")]
    [InlineData("Druck (bar)\n701,2\n698,4\n703\n", "701.2 698.4 703")]
    [InlineData("Druck (bar)\r701,2\r698,4\r", "701.2 698.4")]
    [InlineData("pressure psi\n10152.6\n", "699.997")]
    [InlineData("p in kPa\n70120\n", "701.2")]
    [InlineData("peak / MPa\n70.12\n", "701.2")]
    [InlineData("bar\n701.2\n", "701.2")]
    [InlineData("corrie-85 [bar]\n701.2\n", "701.2")]
    [InlineData("\uFEFF# peaks of a made-up tool\n\npeak_bar\n\n701.2\n# a remark, with a comma\n698.4", "701.2 698.4")]
    [InlineData("run,peak_bar,operator\n1,701.2,M. Example\n2,698.4,\"Example, N.\"\n", "701.2 698.4")]
    [InlineData("run,peak_bar\n1,\"701,2\"\n2,\"698,4\"\n", "701.2 698.4")]
    [InlineData("peak_bar;run\n701,2;1\n698,4;2\n", "701.2 698.4")]
    [InlineData("run;peak_bar\n17;701\n18;698\n", "701 698")]
    [InlineData("peak_bar\n7.012E+02\n", "701.2")]
    [InlineData("run;peak_bar;\n1;701.2;\n2;698.4;\n", "701.2 698.4")]
    [InlineData("peak_bar , run\n 701.2 , 1\n 698.4 , 2\n", "701.2 698.4")]
    public void Usual_files_are_read(string text, string? bars)
    {
        if (bars is null)
            Assert.Equal("3:3+5 mixed-decimal", Sample.Mistakes(text).Marks());
        else
            Assert.Equal(bars, Sample.Taken(text).Bars());
    }

    [Theory]
    [InlineData("701.2\n698.4\n", null, "701.2 698.4")]
    [InlineData("1;701,2\n2;698,4\n", null, "701.2 698.4")]
    [InlineData("1,701.2\n2,698.4\n", null, "701.2 698.4")]
    [InlineData("1,701.25\n2,698.4\n", null, "701.25 698.4")]
    [InlineData("701,2\n698,4\n703\n", DecimalMark.Comma, "701.2 698.4 703")]
    [InlineData("1,701\n2,698\n", DecimalMark.Point, "701 698")]
    public void Without_a_header_the_unit_is_given(string text, DecimalMark? mark, string bars) =>
        Assert.Equal(bars, Sample.Taken(text, new() { Unit = ReadingUnit.Bar, Decimal = mark }).Bars());

    [Fact]
    public void Runs_and_lines_are_kept()
    {
        var taken = Sample.Taken("# made up\nrun;peak_bar\n7;701,2\n\n8;698,4\n");
        Assert.Equal([(7, 3), (8, 5)], taken.Readings.Select(r => (r.Run, r.Line)));
        Assert.Equal(ReadingUnit.Bar, taken.Unit);
    }

    [Fact]
    public void A_void_run_is_kept_apart_with_its_cause()
    {
        var taken = Sample.Taken("run;peak_bar;void\n1;701,2;\n2;412,0;trigger let go too early\n3;698,4;no\n4;;battery empty\n");
        Assert.Equal("701.2 698.4", taken.Bars());
        Assert.Equal([(2, "trigger let go too early"), (4, "battery empty")], taken.Void.Select(v => (v.Run, v.Cause)));
        Assert.Equal(412, taken.Void[0].Peak!.Value.Bar, 1e-9);
    }

    [Fact]
    public void A_force_becomes_a_pressure_by_the_ram_area()
    {
        // Pressure times area: a ram of 39.3 mm at 700 bar pushes 84.9 kN (invented tool).
        var options = new ReadingsOptions { RamArea = Area.OfCircle(Length.FromMillimetres(39.3)) };
        Assert.Equal(700, Sample.Taken("force_kN\n84.91\n", options).Readings[0].Peak.Bar, 0.1);
        Assert.Equal("1:1+8 unit-needs-area", Sample.Mistakes("force_kN\n84.91\n").Marks());
    }
}
