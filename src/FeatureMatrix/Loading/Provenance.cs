using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>
/// What statements inherit: an entity gives grade and source once, and everything inside it that gives none has them.
/// Naming a source starts anew: the grade is then the statement's own, else the source's, else <em>documented</em>.
/// </summary>
internal sealed class Provenance
{
    private readonly Draft _draft;
    private readonly UnsourcedCount _unsourced;
    private readonly Grade? _grade;
    private readonly Source? _source;

    private Provenance(Draft draft, UnsourcedCount unsourced, Grade? grade, Source? source)
    {
        _draft = draft;
        _unsourced = unsourced;
        _grade = grade;
        _source = source;
    }

    /// <summary>For an entity, from its own <c>grade</c> and <c>source</c>.</summary>
    public static Provenance Of<T>(Shelf<T>.Item item, Draft draft)
        where T : class => new Provenance(draft, item.Unsourced, null, null).Within(item.Fields);

    /// <summary>For an entry of a list, such as an observation.</summary>
    public static Provenance Of(Fields fields, UnsourcedCount unsourced, Draft draft) =>
        new Provenance(draft, unsourced, null, null).Within(fields);

    /// <summary>The same, for what stands in a map with a <c>grade</c> or <c>source</c> of its own.</summary>
    public Provenance Within(Fields fields)
    {
        var grade = fields.Choice("grade", Words.Grades);
        if (fields.Take("source") is { } node && _draft.Sources.Read(node) is var (source, sourceGrade))
            return new Provenance(_draft, _unsourced, grade ?? sourceGrade, source);
        return grade is null ? this : new Provenance(_draft, _unsourced, grade, _source);
    }

    /// <summary>The evidence of one statement. Without a source it is inferred at best.</summary>
    public Evidence At(Origin origin)
    {
        if (_source is not null)
            return new Evidence(_grade ?? Grade.Documented, _source, origin);
        _unsourced.Add(origin);
        return new Evidence(_grade ?? Grade.Inferred, null, origin).AtMost(Grade.Inferred);
    }

    /// <summary>The evidence of something seen, which is measured unless it says otherwise, by whoever saw it.</summary>
    public Evidence Seen(string by, Origin origin)
    {
        var source = _source ?? (by.Length > 0 ? new Source("", by) : null);
        if (source is null)
            _draft.Faults.Add(FaultTexts.Unwitnessed(origin));
        return new Evidence(_grade ?? Grade.Measured, source, origin);
    }
}

/// <summary>The statements of one entity that name no source; reported once, where the first of them stands.</summary>
internal sealed class UnsourcedCount(string label)
{
    private readonly HashSet<Origin> _places = [];

    public void Add(Origin origin) => _places.Add(origin);

    public void Report(FaultList faults)
    {
        if (_places.Count > 0)
            faults.Add(FaultTexts.Unsourced(_places.OrderBy(o => o.Line).ThenBy(o => o.Column).First(), label, _places.Count));
    }
}
