using Ramwright.Metrology.Quantities;

namespace Ramwright.App.Stations.Prove.Live;

/// <summary>What a running series does at this moment.</summary>
public abstract record LiveMoment
{
    private LiveMoment() { }

    /// <summary>The device is asked; nothing moves yet.</summary>
    public sealed record Waiting : LiveMoment;

    /// <summary>The ram works and the pressure rises.</summary>
    public sealed record Rising(Pressure Pressure) : LiveMoment;

    /// <summary>The tool rests until then.</summary>
    public sealed record Resting(DateTimeOffset Until) : LiveMoment;

    /// <summary>A run was not taken, for this reason; the series waits on.</summary>
    public sealed record NotTaken(string Why) : LiveMoment;

    /// <summary>The device is lost, for this reason; it is reached for again.</summary>
    public sealed record Away(string What) : LiveMoment;

    /// <summary>No more runs come: the series is full, it was stopped, or a run was not taken; <paramref name="Why"/> says why where something is wrong.</summary>
    public sealed record Over(string? Why) : LiveMoment;
}

/// <summary>How far a running series is.</summary>
/// <param name="Taken">Runs that are in the ledger.</param>
public sealed record LiveState(int Taken, LiveMoment Moment);

/// <summary>A series that runs by itself, and those who watch it.</summary>
public sealed class LiveSeries(int taken) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly CancellationTokenSource _stop = new();
    private LiveState _now = new(taken, new LiveMoment.Waiting());
    private TaskCompletionSource _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Set once nobody wants further runs.</summary>
    public CancellationToken Stopped => _stop.Token;

    /// <summary>The state now, and a task that ends when it is no longer so.</summary>
    public (LiveState State, Task Changed) Now
    {
        get
        {
            lock (_lock)
                return (_now, _changed.Task);
        }
    }

    public bool IsOver => Now.State.Moment is LiveMoment.Over;

    public void Become(LiveState state)
    {
        TaskCompletionSource past;
        lock (_lock)
        {
            (_now, past) = (state, _changed);
            _changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        past.SetResult();
    }

    public void Stop() => _stop.Cancel();

    public void Dispose() => _stop.Dispose();
}
