namespace Ramwright.Paper.Sheets;

/// <summary>The safety wording that sheets share.</summary>
internal static class SafetyWords
{
    public const string Isolation = "Battery out and apart, pressure released: nothing is opened before both are signed for.";
    public const string Injection = "Oil at working pressure goes through skin and glove. An injection injury is an emergency at once, however small it looks.";
    public const string Pack = "Lithium packs short and swell: keep them apart from the tool, their contacts covered.";
    public const string Springs = "Springs and press pins fly: stand out of their line.";
    public const string Defer = "The maker's instructions, local codes and licensed practice come first.";
    public const string NoPromise = "The verdict is about pressure as measured; it is no promise about connections made with the tool.";
    public const string OnlyThisItem = "Results relate only to the item tested, as it was on the day of test.";
}
