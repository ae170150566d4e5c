namespace Ramwright.Hydraulics.Integration;

/// <summary>The length of a first step, from how fast the slope itself changes: y″ = J·f for an autonomous system.</summary>
internal sealed class FirstStep
{
    /// <summary>Where the slope does not change, at most this much, in seconds.</summary>
    private const double MostSeconds = 1e-2;

    /// <summary>Second-order change over the first step, in units of the tolerance. A fifth-order method does far better than that.</summary>
    private const double Change = 10;

    private readonly IStiffSystem _system;
    private readonly double[] _slope, _jacobian, _bend;

    public FirstStep(IStiffSystem system)
    {
        _system = system;
        (_slope, _jacobian, _bend) = (new double[system.Size], new double[system.Size * system.Size], new double[system.Size]);
    }

    /// <summary>Length in seconds: ½·h²·|y″| = <see cref="Change"/>.</summary>
    public double Seconds(ReadOnlySpan<double> state, StiffTolerance tolerance)
    {
        _system.Slope(state, _slope);
        _system.Jacobian(state, _jacobian);
        var n = _slope.Length;
        for (var i = 0; i < n; i++)
        {
            var sum = 0.0;
            for (var j = 0; j < n; j++)
                sum += _jacobian[i * n + j] * _slope[j];
            _bend[i] = sum;
        }

        var bend = tolerance.Norm(state, state, _bend);
        return bend > 0 ? Math.Min(MostSeconds, Math.Sqrt(2 * Change / bend)) : MostSeconds;
    }
}
