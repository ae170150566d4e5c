using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>A file given on the command line, read whole up to a limit, or why it could not be read.</summary>
internal abstract record InputFile
{
    private InputFile() { }

    public sealed record Got(byte[] Bytes) : InputFile;

    public sealed record Missing(Mistake Why) : InputFile;

    /// <summary>Reads a file, or standard input for <c>-</c>; at most one byte more than the limit, so that the reader can say that it is too large.</summary>
    public static async Task<InputFile> ReadAsync(string name, int largest, CancellationToken cancel)
    {
        try
        {
            await using var from = name == "-" ? Console.OpenStandardInput() : new FileStream(name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            var buffer = new MemoryStream();
            var chunk = new byte[64 * 1024];
            int got;
            while (buffer.Length <= largest && (got = await from.ReadAsync(chunk, cancel)) > 0)
                buffer.Write(chunk, 0, got);
            return new Got(buffer.ToArray());
        }
        catch (Exception why) when (why is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            var mend = why is FileNotFoundException or DirectoryNotFoundException ? "look at the name and the folder" : "look at the file and the right to read it";
            return new Missing(new Mistake(Place.Whole(name), $"'{name}' cannot be read: {Reason(why, name)}", mend, why is FileNotFoundException or DirectoryNotFoundException ? "no-file" : "unreadable-file"));
        }
    }

    private static string Reason(Exception why, string name) => why switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file",
        UnauthorizedAccessException => Directory.Exists(name) ? "it is a folder" : "this account may not read it",
        _ => why.Message,
    };
}
