using System.Globalization;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Connections;

/// <summary>Reads how a device is asked.</summary>
internal static class DialogueReader
{
    private const int LongestQuestion = 80;

    public static readonly (string Word, RegisterForm Form)[] Forms =
        [("uint16", RegisterForm.UInt16), ("int16", RegisterForm.Int16), ("uint32", RegisterForm.UInt32), ("int32", RegisterForm.Int32), ("float32", RegisterForm.Float32)];

    public static Dialogue.Line? Line(Clauses clauses)
    {
        if (!clauses.Has("ask"))
            clauses.Missing("ask", "write what the device is asked, such as ask \"READ?\"");
        var end = clauses.OneOf("line", ("lf", LineEnd.Lf), ("crlf", LineEnd.CrLf), ("cr", LineEnd.Cr)) ?? LineEnd.Lf;
        var question = clauses.Text("ask", LongestQuestion);
        if (question is not null && !question.All(char.IsAscii))
            clauses.Wrong("ask", ReadingCodes.NotText, "the question holds a sign that is not ASCII", "write the device's command as its manual has it");
        return question is null ? null : new(question, end);
    }

    public static Dialogue.Registers? Registers(Clauses clauses, ModbusFraming framing)
    {
        var id = clauses.Number("id", 0, 255) ?? 1;
        if (id != Math.Floor(id))
            clauses.Wrong("id", "out-of-range", "the address of a device is a whole number", "write 0 to 255, such as id 1");
        var form = clauses.OneOf("as", Forms);
        if (!clauses.Has("as"))
            clauses.Missing("as", "write what the registers hold: as uint16, int16, uint32, int32 or float32");
        var low = clauses.OneOf("words", ("high-first", false), ("low-first", true));
        if (low is not null && form is RegisterForm.UInt16 or RegisterForm.Int16)
            clauses.Wrong("words", ConnectionCodes.ClauseConflict, "a value of one register has no order of words", "take 'words' out, or write as uint32, int32 or float32");
        if (clauses.Has("input") == clauses.Has("holding"))
        {
            if (clauses.Has("input"))
                clauses.Wrong("holding", ConnectionCodes.ClauseConflict, "'input' and 'holding' both stand here", "keep the table that is meant");
            else
                clauses.Missing("input", "write where the value stands, such as input address 0, or holding number 40001");
            return null;
        }
        var table = clauses.Has("input") ? RegisterTable.Input : RegisterTable.Holding;
        var span = form is RegisterForm.UInt16 or RegisterForm.Int16 or null ? 1 : 2;
        return Address(clauses, table, span) is { } address && form is { } known ? new(framing, new((byte)id, table, address, known, low ?? false)) : null;
    }

    /// <summary><c>address 0</c> is what is sent; <c>number 30001</c> is how manuals count: 3xxxx input, 4xxxx holding registers, from 1, of five or six digits.</summary>
    private static ushort? Address(Clauses clauses, RegisterTable table, int span)
    {
        var clause = table == RegisterTable.Input ? "input" : "holding";
        var values = clauses.Values(clause);
        if (values.Count == 0)
            return null; // told already
        if (values.Count != 2 || values[0].Text is not ("address" or "number"))
        {
            clauses.Wrong(values[0], ConnectionCodes.BadRegister, $"'{clause}' does not say how its registers are counted", $"write {clause} address 0, as it is sent, or {clause} number {(table == RegisterTable.Input ? 3 : 4)}0001, as manuals count");
            return null;
        }
        var (word, lead) = (values[1], table == RegisterTable.Input ? 3 : 4);
        if (!int.TryParse(word.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var given))
            return Wrong(clauses, word, $"'{Showable.Short(word.Text)}' is no whole number");
        var address = values[0].Text == "address" ? given
            : word.Text.Length == 5 ? given - (lead * 10_000) - 1
            : word.Text.Length == 6 ? given - (lead * 100_000) - 1
            : -1;
        if (address < 0 || address > 65_536 - span || (values[0].Text == "number" && word.Text[0] != (char)('0' + lead)))
            return Wrong(clauses, word, $"{Showable.Short(word.Text)} is no {clause} register{(span == 2 ? " with another behind it" : "")}");
        return (ushort)address;

        ushort? Wrong(Clauses all, Word at, string what)
        {
            all.Wrong(at, ConnectionCodes.BadRegister, what, $"write address 0 to 65535, or number {lead}0001 to {lead}9999, or {lead}00001 to {lead}65536");
            return null;
        }
    }
}
