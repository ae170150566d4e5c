using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Connections;

/// <summary>How a measuring device is reached and what it says, as a register stores it: see docs/reference/instrument-connections.md.</summary>
public abstract record Connection
{
    private Connection() { }

    /// <summary>A device that exists in the program alone.</summary>
    public sealed record Simulated : Connection;

    /// <summary>A device that is asked for its reading again and again.</summary>
    public sealed record Polled(Wire Wire, Dialogue Dialogue, Polling Polling, Signal Signal) : Connection;

    /// <summary>A folder into which other software writes a file per run.</summary>
    /// <param name="Pattern">Names of its files, with * for any signs.</param>
    public sealed record Folder(string Path, string Pattern, FolderHolds Holds, Signal Signal) : Connection;
}

/// <summary>What goes between bench and device.</summary>
public abstract record Wire
{
    private Wire() { }

    /// <summary>A network connection; <paramref name="Host"/> is a name or an address, without brackets.</summary>
    public sealed record Tcp(string Host, int Port) : Wire;

    /// <summary>A serial port; <paramref name="Path"/> as the operating system calls it.</summary>
    public sealed record Serial(string Path, int Baud, SerialFrame Frame) : Wire;
}

/// <summary>Data bits, parity and stop bits of one sign on a serial line.</summary>
public enum SerialFrame { EightNoneOne, EightEvenOne, EightOddOne, EightNoneTwo, SevenEvenOne, SevenOddOne }

/// <summary>How the device is asked.</summary>
public abstract record Dialogue
{
    private Dialogue() { }

    /// <summary>A line of text is sent, and a line with a number comes back, as SCPI devices do.</summary>
    public sealed record Line(string Question, LineEnd End) : Dialogue;

    /// <summary>Modbus registers are read.</summary>
    public sealed record Registers(ModbusFraming Framing, RegisterRead Read) : Dialogue;
}

/// <summary>What closes a line that is sent; an answer may end with any of them.</summary>
public enum LineEnd { Lf, CrLf, Cr }

/// <summary>How a Modbus request is wrapped: with the header of Modbus TCP, or with address and CRC as on a serial line.</summary>
public enum ModbusFraming { Tcp, Rtu }

/// <summary>Tables of a Modbus device that are read: function 4 and function 3.</summary>
public enum RegisterTable { Input, Holding }

/// <summary>What the registers hold.</summary>
public enum RegisterForm { UInt16, Int16, UInt32, Int32, Float32 }

/// <summary>One value in the registers of a Modbus device.</summary>
/// <param name="Unit">Address of the device, 0 to 255.</param>
/// <param name="Address">Of the first register, as it is sent: from 0.</param>
/// <param name="LowWordFirst">Whether the word of lower weight stands first in a value of two registers.</param>
public readonly record struct RegisterRead(byte Unit, RegisterTable Table, ushort Address, RegisterForm Form, bool LowWordFirst)
{
    /// <summary>Registers of the value: one or two.</summary>
    public ushort Count => Form is RegisterForm.UInt16 or RegisterForm.Int16 ? (ushort)1 : (ushort)2;
}

/// <summary>How often a device is asked, and how long it may take to answer.</summary>
public readonly record struct Polling(TimeSpan Every, TimeSpan Within);

/// <summary>What the files of a folder hold: one peak per run, or the pressure over time.</summary>
public enum FolderHolds { Peaks, Recordings }

/// <summary>What the numbers of a device mean, and when they make a run.</summary>
public sealed record Signal
{
    /// <summary>The unit of factor × number + offset.</summary>
    public required ReadingUnit Unit { get; init; }

    public double Factor { get; init; } = 1;

    /// <summary>Added after scaling; a value in <see cref="Unit"/>.</summary>
    public double Offset { get; init; }

    /// <summary>Time constant of the sensor's first-order lag, for which peaks are corrected; null where it is not known.</summary>
    public TimeSpan? Lag { get; init; }

    /// <summary>A run begins above this pressure.</summary>
    public Pressure Begins { get; init; } = Pressure.FromBar(50);

    /// <summary>A run is over below this pressure, which lies under <see cref="Begins"/>.</summary>
    public Pressure Ends { get; init; } = Pressure.FromBar(25);

    /// <summary>A run is full when its peak reaches this pressure; null leaves it to the tool's limits.</summary>
    public Pressure? Full { get; init; }
}
