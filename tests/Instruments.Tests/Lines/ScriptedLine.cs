using Ramwright.Instruments.Lines;

namespace Ramwright.Instruments.Tests.Lines;

/// <summary>A line whose other end says what a script says, piece by piece, whatever it is asked; behind the last piece it stays silent or hangs up.</summary>
internal sealed class ScriptedLine(IEnumerable<byte[]> pieces, bool hangsUp) : IByteLine
{
    private readonly Queue<byte[]> _pieces = new(pieces.Where(p => p.Length > 0));
    private ReadOnlyMemory<byte> _rest;

    public List<byte> Written { get; } = [];

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel)
    {
        Written.AddRange(bytes.Span);
        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadSomeAsync(Memory<byte> into, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        if (_rest.IsEmpty)
        {
            if (!_pieces.TryDequeue(out var piece))
            {
                if (hangsUp)
                    throw new EndOfStreamException("hung up");
                await Task.Delay(Timeout.Infinite, cancel);
            }
            _rest = piece;
        }
        var count = Math.Min(into.Length, _rest.Length);
        _rest.Span[..count].CopyTo(into.Span);
        _rest = _rest[count..];
        return count;
    }

    public void DiscardInput()
    {
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
