namespace Ramwright.Instruments.Lines;

/// <summary>Bytes to and from a device. A dead line throws <see cref="IOException"/> or what the system throws.</summary>
internal interface IByteLine : IAsyncDisposable
{
    ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel);

    /// <summary>At least one byte; the end of the line is an <see cref="EndOfStreamException"/>.</summary>
    ValueTask<int> ReadSomeAsync(Memory<byte> into, CancellationToken cancel);

    /// <summary>Forgets what came unasked.</summary>
    void DiscardInput();
}
