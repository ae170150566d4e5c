using System.Globalization;
using System.Text;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Connections;

/// <summary>Writes a connection as text; what stands at its default is left out.</summary>
internal static class ConnectionWriter
{
    public static void Write(Connection connection, StringBuilder to)
    {
        switch (connection)
        {
            case Connection.Simulated:
                to.Append("simulated");
                break;
            case Connection.Polled polled:
                Polled(polled, to);
                break;
            case Connection.Folder folder:
                to.Append("csv-folder ").Append(Quoted(folder.Path)).Append(folder.Holds == FolderHolds.Peaks ? " holds peaks" : " holds recordings");
                if (folder.Pattern != "*.csv")
                    to.Append(" named ").Append(Quoted(folder.Pattern));
                Signal(folder.Signal, to);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(connection), connection, "No such connection.");
        }
    }

    private static void Polled(Connection.Polled polled, StringBuilder to)
    {
        to.Append(polled.Dialogue switch
        {
            Dialogue.Line => polled.Wire is Wire.Tcp ? "scpi-tcp" : "scpi-serial",
            Dialogue.Registers { Framing: ModbusFraming.Tcp } => "modbus-tcp",
            _ => "modbus-rtu",
        });
        _ = polled.Wire switch
        {
            Wire.Tcp tcp => to.Append(' ').Append(tcp.Host.Contains(':', StringComparison.Ordinal) ? $"[{tcp.Host}]" : tcp.Host).Append(':').Append(tcp.Port.ToString(CultureInfo.InvariantCulture)),
            Wire.Serial serial => to.Append(CultureInfo.InvariantCulture, $" {Quoted(serial.Path)} {serial.Baud} {WireReader.Text(serial.Frame)}"),
            _ => throw new ArgumentOutOfRangeException(nameof(polled), polled, "No such wire."),
        };
        if (polled.Dialogue is Dialogue.Line line)
            to.Append(" ask ").Append(Quoted(line.Question, always: true)).Append(line.End switch { LineEnd.CrLf => " line crlf", LineEnd.Cr => " line cr", _ => "" });
        else if (polled.Dialogue is Dialogue.Registers { Read: var read })
            to.Append(CultureInfo.InvariantCulture, $" id {read.Unit} {(read.Table == RegisterTable.Input ? "input" : "holding")} address {read.Address} as {DialogueReader.Forms.First(f => f.Form == read.Form).Word}{(read.LowWordFirst ? " words low-first" : "")}");
        Signal(polled.Signal, to);
        to.Append(" every ").Append(Milliseconds(polled.Polling.Every)).Append(" within ").Append(Milliseconds(polled.Polling.Within));
    }

    private static void Signal(Signal signal, StringBuilder to)
    {
        to.Append(" in ").Append(signal.Unit.Symbol());
        if (signal.Factor != 1)
            to.Append(CultureInfo.InvariantCulture, $" times {signal.Factor:R}");
        if (signal.Offset != 0)
            to.Append(CultureInfo.InvariantCulture, $" plus {signal.Offset:R}");
        if (signal.Lag is { } lag)
            to.Append(" lag ").Append(Milliseconds(lag));
        to.Append(" begins ").Append(Pascals(signal.Begins)).Append(" ends ").Append(Pascals(signal.Ends));
        if (signal.Full is { } full)
            to.Append(" full ").Append(Pascals(full));
    }

    private static string Milliseconds(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.Ticks / (decimal)TimeSpan.TicksPerMillisecond:0.####} ms");

    /// <summary>In bar where that loses nothing, else in pascals.</summary>
    private static string Pascals(Pressure p) => Math.Round(p.Bar, 9) * 1e5 == p.Pascals
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(p.Bar, 9):R} bar")
        : string.Create(CultureInfo.InvariantCulture, $"{p.Pascals:R} Pa");

    private static string Quoted(string text, bool always = false) =>
        always || text.Any(c => char.IsWhiteSpace(c) || c == '"') ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
