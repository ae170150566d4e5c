namespace Ramwright.Instruments.Tests;

/// <summary>The checkout that the tests run in, for pages and samples beside the code.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        var at = AppContext.BaseDirectory;
        while (at is not null && !File.Exists(Path.Combine(at, "Ramwright.slnx")))
            at = Path.GetDirectoryName(at);
        return at ?? throw new InvalidOperationException("These tests run inside a checkout: no Ramwright.slnx was found above them.");
    }
}
