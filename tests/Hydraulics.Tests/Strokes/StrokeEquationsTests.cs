using CsCheck;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Tests.Strokes;

public sealed class StrokeEquationsTests
{
    private static readonly StrokePlan Connector = new() { Load = new StrokeLoad.Connector(48e3, 11e-3, 3.5e-3) };

    private static readonly Gen<double[]> States =
        from speed in Gen.Double[1, 2000]
        from bar in Gen.Double[0.5, 760]
        from millimetres in Gen.Double[12, 20.3]
        from velocity in Gen.Double[-0.05, 0.05]
        from lift in Gen.Double[0, 1]
        select new[] { speed, bar * 1e5, millimetres * 1e-3, velocity, 1e-5, lift, bar * 1e5 };

    private static readonly Gen<StrokeModes> AnyModes =
        from drive in Gen.Enum<DriveMode>()
        from ram in Gen.Enum<RamMode>()
        from connector in Gen.Enum<ConnectorMode>()
        from flags in Gen.Int[0, 31]
        select new StrokeModes
        {
            Drive = drive,
            Ram = ram,
            Connector = connector,
            ConnectorPeakMetres = 15e-3,
            DiesClosed = (flags & 1) != 0,
            ReliefOpen = (flags & 2) != 0,
            Weeping = (flags & 4) != 0,
            Dry = (flags & 8) != 0,
            Delivering = (flags & 16) != 0,
        };

    private static readonly double[] Scales = [1, 1e3, 1e-7, 1e-5, 1e-9, 1e-5, 1e3];

    [Fact]
    public void The_Jacobian_is_that_of_the_slope_under_all_laws() => AnyModes.Select(States).ForAll(
        (modes, state) =>
        {
            var equations = new StrokeEquations(ReferenceTool.Healthy with { WeepLeak = 1e-14, DeliveryLeak = 1e-14 }, Connector) { Modes = modes };
            var jacobian = new double[StrokeEquations.States * StrokeEquations.States];
            equations.Jacobian(state, jacobian);
            double[] up = new double[StrokeEquations.States], down = new double[StrokeEquations.States];
            for (var j = 0; j < StrokeEquations.States; j++)
            {
                var kept = state[j];
                state[j] = kept + Scales[j];
                equations.Slope(state, up);
                state[j] = kept - Scales[j];
                equations.Slope(state, down);
                state[j] = kept;
                for (var i = 0; i < StrokeEquations.States; i++)
                {
                    var expected = (up[i] - down[i]) / (2 * Scales[j]);
                    var rounding = 1e-13 * (Math.Abs(up[i]) + Math.Abs(down[i])) / Scales[j];
                    Assert.InRange(jacobian[i * StrokeEquations.States + j] - expected, -1e-4 * Math.Abs(expected) - rounding - 1e-30, 1e-4 * Math.Abs(expected) + rounding + 1e-30);
                }
            }
        },
        iter: 2_000);
}
