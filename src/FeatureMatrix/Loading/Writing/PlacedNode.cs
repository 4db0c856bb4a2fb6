using FeatureMatrix.Loading.Texts;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FeatureMatrix.Loading.Writing;

/// <summary>A piece of YAML with the characters that it takes up, for editing a text without rewriting it.</summary>
/// <param name="Start">Offset of its first character.</param>
/// <param name="End">Offset after its last character; white space and comments after it do not belong to it.</param>
internal abstract record PlacedNode(int Start, int End)
{
    /// <summary>The value as the format reads it.</summary>
    public abstract YamlValue Value { get; }

    /// <summary>Parses a text that <see cref="NodeParser"/> has accepted. Null where it holds nothing.</summary>
    public static PlacedNode? Parse(string text)
    {
        var shift = text.StartsWith('\uFEFF') ? 1 : 0;
        var parser = new Parser(new StringReader(text[shift..]));
        while (parser.MoveNext())
        {
            if (parser.Current is NodeEvent)
                return new Reader(parser, text, shift).Read();
        }

        return null;
    }

    private sealed class Reader(Parser parser, string text, int shift)
    {
        public PlacedNode Read()
        {
            var current = parser.Current!;
            return current switch
            {
                YamlDotNet.Core.Events.Scalar scalar => OfScalar(scalar),
                SequenceStart start => OfSequence(start),
                MappingStart start => OfMapping(start),
                _ => throw new InvalidOperationException($"{current.GetType().Name} in a text that was accepted"),
            };
        }

        private PlacedScalar OfScalar(YamlDotNet.Core.Events.Scalar scalar)
        {
            var start = At(scalar.Start);
            var end = scalar.Style switch
            {
                ScalarStyle.SingleQuoted => AfterQuote(start, '\''),
                ScalarStyle.DoubleQuoted => AfterQuote(start, '"'),
                _ => Trimmed(start, At(scalar.End)),
            };
            return new(start, end, scalar.Value, scalar.Style == ScalarStyle.Plain && scalar.Value is "" or "null" or "~");
        }

        private PlacedSequence OfSequence(SequenceStart start)
        {
            var items = new List<PlacedNode>();
            while (Next() is not SequenceEnd)
                items.Add(Read());
            var isFlow = start.Style == SequenceStyle.Flow;
            return new(At(start.Start), EndOf(isFlow, items), isFlow, items);
        }

        private PlacedMapping OfMapping(MappingStart start)
        {
            var entries = new List<PlacedEntry>();
            while (Next() is not MappingEnd)
            {
                var key = (PlacedScalar)Read();
                Next();
                entries.Add(new PlacedEntry(key, Read()));
            }

            var isFlow = start.Style == MappingStyle.Flow;
            return new(At(start.Start), EndOf(isFlow, [.. entries.Select(entry => entry.Value)]), isFlow, entries);
        }

        /// <summary>
        /// A block ends with its last value: the parser's own mark stands before what follows, after comments. For a value in
        /// brackets both its marks stand at the closing bracket (YamlDotNet 18.1).
        /// </summary>
        private int EndOf(bool isFlow, IReadOnlyList<PlacedNode> parts)
        {
            if (!isFlow)
                return parts[^1].End;
            var bracket = At(parser.Current!.Start);
            return text[bracket] is ']' or '}'
                ? bracket + 1
                : throw new InvalidOperationException($"no closing bracket at {bracket}");
        }

        private ParsingEvent Next() => parser.MoveNext() ? parser.Current! : throw new InvalidOperationException("the text ends too early");

        private int At(Mark mark) => Math.Min((int)mark.Index + shift, text.Length);

        /// <summary>After the closing quote: the parser's own mark stands before it (YamlDotNet 18.1).</summary>
        private int AfterQuote(int start, char quote)
        {
            for (var i = start + 1; i < text.Length; i++)
            {
                if (quote == '"' && text[i] == '\\')
                    i++;
                else if (text[i] == quote && quote == '\'' && i + 1 < text.Length && text[i + 1] == quote)
                    i++;
                else if (text[i] == quote)
                    return i + 1;
            }

            throw new InvalidOperationException("a quote without its end in a text that was accepted");
        }

        private int Trimmed(int start, int end)
        {
            while (end > start && char.IsWhiteSpace(text[end - 1]))
                end--;
            return end;
        }
    }
}

/// <summary>A text in a file.</summary>
internal sealed record PlacedScalar(int Start, int End, string Text, bool IsNothing) : PlacedNode(Start, End)
{
    public override YamlValue Value => new YamlValue.Text(Text.Trim());
}

/// <summary>A list in a file.</summary>
internal sealed record PlacedSequence(int Start, int End, bool IsFlow, IReadOnlyList<PlacedNode> Items) : PlacedNode(Start, End)
{
    public override YamlValue Value => new YamlValue.List([.. Items.Select(item => item.Value)]);
}

/// <summary>A map in a file.</summary>
internal sealed record PlacedMapping(int Start, int End, bool IsFlow, IReadOnlyList<PlacedEntry> Entries) : PlacedNode(Start, End)
{
    public override YamlValue Value => new YamlValue.Map([.. Entries.Where(entry => entry.Value is not PlacedScalar { IsNothing: true })
        .Select(entry => (entry.Key.Text, entry.Value.Value))]);

    public PlacedEntry? Entry(string key) => Entries.FirstOrDefault(entry => entry.Key.Text == key);
}

/// <summary>A key with its value in a file.</summary>
internal sealed record PlacedEntry(PlacedScalar Key, PlacedNode Value);
