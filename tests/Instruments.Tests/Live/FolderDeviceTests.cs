using System.Globalization;
using System.Text;

namespace Ramwright.Instruments.Tests.Live;

/// <summary>A folder into which other software writes its files.</summary>
public sealed class FolderDeviceTests
{
    [Fact]
    public async Task Each_new_file_of_peaks_is_read_once_and_those_before_are_passed_over()
    {
        using var folder = new TemporaryFolder();
        folder.Write("before.csv", "peak_bar\n690\n");
        var device = Watching.Device($"csv-folder \"{folder.Path}\" holds peaks in bar");
        var told = Watching.UntilAsync(device, 3);
        await Task.Delay(400, TestContext.Current.CancellationToken);
        folder.Write("a.csv", "run;peak_bar\n1;701.5\n2;120\n3;699\n");
        folder.Write("bad.csv", "run;peak_bar\n1;x\n");
        folder.Write("psi.csv", "peak_psi\n10000\n");
        folder.Write("notes.txt", "peak_bar\n650\n");
        await Task.Delay(600, TestContext.Current.CancellationToken);
        folder.Write("b.csv", "peak_bar\n702.5\n");
        var words = (await told).Split(' ');
        Assert.Equal(["699", "701.5", "702.5"], words.Where(w => char.IsAsciiDigit(w[0])).Order(StringComparer.Ordinal));
        Assert.Contains("NotTaken:ShortOfFull", words);
        Assert.Contains("Unreadable:bad.csv", words);
        Assert.Contains("Unreadable:psi.csv", words);
    }

    [Fact]
    public async Task A_recording_gives_its_runs_and_a_folder_that_goes_is_told()
    {
        using var folder = new TemporaryFolder();
        var place = folder.Name("log");
        Assert.Equal("Lost:NotReached Back 701.5 698 Lost:NotReached Back 703", await Watching.UntilAsync(Watching.Device($"csv-folder \"{place}\" holds recordings in bar"), 3, word =>
        {
            if (word.StartsWith("Lost", StringComparison.Ordinal))
                Directory.CreateDirectory(place);
            if (word == "Back")
                ToCome(place, "one.csv", File.Exists(folder.Name("seen")) ? Recorded(703) : Recorded(701.5, 698));
            if (word == "698")
            {
                folder.Write("seen", "");
                Directory.Delete(place, recursive: true);
            }
            return Task.CompletedTask;
        }));
    }

    /// <summary>Writes a file a little later: what is there at the first look is passed over.</summary>
    private static void ToCome(string place, string name, string text) => _ = Task.Run(async () =>
    {
        await Task.Delay(300);
        await File.WriteAllTextAsync(Path.Combine(place, name), text);
    });

    private static string Recorded(params double[] peaks)
    {
        var (text, t) = (new StringBuilder("time_s,pressure_bar,current_A\n"), 0);
        foreach (var bar in peaks.SelectMany(p => Enumerable.Repeat(0.0, 100).Concat(Enumerable.Range(1, 700).Select(i => p * i / 700))).Concat(Enumerable.Repeat(0.0, 100)))
            text.Append(CultureInfo.InvariantCulture, $"{t++ / 1000.0},{bar:0.###},1.5\n");
        return text.ToString();
    }
}
