namespace FeatureMatrix.Loading.Writing;

/// <summary>One file of a collection, into which records are brought. What they do not touch keeps its comments, order, quotes and line ends.</summary>
internal sealed class RecordFile(string path, string text, List<KeptValue> kept)
{
    private readonly TreeMap _root = Tree.Of(PlacedNode.Parse(text)) as TreeMap ?? new TreeMap(null, []);

    public string Path { get; } = path;

    /// <summary>The text with all records in it.</summary>
    public string Text => TextRevision.Of(text, _root);

    /// <summary>True where the file has the record, or this many steps of the way to it.</summary>
    public bool Holds(IEnumerable<Step> place)
    {
        Tree? node = _root;
        foreach (var step in place)
            node = Follow(node, step);
        return node is not null;
    }

    /// <summary>Brings the record into the file.</summary>
    public void Bring(RecordChange change) => Bring(change, 0, _root, _ => throw InTheWay());

    /// <summary>Goes one step on, or writes what is left of the way with the record at its end.</summary>
    /// <param name="change">The record.</param>
    /// <param name="done">How many steps led to the node.</param>
    /// <param name="node">Where they led.</param>
    /// <param name="put">Puts something else into the node's place.</param>
    private void Bring(RecordChange change, int done, Tree node, Action<Tree> put)
    {
        if (done == change.Place.Count)
        {
            foreach (var key in change.Keys)
                node = Settle(key, change.Place[^1], node, put);
            return;
        }

        var step = change.Place[done];
        switch (node)
        {
            case TreeMap map when Follow(map, step) is not null && step is Step.Key key:
                var entry = map.Entry(key.Name)!;
                Bring(change, done + 1, entry.Value, value => entry.Value = value);
                break;
            case TreeList list when Follow(list, step) is { } item:
                Bring(change, done + 1, item, value => list.Replace(item, value));
                break;
            case TreeMap map when step is Step.Key key:
                map.Entries.Add(new TreeEntry(key.Name, Rest(change, done + 1)));
                break;
            case TreeList list when step is Step.Item item:
                list.Items.Add(Item(item, change, done + 1));
                break;
            case TreeText { IsNothing: true }:
                put(Rest(change, done));
                break;
            default:
                throw InTheWay();
        }
    }

    /// <summary>The record with the part of the way to it that the file lacks.</summary>
    private static Tree Rest(RecordChange change, int done) => change.Place.ElementAtOrDefault(done) switch
    {
        Step.Key key => new TreeMap(null, [new TreeEntry(key.Name, Rest(change, done + 1))]),
        Step.Item item => new TreeList(null, [Item(item, change, done + 1)]),
        _ => Record([], change),
    };

    private static TreeMap Item(Step.Item item, RecordChange change, int done) => done == change.Place.Count
        ? Record(item.Identity, change)
        : throw new InvalidOperationException("a record lies below an item that does not exist");

    private static TreeMap Record(IReadOnlyList<(string Key, string Value)> identity, RecordChange change) => new(
        null,
        [
            .. identity.Select(pair => new TreeEntry(pair.Key, new TreeText(pair.Value))),
            .. change.Keys.Where(key => key.Rule != KeyRule.Remove).Select(key => new TreeEntry(key.Key, Tree.Of(key.Value))),
        ])
    {
        InLines = change.InLines,
    };

    private static Tree? Follow(Tree? node, Step step) => (step, node) switch
    {
        (Step.Key key, TreeMap map) => map.Entry(key.Name)?.Value,
        (Step.Item item, TreeList list) => list.Items.Find(one => Is(one, item)),
        _ => null,
    };

    private static bool Is(Tree node, Step.Item wanted) => node switch
    {
        TreeText bare => wanted.Identity.Count == 1 && bare.Text == wanted.Identity[0].Value,
        TreeMap map => wanted.Identity.All(pair => (map.Entry(pair.Key)?.Value as TreeText)?.Text == pair.Value)
            && !wanted.AlsoTelling.Any(key => map.Entry(key) is not null),
        _ => false,
    };

    /// <summary>Brings one key into a record; the record, which may be another one then.</summary>
    private Tree Settle(KeyChange change, Step last, Tree record, Action<Tree> put)
    {
        switch (record)
        {
            case TreeMap map:
                Settle(change, map);
                return map;
            case TreeText { IsNothing: true } when change.Rule == KeyRule.Remove:
            case TreeText { IsNothing: false } when last is not Step.Item item || change.Key == item.Identity[0].Key:
                return record;
            case TreeText bare:
                // A bare version becomes a map, so that it can hold more than its number.
                var grown = new TreeMap(null, bare.IsNothing ? [] : [new TreeEntry(((Step.Item)last).Identity[0].Key, bare)]);
                Settle(change, grown);
                put(grown);
                return grown;
            default:
                throw InTheWay();
        }
    }

    private void Settle(KeyChange change, TreeMap map)
    {
        var there = map[change.Key];
        if (there is null)
        {
            if (change.Rule != KeyRule.Remove)
                map.Set(change.Key, Tree.Of(change.Value));
            return;
        }

        if (change.Rule != KeyRule.Remove && Says(there, change.Value))
            return;
        var entry = map.Entry(change.Key)!;
        switch (change.Rule)
        {
            case KeyRule.Join when there is TreeText or TreeList && change.Value is YamlValue.List wanted:
                entry.Value = Joined(there, wanted);
                break;
            case KeyRule.Replace when IsImported(there):
                entry.Value = Tree.Of(change.Value);
                break;
            case KeyRule.Remove when IsImported(there):
                map.Entries.Remove(entry);
                break;
            default:
                kept.Add(new KeptValue(
                    Path, LineOf(entry), change.Key, YamlText.Inline(Meaning(there)), change.Rule == KeyRule.Remove ? "" : YamlText.Inline(change.Value)));
                break;
        }
    }

    /// <summary>A list with what it lacks, in its own place; a single text becomes the first of a list.</summary>
    private static TreeList Joined(Tree there, YamlValue.List wanted)
    {
        var list = there as TreeList ?? new TreeList(null, [there]);
        list.Items.AddRange(wanted.Items.Where(item => !Has(list, item)).Select(Tree.Of).ToList());
        return list;
    }

    /// <summary>True where a value says no more than what an import writes.</summary>
    private static bool IsImported(Tree value) => value switch
    {
        TreeText => true,
        TreeMap map => map.Entries.All(entry => entry.Key is "is" or "level" or "reach"),
        TreeList list => list.Items.All(IsImported),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>True where the value there says what is wanted; for lists, all that is wanted.</summary>
    private static bool Says(Tree there, YamlValue wanted) => wanted switch
    {
        YamlValue.List list when there is TreeList said => list.Items.All(item => Has(said, item)),
        YamlValue.List { Items: [var only] } => Meaning(there).Equals(only),
        _ => Meaning(there).Equals(wanted),
    };

    private static bool Has(TreeList list, YamlValue item) => list.Items.Exists(one => Meaning(one).Equals(item));

    /// <summary>What a value says: keys without a value say nothing.</summary>
    private static YamlValue Meaning(Tree value) => value switch
    {
        TreeMap map => new YamlValue.Map([.. map.Entries.Where(entry => entry.Value is not TreeText { IsNothing: true }).Select(entry => (entry.Key, Meaning(entry.Value)))]),
        TreeList list => new YamlValue.List([.. list.Items.Select(Meaning)]),
        _ => value.ToValue(),
    };

    private int? LineOf(TreeEntry entry) => entry.Source is { } source ? text.AsSpan(0, source.Key.Start).Count('\n') + 1 : null;

    private InvalidOperationException InTheWay() => new($"{Path}: a list, map or text stands in the way of a record");
}
