using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;

namespace Ramwright.App.Verbs;

/// <summary><c>completions SHELL</c>: a script that lets the shell complete verbs and options.</summary>
internal sealed class CompletionsVerb : Verb
{
    private const string Bash = """
        _ramwright() {
          local line="${COMP_LINE}"
          COMPREPLY=($(compgen -W "$("${COMP_WORDS[0]}" "[suggest:${COMP_POINT}]" "$line" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
          [[ ${#COMPREPLY[@]} -gt 0 ]] || COMPREPLY=($(compgen -f -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -F _ramwright ramwright ./ramwright
        """;

    private const string Zsh = """
        _ramwright() {
          local -a found
          found=("${(@f)$("${words[1]}" "[suggest:${#BUFFER}]" "$BUFFER" 2>/dev/null)}")
          compadd -- $found
          _files
        }
        compdef _ramwright ramwright
        """;

    private readonly Argument<string> _shell = new("SHELL") { Description = "bash or zsh" };

    public override string Name => "completions";

    public override string Summary => "a script that completes verbs and options in the shell";

    public override IReadOnlyList<Example> Examples => [new("completions bash", "for: source <(ramwright completions bash)"), new("completions zsh", "for: source <(ramwright completions zsh)")];

    public override string ExitMeaning => "0 written, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_shell];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var script = given.GetValue(_shell) switch { "bash" => Bash, "zsh" => Zsh, _ => null };
        return Task.FromResult(script is null
            ? Answer.BadUse("SHELL", $"'{given.GetValue(_shell)}' is no shell known here", "write bash or zsh")
            : new Answer(Exit.Yes, script, new JsonObject { ["script"] = script }));
    }
}
