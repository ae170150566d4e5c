using System.Security.Cryptography;
using System.Text;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Levels;
using Ramwright.ServiceModels.Lint;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels;

/// <summary>Reads a service model (format ramwright/1, docs/service-model.md): strictly, all mistakes at once.</summary>
public static class ModelReader
{
    /// <summary>Largest file that is read, in bytes.</summary>
    public const int LargestFile = 1 << 20;

    /// <summary>Reads a file; one that is missing, too large or unreadable is an answer like any other.</summary>
    public static ModelReading ReadFile(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        try
        {
            var file = new FileInfo(path);
            if (Directory.Exists(path))
                return Whole(path, "this is a folder, and a file is wanted", "give the path of a model file in it", "unreadable-file");
            if (!file.Exists)
                return Whole(path, "there is no such file", "give the path of a model file, or the id of a bundled model", "no-file");
            return file.Length > LargestFile ? TooLarge(path) : Read(path, File.ReadAllBytes(path));
        }
        catch (UnauthorizedAccessException)
        {
            return Whole(path, "this account may not read the file", "give the account the right to read it", "unreadable-file");
        }
        catch (Exception e) when (e is IOException or NotSupportedException or ArgumentException)
        {
            return Whole(path, $"the file cannot be read: {e.Message.Split('\n')[0]}", "see that it is a file and that you may read it", "unreadable-file");
        }
    }

    /// <summary>Reads a model from text.</summary>
    /// <param name="fileName">The name that mistakes carry; the file is not opened.</param>
    /// <param name="text">The whole text.</param>
    public static ModelReading Read(string fileName, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > LargestFile ? TooLarge(fileName) : Read(fileName, Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Reads a model from the bytes of a file, UTF-8 with or without a byte order mark.</summary>
    public static ModelReading Read(string fileName, ReadOnlySpan<byte> bytes)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        if (bytes.Length > LargestFile)
            return TooLarge(fileName);
        return SourceText.Decode(fileName, bytes) switch
        {
            SourceDecoding.Text(var source) => Read(source, Convert.ToHexStringLower(SHA256.HashData(bytes))),
            SourceDecoding.NotText(var mistake) => new ModelReading.Refused([mistake], Unreadable: true),
            _ => throw new InvalidOperationException("Bytes are text or not."),
        };
    }

    private static ModelReading.Refused TooLarge(string file) => Whole(file,
        "the file is larger than 1 MiB, far more than any service model", "give a model file; split off what does not belong to it", "too-large");

    private static ModelReading.Refused Whole(string file, string what, string mend, string code) =>
        new([new Mistake(Place.Whole(file), what, mend, code)], Unreadable: true);

    private static ModelReading Read(SourceText source, string fingerprint)
    {
        var mistakes = new MistakeList(source);
        if (YamlTree.Read(source, mistakes, "begin it with 'format: ramwright/1'; docs/service-model.md shows ten lines that suffice") is not { } root)
            return new ModelReading.Refused(mistakes.InOrder(), Unreadable: true);

        var draft = ModelBuilder.Build(root, mistakes, fingerprint);
        var notes = new MistakeList(source);
        if (draft is not null)
            ModelLints.Run(draft, mistakes, notes);
        return draft is null || mistakes.Any
            ? new ModelReading.Refused(mistakes.InOrder(), Unreadable: false)
            : new ModelReading.Read(draft.Model, ModelLevel.Of(draft.Model), notes.InOrder());
    }
}
