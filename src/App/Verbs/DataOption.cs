using System.CommandLine;

namespace Ramwright.App.Verbs;

/// <summary>The folder that holds the house's records.</summary>
internal static class DataOption
{
    public static Option<string?> Create() => new("--data") { Description = "folder of the house's records; else RAMWRIGHT_DATA, else the user's data folder", HelpName = "FOLDER" };
}
