namespace Ramwright.ServiceModels.Tests;

/// <summary>Finds folders of the clone that the tests run in.</summary>
public static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string Folder(string name) => Path.Combine(Root, name);

    private static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Ramwright.slnx")))
                return folder.FullName;
        throw new InvalidOperationException("The tests run outside a clone.");
    }
}
