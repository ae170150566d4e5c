using System.Collections.Immutable;
using System.CommandLine;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary>A recording as a command line gives it: the file, and what is to be known of it where the reader cannot tell.</summary>
internal sealed class RecordingInput
{
    private readonly Option<string?> _pressure = new("--pressure-column") { Description = "name or number of the column of pressure, where several could be it", HelpName = "COLUMN" };
    private readonly Option<string?> _current = new("--current-column") { Description = "name or number of the column of current", HelpName = "COLUMN" };
    private readonly Option<string?> _time = new("--time-column") { Description = "name or number of the column of time", HelpName = "COLUMN" };
    private readonly Option<string?> _pressureUnit = new("--pressure-unit") { Description = "unit of the pressure, where the header does not say", HelpName = "UNIT" };
    private readonly Option<string?> _pressureScale = new("--pressure-scale") { Description = "how volts or milliamperes of the sensor become a pressure: \"100 bar/V\" or \"4 mA = 0 bar, 20 mA = 1000 bar\"", HelpName = "SCALE" };
    private readonly Option<string?> _currentScale = new("--current-scale") { Description = "how volts of a clamp or shunt become a current: \"10 mV/A\"", HelpName = "SCALE" };
    private readonly Option<string?> _response = new("--response") { Description = "time constant of the pressure sensor that was used, such as 4ms; without it, as in the model", HelpName = "TIME" };

    public IEnumerable<Symbol> Symbols => [_response, _pressure, _current, _time, _pressureUnit, _pressureScale, _currentScale];

    /// <summary>Time constant stated for the sensor in seconds; null when none was, or it is a mistake.</summary>
    public double? ResponseSeconds(ParseResult given, List<Mistake> found)
    {
        if (given.GetValue(_response) is not { } text)
            return null;
        if (QuantityReader.Read(text, Dimension.Time) is TextReading<double>.Good { Value: >= 1e-5 and <= 1 and var seconds })
            return seconds;
        found.Add(Usage("--response", $"'{text}' is no time constant of a pressure sensor", "write 0.01 ms to 1 s with its unit, such as 4ms"));
        return null;
    }

    /// <summary>The recording with the reader's notes, or null with its mistakes added.</summary>
    public (Recording Recording, ImmutableArray<RecordingNote> Notes)? Read(string file, ParseResult given, List<Mistake> found)
    {
        var options = new RecordingOptions
        {
            PressureColumn = given.GetValue(_pressure),
            CurrentColumn = given.GetValue(_current),
            TimeColumn = given.GetValue(_time),
            PressureUnit = UnitOf(given.GetValue(_pressureUnit), found),
            PressureScale = ScaleOf("--pressure-scale", given.GetValue(_pressureScale), Dimension.Pressure, found),
            CurrentScale = ScaleOf("--current-scale", given.GetValue(_currentScale), Dimension.Current, found),
        };
        if (found.Count > 0)
            return null;
        try
        {
            using var bytes = file == "-" ? Console.OpenStandardInput() : new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            switch (RecordingReader.Read(file, bytes, options))
            {
                case RecordingAnswer.Taken taken:
                    return (taken.Recording, taken.Notes);
                case RecordingAnswer.WhichColumn which:
                    var name = which.Signal.ToString().ToLowerInvariant();
                    found.Add(Usage(file, $"several columns could be the {name}: {string.Join(", ", which.Names)}", $"say which: --{name}-column \"{which.Names[0]}\""));
                    return null;
                case RecordingAnswer.Refused refused:
                    found.AddRange(refused.Mistakes);
                    return null;
                default:
                    throw new InvalidOperationException("A recording is taken, asked about or refused.");
            }
        }
        catch (Exception why) when (why is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            var missing = why is FileNotFoundException or DirectoryNotFoundException;
            found.Add(new Mistake(Place.Whole(file), missing ? $"'{file}' cannot be read: there is no such file" : $"'{file}' cannot be read: {why.Message}", missing ? "look at the name and the folder" : "look at the file and the right to read it", missing ? "no-file" : "unreadable-file"));
            return null;
        }
    }

    private static Unit? UnitOf(string? text, List<Mistake> found)
    {
        if (text is null)
            return null;
        if (UnitTable.Find(text) is { Dimension: Dimension.Pressure } unit)
            return unit;
        found.Add(Usage("--pressure-unit", $"'{text}' is no unit of pressure", "write bar, MPa, kPa or psi"));
        return null;
    }

    private static SensorScale? ScaleOf(string option, string? text, Dimension measured, List<Mistake> found)
    {
        if (text is null)
            return null;
        if (SensorScale.Read(text, measured) is TextReading<SensorScale>.Good good)
            return good.Value;
        if (SensorScale.Read(text, measured) is TextReading<SensorScale>.Bad bad)
            found.Add(Usage(option, bad.Fault.What, bad.Fault.Mend));
        return null;
    }

    private static Mistake Usage(string at, string what, string mend) => new(Place.Whole(at), what, mend, "usage");
}
