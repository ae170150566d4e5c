using System.Text;
using Ramwright.Instruments.Text;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Connections;

/// <summary>Reads and writes connection texts. Never throws on what is in the text.</summary>
public static class ConnectionText
{
    /// <summary>Longest text read, in signs.</summary>
    public const int Longest = 4_000;

    private static readonly string[] s_kinds = ["simulated", "scpi-tcp", "scpi-serial", "modbus-tcp", "modbus-rtu", "csv-folder"];

    /// <summary>Reads a connection; it may stand on several lines, and <c>#</c> begins a comment line.</summary>
    /// <param name="fileName">For the places of mistakes only; nothing is opened.</param>
    public static ConnectionAnswer Read(string fileName, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var mistakes = new MistakeList(fileName);
        if (text.Length > Longest)
            mistakes.AddWhole(ReadingCodes.TooLarge, $"the text has {text.Length} signs; {Longest} are the most that is read", "describe one device, on a line or a few");
        else if (SourceText.Lines(text, mistakes) is { } lines && Read(Words.Cut(lines, mistakes), mistakes) is { } connection && mistakes.IsEmpty)
            return new ConnectionAnswer.Read(connection);
        return new ConnectionAnswer.Refused(mistakes.InOrder());
    }

    /// <summary>The text of a connection, on one line; read back it is the same connection.</summary>
    public static string Write(Connection connection)
    {
        var text = new StringBuilder();
        ConnectionWriter.Write(connection, text);
        return text.ToString();
    }

    private static Connection? Read(List<Word> words, MistakeList mistakes)
    {
        if (words.Count == 0)
        {
            mistakes.AddWhole(ConnectionCodes.UnknownConnection, "no connection is written here", $"begin with one of {string.Join(", ", s_kinds)}");
            return null;
        }
        var clauses = new Clauses(words, mistakes);
        switch (words[0].Text)
        {
            case "simulated":
                clauses.ReadAll([]);
                return new Connection.Simulated();
            case "scpi-tcp":
                return Polled(clauses, WireReader.Tcp(clauses), line: true);
            case "scpi-serial":
                return Polled(clauses, WireReader.Serial(clauses, 9600, SerialFrame.EightNoneOne), line: true);
            case "modbus-tcp":
                return Polled(clauses, WireReader.Tcp(clauses), line: false, ModbusFraming.Tcp);
            case "modbus-rtu":
                return Polled(clauses, WireReader.Either(clauses), line: false, ModbusFraming.Rtu);
            case "csv-folder":
                return Folder(clauses);
            default:
                var near = NearName.Find(words[0].Text, s_kinds);
                mistakes.Add(words[0].Line, words[0].Field, ConnectionCodes.UnknownConnection, $"'{Showable.Short(words[0].Text)}' is no kind of connection",
                    near is null ? $"begin with one of {string.Join(", ", s_kinds)}" : $"write {near}");
                return null;
        }
    }

    private static Connection.Polled? Polled(Clauses clauses, Wire? wire, bool line, ModbusFraming framing = default)
    {
        string[] own = line ? ["ask", "line"] : ["id", "input", "holding", "as", "words"];
        clauses.ReadAll([.. own, "in", "times", "plus", "every", "within", "lag", "begins", "ends", "full"]);
        Dialogue? dialogue = line ? DialogueReader.Line(clauses) : DialogueReader.Registers(clauses, framing);
        var polling = new Polling(clauses.Time("every", 0.001, 10) ?? TimeSpan.FromMilliseconds(20), clauses.Time("within", 0.01, 30) ?? TimeSpan.FromSeconds(1));
        return SignalReader.Read(clauses) is { } signal && wire is not null && dialogue is not null ? new(wire, dialogue, polling, signal) : null;
    }

    private static Connection.Folder? Folder(Clauses clauses)
    {
        var path = clauses.Place("the folder, such as /srv/logger");
        clauses.ReadAll(["holds", "named", "in", "times", "plus", "lag", "begins", "ends", "full"]);
        var holds = clauses.OneOf("holds", ("peaks", FolderHolds.Peaks), ("recordings", FolderHolds.Recordings));
        if (holds is null && !clauses.Has("holds"))
            clauses.Missing("holds", "say what its files hold: holds peaks, or holds recordings");
        var pattern = clauses.Text("named", 80) ?? "*.csv";
        return SignalReader.Read(clauses) is { } signal && path is { } found && holds is { } what ? new(found.Text, pattern, what, signal) : null;
    }
}
