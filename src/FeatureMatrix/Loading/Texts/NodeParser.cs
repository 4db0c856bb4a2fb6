using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FeatureMatrix.Loading.Texts;

/// <summary>
/// YAML text to nodes. Everything is bounded, so that no file can exhaust memory or stack; anchors, aliases and tags
/// are refused, because the format has its own ways to share (<c>like</c>, engines, inherited sources).
/// </summary>
internal sealed class NodeParser
{
    /// <summary>Longest file, in characters.</summary>
    public const int LongestFile = 4 * 1024 * 1024;

    /// <summary>Longest single text, in characters.</summary>
    public const int LongestScalar = 64 * 1024;

    /// <summary>Deepest nesting; the format itself needs about ten.</summary>
    public const int DeepestNesting = 32;

    private readonly string _file;
    private readonly FaultList _faults;
    private readonly Parser _parser;

    private NodeParser(string file, string text, FaultList faults)
    {
        _file = file;
        _faults = faults;
        _parser = new Parser(new StringReader(text));
    }

    /// <summary>The file's one document; null where it is empty or could not be read, which is a fault then.</summary>
    public static Node? Parse(SourceText source, FaultList faults)
    {
        var file = new Origin(source.Path, 0, 0);
        if (source.Text.Length > LongestFile)
            return Refuse(FaultTexts.FileTooLarge(file));
        if (source.Text.Contains('\0', StringComparison.Ordinal))
            return Refuse(FaultTexts.HoldsNul(file));
        var text = source.Text.TrimStart('\uFEFF').Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        try
        {
            return new NodeParser(source.Path, text, faults).Document();
        }
        catch (YamlException e)
        {
            return Refuse(TabIn(text) is { } tab && tab.Line <= e.End.Line + 1
                ? FaultTexts.TabInIndent(new Origin(source.Path, tab.Line, tab.Column))
                : FaultTexts.NotYaml(At(source.Path, e.Start), e.InnerException?.Message ?? e.Message));
        }
        catch (RefusedException e)
        {
            return Refuse(e.Fault);
        }

        Node? Refuse(Fault fault)
        {
            faults.Add(fault);
            faults.HasUnreadFile = true;
            return null;
        }
    }

    /// <summary>The first tab among the blanks that begin a line; null where there is none. YAML 1.2 (6.1) wants spaces there.</summary>
    private static (int Line, int Column)? TabIn(string text)
    {
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            number++;
            if (line[..^line.TrimStart(" \t").Length].IndexOf('\t') is >= 0 and var at)
                return (number, at + 1);
        }

        return null;
    }

    private static Origin At(string file, Mark mark) => new(file, (int)mark.Line, (int)mark.Column);

    private Origin At(ParsingEvent at) => At(_file, at.Start);

    private Node? Document()
    {
        Node? root = null;
        while (Advance())
        {
            switch (_parser.Current)
            {
                case DocumentStart start when root is not null:
                    throw new RefusedException(FaultTexts.SecondDocument(At(start)));
                case NodeEvent or AnchorAlias:
                    root = ReadNode(1);
                    break;
                default:
                    break;
            }
        }

        return root is { IsNothing: true } ? null : root;
    }

    private Node ReadNode(int depth)
    {
        var current = _parser.Current!;
        if (depth > DeepestNesting)
            throw new RefusedException(FaultTexts.TooDeep(At(current)));
        if (current is AnchorAlias || current is NodeEvent { Anchor.IsEmpty: false })
            throw new RefusedException(FaultTexts.AnchorOrAlias(At(current)));
        if (current is NodeEvent { Tag: { IsEmpty: false, IsNonSpecific: false } })
            throw new RefusedException(FaultTexts.Tag(At(current)));
        return current switch
        {
            YamlDotNet.Core.Events.Scalar scalar => ReadScalar(scalar),
            SequenceStart start => ReadSequence(start, depth),
            MappingStart start => ReadMapping(start, depth),
            _ => throw new RefusedException(FaultTexts.NotYaml(At(current), "a value is missing")),
        };
    }

    private Scalar ReadScalar(YamlDotNet.Core.Events.Scalar scalar)
    {
        var origin = At(scalar);
        if (scalar.Value.Length > LongestScalar)
            throw new RefusedException(FaultTexts.TextTooLong(origin));
        if (PlainText.FirstForbidden(scalar.Value) is { } forbidden)
            throw new RefusedException(FaultTexts.ControlCharacter(origin, forbidden));
        return new Scalar(origin, scalar.Value, scalar.Style == ScalarStyle.Plain);
    }

    private Sequence ReadSequence(SequenceStart start, int depth)
    {
        var items = new List<Node>();
        while (Next() is not SequenceEnd)
            items.Add(ReadNode(depth + 1));
        return new Sequence(At(start), items);
    }

    private Mapping ReadMapping(MappingStart start, int depth)
    {
        var entries = new List<MappingEntry>();
        while (Next() is not MappingEnd)
        {
            var key = ReadNode(depth + 1) as Scalar ?? throw new RefusedException(FaultTexts.KeyIsNoText(At(start)));
            Next();
            entries.Add(new MappingEntry(key, ReadNode(depth + 1)));
        }

        return Mapping.Of(At(start), entries, (again, first) => _faults.Add(FaultTexts.DuplicateKey(again.Origin, again.Text, first.Origin)));
    }

    private ParsingEvent Next() => Advance()
        ? _parser.Current!
        : throw new RefusedException(FaultTexts.NotYaml(new Origin(_file, 0, 0), "the text ends too early"));

    /// <summary>
    /// The next event. On some malformed texts YamlDotNet fails with a general exception instead of its own (found by
    /// feeding it random pieces); the place is then that of the last event it understood.
    /// </summary>
    private bool Advance()
    {
        try
        {
            return _parser.MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            var last = _parser.Current is { } current ? At(_file, current.End) : new Origin(_file, 0, 0);
            throw new RefusedException(FaultTexts.NotYaml(last, "what follows here has no form that YAML knows"));
        }
    }

    /// <summary>Ends the reading of one file; never leaves this class.</summary>
    private sealed class RefusedException(Fault fault) : Exception(fault.Message)
    {
        public Fault Fault { get; } = fault;
    }
}
