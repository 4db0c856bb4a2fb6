using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>
/// What statements inherit: an entity gives grade and source once, and everything inside it that gives none has them.
/// Naming a source starts anew: the grade is then the statement's own, else the source's, else <em>documented</em>. Where an entity is laid
/// together from several collections, each statement inherits from what its own collection says, never from another's.
/// </summary>
internal sealed class Provenance
{
    private readonly Draft _draft;
    private readonly UnsourcedCount _unsourced;
    private readonly Dictionary<int, Said> _byLayer;

    private Provenance(Draft draft, UnsourcedCount unsourced, Dictionary<int, Said> byLayer)
    {
        _draft = draft;
        _unsourced = unsourced;
        _byLayer = byLayer;
    }

    /// <summary>For an entity, from its own <c>grade</c> and <c>source</c>.</summary>
    public static Provenance Of<T>(Shelf<T>.Item item, Draft draft)
        where T : class => new Provenance(draft, item.Unsourced, new Dictionary<int, Said>()).Within(item.Fields);

    /// <summary>For an entry of a list, such as an observation.</summary>
    public static Provenance Of(Fields fields, UnsourcedCount unsourced, Draft draft) =>
        new Provenance(draft, unsourced, new Dictionary<int, Said>()).Within(fields);

    /// <summary>The same, for what stands in a map with a <c>grade</c> or <c>source</c> of its own.</summary>
    public Provenance Within(Fields fields)
    {
        fields.Expect("grade", "source");
        Dictionary<int, Said>? byLayer = null;
        IReadOnlyList<Fields> parts = fields.Node.Parts is { Count: > 0 } several
            ? [.. several.Select(part => new Fields(part, fields.Label, fields.Faults))]
            : [fields];
        foreach (var part in parts)
        {
            var layer = LayerOf(part.Origin);
            var inherited = _byLayer.GetValueOrDefault(layer);
            var grade = part.Choice("grade", Words.Grades);
            if (part.Take("source") is { } node && _draft.Sources.Read(node) is var (source, sourceGrade))
                (byLayer ??= new(_byLayer))[layer] = new Said(grade ?? sourceGrade, source);
            else if (grade is not null)
                (byLayer ??= new(_byLayer))[layer] = inherited with { Grade = grade };
        }

        return byLayer is null ? this : new Provenance(_draft, _unsourced, byLayer);
    }

    /// <summary>The evidence of one statement. Without a source it is inferred at best.</summary>
    public Evidence At(Origin origin)
    {
        var (grade, source) = _byLayer.GetValueOrDefault(LayerOf(origin));
        if (source is not null)
            return new Evidence(grade ?? Grade.Documented, source, origin);
        _unsourced.Add(origin);
        return new Evidence(grade ?? Grade.Inferred, null, origin).AtMost(Grade.Inferred);
    }

    /// <summary>The evidence of something seen, which is measured unless it says otherwise, by whoever saw it.</summary>
    public Evidence Seen(string by, Origin origin)
    {
        var (grade, named) = _byLayer.GetValueOrDefault(LayerOf(origin));
        var source = named ?? (by.Length > 0 ? new Source("", by) : null);
        if (source is null)
            _draft.Faults.Add(FaultTexts.Unwitnessed(origin, _unsourced.Label));
        return new Evidence(grade ?? Grade.Measured, source, origin);
    }

    private int LayerOf(Origin origin) => _draft.Layers.GetValueOrDefault(origin.File);

    /// <summary>What one collection says of its statements about an entity.</summary>
    private readonly record struct Said(Grade? Grade, Source? Source);
}

/// <summary>The statements of one entity that name no source; reported once, where the first of them stands.</summary>
internal sealed class UnsourcedCount(string label)
{
    private readonly HashSet<Origin> _places = [];

    /// <summary>What they are about, for messages.</summary>
    public string Label { get; } = label;

    public void Add(Origin origin) => _places.Add(origin);

    public void Report(FaultList faults)
    {
        if (_places.Count > 0)
            faults.Add(FaultTexts.Unsourced(_places.OrderBy(o => o.Line).ThenBy(o => o.Column).First(), Label, _places.Count));
    }
}
