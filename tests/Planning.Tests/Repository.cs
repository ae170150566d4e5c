namespace Ramwright.Planning.Tests;

/// <summary>The clone that the tests run in.</summary>
internal static class Repository
{
    public static string Folder(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Ramwright.slnx")))
                return Path.Combine(folder.FullName, name);
        }

        throw new DirectoryNotFoundException("The tests run inside a clone of the project.");
    }
}
