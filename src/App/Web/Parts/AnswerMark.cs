using System.Collections.Immutable;
using Ramwright.Proving;

namespace Ramwright.App.Web.Parts;

/// <summary>One of the three answers as it is drawn: a disc with a tick cut out, a square with a bar, a hatched ring; always with its word.</summary>
public sealed record AnswerMark(Conformity Conformity, ImmutableArray<string> Lines, bool Large = false)
{
    public static string Word(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => "conforms",
        Conformity.DoesNotConform => "does not conform",
        _ => "undecided",
    };
}
