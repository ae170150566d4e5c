using System.CommandLine;
using System.Text;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;

namespace Ramwright.App.Verbs;

/// <summary><c>keys restore FILE</c>: puts a backup of the keys into a house that has none.</summary>
internal sealed class KeysRestoreVerb : Verb
{
    private const int LargestBackup = 4 * 1024 * 1024;

    private readonly Argument<string> _file = new("FILE") { Description = "file that ramwright keys backup wrote" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys restore";

    public override string Summary => "puts a backup of the keys into a house that has none; never overwrites";

    public override IReadOnlyList<Example> Examples => [new("keys restore /media/stick/keys-backup", "the key that signed at the backup signs again; older ones still prove") { RunsAlone = false }];

    public override string ExitMeaning => "0 restored, 2 no such file, 70 FILE is no whole backup, there are keys already, or the folder cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _data];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var read = await InputFile.ReadAsync(given.GetValue(_file)!, LargestBackup, cancel);
        if (read is not InputFile.Got got)
            return Answer.Refused([((InputFile.Missing)read).Why]);
        var list = PaperKeys.In(DataFolder.Find(given.GetValue(_data))).Restore(Encoding.UTF8.GetString(got.Bytes));
        return new Answer(Exit.Yes, $"{list.Signing!.Id} signs again for {list.House}; reports replaced after {list.AsOf:yyyy-MM-dd} are not on the list", PaperKeys.Json(list));
    }
}
