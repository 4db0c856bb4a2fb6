using System.Collections.Concurrent;
using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>
/// The verdicts that reports draw on, each worked out once. Judged on the terms of one library, or on the default terms
/// where there is none; titles outside the library are judged on its policy too. May be asked from several threads at once.
/// </summary>
public sealed class Decisions
{
    private readonly ConcurrentDictionary<(Title Title, Card Card), Verdict> _byCard = [];
    private readonly ConcurrentDictionary<(Title Title, Setup Setup), Verdict> _bySetup = [];
    private readonly ConcurrentDictionary<(Title Title, Card Card), Cell> _cellsByCard = [];
    private readonly ConcurrentDictionary<(Title Title, Setup Setup), Cell> _cellsBySetup = [];
    private readonly ConcurrentDictionary<Title, Terms> _terms = [];

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
    public Terms TermsFor(Title title) => _terms.GetOrAdd(title, _ =>
    {
        var entry = Library?.Entries.FirstOrDefault(entry => entry.Title == title);
        var terms = entry is null ? Terms.Default with { Policy = Policy } : Terms.Of(Library!, entry);
        return terms with { IsMeasuredUnderFloor = route => Speeds.Of(route).Speed is Speed.Under };
    });

    /// <summary>The verdict about a title on a card, over all its setups.</summary>
    public Verdict On(Title title, Card card) => _byCard.GetOrAdd((title, card), of => Resolver.Resolve(of.Title, of.Card, TermsFor(of.Title)));

    /// <summary>The verdict about a title on one setup.</summary>
    public Verdict On(Title title, Setup setup) => _bySetup.GetOrAdd((title, setup), of => Resolver.Narrow(On(of.Title, of.Setup.Card), [of.Setup]));

    /// <summary>The cell of a title on a card, over all its setups.</summary>
    public Cell CellOn(Title title, Card card) => _cellsByCard.GetOrAdd((title, card), of => Cell.Of(On(of.Title, of.Card), of.Card, null, Speeds, this));

    /// <summary>The cell of a title on one setup.</summary>
    public Cell CellOn(Title title, Setup setup) => _cellsBySetup.GetOrAdd((title, setup), of => Cell.Of(On(of.Title, of.Setup), of.Setup.Card, of.Setup, Speeds));

    /// <summary>Works out the cells of all titles on all cards and recorded setups, on all processors, so that reports find them.</summary>
    public void DecideAll() => Parallel.ForEach(Titles, title =>
    {
        foreach (var card in Catalog.Cards)
        {
            CellOn(title, card);
            foreach (var setup in RecordedSetups(card))
                CellOn(title, setup);
        }
    });

    /// <summary>The setups of a card that the policy allows, without drivers that nobody recorded.</summary>
    public IReadOnlyList<Setup> RecordedSetups(Card card) => Resolver.SetupsOf(card)
        .Where(setup => setup.Install != Install.Unrecorded && Policy.Allows(setup.Os) && (Policy.AllowForced || setup.Install != Install.Forced)).ToList();
}
