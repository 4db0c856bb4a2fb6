using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>What was stated about one renderer, before engine and title are put together.</summary>
internal sealed record RendererParts(Origin Origin)
{
    public string Name { get; init; } = "";

    public Capability? Api { get; init; }

    /// <summary>True where <c>api</c> was written, even if it leads nowhere.</summary>
    public bool StatesApi { get; init; }

    public Capability? Runtime { get; init; }

    public bool? IsSoftware { get; init; }

    public IReadOnlyList<Os>? Oses { get; init; }

    public IReadOnlyList<Need> Needs { get; init; } = [];

    /// <summary>Features that are not needed although the engine needs them.</summary>
    public IReadOnlyList<Feature> NotNeeded { get; init; } = [];

    public IReadOnlyList<Defect> Defects { get; init; } = [];

    public MemoryParts Memory { get; init; } = MemoryParts.Nothing;

    /// <summary>
    /// A title's statements over its engine's: a need replaces the engine's about the same features, defects add up,
    /// everything else replaces key by key.
    /// </summary>
    public RendererParts Over(RendererParts engine)
    {
        var own = Needs.Select(Features).ToList();
        var kept = engine.Needs.Where(need =>
            !own.Exists(features => features.SetEquals(Features(need))) && !Features(need).Overlaps(NotNeeded));
        return this with
        {
            Name = Name.Length > 0 ? Name : engine.Name,
            Api = StatesApi ? Api : engine.Api,
            StatesApi = StatesApi || engine.StatesApi,
            Runtime = Runtime ?? (StatesApi ? null : engine.Runtime),
            IsSoftware = IsSoftware ?? engine.IsSoftware,
            Oses = Oses ?? engine.Oses,
            Needs = [.. Needs, .. kept],
            Defects = [.. Defects, .. engine.Defects],
            Memory = Memory.Over(engine.Memory),
        };
    }

    private static HashSet<Feature> Features(Need need) => need.Choices.Select(choice => choice.Feature).ToHashSet();
}

/// <summary>An engine's profile: renderers that titles build on.</summary>
internal sealed record Engine(string Name, IReadOnlyDictionary<string, RendererParts> Renderers);
