namespace Ramwright.Hydraulics.Integration;

/// <summary>One Rodas5P step from a state over a length of time, and the dense output within it. Allocates only when made.</summary>
internal sealed class StiffStep
{
    private readonly IStiffSystem _system;
    private readonly int _n;
    private readonly double[] _from, _to, _argument, _slope, _jacobian, _factors, _stages, _dense;
    private readonly int[] _pivots;
    private bool _jacobianIsFresh;

    public StiffStep(IStiffSystem system)
    {
        _system = system;
        _n = system.Size;
        ArgumentOutOfRangeException.ThrowIfLessThan(_n, 1, nameof(system));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(_n, 32, nameof(system));
        (_from, _to, _argument, _slope) = (new double[_n], new double[_n], new double[_n], new double[_n]);
        (_jacobian, _factors, _pivots) = (new double[_n * _n], new double[_n * _n], new int[_n]);
        _stages = new double[Rodas5P.Stages * _n];
        _dense = new double[3 * _n];
    }

    public ReadOnlySpan<double> From => _from;

    public ReadOnlySpan<double> To => _to;

    /// <summary>The error estimate of the last step tried, by state, in the state's unit.</summary>
    public ReadOnlySpan<double> Error => _stages.AsSpan((Rodas5P.Stages - 1) * _n, _n);

    public void StartFrom(ReadOnlySpan<double> state)
    {
        state.CopyTo(_from);
        _jacobianIsFresh = false;
    }

    /// <summary>Tries a step.</summary>
    /// <returns>False when the matrix is singular or a value is not finite: try a shorter one.</returns>
    public bool Try(double seconds)
    {
        if (!_jacobianIsFresh)
        {
            _system.Jacobian(_from, _jacobian);
            _jacobianIsFresh = true;
        }

        for (var i = 0; i < _factors.Length; i++)
            _factors[i] = -_jacobian[i];
        for (var i = 0; i < _n; i++)
            _factors[i * _n + i] += 1 / (Rodas5P.Gamma * seconds);
        if (!DenseLu.Factor(_factors, _pivots))
            return false;

        _from.CopyTo(_argument.AsSpan());
        for (var stage = 0; stage < Rodas5P.Stages; stage++)
        {
            SetArgument(stage);
            _system.Slope(_argument, _slope);
            var k = _stages.AsSpan(stage * _n, _n);
            for (var i = 0; i < _n; i++)
            {
                var sum = 0.0;
                for (var j = 0; j < stage; j++)
                    sum += Rodas5P.C[(stage - 1) * 7 + j] * _stages[j * _n + i];
                k[i] = _slope[i] + sum / seconds;
            }

            DenseLu.Solve(_factors, _pivots, k);
        }

        var sound = true;
        for (var i = 0; i < _n; i++)
        {
            _to[i] = _argument[i] + _stages[(Rodas5P.Stages - 1) * _n + i];
            sound &= double.IsFinite(_to[i]);
        }

        return sound;
    }

    /// <summary>Makes the dense output ready; once for each accepted step.</summary>
    public void PrepareDense()
    {
        for (var row = 0; row < 3; row++)
        {
            for (var i = 0; i < _n; i++)
            {
                var sum = 0.0;
                for (var j = 0; j < Rodas5P.Stages; j++)
                    sum += Rodas5P.H[row * Rodas5P.Stages + j] * _stages[j * _n + i];
                _dense[row * _n + i] = sum;
            }
        }
    }

    /// <summary>The state at a share of the step, 0 to 1.</summary>
    public void At(double share, Span<double> state)
    {
        var rest = 1 - share;
        for (var i = 0; i < _n; i++)
            state[i] = rest * _from[i] + share * (_to[i] + rest * (_dense[i] + share * (_dense[_n + i] + share * _dense[2 * _n + i])));
    }

    private void SetArgument(int stage)
    {
        if (stage is 6 or 7)
        {
            for (var i = 0; i < _n; i++)
                _argument[i] += _stages[(stage - 1) * _n + i];
        }
        else if (stage > 0)
        {
            for (var i = 0; i < _n; i++)
            {
                var sum = _from[i];
                for (var j = 0; j < stage; j++)
                    sum += Rodas5P.A[(stage - 1) * 5 + j] * _stages[j * _n + i];
                _argument[i] = sum;
            }
        }
    }
}
