using System.Collections.Concurrent;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Subjects;

namespace FeatureMatrix.Reports.Editions;

/// <summary>
/// Everything that is published together: what site and workbook are made from. Each report is made when somebody asks for it, and once.
/// </summary>
public sealed class EditionReport
{
    private readonly Lazy<CoverageReport> _byCard;
    private readonly Lazy<CoverageReport> _bySetup;
    private readonly ConcurrentDictionary<Card, CardReport> _cards = [];
    private readonly ConcurrentDictionary<Card, MemoryReport> _memory = [];
    private readonly Lazy<WrapperReport> _wrappers;
    private readonly Lazy<SupplyReport> _supply;
    private readonly Lazy<SourcesReport> _sources;
    private readonly Lazy<BenchReport> _bench;
    private readonly Lazy<Weighing> _weighing;
    private readonly Lazy<RankingReport> _ranking;
    private readonly Lazy<PlanReport> _plan;
    private readonly ConcurrentDictionary<Card, CardValueReport> _values = [];
    private readonly ConcurrentDictionary<Card, DriverChoiceReport> _installs = [];

    private EditionReport(Decisions decisions, DateOnly? date, EditionHistory history)
    {
        (Decisions, Date, History) = (decisions, date, history);
        _byCard = new(() => CoverageReport.ByCard(decisions));
        _bySetup = new(() => CoverageReport.BySetup(decisions));
        _wrappers = new(() => WrapperReport.Of(decisions));
        _supply = new(() => SupplyReport.Of(decisions));
        _sources = new(() => SourcesReport.Of(decisions.Catalog));
        _bench = new(() => BenchReport.Of(decisions));
        _weighing = new(() => new Weighing(decisions));
        _ranking = new(() => RankingReport.Of(Weighing));
        _plan = new(() => PlanReport.Of(Weighing));
    }

    /// <summary>The verdicts behind the reports.</summary>
    public Decisions Decisions { get; }

    /// <summary>The date the edition states; null where it states none.</summary>
    public DateOnly? Date { get; }

    /// <summary>Titles against cards.</summary>
    public CoverageReport ByCard => _byCard.Value;

    /// <summary>Titles against setups.</summary>
    public CoverageReport BySetup => _bySetup.Value;

    /// <summary>What each card loses, in the order of the cards.</summary>
    public IReadOnlyList<CardReport> Cards => [.. Catalog.Cards.Select(CardOf)];

    /// <summary>What each card's memory holds, in the order of the cards.</summary>
    public IReadOnlyList<MemoryReport> Memory => [.. Catalog.Cards.Select(MemoryOf)];

    /// <summary>What one card loses.</summary>
    public CardReport CardOf(Card card) => _cards.GetOrAdd(card, one => CardReport.Of(Decisions, one));

    /// <summary>What one card's memory holds.</summary>
    public MemoryReport MemoryOf(Card card) => _memory.GetOrAdd(card, one => MemoryReport.Of(Decisions, one));

    /// <summary>Which titles need a wrapper.</summary>
    public WrapperReport Wrappers => _wrappers.Value;

    /// <summary>Features against cards.</summary>
    public SupplyReport Supply => _supply.Value;

    /// <summary>Who says what the collection says.</summary>
    public SourcesReport Sources => _sources.Value;

    /// <summary>What was measured.</summary>
    public BenchReport Bench => _bench.Value;

    /// <summary>What the decisions draw on.</summary>
    public Weighing Weighing => _weighing.Value;

    /// <summary>All cards by what they are worth to the library.</summary>
    public RankingReport Ranking => _ranking.Value;

    /// <summary>The fewest cards and installs for the library's must-haves.</summary>
    public PlanReport Plan => _plan.Value;

    /// <summary>What one card would add to those owned.</summary>
    public CardValueReport ValueOf(Card card) => _values.GetOrAdd(card, one => CardValueReport.Of(Weighing, one));

    /// <summary>Which driver serves the library best on a card.</summary>
    public DriverChoiceReport InstallsOf(Card card) => _installs.GetOrAdd(card, one => DriverChoiceReport.Of(Weighing, one, null));

    /// <summary>The editions so far.</summary>
    public EditionHistory History { get; }

    /// <summary>The collection.</summary>
    public Catalog Catalog => Decisions.Catalog;

    /// <summary>The reports of an edition.</summary>
    public static EditionReport Of(Decisions decisions, DateOnly? date = null, EditionHistory? history = null) =>
        new(decisions, date, history ?? new EditionHistory([]));
}
