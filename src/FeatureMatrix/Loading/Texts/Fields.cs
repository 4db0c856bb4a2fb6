using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Texts;

/// <summary>
/// The keys of one map, taken by name. What was asked for is what is legal: <see cref="Done"/> reports every key that
/// nobody asked for. An empty value counts as a key that was not written.
/// </summary>
internal sealed class Fields
{
    private const string AMap = "a map of keys";

    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    public Fields(Mapping node, string label, FaultList faults)
    {
        Node = node;
        Label = label;
        Faults = faults;
    }

    public Mapping Node { get; }

    /// <summary>What the map describes, for messages: <c>card 'nl4-retail'</c>.</summary>
    public string Label { get; }

    public FaultList Faults { get; }

    public Origin Origin => Node.Origin;

    /// <summary>The map as fields; null and a fault where it is no map.</summary>
    /// <param name="node">What should be a map.</param>
    /// <param name="label">What it describes.</param>
    /// <param name="faults">Where a fault goes.</param>
    /// <param name="wanted">What the fault says should stand there.</param>
    public static Fields? Of(Node node, string label, FaultList faults, string wanted = AMap)
    {
        if (node is Mapping mapping)
            return new Fields(mapping, label, faults);
        faults.Add(FaultTexts.WrongShape(node.Origin, label, wanted, node.Shape));
        return null;
    }

    /// <summary>The value under a key; null where it was not written.</summary>
    public Node? Take(string key)
    {
        _asked.Add(key);
        return Node.Find(key) is { Value: { IsNothing: false } value } ? value : null;
    }

    public bool Has(string key) => Take(key) is not null;

    /// <summary>Where the key stands; where the map begins if it was not written.</summary>
    public Origin OriginOf(string key) => Node.Find(key)?.Key.Origin ?? Origin;

    /// <summary>Keys that a later step takes: they are legal even if that step is never reached.</summary>
    public void Expect(params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
            _asked.Add(key);
    }

    /// <summary>Takes all that is left, for maps whose keys are partly ids.</summary>
    public IReadOnlyList<MappingEntry> TakeRest()
    {
        var rest = Node.Entries.Where(entry => !_asked.Contains(entry.Key.Text)).ToList();
        _asked.UnionWith(rest.Select(entry => entry.Key.Text));
        return [.. rest.Where(entry => !entry.Value.IsNothing)];
    }

    /// <summary>Reports the keys that nobody asked for.</summary>
    public void Done()
    {
        foreach (var (key, _) in Node.Entries)
        {
            if (!_asked.Contains(key.Text))
                Faults.Add(FaultTexts.UnknownKey(key.Origin, key.Text, Label, _asked.Order(StringComparer.Ordinal)));
        }
    }

    public Scalar? Word(string key) => Take(key) is { } node ? AsScalar(node, key) : null;

    /// <summary>A text; empty where it was not written.</summary>
    public string Text(string key) => Word(key)?.Text.Trim() ?? "";

    /// <summary>A text that has to be there; empty and a fault where it is not.</summary>
    public string RequiredText(string key) => RequiredWord(key)?.Text.Trim() ?? "";

    public Scalar? RequiredWord(string key)
    {
        if (Take(key) is { } node)
            return AsScalar(node, key);
        Faults.Add(FaultTexts.MissingKey(Origin, key, Label));
        return null;
    }

    /// <summary>One of a fixed set of words; null where it was not written or is none of them.</summary>
    public T? Choice<T>(string key, IReadOnlyList<(string Word, T Value)> legal)
        where T : struct => Word(key) is { } word ? Words.Read(word, $"'{key}'", legal, Faults) : null;

    public bool? YesNo(string key) => Choice(key, Words.YesNo);

    /// <summary>A value with a reader of its own, such as a size or a date; null where it was not written or is wrong.</summary>
    public T? Value<T>(string key, Func<Scalar, string, FaultList, T?> read)
        where T : struct => Word(key) is { } word ? read(word, $"'{key}'", Faults) : null;

    /// <summary>A list of texts; a single text counts as a list of one.</summary>
    public IReadOnlyList<Scalar> List(string key) => Take(key) switch
    {
        null => [],
        Scalar one => [one],
        Sequence list => [.. list.Items.Select(item => AsScalar(item, key)).OfType<Scalar>()],
        { } other => Wrong<Scalar>(key, "a list of texts", other),
    };

    /// <summary>A list of anything.</summary>
    public IReadOnlyList<Node> Items(string key) => Take(key) switch
    {
        null => [],
        Sequence list => list.Items,
        { } other => Wrong<Node>(key, "a list", other),
    };

    /// <summary>A map whose keys are ids or words.</summary>
    public IReadOnlyList<MappingEntry> Entries(string key) => Take(key) switch
    {
        null => [],
        Mapping map => map.Entries,
        { } other => Wrong<MappingEntry>(key, "a map of keys", other),
    };

    /// <summary>A map of its own; null where it was not written.</summary>
    public Fields? Inner(string key, string wanted = AMap) => Take(key) is { } node ? Of(node, $"'{key}' of {Label}", Faults, wanted) : null;

    private Scalar? AsScalar(Node node, string key)
    {
        if (node is Scalar scalar)
            return scalar;
        Faults.Add(FaultTexts.WrongShape(node.Origin, $"'{key}'", "a text", node.Shape));
        return null;
    }

    private List<T> Wrong<T>(string key, string wanted, Node found)
    {
        Faults.Add(FaultTexts.WrongShape(found.Origin, $"'{key}'", wanted, found.Shape));
        return [];
    }
}
