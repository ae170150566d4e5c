namespace Ramwright.Paper.Signing;

/// <summary>The house's keys cannot be used: a file is missing, damaged or open to others. Nothing was signed.</summary>
/// <param name="code">The mistake's code, which has a page: <c>paper-key-missing</c>, <c>paper-list-damaged</c> ...</param>
/// <param name="reason">What is wrong, for the person.</param>
/// <param name="remedy">What to do.</param>
public sealed class KeyRingException(string code, string reason, string remedy) : Exception(reason)
{
    public string Code { get; } = code;

    public string Reason { get; } = reason;

    public string Remedy { get; } = remedy;
}
