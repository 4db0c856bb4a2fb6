using System.Text;

namespace FeatureMatrix.Loading.Writing;

/// <summary>
/// Writes a changed tree over the text it came from: only the characters of what differs are replaced, added or taken out, so that comments,
/// order, quotes and line ends of everything else stay. An unchanged tree gives the same text.
/// </summary>
internal sealed class TextRevision
{
    private readonly string _text;
    private readonly string _lineEnd;
    private readonly List<Edit> _edits = [];

    private TextRevision(string text)
    {
        _text = text;
        _lineEnd = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
    }

    /// <summary>The text that says what the tree says.</summary>
    /// <param name="text">The text that the tree was made from; empty for a new file.</param>
    /// <param name="root">The tree, changed or not.</param>
    public static string Of(string text, TreeMap root)
    {
        var revision = new TextRevision(text);
        if (root.Source is PlacedMapping source)
            revision.Map(source, root);
        else
            revision.Lines(text.Length, root.Entries.SelectMany(entry => YamlText.Lines(entry.Key, entry.Value.ToValue(), 0)));
        return revision.Applied();
    }

    private void Visit(PlacedNode there, Tree wanted)
    {
        switch (there, wanted)
        {
            case (PlacedMapping map, TreeMap { Source: { } source } tree) when source == map:
                Map(map, tree);
                break;
            case (PlacedSequence list, TreeList { Source: { } source } tree) when source == list:
                List(list, tree);
                break;
            case (PlacedScalar, TreeText text) when text.Source == there:
                break;
            case (PlacedScalar { IsNothing: true }, _):
                Replace(there.Start, there.End, " " + YamlText.Inline(wanted.ToValue()));
                break;
            default:
                Replace(there.Start, there.End, YamlText.Inline(wanted.ToValue()));
                break;
        }
    }

    private void Map(PlacedMapping map, TreeMap tree)
    {
        var kept = tree.Entries.Where(entry => entry.Source is not null).ToDictionary(entry => entry.Source!);
        TakeOut(map.IsFlow, [.. map.Entries.Select(entry => (entry.Key.Start, entry.Value.End, kept.ContainsKey(entry)))]);
        foreach (var entry in map.Entries)
        {
            if (!kept.TryGetValue(entry, out var now))
                continue;
            if (now.Key != entry.Key.Text)
                Replace(entry.Key.Start, entry.Key.End, YamlText.Inline(new YamlValue.Text(now.Key)));
            Visit(entry.Value, now.Value);
        }

        var added = tree.Entries.Where(entry => entry.Source is null).ToList();
        if (added.Count == 0)
            return;
        if (map.IsFlow)
            Flow(map.End, kept.Count == 0, added.Select(entry => YamlText.Inline(new YamlValue.Map([(entry.Key, entry.Value.ToValue())]))[1..^1]));
        else
            Lines(map.End, added.SelectMany(entry => YamlText.Lines(entry.Key, entry.Value.ToValue(), ColumnOf(map.Start))));
    }

    private void List(PlacedSequence list, TreeList tree)
    {
        var kept = tree.Items.Select(item => (Item: item, Place: item.Source ?? item.InPlaceOf)).Where(one => one.Place is not null).ToDictionary(one => one.Place!, one => one.Item);
        TakeOut(list.IsFlow, [.. list.Items.Select(item => (item.Start, item.End, kept.ContainsKey(item)))]);
        foreach (var item in list.Items.Where(kept.ContainsKey))
            Visit(item, kept[item]);
        var added = tree.Items.Where(item => item.Source is null && item.InPlaceOf is null).Select(item => item.ToValue()).ToList();
        if (added.Count == 0)
            return;
        if (list.IsFlow)
            Flow(list.End, kept.Count == 0, added.Select(YamlText.Inline));
        else
            Lines(list.End, added.SelectMany(item => YamlText.Item(item, ColumnOf(list.Start))));
    }

    /// <summary>Takes out the parts of a map or list that are not kept: whole lines, or the pieces between brackets with their commas.</summary>
    private void TakeOut(bool isFlow, IReadOnlyList<(int Start, int End, bool IsKept)> parts)
    {
        for (var first = 0; first < parts.Count; first++)
        {
            if (parts[first].IsKept)
                continue;
            var last = first;
            while (last + 1 < parts.Count && !parts[last + 1].IsKept)
                last++;
            if (!isFlow)
                TakeOutLines(parts, first, last);
            else if (first > 0)
                Replace(parts[first - 1].End, parts[last].End, "");
            else
                Replace(parts[0].Start, last + 1 < parts.Count ? parts[last + 1].Start : parts[last].End, "");
            first = last;
        }
    }

    private void TakeOutLines(IReadOnlyList<(int Start, int End, bool IsKept)> parts, int first, int last)
    {
        var (start, next) = (LineStart(parts[first].Start), _text.IndexOf('\n', parts[last].End));
        if (_text[start..parts[first].Start].Trim() is "-" && first == 0 && last + 1 < parts.Count && IsOfMap(parts))
            Replace(parts[0].Start, parts[last + 1].Start, "");
        else
            Replace(start, next < 0 ? _text.Length : next + 1, "");
    }

    // The first key of a map in a list shares its line with the dash, and the keys after it stand below it; items of a list have dashes of their own.
    private bool IsOfMap(IReadOnlyList<(int Start, int End, bool IsKept)> parts) => _text[LineStart(parts[^1].Start)..parts[^1].Start].Trim().Length == 0;

    private int LineStart(int offset) => _text.LastIndexOf('\n', Math.Max(0, offset - 1)) is var line && offset > 0 ? line + 1 : 0;

    private int ColumnOf(int offset)
    {
        var start = LineStart(offset);
        return offset - start - (start == 0 && _text.StartsWith('\uFEFF') ? 1 : 0);
    }

    /// <summary>New pieces before the closing bracket, and before the blanks that some put in front of it.</summary>
    private void Flow(int end, bool isEmpty, IEnumerable<string> pieces)
    {
        var at = end - 1;
        while (at > 0 && _text[at - 1] is ' ')
            at--;
        Replace(at, at, (isEmpty ? "" : ", ") + string.Join(", ", pieces));
    }

    /// <summary>New lines after the line in which something ends, behind its comment.</summary>
    private void Lines(int end, IEnumerable<string> lines)
    {
        var next = _text.IndexOf('\n', Math.Min(end, _text.Length));
        var at = next < 0 ? _text.Length : next + 1;
        _edits.Add(new Edit(at, at, string.Concat(lines.Select(line => line + _lineEnd)), _edits.Count, IsLines: true));
    }

    private void Replace(int start, int end, string with) => _edits.Add(new Edit(start, end, with, _edits.Count, IsLines: false));

    private string Applied()
    {
        var result = new StringBuilder(_text.Length);
        var done = 0;
        foreach (var edit in _edits.OrderBy(edit => edit.Start).ThenBy(edit => edit.Number))
        {
            if (edit.Start > done)
                result.Append(_text, done, edit.Start - done);
            if (edit.IsLines && result.Length > 0 && result[^1] != '\n')
                result.Append(_lineEnd);
            result.Append(edit.With);
            done = Math.Max(done, edit.End);
        }

        return result.Append(_text, done, _text.Length - done).ToString();
    }

    private sealed record Edit(int Start, int End, string With, int Number, bool IsLines);
}
