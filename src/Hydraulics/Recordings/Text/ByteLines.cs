using System.Text;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Lines of a stream of bytes, one at a time, in bounded memory. UTF-8, UTF-16 with or without its mark; bytes that are no UTF-8 count as Latin-1.</summary>
internal sealed class ByteLines
{
    /// <summary>Most signs in a line.</summary>
    public const int LongestLine = 4_000;

    private const int Chunk = 1 << 16, Looked = 4_096;

    private readonly Stream _bytes;
    private readonly byte[] _raw = new byte[Chunk];
    private readonly char[] _signs = new char[Chunk + (2 * LongestLine) + 16];
    private readonly Latin1Fallback _fallback = new();
    private readonly Decoder _decoder;
    private int _from, _to, _held;
    private bool _ended, _afterReturn;

    public ByteLines(Stream bytes)
    {
        _bytes = bytes;
        while (_held < Looked && _bytes.Read(_raw, _held, Chunk - _held) is > 0 and var read)
            _held += read;
        var start = _raw.AsSpan(0, _held);
        (Form, var mark) = FormOf(start[..Math.Min(_held, Looked)]);
        Encoding encoding = Form switch
        {
            TextForm.Utf16 => new UnicodeEncoding(bigEndian: false, byteOrderMark: false),
            TextForm.Utf16BigEndian => new UnicodeEncoding(bigEndian: true, byteOrderMark: false),
            _ => Encoding.GetEncoding("utf-8", EncoderFallback.ReplacementFallback, _fallback),
        };
        _decoder = encoding.GetDecoder();
        start[mark..].CopyTo(_raw);
        _held -= mark;
    }

    public TextForm Form { get; }

    /// <summary>Number of bytes that were no UTF-8 and were taken as Latin-1.</summary>
    public int OddBytes => _fallback.Count;

    /// <summary>Number of the line last given, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>Whether the line last given ended with the file and not with a line end.</summary>
    public bool IsUnended { get; private set; }

    /// <summary>Whether the line last given is only the beginning of one longer than <see cref="LongestLine"/>.</summary>
    public bool IsTooLong { get; private set; }

    /// <summary>The next line without its end, valid until the next call; false at the end of the file.</summary>
    public bool Next(out ReadOnlySpan<char> line)
    {
        line = default;
        if (IsTooLong)
            return false;
        var looked = _from;
        while (true)
        {
            if (_afterReturn && _from < _to)
            {
                _afterReturn = false;
                if (_signs[_from] == '\n')
                    looked = ++_from;
            }

            var at = _signs.AsSpan(looked, _to - looked).IndexOfAny('\r', '\n');
            if (at >= 0)
            {
                var end = looked + at;
                line = _signs.AsSpan(_from, end - _from);
                _afterReturn = _signs[end] == '\r';
                _from = end + 1;
                return Give(ref line);
            }

            if (_to - _from > LongestLine || (_ended && _to > _from))
            {
                IsUnended = true;
                line = _signs.AsSpan(_from, _to - _from);
                _from = _to;
                return Give(ref line);
            }

            if (_ended)
                return false;
            looked = Fill();
        }
    }

    private bool Give(ref ReadOnlySpan<char> line)
    {
        Number++;
        IsTooLong = line.Length > LongestLine;
        return true;
    }

    /// <summary>Moves what is left to the front and decodes more behind it; gives where the new signs begin.</summary>
    private int Fill()
    {
        _signs.AsSpan(_from, _to - _from).CopyTo(_signs);
        _to -= _from;
        _from = 0;
        if (_held == 0)
            _held = _bytes.Read(_raw, 0, Chunk);
        _ended = _held == 0;
        var start = _to;
        _decoder.Convert(_raw.AsSpan(0, _held), _signs.AsSpan(_to), flush: _ended, out var used, out var written, out _);
        _raw.AsSpan(used, _held - used).CopyTo(_raw);
        _held -= used;
        if (_held > 0)
            _ended = false;
        foreach (var sign in _signs.AsSpan(start, written))
        {
            if (sign != '\0' || _to == 0 || _signs[_to - 1] != '\0') // a block of zeros counts as one
                _signs[_to++] = sign;
        }

        return start;
    }

    private static (TextForm Form, int Mark) FormOf(ReadOnlySpan<byte> start)
    {
        switch (start)
        {
            case [0xFF, 0xFE, 0, 0, ..]:
                return (TextForm.NoText, 0);
            case [0xEF, 0xBB, 0xBF, ..]:
                return (TextForm.Utf8, 3);
            case [0xFF, 0xFE, ..]:
                return (TextForm.Utf16, 2);
            case [0xFE, 0xFF, ..]:
                return (TextForm.Utf16BigEndian, 2);
            case [(byte)'P', (byte)'K', 3, 4, ..] or [0x1F, 0x8B, ..]:
                return (TextForm.Packed, 0);
        }

        var (even, odd, odder) = (0, 0, 0);
        for (var i = 0; i < start.Length; i++)
        {
            (even, odd) = start[i] != 0 ? (even, odd) : i % 2 == 0 ? (even + 1, odd) : (even, odd + 1);
            odder += start[i] is > 0 and < 9 or > 13 and < 32 ? 1 : 0;
        }

        return start.Length >= 8 && odd > 0.4 * start.Length && even == 0 ? (TextForm.Utf16, 0)
            : start.Length >= 8 && even > 0.4 * start.Length && odd == 0 ? (TextForm.Utf16BigEndian, 0)
            : odder > 0.01 * start.Length || (even + odd > 0.1 * start.Length && start[..Math.Min(64, start.Length)].Contains((byte)0)) ? (TextForm.NoText, 0)
            : (TextForm.Utf8, 0);
    }

    /// <summary>Gives each byte that is no UTF-8 as the Latin-1 sign it stands for in older files.</summary>
    private sealed class Latin1Fallback : DecoderFallback
    {
        public int Count { get; private set; }

        public override int MaxCharCount => 4;

        public override DecoderFallbackBuffer CreateFallbackBuffer() => new Buffer(this);

        private sealed class Buffer(Latin1Fallback owner) : DecoderFallbackBuffer
        {
            private byte[] _unknown = [];
            private int _next;

            public override int Remaining => _unknown.Length - _next;

            public override bool Fallback(byte[] bytesUnknown, int index)
            {
                (_unknown, _next) = (bytesUnknown, 0);
                owner.Count += bytesUnknown.Length;
                return bytesUnknown.Length > 0;
            }

            public override char GetNextChar() => _next < _unknown.Length ? (char)_unknown[_next++] : '\0';

            public override bool MovePrevious() => _next > 0 && _next-- > 0;
        }
    }
}

/// <summary>How a file stores its signs.</summary>
internal enum TextForm { Utf8, Utf16, Utf16BigEndian, Packed, NoText }
