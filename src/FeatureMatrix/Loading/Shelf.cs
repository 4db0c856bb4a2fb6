using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Readers;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>
/// All entities of one kind: first their ids and keys (first pass), then the objects that are made of them (second pass).
/// Iterates in the order of the ids, so that the order of files does not matter.
/// </summary>
internal sealed class Shelf<T>(string kind)
    where T : class
{
    private readonly Dictionary<string, Item> _items = new(StringComparer.Ordinal);
    private IReadOnlyList<Item>? _inOrder;

    /// <summary>One entity, for messages.</summary>
    public string Kind { get; } = kind;

    /// <summary>Those of which an object could be made.</summary>
    public IEnumerable<(Item Item, T Value)> Made =>
        InOrder.Where(item => item.Value is not null).Select(item => (item, item.Value!));

    /// <summary>The finished objects, by id.</summary>
    public IReadOnlyList<T> All => [.. InOrder.Select(item => item.Value).OfType<T>()];

    /// <summary>First pass: notes the id. What a deeper layer says of an id that is noted already goes below it.</summary>
    public void Declare(MappingEntry entry, string section, int layer, FaultList faults)
    {
        var id = entry.Key.Text;
        if (!Ids.Check(entry.Key, faults))
            return;
        if (!_items.TryGetValue(id, out var first))
            Add(new Item(id, section, layer, entry, Fields.Of(entry.Value, $"{Kind} '{id}'", faults)));
        else if (layer == first.Layer)
            faults.Add(FaultTexts.DuplicateId(entry.Key.Origin, Kind, id, first.Origin));
        else
            first.LayOver(entry, layer, (key, below) => faults.Hidden.Add(new HiddenKey($"{Kind} '{id}'", key.Text, key.Origin, below.Origin)));
    }

    private IReadOnlyList<Item> InOrder => _inOrder ??= [.. _items.Values.OrderBy(item => item.Id, StringComparer.Ordinal)];

    private void Add(Item item)
    {
        _items.Add(item.Id, item);
        _inOrder = null;
    }

    /// <summary>Second pass: makes the objects. Null where too much is missing; the reasons are faults then.</summary>
    public void Build(Func<Item, T?> build)
    {
        foreach (var item in InOrder.Where(item => item.IsMap))
            item.Value = build(item);
    }

    /// <summary>Reports the keys that no reader asked for, and the statements without a source.</summary>
    public void Done(FaultList faults)
    {
        foreach (var item in InOrder.Where(item => item.IsMap))
        {
            item.Fields.Done();
            item.Unsourced.Report(faults);
        }
    }

    /// <summary>The entity that a word names. Null and a fault where there is none; null alone where it could not be made.</summary>
    public T? Find(Scalar reference, FaultList faults) => FindItem(reference, faults)?.Value;

    /// <summary>As <see cref="Find(Scalar, FaultList)"/>, for what was declared but is not yet made.</summary>
    public Item? FindItem(Scalar reference, FaultList faults)
    {
        var id = reference.Text.Trim();
        if (_items.TryGetValue(id, out var item))
            return item;
        faults.AddDangling(FaultTexts.Unknown(reference.Origin, Kind, id, InOrder.Select(item => item.Id)));
        return null;
    }

    public T? Find(string id) => _items.TryGetValue(id, out var item) ? item.Value : null;

    public bool Declares(string id) => _items.ContainsKey(id);

    /// <summary>One entity on its way from YAML to the model.</summary>
    internal sealed class Item(string id, string section, int layer, MappingEntry entry, Fields? fields)
    {
        public string Id { get; } = id;

        /// <summary>The top-level key it stood under.</summary>
        public string Section { get; } = section;

        private Fields? _fields = fields;

        /// <summary>The deepest layer that describes it so far.</summary>
        public int Layer { get; private set; } = layer;

        /// <summary>Where the deepest layer defines it: the entity as such is that layer's word, what others add is theirs.</summary>
        public Origin Origin { get; private set; } = entry.Key.Origin;

        /// <summary>False where a text or list stands in the place of its keys; nothing can be made of it then.</summary>
        public bool IsMap => _fields is not null;

        public Fields Fields => _fields ?? throw new InvalidOperationException($"{Id} has no keys");

        /// <summary>Its statements that name no source.</summary>
        public UnsourcedCount Unsourced { get; } = new(fields?.Label ?? id);

        public T? Value { get; set; }

        /// <summary>Adds what a deeper layer says under keys that are not there yet.</summary>
        public void LayOver(MappingEntry deeper, int layer, Action<Scalar, Scalar> hidden)
        {
            (Layer, Origin) = (layer, deeper.Key.Origin);
            if (_fields is not null && deeper.Value is Mapping below)
                _fields = new Fields(_fields.Node.Over(below, hidden), _fields.Label, _fields.Faults);
        }
    }
}
