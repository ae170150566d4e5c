using System.Globalization;
using System.Net;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Connections;

/// <summary>Reads where a device is: <c>host:port</c>, or a serial port with speed and frame.</summary>
internal static class WireReader
{
    private static readonly (string Text, SerialFrame Frame)[] s_frames =
    [
        ("8n1", SerialFrame.EightNoneOne), ("8e1", SerialFrame.EightEvenOne), ("8o1", SerialFrame.EightOddOne),
        ("8n2", SerialFrame.EightNoneTwo), ("7e1", SerialFrame.SevenEvenOne), ("7o1", SerialFrame.SevenOddOne),
    ];

    public static string Text(SerialFrame frame) => s_frames.First(f => f.Frame == frame).Text;

    public static Wire.Tcp? Tcp(Clauses clauses)
    {
        if (clauses.Place("host and port, such as 10.0.0.5:5025") is not { } place)
            return null;
        var colon = place.Text.LastIndexOf(':');
        var host = colon < 0 ? place.Text : place.Text[..colon];
        var bare = host is ['[', .., ']'] ? host[1..^1] : host;
        if (host.Length is 0 or > 253 || !(IPAddress.TryParse(bare, out var address) ? address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 == (bare != host) : IsName(host)))
            clauses.Wrong(place, ConnectionCodes.BadPlace, "the host is no name and no address", "write it as 10.0.0.5:5025, bench-meter.local:5025 or [fd00::5]:5025");
        else if (colon < 0)
            clauses.Wrong(place, ConnectionCodes.BadPlace, "no port stands behind the host", $"write it as {host}:5025 (Modbus devices answer at 502)");
        else if (!int.TryParse(place.Text.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var port) || port is < 1 or > 65_535)
            clauses.Wrong(place, ConnectionCodes.BadPlace, $"'{Showable.Short(place.Text[(colon + 1)..])}' is no port", "write a port from 1 to 65535");
        else
            return new(bare, port);
        return null;
    }

    public static Wire.Serial? Serial(Clauses clauses, int usualBaud, SerialFrame usualFrame)
    {
        if (clauses.Place("the serial port, such as /dev/ttyUSB0 or COM3") is not { } place)
            return null;
        var baud = clauses.Take(t => t.Length > 0 && t.All(char.IsAsciiDigit));
        var frame = clauses.Take(t => t.Length == 3 && char.IsAsciiDigit(t[0]) && char.IsAsciiDigit(t[2]));
        if (!IsSerialPort(place.Text))
            clauses.Wrong(place, ConnectionCodes.BadPlace, "this is no serial port", "write it as the system calls it, such as /dev/ttyUSB0 or COM3");
        var speed = usualBaud;
        if (baud is { } b && (!int.TryParse(b.Text, NumberStyles.None, CultureInfo.InvariantCulture, out speed) || speed is < 300 or > 4_000_000))
            clauses.Wrong(b, ConnectionCodes.BadSerial, $"{Showable.Short(b.Text)} is no speed of a serial line", "write 300 to 4000000, such as 9600");
        var shape = usualFrame;
        if (frame is { } f && !Find(f.Text, out shape))
            clauses.Wrong(f, ConnectionCodes.BadSerial, $"'{Showable.Short(f.Text)}' is no frame of a serial line", $"write {string.Join(", ", s_frames.Select(s => s.Text))}");
        return new(place.Text, speed, shape);
    }

    /// <summary>A serial port, or a network host that passes serial frames on.</summary>
    public static Wire? Either(Clauses clauses) => clauses.Take(IsSerialPort) is null
        ? Tcp(clauses)
        : Serial(clauses.Back(), 19_200, SerialFrame.EightEvenOne); // 19200 baud, even parity: the default of 'MODBUS over Serial Line' V1.02, 2.5.1 (from memory)

    private static bool IsSerialPort(string text) =>
        text.Length <= 255 && (text.StartsWith('/') || (text.StartsWith("COM", StringComparison.Ordinal) && text.Length > 3 && text.Skip(3).All(char.IsAsciiDigit)));

    private static bool Find(string text, out SerialFrame frame)
    {
        foreach (var (written, known) in s_frames)
        {
            if (written == text)
            {
                frame = known;
                return true;
            }
        }
        frame = default;
        return false;
    }

    private static bool IsName(string host) => char.IsAsciiLetterOrDigit(host[0]) && host.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '_');
}
