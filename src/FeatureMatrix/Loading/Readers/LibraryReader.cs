using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Libraries with their policies.</summary>
/// <param name="draft">What the collection holds so far.</param>
/// <param name="overlay">What a policy file changes about the policy of every library; null where there is none.</param>
internal sealed class LibraryReader(Draft draft, Func<Policy, Policy>? overlay)
{
    private readonly PolicyReader _policies = new(draft);

    private FaultList Faults => draft.Faults;

    public Library Build(Shelf<Library>.Item item)
    {
        var fields = item.Fields;
        if (!fields.Has("titles"))
            Faults.Add(FaultTexts.MissingKey(item.Origin, "titles", fields.Label));
        return new Library
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            Entries = [.. Entries(fields)],
            Policy = PolicyOf(fields),
            Notes = fields.Text("notes"),
        };
    }

    private Policy PolicyOf(Fields fields)
    {
        var own = _policies.Read(fields.Inner("policy"))(Policy.Default);
        return overlay is null ? own : overlay(own);
    }

    /// <summary>A map from titles to weights or long forms, or a plain list of titles that weigh alike.</summary>
    private IEnumerable<LibraryEntry> Entries(Fields fields)
    {
        if (fields.Take("titles") is Sequence)
        {
            foreach (var title in draft.References.All(draft.Titles, fields.List("titles")))
                yield return new LibraryEntry { Title = title };
            yield break;
        }

        foreach (var (key, value) in fields.Entries("titles"))
        {
            if (Entry(key, value) is { } entry)
                yield return entry;
        }
    }

    private LibraryEntry? Entry(Scalar key, Node value)
    {
        var title = draft.Titles.Find(key, Faults);
        var weighs = Quantities.Number(0, 1000);
        if (value is Scalar word)
        {
            var weight = value.IsNothing ? 1 : weighs(word, $"the weight of '{key.Text}'", Faults);
            return title is null ? null : new LibraryEntry { Title = title, Weight = weight ?? 1 };
        }

        if (Fields.Of(value, $"'{key.Text}'", Faults) is not { } fields)
            return null;
        var must = fields.YesNo("must") ?? false;
        var tolerance = fields.Choice("tolerance", Words.Tolerances);
        if (tolerance is not null && !must)
            Faults.Add(FaultTexts.CountsOnlyWith(fields.OriginOf("tolerance"), "tolerance", "must: yes"));
        var preset = fields.Text("preset");
        var weighed = fields.Value("weight", weighs) ?? 1;
        fields.Done();
        if (title is null)
            return null;
        var presets = title.Renderers.SelectMany(r => r.Memory.Presets).Select(p => p.Name).Distinct().ToList();
        if (preset.Length > 0 && !presets.Contains(preset))
            Faults.AddDangling(FaultTexts.Unknown(fields.OriginOf("preset"), $"preset of title '{title.Id}'", preset, presets));
        return new LibraryEntry
        {
            Title = title,
            Weight = weighed,
            MustHaveTolerance = must ? tolerance ?? Strength.Cosmetic : null,
            Preset = preset,
        };
    }
}
