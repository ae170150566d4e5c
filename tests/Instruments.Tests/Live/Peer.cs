using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Ramwright.Instruments.Tests.Live;

/// <summary>A process that stands for a device; it goes with the test.</summary>
internal sealed class Peer : IDisposable
{
    private readonly Process _process;
    private bool _isOver;

    private Peer(Process process) => _process = process;

    private static string Folder => Path.Combine(Checkout.Root, "tests", "Instruments.Tests", "Live", "peers");

    /// <summary>Our own line device; it listens when this returns.</summary>
    public static async Task<Peer> LineAsync(int port, string fault = "none", int at = -1, int first = 0)
    {
        var peer = Start("/usr/bin/python3", [Path.Combine(Folder, "line_peer.py"), Text(port), fault, Text(at), Text(first)], listens: true);
        Assert.Equal("ready", await peer._process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        return peer;
    }

    /// <summary>A Modbus TCP device on pymodbus; the bench reaches for it until it listens.</summary>
    public static Peer ModbusTcp(int port) => Start("/usr/bin/python3", [Path.Combine(Folder, "modbus_peer.py"), "tcp", Text(port)]);

    public static Peer ModbusRtu(string path) => Start("/usr/bin/python3", [Path.Combine(Folder, "modbus_peer.py"), "rtu", path]);

    /// <summary>socat with its two ends, such as two serial ports that are one cable; the files that it makes are there when this returns.</summary>
    public static async Task<Peer> CableAsync(string one, string other, params string[] files)
    {
        foreach (var left in files)
            File.Delete(left); // a cable that was pulled leaves its names
        var peer = Start("/usr/bin/socat", [one, other]);
        for (var i = 0; i < 500 && !files.All(File.Exists); i++)
            await Task.Delay(20, TestContext.Current.CancellationToken);
        return peer;
    }

    public static string Pty(string link) => $"pty,raw,echo=0,link={link}";

    /// <summary>A port that nobody listens at now.</summary>
    public static int FreePort()
    {
        using var socket = new Socket(SocketType.Stream, ProtocolType.Tcp);
        socket.Bind(new IPEndPoint(IPAddress.Loopback, 0));
        return ((IPEndPoint)socket.LocalEndPoint!).Port;
    }

    public void Dispose()
    {
        if (_isOver)
            return;
        _isOver = true;
        if (!_process.HasExited)
            _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }

    private static Peer Start(string program, string[] arguments, bool listens = false) =>
        new(Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = listens, UseShellExecute = false })!);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
