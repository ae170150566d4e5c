using System.Runtime.CompilerServices;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Runs;
using Ramwright.Instruments.Text;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Live;

/// <summary>A folder into which other software writes its files. Each new file is read once, when two looks found it unchanged; those there at first are passed over.</summary>
internal sealed class FolderDevice(Connection.Folder connection, DeviceDescription description, LiveSetting setting, TimeProvider clock) : IPeakDevice
{
    private const int MostFiles = 100_000;
    private static readonly TimeSpan s_betweenLooks = TimeSpan.FromMilliseconds(500);
    private readonly Dictionary<string, FileStand> _known = new(StringComparer.Ordinal);
    private int _runs = setting.RunsBefore;

    public DeviceDescription Description { get; } = description;

    public Task<PeakReading> RunAsync(CancellationToken cancel = default) => Watched.FirstPeakAsync(this, cancel);

    public async IAsyncEnumerable<PeakEvent> WatchAsync([EnumeratorCancellation] CancellationToken cancel = default)
    {
        DateTimeOffset? lostAt = null;
        var looked = _known.Count > 0;
        while (true)
        {
            cancel.ThrowIfCancellationRequested();
            if (Look(out var trouble) is { } files)
            {
                if (lostAt is { } since)
                {
                    lostAt = null;
                    yield return new PeakEvent.Back(clock.GetUtcNow() - since);
                }
                ForgetAllBut(files);
                foreach (var file in files.OrderBy(f => f.Written).ThenBy(f => f.Name, StringComparer.Ordinal))
                {
                    if (HasChanged(file))
                        yield return new PeakEvent.Unreadable(file.Name, "it changed after it was read; each run or series needs a file of its own");
                    if (!IsReady(file, passOver: !looked))
                        continue;
                    foreach (var happened in Read(file))
                        yield return happened;
                }
                looked = true;
            }
            else if (lostAt is null)
            {
                lostAt = clock.GetUtcNow();
                yield return new PeakEvent.Lost(DeviceFault.NotReached, trouble, lostAt.Value);
            }
            await Task.Delay(s_betweenLooks, clock, cancel);
        }
    }

    /// <summary>What stands in the folder; null with the reason when it cannot be seen.</summary>
    private List<FileStand>? Look(out string trouble)
    {
        trouble = "the folder cannot be read";
        try
        {
            var files = new DirectoryInfo(connection.Path).EnumerateFiles(connection.Pattern).Take(MostFiles + 1).Select(f => new FileStand(f.Name, f.Length, f.LastWriteTimeUtc, IsRead: false)).ToList();
            if (files.Count <= MostFiles)
                return files;
            trouble = $"the folder holds more than {MostFiles} files";
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException or ArgumentException)
        {
            trouble = gone is DirectoryNotFoundException ? "there is no such folder" : trouble;
        }
        return null;
    }

    /// <summary>A file that was taken away may come again as a new one.</summary>
    private void ForgetAllBut(List<FileStand> files)
    {
        var there = files.Select(f => f.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var gone in _known.Keys.Where(n => !there.Contains(n)).ToList())
            _known.Remove(gone);
    }

    /// <summary>Whether a file that was read is no longer as it was.</summary>
    private bool HasChanged(FileStand file) => _known.TryGetValue(file.Name, out var before) && before.IsRead && (before.Length != file.Length || before.Written != file.Written);

    /// <summary>Whether a file is new and stood still since the last look.</summary>
    private bool IsReady(FileStand file, bool passOver)
    {
        var seen = _known.TryGetValue(file.Name, out var before);
        var ready = seen && !before.IsRead && before.Length == file.Length && before.Written == file.Written && file.Length > 0;
        _known[file.Name] = file with { IsRead = passOver || ready || (seen && before.IsRead) };
        return ready;
    }

    private List<PeakEvent> Read(FileStand file)
    {
        var largest = connection.Holds == FolderHolds.Peaks ? Readings.LargestFileBytes : RecordingText.LargestFileBytes;
        if (file.Length > largest)
            return [new PeakEvent.Unreadable(file.Name, $"the file has {file.Length / 1e6:0.0} MB; {largest / 1e6:0} MB are the most that is read")];
        try
        {
            var bytes = File.ReadAllBytes(Path.Combine(connection.Path, file.Name));
            return connection.Holds == FolderHolds.Peaks ? Peaks(file.Name, bytes) : Recording(file.Name, bytes);
        }
        catch (Exception shut) when (shut is IOException or UnauthorizedAccessException)
        {
            return [new PeakEvent.Unreadable(file.Name, "the file cannot be read")];
        }
    }

    private List<PeakEvent> Peaks(string name, byte[] bytes) => Readings.Read(name, bytes, new() { AssumedUnit = connection.Signal.Unit, RamArea = setting.RamArea, ForceHeldBack = setting.ForceHeldBack }) switch
    {
        ReadingsAnswer.Refused refused => [new PeakEvent.Unreadable(name, refused.Mistakes[0].What)],
        ReadingsAnswer.Taken taken when taken.Unit != connection.Signal.Unit => [new PeakEvent.Unreadable(name, $"the file is in {taken.Unit.Symbol()}, and {connection.Signal.Unit.Symbol()} is expected")],
        ReadingsAnswer.Taken taken => [.. taken.Readings.Select(r => Scaled(r.Peak)).Select(p => p < setting.RuleFor(connection.Signal).Full
            ? new PeakEvent.NotTaken(WhyNotTaken.ShortOfFull, p)
            : (PeakEvent)new PeakEvent.Peaked(new(++_runs, p, clock.GetUtcNow(), p >= Description.Range.Max)))],
        _ => [],
    };

    /// <summary>Factor and offset of the connection, on a value that is a pressure already.</summary>
    private Pressure Scaled(Pressure p) =>
        (connection.Signal.Factor * p) + Pressure.FromPascals(connection.Signal.Offset == 0 ? 0 : connection.Signal.Unit.ToPressure(connection.Signal.Offset, setting.RamArea, default)?.Pascals ?? 0);

    private List<PeakEvent> Recording(string name, byte[] bytes)
    {
        if (RecordingText.Read(bytes, connection.Signal.Unit, number => setting.PressureOf(connection.Signal, number)?.Bar, out var wrong) is not { } samples)
            return [new PeakEvent.Unreadable(name, wrong)];
        var detector = new RunDetector(setting.RuleFor(connection.Signal), connection.Signal.Lag ?? Description.TimeConstant, Description.Resolution);
        var told = samples.Select(detector.Add).Append(detector.Lose()).OfType<RunOutcome>().Select(o => o is RunOutcome.Full full
            ? new PeakEvent.Peaked(new(++_runs, full.Peak.Value, clock.GetUtcNow(), full.Peak.Highest >= Description.Range.Max) { Estimate = full.Peak })
            : (PeakEvent)new PeakEvent.NotTaken(((RunOutcome.NotTaken)o).Why, ((RunOutcome.NotTaken)o).Highest)).ToList();
        return told.Count > 0 ? told : [new PeakEvent.Unreadable(name, "no run is in this recording")];
    }

    /// <summary>A file as a look found it.</summary>
    private readonly record struct FileStand(string Name, long Length, DateTime Written, bool IsRead);
}
