using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>Runs a verb and writes its answer: text or JSON to standard output, words about mistakes to standard error, one exit status.</summary>
public sealed class CommandRunner(TextWriter data, TextWriter words)
{
    /// <summary>Answers as a program reads them, on every verb.</summary>
    public static readonly Option<bool> Json = new("--json") { Description = "answer as JSON, with a schema version", Recursive = true };

    /// <summary>Only the answer, no progress; errors are never hidden.</summary>
    public static readonly Option<bool> Quiet = new("--quiet", "-q") { Description = "no progress, only the answer; mistakes still show", Recursive = true };

    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public async Task<int> RunAsync(Verb verb, ParseResult given, CancellationToken cancel)
    {
        var output = new CheckedOutput(data, words, given.GetValue(Json), given.GetValue(Quiet));
        Answer answer;
        try
        {
            answer = await verb.AnswerAsync(given, output, cancel);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return (int)Exit.Fault;
        }
        catch (Exception fault) when (Fault.Explains(fault) is { } explained)
        {
            answer = explained;
            if (Environment.GetEnvironmentVariable(Fault.TraceVariable) == "1")
                words.WriteLine(fault);
        }

        Write(verb.SchemaWord, answer, output);
        return (int)answer.Exit;
    }

    /// <summary>Writes an answer that was found before any verb ran: bad use of the command line.</summary>
    public int Refuse(string schemaWord, Answer answer, bool json)
    {
        Write(schemaWord, answer, new CheckedOutput(data, words, json, Quiet: false));
        return (int)answer.Exit;
    }

    /// <summary>The mistakes; a count closes them where they stand in files.</summary>
    private static string Said(Answer answer) => answer.Mistakes.Any(m => m.At.Line > 0)
        ? MistakeText.Write(answer.Mistakes, answer.Consequence)
        : string.Concat(answer.Mistakes.Select(MistakeText.WriteOne));

    private static void Write(string schemaWord, Answer answer, CheckedOutput output)
    {
        if (output.Json)
        {
            var whole = new JsonObject { ["schema"] = $"ramwright/{schemaWord}/1" };
            foreach (var (key, value) in answer.Json)
                whole[key] = value?.DeepClone();
            output.Data.WriteLine(whole.ToJsonString(Readable));
            return;
        }

        if (answer.Text.Length > 0)
            output.Data.WriteLine(answer.Text);
        if (!answer.Mistakes.IsDefaultOrEmpty)
            output.Words.WriteLine(Said(answer).TrimEnd('\n'));
    }
}
