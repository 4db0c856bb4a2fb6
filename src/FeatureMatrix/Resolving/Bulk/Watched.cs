using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>Which cells somebody watched: what was seen there counts before the rules (rule R15), so that the resolver decides them.</summary>
internal sealed class Watched(Catalog catalog)
{
    private readonly ILookup<Title, Observation> _byTitle = catalog.Observations.ToLookup(observation => observation.Renderer.Title);

    /// <summary>True where an observation may be about a title on a setup, whatever the wrapper, the mode and the depth.</summary>
    public bool Is(Title title, Setup setup) => _byTitle[title].Any(seen =>
        (seen.Card is null || seen.Card == setup.Card) && (seen.Driver is null || seen.Driver == setup.Driver) && (seen.Os is null || seen.Os == setup.Os));
}
