using System.Globalization;
using System.Text;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Tests.Recordings;

/// <summary>Files of hundreds of megabytes are read, or refused, in bounded memory.</summary>
public sealed class LongRecordings
{
    private const long Megabyte = 1_000_000;

    [Fact]
    public void Two_hundred_megabytes_at_20_kHz_are_averaged_down_in_bounded_memory()
    {
        using var stream = new MadeRows(rowsPerSecond: 20_000, bytes: 200 * Megabyte);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var taken = Assert.IsType<RecordingAnswer.Taken>(RecordingReader.Read("long.csv", stream));
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(stream.Given >= 200 * Megabyte);
        Assert.InRange(allocated, 0, 120 * Megabyte); // in all, over 6.7 million rows: the 524,288 rows kept are 12.6 MB; growing, working copies and the answer are the rest
        Assert.InRange(taken.Recording.Seconds.Length, 1 << 18, 1 << 19);
        Assert.InRange(taken.Recording.RowsPerSecond, 1_000, 2_500);
        var thinned = Assert.Single(taken.Notes, n => n.Kind == RecordingNoteKind.Thinned);
        Assert.Contains("each row kept is the mean of 16", thinned.Words, StringComparison.Ordinal);
        // A ramp of 1 bar/s stays where it was: the mean of rows is the ramp at the mean of their times.
        for (var i = 0; i < taken.Recording.Seconds.Length; i += 1_000)
            Assert.Equal(taken.Recording.Seconds[i] * 1e5, taken.Recording.Pascals!.Value[i], 0.01 * 1e5);
    }

    [Fact]
    public void What_is_longer_than_can_be_kept_is_refused_without_being_read_to_its_end()
    {
        using var stream = new MadeRows(rowsPerSecond: 1_000, bytes: 200 * Megabyte);
        var mistake = Assert.Single(Assert.IsType<RecordingAnswer.Refused>(RecordingReader.Read("long.csv", stream)).Mistakes);
        Assert.Equal((RecordingCodes.RecordingTooLong, (1 << 19) + 2), (mistake.Code, mistake.At.Line));
        Assert.InRange(stream.Given, 1, 30 * Megabyte);
    }

    [Fact]
    public void A_long_line_and_endless_mistakes_end_the_reading()
    {
        using var line = new MadeRows(rowsPerSecond: 0, bytes: 200 * Megabyte);
        Assert.Equal(RecordingCodes.LineTooLong, Assert.Single(Assert.IsType<RecordingAnswer.Refused>(RecordingReader.Read("line.csv", line)).Mistakes).Code);
        Assert.InRange(line.Given, 1, Megabyte);
    }

    /// <summary>A stream that makes its rows as it is read: time, a ramp of 1 bar/s, 2 A. Without a rate it is one endless line.</summary>
    private sealed class MadeRows(int rowsPerSecond, long bytes) : Stream
    {
        private readonly char[] _text = new char[64];
        private readonly byte[] _line = new byte[64];
        private int _from, _to;
        private long _row = -1;

        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var start = offset;
            while (count > 0 && Given + offset - start < bytes)
            {
                if (_from == _to)
                    Make();
                var taken = Math.Min(count, _to - _from);
                Array.Copy(_line, _from, buffer, offset, taken);
                (_from, offset, count) = (_from + taken, offset + taken, count - taken);
            }

            Given += offset - start;
            return offset - start;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        private void Make()
        {
            _row++;
            var seconds = rowsPerSecond == 0 ? 0 : (_row - 1.0) / rowsPerSecond;
            int length;
            var written = rowsPerSecond == 0 ? _text.AsSpan().TryWrite(CultureInfo.InvariantCulture, $"{_row};", out length)
                : _row == 0 ? _text.AsSpan().TryWrite(CultureInfo.InvariantCulture, $"time_s;pressure_bar;current_A\n", out length)
                : _text.AsSpan().TryWrite(CultureInfo.InvariantCulture, $"{seconds:0.0000000};{seconds:0.00000};2.00000\n", out length);
            Assert.True(written);
            (_from, _to) = (0, Encoding.ASCII.GetBytes(_text, 0, length, _line, 0));
        }
    }
}
