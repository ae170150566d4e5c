namespace Ramwright.App.Installed;

/// <summary>Where the house's records lie: given, or <c>RAMWRIGHT_DATA</c>, or the user's own data folder.</summary>
internal static class DataFolder
{
    public const string Variable = "RAMWRIGHT_DATA";

    public const string LedgerFile = "ramwright.db";

    /// <summary>The folder, which may not exist yet.</summary>
    public static string Find(string? given)
    {
        if (!string.IsNullOrWhiteSpace(given))
            return Path.GetFullPath(given);
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } set)
            return Path.GetFullPath(set);
        return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "ramwright");
    }

    public static string LedgerIn(string folder) => Path.Combine(folder, LedgerFile);
}
