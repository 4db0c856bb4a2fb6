using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Demo;

/// <summary>The demo collection, loaded and resolved once for the tests of its story.</summary>
public sealed class LodenSluice
{
    private readonly Dictionary<string, Decisions> _decisions;

    /// <summary>Loads the demo; where it has a fault, no test of its story can say anything.</summary>
    public LodenSluice()
    {
        var texts = CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary"));
        var result = CollectionLoader.Load(texts.Files, texts.Faults);
        Catalog = result.Catalog ?? throw new InvalidOperationException(string.Join('\n', result.Faults));
        _decisions = Catalog.Libraries.ToDictionary(library => library.Id, library => new Decisions(Catalog, library));
        _decisions[""] = new Decisions(Catalog, null);
    }

    /// <summary>The collection.</summary>
    public Catalog Catalog { get; }

    /// <summary>The decisions on the default terms and on each library's.</summary>
    internal IReadOnlyCollection<Decisions> AllDecisions => _decisions.Values;

    /// <summary>A card by its id.</summary>
    public Card Card(string id) => Catalog.Cards.Single(card => card.Id == id);

    /// <summary>A title by its id.</summary>
    public Title Title(string id) => Catalog.Titles.Single(title => title.Id == id);

    /// <summary>The verdict about a title on a card; the empty library stands for the default terms.</summary>
    public Verdict Verdict(string library, string title, string card) => _decisions[library].On(Title(title), Card(card));

    /// <summary>The cell of that verdict.</summary>
    internal Cell Cell(string library, string title, string card) => FeatureMatrix.Reports.Cell.Of(Verdict(library, title, card), Card(card), null);

    /// <summary>Every cell on any terms: all titles on all cards.</summary>
    internal IEnumerable<Cell> AllCells() => AllDecisions.SelectMany(decisions => decisions.Titles.SelectMany(title =>
        Catalog.Cards.Select(card => FeatureMatrix.Reports.Cell.Of(decisions.On(title, card), card, null))));
}
