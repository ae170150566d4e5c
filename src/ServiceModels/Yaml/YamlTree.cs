using System.Globalization;
using Ramwright.Metrology.Input;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Ramwright.ServiceModels.Yaml;

/// <summary>
/// Builds a tree with places from the parser's events. Bounded in depth and number; aliases, anchors, tags, second documents
/// and doubled keys are refused here, so that nothing above meets them.
/// </summary>
internal sealed class YamlTree
{
    private const int DeepestNesting = 64;
    private const int MostEvents = 200_000;
    private readonly SourceText source;
    private readonly MistakeList mistakes;
    private readonly Parser parser;
    private readonly string begin;
    private int events;
    private int depth;

    private YamlTree(SourceText source, MistakeList mistakes, string begin)
    {
        this.begin = begin;
        this.source = source;
        this.mistakes = mistakes;
        parser = new Parser(new Scanner(new StringReader(source.Text), skipComments: true));
    }

    /// <summary>The root, or null when the text cannot be taken apart; the reason is then in the list.</summary>
    /// <param name="begin">What to do about an empty file.</param>
    public static YamlNode? Read(SourceText source, MistakeList mistakes, string begin)
    {
        var tree = new YamlTree(source, mistakes, begin);
        try
        {
            return tree.ReadDocument();
        }
        catch (YamlException e)
        {
            var near = tree.parser.Current?.End ?? e.Start; // some complaints carry no place of their own
            SyntaxMistake.Report(e.Message, e.Start.Line > 1 || e.Start.Column > 1 ? e.Start : near, source, mistakes);
            return null;
        }
        catch (GivenUpException)
        {
            return null;
        }
    }

    private YamlNode? ReadDocument()
    {
        Next<StreamStart>();
        if (Advance() is not DocumentStart)
        {
            mistakes.Add(Place.Whole(source.File), "the file is empty", begin, "empty-file");
            return null;
        }

        var root = ReadNode(Advance(), owner: null);
        Next<DocumentEnd>();
        if (Advance() is DocumentStart second)
        {
            mistakes.Add(At(second), "a second document begins here", "keep one model in one file; take the line --- away", "many-documents");
            return null;
        }

        return root;
    }

    private YamlNode ReadNode(ParsingEvent e, Place? owner)
    {
        var at = At(e);
        RefuseDecoration(e, at);
        return e switch
        {
            Scalar scalar => ReadScalar(scalar, at, owner ?? at),
            SequenceStart => ReadSequence(at, owner ?? at),
            MappingStart => ReadMapping(at, owner ?? at),
            AnchorAlias alias => RefuseAlias(alias, at, owner ?? at),
            _ => throw new YamlException(e.Start, e.End, "a value is wanted here"),
        };
    }

    private YamlScalar ReadScalar(Scalar scalar, Place at, Place owner)
    {
        var lead = scalar.Style == ScalarStyle.Plain ? 0 : 1;
        var line = source.Line(at.Line) ?? "";
        var from = at.Column - 1 + lead;
        var same = from >= 0 && from <= line.Length && line.AsSpan(from).StartsWith(scalar.Value, StringComparison.Ordinal);
        return new(at, owner, scalar.Value, same ? lead : -1);
    }

    private YamlSequence ReadSequence(Place at, Place owner)
    {
        Deeper(at);
        var items = new List<YamlNode>();
        for (var e = Advance(); e is not SequenceEnd; e = Advance())
            items.Add(ReadNode(e, owner: null));
        depth--;
        return new(at, owner, items);
    }

    private YamlMapping ReadMapping(Place at, Place owner)
    {
        Deeper(at);
        var entries = new List<YamlEntry>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var e = Advance(); e is not MappingEnd; e = Advance())
        {
            var key = ReadNode(e, owner: null);
            var value = ReadNode(Advance(), key.At);
            if (key is not YamlScalar { Text: var name })
            {
                if (key is not YamlRefused)
                    mistakes.Add(key.At, "a key must be a single word", "write a key from docs/service-model.md before the colon", "bad-key");
            }
            else if (lines.TryGetValue(name, out var first))
            {
                mistakes.Add(key.At, $"'{name}' stands here a second time", string.Create(CultureInfo.InvariantCulture, $"keep one of the two; the first is in line {first}"), "duplicate-key");
            }
            else
            {
                lines.Add(name, key.At.Line);
                entries.Add(new(name, key.At, value));
            }
        }

        depth--;
        return new(at, owner, entries);
    }

    private YamlRefused RefuseAlias(AnchorAlias alias, Place at, Place owner)
    {
        mistakes.Add(at, $"'*{alias.Value}' is an alias; aliases are not read", "write the value out where it is meant", "alias");
        return new(at, owner);
    }

    private void RefuseDecoration(ParsingEvent e, Place at)
    {
        if (e is not NodeEvent node)
            return;
        if (!node.Anchor.IsEmpty)
            mistakes.Add(at, $"'&{node.Anchor.Value}' names an anchor; anchors are not read", "take it away and write the value out where it is meant", "alias");
        if (!node.Tag.IsEmpty)
            mistakes.Add(at, $"'{node.Tag}' is a tag; tags are not read", "take it away; the key says what kind of value it has", "tag");
    }

    private void Deeper(Place at)
    {
        if (++depth <= DeepestNesting)
            return;
        mistakes.Add(at, string.Create(CultureInfo.InvariantCulture, $"values are nested deeper than {DeepestNesting} levels here"), "close the brackets; a model needs no more than ten levels", "too-deep");
        throw new GivenUpException();
    }

    private void Next<T>()
        where T : ParsingEvent
    {
        if (Advance() is not T and var other)
            throw new YamlException(other.Start, other.End, $"{typeof(T).Name} is wanted here");
    }

    private ParsingEvent Advance()
    {
        if (++events > MostEvents)
        {
            mistakes.Add(Place.Whole(source.File), string.Create(CultureInfo.InvariantCulture, $"the file holds more than {MostEvents} values, far more than any service model"), "give a model file; split off what does not belong to it", "too-large");
            throw new GivenUpException();
        }

        try
        {
            return parser.MoveNext() ? parser.Current! : throw new YamlException("the text ends too early");
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or NullReferenceException or FormatException or OverflowException)
        {
            throw new YamlException("it cannot be taken apart", e); // the scanner stumbles over some unclosed braces instead of complaining
        }
    }

    private Place At(ParsingEvent e)
    {
        var (line, column) = ((int)e.Start.Line, (int)e.Start.Column);
        var end = e.End.Line == e.Start.Line ? (int)e.End.Column : (source.Line(line)?.Length ?? 0) + 1;
        return new(source.File, line, column, Math.Max(1, end - column));
    }

    /// <summary>A bound was met; the mistake is already in the list.</summary>
    private sealed class GivenUpException : Exception;
}
