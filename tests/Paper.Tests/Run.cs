using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Ramwright.Paper.Tests;

/// <summary>Runs the tools that look at PDF from outside: poppler's and qpdf.</summary>
internal static class Run
{
    public static string Tool(string name, byte[] pdf, params string[] arguments)
    {
        var path = Path.Combine(Path.GetTempPath(), $"paper-{Guid.NewGuid():N}.pdf");
        File.WriteAllBytes(path, pdf);
        try
        {
            var start = new ProcessStartInfo(name) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
            foreach (var argument in arguments)
                start.ArgumentList.Add(argument.Replace("FILE", path, StringComparison.Ordinal));
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var words = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{name} left with {process.ExitCode}: {errors.Result} {words}");
            return words;
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>The text in reading order, every run of white space one blank.</summary>
    public static string Text(byte[] pdf) => Regex.Replace(Tool("pdftotext", pdf, "-enc", "UTF-8", "FILE", "-"), @"\s+", " ");

    public static int Pages(byte[] pdf) => int.Parse(Regex.Match(Tool("pdfinfo", pdf, "FILE"), @"Pages:\s+(\d+)").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
}
