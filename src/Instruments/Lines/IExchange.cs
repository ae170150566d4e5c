namespace Ramwright.Instruments.Lines;

/// <summary>What is wrong with a device.</summary>
public enum DeviceFault
{
    /// <summary>It cannot be reached: no such host, port or cable, or somebody else holds it.</summary>
    NotReached,

    /// <summary>It does not answer, or not in time.</summary>
    Silent,

    /// <summary>It closed the connection, or the cable was pulled.</summary>
    Closed,

    /// <summary>What it answers cannot be read.</summary>
    Garbled,

    /// <summary>Another device answers.</summary>
    WrongDevice,

    /// <summary>It answers that it cannot.</summary>
    Exception,

    /// <summary>It says a value that cannot be: no number, or outside all pressures.</summary>
    Absurd,
}

/// <summary>One question to a device and what came of it.</summary>
internal abstract record Exchanged
{
    private Exchanged() { }

    /// <summary>A number; may be no finite one.</summary>
    public sealed record Value(double Number) : Exchanged;

    /// <summary>No number this time; the next question may be asked.</summary>
    public sealed record Bad(DeviceFault Fault, string What) : Exchanged;

    /// <summary>The line is out of step or dead: it must be opened anew.</summary>
    public sealed record Broken(DeviceFault Fault, string What) : Exchanged;
}

/// <summary>Asks a device over an open line. What the device does is an answer; only being called off throws.</summary>
internal interface IExchange : IAsyncDisposable
{
    Task<Exchanged> AskAsync(CancellationToken cancel);
}
