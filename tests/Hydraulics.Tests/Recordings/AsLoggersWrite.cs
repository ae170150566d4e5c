using System.Globalization;
using System.Text;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Tests.Recordings;

/// <summary>One recording, written in the ways of many loggers, is the same recording. The rows are those of healthy-straight.csv (README.md beside it).</summary>
public sealed class AsLoggersWrite
{
    private static readonly List<(double Seconds, double Bar, double Amperes)> Rows = Strokes.ReferenceTool.Recording("healthy-straight");

    [Fact]
    public void The_plain_file_is_read_cell_for_cell_with_nothing_assumed()
    {
        var taken = Taken(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Recordings", "healthy-straight.csv")));
        Assert.Empty(taken.Notes);
        Assert.Equal(Rows.Select(r => r.Seconds), taken.Recording.Seconds);
        Assert.Equal(Rows.Select(r => r.Bar * 1e5), taken.Recording.Pascals!.Value);
        Assert.Equal(Rows.Select(r => r.Amperes), taken.Recording.Amperes!.Value);
    }

    [Theory]
    [InlineData("time_s;pressure_bar;current_A", ";", ",", 1, 1, 1)]
    [InlineData("Zeit [s]\tDruck [bar]\tStrom [A]", "\t", ",", 1, 1, 1)]
    [InlineData("t (ms), p (MPa), I (mA)", ", ", ".", 1e3, 0.1, 1e3)]
    [InlineData("Time in us|Pressure in kPa|Motor current in A", "|", ".", 1e6, 100, 1)]
    [InlineData("time [s]  pressure [psi]  current [A]", "  ", ".", 1, 14.503773773, 1)]
    [InlineData("temps / s;pression / Pa;courant / A", ";", ",", 1, 1e5, 1)]
    [InlineData("# elapsed (msec) pressure (barg) amps", " ", ",", 1e3, 1, 1)]
    [InlineData("elapsed_ms,CH1 (bar),CH2 (A)", ",", ".", 1e3, 1, 1)]
    [InlineData("Time;Pressure;Current\ns;bar;A", ";", ",", 1, 1, 1)]
    [InlineData("Time,Pressure,Current\n[ms],[MPa],[A]", ",", ".", 1e3, 0.1, 1)]
    [InlineData("s;bar;A", ";", ".", 1, 1, 1)]
    [InlineData("Logger 7\nChannels: 2, gain 1.0\n\n\"Time (s)\",\"Pressure, bar\",\"Current, A\"", ",", ".", 1, 1, 1)]
    public void Separators_marks_units_and_headers_of_many_loggers_give_the_same(string header, string separator, string mark, double perSecond, double perBar, double perAmpere)
    {
        var text = Written(header, r => string.Join(separator, Cell(r.Seconds * perSecond, mark), Cell(r.Bar * perBar, mark), Cell(r.Amperes * perAmpere, mark)));
        Same(Taken(text));
    }

    [Fact]
    public void Columns_may_stand_in_any_order_among_others()
    {
        var taken = Taken(Written("no;motor temp [°C];current_A;note;pressure_bar;time_s", (r, i) => $"{i};21.5;{Cell(r.Amperes, ".")};ok;{Cell(r.Bar, ".")};{Cell(r.Seconds, ".")};"));
        Same(taken);
        Assert.Contains(taken.Notes, n => n is { Kind: RecordingNoteKind.ColumnsIgnored, Words: "not read: 'no', 'motor temp [°C]', 'note'", Line: 1 });
    }

    [Theory]
    [InlineData("yyyy-MM-dd HH:mm:ss.fff", ';')]
    [InlineData("HH:mm:ss,fff", ';')]
    [InlineData("yyyy-MM-ddTHH:mm:ss.ffffffZ", ',')]
    [InlineData("yyyy-MM-ddTHH:mm:ss.fff+01:00", '\t')]
    [InlineData("dd.MM.yyyy HH:mm:ss.fff", ';')]
    [InlineData("MM/dd/yyyy hh:mm:ss.fff tt", '\t')]
    [InlineData("yyyyMMddTHHmmss.fff", ',')]
    [InlineData("yyyy-MM-dd HH:mm:ss.fff", ' ')]
    [InlineData("yyyy-MM-dd HH:mm:ss,fff", ',')]
    public void Time_stamps_are_read_past_midnight(string format, char separator)
    {
        var start = new DateTime(2026, 3, 2, 23, 59, 58, 125, DateTimeKind.Utc); // two seconds before midnight
        var text = Written($"timestamp{separator}pressure_bar{separator}current_A", r =>
            string.Join(separator, start.AddTicks((long)Math.Round(1e7 * r.Seconds)).ToString(format, CultureInfo.InvariantCulture), Cell(r.Bar, "."), Cell(r.Amperes, ".")));
        Same(Taken(text));
    }

    [Fact]
    public void A_sensor_in_volts_or_milliamperes_is_read_with_its_scale()
    {
        var volts = Scale("0.5 V = 0 bar, 4.5 V = 1000 bar", Dimension.Pressure);
        var clamp = Scale("10 mV/A", Dimension.Current);
        var taken = Taken(Written("time_s;pressure [V];current [mV]", r => string.Join(';', Cell(r.Seconds, "."), Cell(0.5 + (r.Bar / 250), "."), Cell(10 * r.Amperes, "."))), new() { PressureScale = volts, CurrentScale = clamp });
        Same(taken);
        Assert.Contains(taken.Notes, n => n.Kind == RecordingNoteKind.Converted && n.Words == "'pressure [V]' was turned into pressure at 250 bar per V, zero at 0.5 V");
        var loop = Scale("4 mA = 0 bar, 20 mA = 1000 bar", Dimension.Pressure);
        Same(Taken(Written("time_s;pressure_mA;current_A", r => string.Join(';', Cell(r.Seconds, "."), Cell(4 + (r.Bar * 0.016), "."), Cell(r.Amperes, "."))), new() { PressureScale = loop }));
    }

    [Theory]
    [InlineData("# pressure sensor 250 bar/V with 0.5 V at zero: 0.5 V = 0 bar, 4.5 V = 1000 bar; clamp 10 mV/A", "time_s;pressure [V];current [mV]", 0.004, 0.5, 10)]
    [InlineData("Pressure: 0-10 V = 0-1000 bar\nCurrent: 20 A per V", "time_s;pressure_V;current_V", 0.01, 0, 0.05)]
    [InlineData("p 4..20 mA -> 0..1000 bar", "time_s;p (mA);current_A", 0.016, 4, 1)]
    [InlineData("1 V = 100 bar, 1 V = 50 A", "time_s;pressure/V;current/V", 0.01, 0, 0.02)]
    [InlineData("x", "time_s;pressure (100 bar/V);current (10 mV/A)", 0.01, 0, 10)]
    public void A_scale_written_above_the_rows_is_taken_with_a_note(string above, string header, double perBar, double atZero, double perAmpere)
    {
        var taken = Taken(Written(above + "\n" + header, r => string.Join(';', Cell(r.Seconds, "."), Cell(atZero + (perBar * r.Bar), "."), Cell(perAmpere * r.Amperes, "."))));
        Same(taken);
        Assert.Contains(taken.Notes, n => n.Kind == RecordingNoteKind.Converted && n.Words.StartsWith("the scale of 'p", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_header_time_pressure_and_current_are_told_by_their_shape_and_it_is_said()
    {
        var taken = Taken(Written(null, r => string.Join(';', Cell(1000 * r.Seconds, "."), Cell(r.Amperes, "."), Cell(r.Bar, "."))));
        Same(taken);
        Assert.Contains(taken.Notes, n => n is { Kind: RecordingNoteKind.ColumnsAssumed, Words: "the file has no header; column 3 was taken as pressure and column 2 as current, since current rises first" });
        Assert.Contains(taken.Notes, n => n is { Kind: RecordingNoteKind.UnitAssumed, Words: "time has no unit; in ms there are 1,000 rows a second, so ms was taken" });
        Assert.Contains(taken.Notes, n => n is { Kind: RecordingNoteKind.UnitAssumed, Words: "'column 3' has no unit; bar was taken, since it goes up to 696.25" });
    }

    [Fact]
    public void Several_pressures_are_a_question_that_names_them()
    {
        var text = Written("time_s;pump pressure [bar];head pressure [bar];current_A", r => string.Join(';', Cell(r.Seconds, "."), Cell(r.Bar, "."), Cell(2 * r.Bar, "."), Cell(r.Amperes, ".")));
        var asked = Assert.IsType<RecordingAnswer.WhichColumn>(RecordingReader.Read("r.csv", text));
        Assert.Equal(RecordingSignal.Pressure, asked.Signal);
        Assert.Equal(["pump pressure [bar]", "head pressure [bar]"], asked.Names);
        Same(Taken(text, new() { PressureColumn = "pump pressure" }));
        Same(Taken(text, new() { PressureColumn = "2" }));
    }

    [Theory]
    [InlineData("utf-16", true)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-16BE", false)]
    [InlineData("utf-8", true)]
    public void Any_way_of_storing_signs_is_read(string name, bool mark)
    {
        var encoding = Encoding.GetEncoding(name);
        var bytes = (mark ? encoding.GetPreamble() : []).Concat(encoding.GetBytes(Written("time_s;pressure_bar;current_A", Plain).Replace("\n", "\r\n", StringComparison.Ordinal))).ToArray();
        Same(Taken(bytes));
    }

    [Fact]
    public void An_older_file_in_Latin_1_is_read_and_noted()
    {
        var taken = Taken(Encoding.Latin1.GetBytes(Written("time_\u00b5s;pressure_bar;current_A", r => string.Join(';', Cell(1e6 * r.Seconds, "."), Cell(r.Bar, "."), Cell(r.Amperes, ".")))));
        Same(taken);
        Assert.Contains(taken.Notes, n => n is { Kind: RecordingNoteKind.Encoding, Words: "1 byte is no UTF-8 and was read as Latin-1" });
    }

    [Theory]
    [InlineData("1 234,5", "1234.5")]
    [InlineData("1.234,5", "1234.5")]
    [InlineData("1'234,5", "1234.5")]
    [InlineData("12.345.678,5", "12345678.5")]
    [InlineData("-3,5e2", "-350")]
    [InlineData("\u22123,5", "-3.5")]
    [InlineData("+0,000000000000000000123", "1.23E-19")]
    public void Numbers_may_have_their_thousands_set_apart(string written, string read)
    {
        Assert.True(Hydraulics.Recordings.Text.Cells.TryNumber(written, DecimalMark.Comma, out var value));
        Assert.Equal(double.Parse(read, CultureInfo.InvariantCulture), value);
    }

    [Theory]
    [InlineData("1 23,5")]
    [InlineData("1.2345,5")]
    [InlineData("1,2,3")]
    [InlineData(",")]
    [InlineData("7O4,2")]
    [InlineData("1.5")] // a point that stands not between thousands
    public void What_is_no_number_is_none(string written) => Assert.False(Hydraulics.Recordings.Text.Cells.TryNumber(written, DecimalMark.Comma, out _));

    [Fact]
    public void Numbers_are_read_as_the_platform_reads_them()
    {
        var random = new Random(20261125);
        for (var i = 0; i < 20_000; i++)
        {
            var text = ((random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-8, 12))).ToString("F" + random.Next(0, 9), CultureInfo.InvariantCulture);
            Assert.True(Hydraulics.Recordings.Text.Cells.TryNumber(text, DecimalMark.Point, out var value), text);
            Assert.Equal(double.Parse(text, CultureInfo.InvariantCulture), value);
        }
    }

    private static SensorScale Scale(string text, Dimension measured) => Assert.IsType<TextReading<SensorScale>.Good>(SensorScale.Read(text, measured)).Value;

    private static string Plain((double Seconds, double Bar, double Amperes) r) => string.Join(';', Cell(r.Seconds, "."), Cell(r.Bar, "."), Cell(r.Amperes, "."));

    private static string Written(string? header, Func<(double Seconds, double Bar, double Amperes), string> row) => Written(header, (r, _) => row(r));

    private static string Written(string? header, Func<(double Seconds, double Bar, double Amperes), int, string> row) =>
        (header is null ? "" : header + "\n") + string.Concat(Rows.Select((r, i) => row(r, i + 1) + "\n"));

    private static string Cell(double value, string mark) => Math.Round(value, 9).ToString("0.#########", CultureInfo.InvariantCulture).Replace(".", mark, StringComparison.Ordinal);

    private static RecordingAnswer.Taken Taken(string text, RecordingOptions? options = null) => Taken(Encoding.UTF8.GetBytes(text), options);

    private static RecordingAnswer.Taken Taken(byte[] bytes, RecordingOptions? options = null)
    {
        var answer = RecordingReader.Read("r.csv", new MemoryStream(bytes), options);
        if (answer is RecordingAnswer.Refused refused)
            Assert.Fail(MistakeText.Write(refused.Mistakes));
        return Assert.IsType<RecordingAnswer.Taken>(answer);
    }

    /// <summary>The rows of the plain file to half a unit of the last digit written.</summary>
    private static void Same(RecordingAnswer.Taken taken)
    {
        Assert.Equal(Rows.Count, taken.Recording.Seconds.Length);
        for (var i = 0; i < Rows.Count; i++)
        {
            Assert.Equal(Rows[i].Seconds - Rows[0].Seconds, taken.Recording.Seconds[i] - taken.Recording.Seconds[0], 1e-6);
            Assert.Equal(Rows[i].Bar * 1e5, taken.Recording.Pascals!.Value[i], 0.1);
            Assert.Equal(Rows[i].Amperes, taken.Recording.Amperes!.Value[i], 1e-6);
        }
    }
}
