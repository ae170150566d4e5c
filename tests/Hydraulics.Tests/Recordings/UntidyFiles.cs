using System.Globalization;
using System.Text;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Tests.Recordings;

/// <summary>Files that loggers, cables and people spoil: each is read with a note, or refused with place and remedy. All rows invented.</summary>
public sealed class UntidyFiles
{
    [Fact]
    public void Empty_cells_and_words_for_nothing_are_missing_and_noted()
    {
        var taken = Taken("time_s;pressure_bar;current_A\n0;1;2\n0.001;;2\n0.002;NaN;2\n0.003;---;n/a\n0.004;1;\n0.005;1;2\n");
        Assert.Equal([1e5, double.NaN, double.NaN, double.NaN, 1e5, 1e5], taken.Recording.Pascals!.Value);
        Assert.Equal([2, 2, 2, double.NaN, double.NaN, 2], taken.Recording.Amperes!.Value);
        Noted(taken, RecordingNoteKind.CellsMissing, "4 rows lack pressure or current; they count as missing", 3);
    }

    [Fact]
    public void Every_number_that_is_none_is_shown_at_its_place()
    {
        var text = MistakeText.Write(Refused("time_s;pressure_bar;current_A\n0,000;701,2;18,1\n0,001;7O4,2;18,4\n0,002;704.2;18,4\n"), "nothing was read");
        Assert.Equal("""
            r.csv:3:7: pressure_bar is '7O4,2', which is no number with a decimal comma           [bad-number]
                3 | 0,001;7O4,2;18,4
                  |       ^^^^^
                mend: write the number, or leave the cell empty where nothing was recorded
            r.csv:4:7: pressure_bar is '704.2', which is no number with a decimal comma           [bad-number]
                4 | 0,002;704.2;18,4
                  |       ^^^^^
                mend: write the number, or leave the cell empty where nothing was recorded
            2 mistakes in 1 file; nothing was read

            """, text, ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void Time_that_goes_back_is_refused_with_its_line()
    {
        var mistake = Assert.Single(Refused("t_ms;p_bar;i_A\n0;1;2\n2;1;2\n1;1;2\n3;1;2\n"));
        Assert.Equal((RecordingCodes.TimeBackwards, 4, "time goes back here, from 0.002 s to 0.001 s"), (mistake.Code, mistake.At.Line, mistake.What));
    }

    [Fact]
    public void A_second_recording_in_the_file_is_said_to_be_one()
    {
        var mistake = Assert.Single(Refused("t_ms;p_bar\n0;1\n1;1\n2;1\nt_ms;p_bar\n0;1\n1;1\n"));
        Assert.Equal(("a second recording begins here: part the file before this line", 6), (mistake.Mend, mistake.At.Line));
    }

    [Fact]
    public void A_coarse_clock_is_spread()
    {
        // 1,000 rows a second on a clock that moves every 16 rows; the first step is cut short.
        var text = "time_ms;pressure_bar\n" + string.Concat(Enumerable.Range(5, 400).Select(i => FormattableString.Invariant($"{i / 16 * 16};{i}\n")));
        var taken = Taken(text);
        for (var i = 0; i < 400; i++)
            Assert.Equal(0.001 * i, taken.Recording.Seconds[i] - taken.Recording.Seconds[0], 1.1e-3);
        Assert.Contains(taken.Notes, n => n.Kind == RecordingNoteKind.ClockSpread && n.Words.Contains("the clock moves every 15.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_clock_that_stands_is_refused() => Code(RecordingCodes.TimeStands, "time_s;p_bar\n1;1\n1;2\n1;3\n");

    [Fact]
    public void A_hole_in_time_is_noted()
    {
        var rows = Enumerable.Range(0, 300).Where(i => i is < 100 or > 180);
        Noted(Taken("time_ms;p_bar\n" + string.Concat(rows.Select(i => $"{i};1\n"))), RecordingNoteKind.Gap, "a hole of 0.082 s in time, after 0.099 s", 0);
    }

    [Fact]
    public void A_clipped_top_counts_as_missing_with_its_limit()
    {
        var recording = Truth.Of("healthy-straight").Recording;
        var csv = new StringBuilder("time_s;pressure_bar;current_A\n");
        for (var i = 0; i < recording.Seconds.Length; i++)
            csv.Append(CultureInfo.InvariantCulture, $"{recording.Seconds[i]};{Math.Min(recording.Pascals!.Value[i] / 1e5, 600)};{recording.Amperes!.Value[i]}\n");
        var taken = Taken(csv.ToString());
        var expected = recording.Pascals!.Value.Count(p => p >= 600e5);
        Noted(taken, RecordingNoteKind.Clipped, $"pressure stands at 600 bar in {expected} rows, the end of the range; they count as missing", 0);
        Assert.Equal(expected, taken.Recording.Pascals!.Value.Count(double.IsNaN));
        Assert.DoesNotContain(taken.Recording.Amperes!.Value, double.IsNaN); // a motor at its current limit is no clipped current
    }

    [Fact]
    public void A_recording_without_noise_is_never_taken_for_clipped()
    {
        // The motor stands at its current limit for 30 ms, without a trace of noise.
        var stroke = Hydraulics.Strokes.StrokeSimulator.Run(Strokes.ReferenceTool.Healthy, new() { SamplesPerSecond = 1000 });
        var csv = "time_s,pressure_bar,current_A\n" + string.Concat(stroke.Samples.Select(s => FormattableString.Invariant($"{s.Seconds:0.######},{s.ReadingPascals / 1e5:0.##},{s.Amperes:0.##}\n")));
        var taken = Taken(csv);
        Assert.Empty(taken.Notes);
        Assert.True(taken.Recording.Amperes!.Value.Count(a => a > 109.9) > 10);
    }

    [Fact]
    public void Nothing_of_the_seventeen_recordings_is_taken_for_clipped() =>
        Assert.All(Truth.Names, name => Assert.DoesNotContain(Truth.Of(name).Recording.Pascals!.Value, double.IsNaN));

    [Theory]
    [InlineData("", RecordingCodes.NoRow)]
    [InlineData("\n\n# nothing\n", RecordingCodes.NoRow)]
    [InlineData("time_s;pressure_bar\n", RecordingCodes.NoRow)]
    [InlineData("Dear workshop,\nplease find the tool enclosed.\n", RecordingCodes.NoRow)]
    [InlineData("time_s;pressure_bar\n0.1;3\n", RecordingCodes.NoRow)]
    [InlineData("pressure_bar;current_A\n1;2\n1;2\n", RecordingCodes.NoTimeColumn)]
    [InlineData("time_s;CH1;CH2\n0;1;2\n1;2;3\n", RecordingCodes.NoSignal)]
    [InlineData("time_s;pressure_V\n0;1\n1;2\n", RecordingCodes.SensorNeedsScale)]
    [InlineData("time_s;pressure [fathom]\n0;1\n1;2\n", RecordingCodes.UnknownUnit)]
    [InlineData("time_s;pressure\n0;12\n1;15\n", RecordingCodes.MissingUnit)]
    [InlineData("time;pressure_bar\n0;12\n30;15\n", RecordingCodes.MissingUnit)]
    [InlineData("0,1,2\n0,2,2\n0,3,1\n", RecordingCodes.AmbiguousSeparator)]
    [InlineData("0.001;1;2;3\n0.002;2;3;1\n", RecordingCodes.MissingHeader)]
    public void What_cannot_be_read_has_a_code(string text, string code) => Code(code, text);

    [Fact]
    public void A_column_that_is_not_there_is_named_with_one_that_is_near()
    {
        var mistake = Assert.Single(((RecordingAnswer.Refused)RecordingReader.Read("r.csv", "time_s;pressure_bar\n0;1\n1;2\n", new() { PressureColumn = "presure_bar" })).Mistakes);
        Assert.Equal((RecordingCodes.NoSuchColumn, "write pressure_bar"), (mistake.Code, mistake.Mend));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused()
    {
        Assert.Equal("the file is packed: a spreadsheet or an archive, no text", Assert.Single(Refused([0x50, 0x4B, 3, 4, 20, 0, 8, 8])).What);
        var random = new byte[5000];
        new Random(3).NextBytes(random);
        Assert.Equal(RecordingCodes.NotText, Assert.Single(Refused(random)).Code);
        Assert.Equal(RecordingCodes.LineTooLong, Assert.Single(Refused(Encoding.UTF8.GetBytes(new string('1', 100_000)))).Code);
    }

    [Fact]
    public void A_file_that_power_cut_off_is_read_up_to_its_last_whole_row()
    {
        var whole = Encoding.UTF8.GetBytes("time_s;pressure_bar;current_A\n" + string.Concat(Enumerable.Range(0, 500).Select(i => FormattableString.Invariant($"{0.001 * i:0.000};{i}.5;1.0\n"))));
        var taken = Taken([.. whole[..^6], .. new byte[100_000]]); // cut in a row, and the rest of the block is zeros
        Assert.Equal(499, taken.Recording.Seconds.Length);
        Noted(taken, RecordingNoteKind.LinesPassedOver, "1 line is no row and was passed over", 501);
        var cut = Taken(whole[..^6]);
        Assert.Equal(499, cut.Recording.Seconds.Length);
        Noted(cut, RecordingNoteKind.LinesPassedOver, "1 line is no row and was passed over; the last row is cut off", 501);
    }

    [Fact]
    public void Lines_between_and_behind_the_rows_are_passed_over()
    {
        var taken = Taken("time_s;p_bar\n0;1\n# marker 1\nevent: trigger\n1;2\n\nend of recording\nmax;2\n");
        Assert.Equal(2, taken.Recording.Seconds.Length);
        Noted(taken, RecordingNoteKind.LinesPassedOver, "3 lines are no rows and were passed over", 4);
    }

    [Fact]
    public void A_rate_above_the_header_stands_for_a_column_of_time()
    {
        var taken = Taken("Logger 7\nSample rate: 2 kHz\npressure_bar;current_A\n1;2\n1;2\n1;2\n");
        Assert.Equal([0, 0.0005, 0.001], taken.Recording.Seconds);
        Noted(taken, RecordingNoteKind.TimeFromRate, "time is counted from the rows, 2000 a second as the lines above say", 0);
        Assert.Equal([0, 0.01], Assert.IsType<RecordingAnswer.Taken>(RecordingReader.Read("r.csv", "pressure_bar\n1\n2\n", new() { RowsPerSecond = 100 })).Recording.Seconds);
    }

    [Fact]
    public void Absolute_pressure_a_stated_zero_and_a_missing_signal_are_noted()
    {
        var taken = Assert.IsType<RecordingAnswer.Taken>(RecordingReader.Read("r.csv", "time_s;pressure [bar(a)]\n0;1.01325\n1;701.01325\n", new() { PressureZeroPascals = 2e5 }));
        Assert.Equal(-2e5, taken.Recording.Pascals!.Value[0], 1e-6);
        Assert.Equal(698e5, taken.Recording.Pascals!.Value[1], 1e-6);
        Assert.Null(taken.Recording.Amperes);
        Assert.Equal(3, taken.Notes.Count(n => n.Kind is RecordingNoteKind.Converted or RecordingNoteKind.SignalMissing));
    }

    [Fact]
    public void Whatever_is_done_to_a_file_it_is_answered()
    {
        var random = new Random(20261125);
        var whole = Encoding.UTF8.GetBytes("Logger;7\ntime_s;pressure_bar;current_A;x\n" + string.Concat(Enumerable.Range(0, 60).Select(i => FormattableString.Invariant($"{0.001 * i:0.000};{i}.5;1.0;ok\n"))));
        for (var i = 0; i < 3_000; i++)
        {
            var bytes = (byte[])whole.Clone();
            for (var n = random.Next(1, 30); n > 0; n--)
                bytes[random.Next(bytes.Length)] = (byte)(random.Next(3) == 0 ? random.Next(256) : ";,.\t\n\r -\"0123456789:eE#"[random.Next(23)]);
            if (RecordingReader.Read("r.csv", new MemoryStream(bytes, 0, random.Next(bytes.Length))) is not RecordingAnswer.Taken { Recording: var taken })
                continue;
            Assert.True(taken.Seconds.Length >= 2 && taken.Seconds.Zip(taken.Seconds.Skip(1)).All(p => p.First < p.Second), "time rises strictly");
            Assert.True(taken.Pascals is null || taken.Pascals.Value.Length == taken.Seconds.Length);
            Assert.True(taken.Amperes is null || taken.Amperes.Value.Length == taken.Seconds.Length);
        }
    }

    private static void Noted(RecordingAnswer.Taken taken, RecordingNoteKind kind, string words, int line) =>
        Assert.Contains(new RecordingNote(kind, words, line), taken.Notes);

    private static void Code(string code, string text) => Assert.Equal(code, Assert.Single(Refused(text)).Code);

    private static RecordingAnswer.Taken Taken(string text) => Taken(Encoding.UTF8.GetBytes(text));

    private static RecordingAnswer.Taken Taken(byte[] bytes)
    {
        var answer = RecordingReader.Read("r.csv", new MemoryStream(bytes));
        return answer is RecordingAnswer.Refused refused ? throw new Xunit.Sdk.XunitException(MistakeText.Write(refused.Mistakes)) : Assert.IsType<RecordingAnswer.Taken>(answer);
    }

    private static IReadOnlyList<Mistake> Refused(string text) => Refused(Encoding.UTF8.GetBytes(text));

    private static IReadOnlyList<Mistake> Refused(byte[] bytes) => Assert.IsType<RecordingAnswer.Refused>(RecordingReader.Read("r.csv", new MemoryStream(bytes))).Mistakes;
}
