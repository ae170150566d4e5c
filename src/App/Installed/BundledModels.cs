using Ramwright.ServiceModels;

namespace Ramwright.App.Installed;

/// <summary>The service models that come with the program.</summary>
internal static class BundledModels
{
    /// <summary>The folder beside the program.</summary>
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "models");

    public static ModelShelf Shelf() => new(Folder);
}
