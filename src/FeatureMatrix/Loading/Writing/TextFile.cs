namespace FeatureMatrix.Loading.Writing;

/// <summary>
/// One YAML text under change. Each change adds, replaces or takes out characters where nodes stand and nowhere else, so that
/// comments, order, quoting and line ends of everything else stay as they are.
/// </summary>
internal sealed class TextFile(string path, string text, List<KeptValue> kept)
{
    private readonly string _lineEnd = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    public string Path { get; } = path;

    public string Text { get; private set; } = text;

    /// <summary>True where the file has the record, or with so many steps of the way to it.</summary>
    public bool Holds(IEnumerable<Step> place) => Walk(PlacedNode.Parse(Text), [.. place]).Missing.Count == 0;

    /// <summary>Brings the record into the file.</summary>
    public void Apply(RecordChange change)
    {
        var (node, missing) = Walk(PlacedNode.Parse(Text), change.Place);
        if (missing.Count > 0)
        {
            Insert(node, missing, change);
            return;
        }

        foreach (var key in change.Keys)
            Apply(key, change.Place);
    }

    private void Apply(KeyChange change, IReadOnlyList<Step> place)
    {
        var record = Walk(PlacedNode.Parse(Text), place).Node;
        if (record is PlacedScalar { IsNothing: false } bare)
        {
            // A bare version becomes a map, so that it can hold more than its number.
            if (place[^1] is Step.Item item && change.Key != item.Identity[0].Key)
            {
                Replace(bare.Start, bare.End, $"{{{item.Identity[0].Key}: {Text[bare.Start..bare.End]}}}");
                Apply(change, place);
            }

            return;
        }

        if (record is not PlacedMapping map)
        {
            if (change.Rule != KeyRule.Remove)
                Fill(record, [(change.Key, change.Value)]);
            return;
        }

        var entry = map.Entry(change.Key);
        if (entry is null or { Value: PlacedScalar { IsNothing: true } })
        {
            if (change.Rule == KeyRule.Remove)
                return;
            if (entry is null)
                Add(map, change.Key, change.Value);
            else
                Replace(entry.Value.Start, entry.Value.End, " " + YamlText.Inline(change.Value));
        }
        else if (change.Rule == KeyRule.Remove || !Says(entry.Value, change.Value))
        {
            Settle(map, entry, change);
        }
    }

    private void Settle(PlacedMapping map, PlacedEntry entry, KeyChange change)
    {
        switch (change.Rule)
        {
            case KeyRule.Join when entry.Value is PlacedScalar or PlacedSequence && change.Value is YamlValue.List wanted:
                Join(entry.Value, wanted);
                break;
            case KeyRule.Replace when IsImported(entry.Value):
                Replace(entry.Value.Start, entry.Value.End, YamlText.Inline(change.Value));
                break;
            case KeyRule.Remove when IsImported(entry.Value):
                TakeOut(map, entry);
                break;
            case KeyRule.Keep or KeyRule.Replace or KeyRule.Join or KeyRule.Remove:
                kept.Add(new KeptValue(
                    Path, Text.AsSpan(0, entry.Key.Start).Count('\n') + 1, entry.Key.Text, YamlText.Inline(entry.Value.Value),
                    change.Rule == KeyRule.Remove ? "" : YamlText.Inline(change.Value)));
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>True where a value says no more than what an import writes.</summary>
    private static bool IsImported(PlacedNode value) => value switch
    {
        PlacedScalar => true,
        PlacedMapping map => map.Entries.All(entry => entry.Key.Text is "is" or "level" or "reach"),
        PlacedSequence list => list.Items.All(IsImported),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>True where the value there says what is wanted; for lists, all that is wanted.</summary>
    private static bool Says(PlacedNode there, YamlValue wanted) => wanted switch
    {
        YamlValue.List list when there is PlacedSequence sequence => list.Items.All(item => sequence.Items.Any(one => one.Value.Equals(item))),
        YamlValue.List { Items: [var only] } => there.Value.Equals(only),
        _ => there.Value.Equals(wanted),
    };

    private void Join(PlacedNode there, YamlValue.List wanted)
    {
        if (there is PlacedScalar one)
        {
            var items = wanted.Items.Where(item => !item.Equals(one.Value)).Select(YamlText.Inline);
            Replace(one.Start, one.End, $"[{string.Join(", ", items.Prepend(Text[one.Start..one.End]))}]");
            return;
        }

        var list = (PlacedSequence)there;
        var missing = wanted.Items.Where(item => !list.Items.Any(other => other.Value.Equals(item))).ToList();
        if (list.IsFlow)
            InsertFlow(list.End, list.Items.Count == 0, string.Join(", ", missing.Select(YamlText.Inline)));
        else
            InsertLines(list.End, missing.SelectMany(item => YamlText.Item(item, ColumnOf(list.Start))));
    }

    /// <summary>Follows the steps as far as the file has them: the last node met, and the steps that are left.</summary>
    private static (PlacedNode? Node, IReadOnlyList<Step> Missing) Walk(PlacedNode? root, IReadOnlyList<Step> place)
    {
        var node = root;
        for (var i = 0; i < place.Count; i++)
        {
            var next = (place[i], node) switch
            {
                (Step.Key key, PlacedMapping map) => map.Entry(key.Name)?.Value,
                (Step.Item item, PlacedSequence list) => list.Items.FirstOrDefault(one => Is(one, item)),
                _ => null,
            };
            if (next is null)
                return (node, [.. place.Skip(i)]);
            node = next;
        }

        return (node, []);
    }

    private static bool Is(PlacedNode node, Step.Item wanted) => node switch
    {
        PlacedScalar bare => wanted.Identity.Count == 1 && bare.Text.Trim() == wanted.Identity[0].Value,
        PlacedMapping map => wanted.Identity.All(pair => (map.Entry(pair.Key)?.Value as PlacedScalar)?.Text.Trim() == pair.Value)
            && !wanted.AlsoTelling.Any(key => map.Entry(key) is not null),
        _ => false,
    };

    /// <summary>Writes the whole record with the part of the way that the file lacks.</summary>
    private void Insert(PlacedNode? at, IReadOnlyList<Step> missing, RecordChange change)
    {
        var keys = change.Keys.Where(key => key.Rule != KeyRule.Remove).Select(key => (key.Key, key.Value)).ToList();
        YamlValue value = new YamlValue.Map(missing[^1] is Step.Item item
            ? [.. item.Identity.Select(pair => (pair.Key, (YamlValue)new YamlValue.Text(pair.Value))), .. keys]
            : keys, change.InLines);
        for (var i = missing.Count - 1; i > 0; i--)
            value = Wrapped(missing[i], value);
        switch (missing[0], at)
        {
            case (Step.Key key, PlacedMapping map):
                Add(map, key.Name, value);
                break;
            case (Step.Item, PlacedSequence { IsFlow: true } list):
                InsertFlow(list.End, list.Items.Count == 0, YamlText.Inline(value));
                break;
            case (Step.Item, PlacedSequence list):
                InsertLines(list.End, YamlText.Item(value, ColumnOf(list.Start)));
                break;
            default:
                Fill(at, Wrapped(missing[0], value));
                break;
        }
    }

    private static YamlValue Wrapped(Step step, YamlValue value) => step switch
    {
        Step.Key key => new YamlValue.Map([(key.Name, value)]),
        Step.Item => new YamlValue.List([value]),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private void Fill(PlacedNode? nothing, IReadOnlyList<(string, YamlValue)> entries) => Fill(nothing, new YamlValue.Map(entries));

    /// <summary>Puts a value where nothing stands: an empty file, or a key without one.</summary>
    private void Fill(PlacedNode? nothing, YamlValue value)
    {
        if (nothing is null)
        {
            var lines = ((YamlValue.Map)value).Entries.SelectMany(entry => YamlText.Lines(entry.Key, entry.Value, 0));
            var start = Text.Length == 0 || Text.EndsWith('\n') ? Text : Text + _lineEnd;
            Text = start + string.Concat(lines.Select(line => line + _lineEnd));
            return;
        }

        if (nothing is not PlacedScalar { IsNothing: true })
            throw new InvalidOperationException($"{Path}: a list, map or text stands in the way of a record");
        Replace(nothing.Start, nothing.End, " " + YamlText.Inline(value));
    }

    private void Add(PlacedMapping map, string key, YamlValue value)
    {
        if (map.IsFlow)
            InsertFlow(map.End, map.Entries.Count == 0, YamlText.Inline(new YamlValue.Map([(key, value)]))[1..^1]);
        else
            InsertLines(map.End, YamlText.Lines(key, value, ColumnOf(map.Start)));
    }

    private void TakeOut(PlacedMapping map, PlacedEntry entry)
    {
        var (start, end) = (entry.Key.Start, entry.Value.End);
        if (!map.IsFlow)
        {
            // The first key of a list's item shares its line with the dash; it is part of what tells the item and never goes.
            start = Text.LastIndexOf('\n', start) + 1;
            var next = Text.IndexOf('\n', end);
            Replace(start, next < 0 ? Text.Length : next + 1, "");
            return;
        }

        var index = map.Entries.ToList().IndexOf(entry);
        if (index > 0)
            start = map.Entries[index - 1].Value.End;
        else if (map.Entries.Count > 1)
            end = map.Entries[1].Key.Start;
        Replace(start, end, "");
    }

    private void InsertFlow(int end, bool isEmpty, string text)
    {
        // Before the bracket, and before the blanks that some put in front of it.
        var at = end - 1;
        while (at > 0 && Text[at - 1] is ' ')
            at--;
        Replace(at, at, isEmpty ? text : ", " + text);
    }

    /// <summary>New lines after the line in which something ends, behind its comment.</summary>
    private void InsertLines(int end, IEnumerable<string> lines)
    {
        var next = Text.IndexOf('\n', end);
        if (next < 0)
            Text += _lineEnd;
        var at = next < 0 ? Text.Length : next + 1;
        Replace(at, at, string.Concat(lines.Select(line => line + _lineEnd)));
    }

    private int ColumnOf(int offset)
    {
        var start = Text.LastIndexOf('\n', Math.Max(0, offset - 1)) + 1;
        return offset - start - (start == 0 && Text.StartsWith('\uFEFF') ? 1 : 0);
    }

    private void Replace(int start, int end, string with) => Text = string.Concat(Text.AsSpan(0, start), with, Text.AsSpan(end));
}
