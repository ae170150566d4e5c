using Ramwright.App.Web.Pages;

namespace Ramwright.App.Demo;

/// <summary>Acts of the made-up house: one that is refused is a defect of the demo and is said loudly.</summary>
internal static class DemoAct
{
    /// <exception cref="InvalidOperationException">The act was refused, with the reason.</exception>
    public static ActAnswer.Done Must(ActAnswer answer) => answer switch
    {
        ActAnswer.Done done => done,
        ActAnswer.Refused refused => throw new InvalidOperationException("The demo was refused: " + string.Join(" ", refused.Mistakes.Select(m => m.What))),
        _ => throw new InvalidOperationException("The demo was overtaken: somebody else signed meanwhile."),
    };
}
