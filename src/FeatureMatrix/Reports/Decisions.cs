using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>
/// The verdicts that reports draw on, each worked out once. Judged on the terms of one library, or on the default terms
/// where there is none; titles outside the library are judged on its policy too.
/// </summary>
public sealed class Decisions
{
    private readonly Dictionary<(Title, Card), Verdict> _byCard = [];
    private readonly Dictionary<(Title, Setup), Verdict> _bySetup = [];
    private readonly Dictionary<Title, Terms> _terms = [];

    /// <summary>Prepares to decide about a collection on a library's terms; null for the default terms.</summary>
    public Decisions(Catalog catalog, Library? library)
    {
        Catalog = catalog;
        Library = library;
        Resolver = new Resolver(catalog);
        Log = BenchSeries.Of(catalog.Runs);
        Speeds = new RouteSpeeds(Log, Policy);
    }

    /// <summary>The collection.</summary>
    public Catalog Catalog { get; }

    /// <summary>The library whose terms apply; null for the default terms.</summary>
    public Library? Library { get; }

    /// <summary>The resolver.</summary>
    public Resolver Resolver { get; }

    /// <summary>The bench log, sorted into series.</summary>
    public IReadOnlyList<BenchSeries> Log { get; }

    /// <summary>How fast routes were measured, against the policy's floor.</summary>
    public RouteSpeeds Speeds { get; }

    /// <summary>The policy that applies.</summary>
    public Policy Policy => Library?.Policy ?? Policy.Default;

    /// <summary>The titles of the library, or of the whole collection where there is none, by name.</summary>
    public IReadOnlyList<Title> Titles => (Library is { } library ? library.Entries.Select(entry => entry.Title) : Catalog.Titles)
        .OrderBy(title => title.Name, StringComparer.Ordinal).ToList();

    /// <summary>What a title weighs: its weight in the library, or 1.</summary>
    public double WeightOf(Title title) => Library?.Entries.FirstOrDefault(entry => entry.Title == title)?.Weight ?? 1;

    /// <summary>The terms a title is judged on.</summary>
    public Terms TermsFor(Title title)
    {
        if (!_terms.TryGetValue(title, out var terms))
        {
            var entry = Library?.Entries.FirstOrDefault(entry => entry.Title == title);
            terms = entry is null ? Terms.Default with { Policy = Policy } : Terms.Of(Library!, entry);
            _terms[title] = terms = terms with { IsMeasuredUnderFloor = route => Speeds.Of(route).Speed is Speed.Under };
        }

        return terms;
    }

    /// <summary>The verdict about a title on a card, over all its setups.</summary>
    public Verdict On(Title title, Card card)
    {
        if (!_byCard.TryGetValue((title, card), out var verdict))
            _byCard[(title, card)] = verdict = Resolver.Resolve(title, card, TermsFor(title));
        return verdict;
    }

    /// <summary>The verdict about a title on one setup.</summary>
    public Verdict On(Title title, Setup setup)
    {
        if (!_bySetup.TryGetValue((title, setup), out var verdict))
            _bySetup[(title, setup)] = verdict = Resolver.Resolve(title, setup, TermsFor(title));
        return verdict;
    }

    /// <summary>The setups of a card that the policy allows, without drivers that nobody recorded.</summary>
    public IReadOnlyList<Setup> RecordedSetups(Card card) => Resolver.SetupsOf(card)
        .Where(setup => setup.Install != Install.Unrecorded && Policy.Allows(setup.Os) && (Policy.AllowForced || setup.Install != Install.Forced)).ToList();
}
