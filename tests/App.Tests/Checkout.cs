namespace Ramwright.App.Tests;

/// <summary>The checkout that these tests were built from.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        var at = AppContext.BaseDirectory;
        while (at is not null && !File.Exists(Path.Combine(at, "Ramwright.slnx")))
            at = Path.GetDirectoryName(at);
        return at ?? throw new InvalidOperationException("No Ramwright.slnx was found above the test.");
    }
}
