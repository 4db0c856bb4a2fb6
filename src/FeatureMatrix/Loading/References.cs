using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>
/// Finds what a text names, where the text is more than one id: <c>mt-units 2</c>, <c>nl-9x 2.10</c>, <c>duskglass@1.4</c>.
/// Each returns null where there is no such thing, and the reason is a fault.
/// </summary>
internal sealed class References(Draft draft)
{
    private FaultList Faults => draft.Faults;

    /// <summary>A feature or an API.</summary>
    public Feature? Feature(Scalar word) => draft.Features.Find(word, Faults);

    /// <summary>An API.</summary>
    public Feature? Api(Scalar word) => Api(word, word.Text.Trim());

    /// <summary>An API at a level: <c>direct3d 7</c>, or <c>vga</c> for one without levels.</summary>
    public Capability? ApiLevel(Scalar word)
    {
        var (id, level) = Split(word.Text);
        return Api(word, id) is { } api ? At(word, api, level) : null;
    }

    /// <summary>A flag, or a feature at a level: <c>fog-table</c>, <c>mt-units 2</c>.</summary>
    public Capability? Capability(Scalar word)
    {
        var (id, level) = Split(word.Text);
        return draft.Features.Find(Part(word, id), Faults) is { } feature ? At(word, feature, level) : null;
    }

    /// <summary>The level of a ladder that a text names; the ladder's unit may follow it.</summary>
    public Capability? Level(Scalar word, Feature feature, string level)
    {
        if (feature.Unit.Length > 0 && level.EndsWith(feature.Unit, StringComparison.Ordinal))
            level = level[..^feature.Unit.Length].TrimEnd();
        if (feature.At(level) is { } capability)
            return capability;
        Faults.Add(FaultTexts.NoSuchLevel(word.Origin, feature, level));
        return null;
    }

    /// <summary>Several ids of one kind, in the order given and each once.</summary>
    public IReadOnlyList<T> All<T>(Shelf<T> shelf, IEnumerable<Scalar> words)
        where T : class => [.. words.Select(word => shelf.Find(word, Faults)).OfType<T>().Distinct()];

    /// <summary>One driver version: <c>nl-9x 2.10</c> or <c>nl-9x@2.10</c>.</summary>
    public Driver? Driver(Scalar word)
    {
        var (id, version) = Split(word.Text);
        if (Branch(word, id) is not { } branch)
            return null;
        if (version is null && branch.Versions.Count == 1)
            return branch.Versions[0];
        if (version is not null)
            return Version(word, branch, version);
        Faults.AddDangling(FaultTexts.VersionMissing(word.Origin, $"driver '{branch.Id}'", branch.Versions.Select(d => d.Version)));
        return null;
    }

    /// <summary>A branch, one version of it, or a part of it: <c>driver</c>, <c>from</c> and <c>to</c>. Null where none is stated.</summary>
    public DriverRange? Range(Fields fields, DriverBranch? inside)
    {
        var (from, to) = (fields.Word("from"), fields.Word("to"));
        if (inside is not null)
            return Range(inside, from, to);
        if (fields.Word("driver") is not { } word)
        {
            if ((from ?? to) is { } alone)
                Faults.Add(FaultTexts.RangeWithoutDriver(alone.Origin));
            return null;
        }

        var (id, version) = Split(word.Text);
        if (Branch(word, id) is not { } branch)
            return null;
        if (version is null)
            return Range(branch, from, to);
        if ((from ?? to) is { } extra)
            Faults.Add(FaultTexts.RangeOfOneVersion(extra.Origin));
        return Version(word, branch, version) is { } driver ? DriverRange.Only(driver) : null;
    }

    /// <summary>One wrapper version: <c>duskglass@1.4</c> or <c>duskglass 1.4</c>.</summary>
    public WrapperVersion? WrapperVersion(Scalar word)
    {
        var (id, version) = Split(word.Text);
        if (draft.Wrappers.Find(Part(word, id), Faults) is not { } wrapper)
            return null;
        if (version is null && wrapper.Versions.Count == 1)
            return wrapper.Versions[0];
        if (wrapper.Versions.FirstOrDefault(v => v.Version == version) is { } found)
            return found;
        var versions = wrapper.Versions.Select(v => v.Version);
        Faults.AddDangling(version is null
            ? FaultTexts.VersionMissing(word.Origin, $"wrapper '{wrapper.Id}'", versions)
            : FaultTexts.Unknown(word.Origin, $"version of wrapper {wrapper.Id}", version, versions));
        return null;
    }

    /// <summary>One of a title's renderers.</summary>
    public Renderer? Renderer(Scalar word, Title title)
    {
        var id = word.Text.Trim();
        if (title.Renderers.FirstOrDefault(r => r.Id == id) is { } renderer)
            return renderer;
        Faults.AddDangling(FaultTexts.Unknown(word.Origin, $"renderer of title '{title.Id}'", id, title.Renderers.Select(r => r.Id)));
        return null;
    }

    private static Scalar Part(Scalar word, string text) => new(word.Origin, text, isPlain: false);

    /// <summary>An id, and what follows it after a blank or an at sign.</summary>
    private static (string Id, string? After) Split(string text)
    {
        var trimmed = text.Trim();
        var at = trimmed.AsSpan().IndexOfAny(' ', '@');
        return at < 0 ? (trimmed, null) : (trimmed[..at], trimmed[(at + 1)..].Trim());
    }

    private Feature? Api(Scalar word, string id)
    {
        if (draft.Features.Find(id) is { IsApi: true } api)
            return api;
        var apis = draft.Features.All.Where(f => f.IsApi).Select(f => f.Id).ToList();
        var apart = apis.Where(one => id.Length > one.Length && id.StartsWith(one, StringComparison.Ordinal) && char.IsAsciiDigit(id[one.Length])).Select(one => $"{one} {id[one.Length..]}").ToList();
        Faults.AddDangling(FaultTexts.Unknown(word.Origin, "API", id, apart.Count > 0 ? apart : apis));
        return null;
    }

    private Capability? At(Scalar word, Feature feature, string? level)
    {
        if (feature.HasLevels && level is not null)
            return Level(word, feature, level);
        if (!feature.HasLevels && level is null)
            return feature.At(1);
        Faults.Add(level is null ? FaultTexts.LevelMissing(word.Origin, feature) : FaultTexts.FlagHasNoLevel(word.Origin, feature, level));
        return null;
    }

    private DriverBranch? Branch(Scalar word, string id) =>
        draft.BiosBranches.Find(branch => branch.Id == id) ?? draft.Branches.Find(Part(word, id), Faults);

    private Driver? Version(Scalar word, DriverBranch branch, string version)
    {
        if (branch.Versions.FirstOrDefault(driver => driver.Version == version) is { } found)
            return found;
        Faults.AddDangling(FaultTexts.Unknown(
            word.Origin, $"version of driver {branch.Id}", version, branch.Versions.Select(driver => driver.Version)));
        return null;
    }

    private DriverRange? Range(DriverBranch branch, Scalar? from, Scalar? to)
    {
        var first = from is null ? 0 : Version(from, branch, from.Text.Trim())?.Order;
        var last = to is null ? branch.Versions.Count - 1 : Version(to, branch, to.Text.Trim())?.Order;
        if (first is not { } f || last is not { } l || l < 0)
            return null;
        if (f <= l)
            return new DriverRange(branch, f, l);
        Faults.Add(FaultTexts.RangeBackwards(to!.Origin, branch));
        return null;
    }
}
