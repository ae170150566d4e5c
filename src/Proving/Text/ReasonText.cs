using Ramwright.Metrology.Text;

namespace Ramwright.Proving.Text;

/// <summary>Reasons in words.</summary>
public static class ReasonText
{
    /// <summary>One sentence without a full stop, lower case at the start.</summary>
    public static string Of(Reason reason, UnitSystem units) => throw new NotSupportedException("Not written yet.");
}
