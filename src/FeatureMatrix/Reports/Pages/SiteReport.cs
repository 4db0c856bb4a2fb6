using System.Collections.Concurrent;
using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>A name and a value, both for people.</summary>
public sealed record NamedText(string Name, string Text);

/// <summary>
/// An edition as the site shows it: the one record that templates get. Each part is made when a page asks for it, and once, so that a
/// single page costs no more than what it shows.
/// </summary>
public sealed class SiteReport
{
    private readonly ConcurrentDictionary<Title, TitleReport> _titles = [];
    private readonly ConcurrentDictionary<Card, CardPage> _cards = [];
    private readonly EditionReport _edition;
    private readonly Lazy<MatrixReport> _matrix;
    private readonly Lazy<IReadOnlyList<SystemReport>> _systems;
    private readonly Lazy<IReadOnlyList<WrapperPage>> _wrappers;
    private readonly Lazy<IReadOnlyList<DriverReport>> _drivers;
    private readonly Lazy<IReadOnlyList<RigReport>> _rigs;
    private readonly Lazy<IReadOnlyList<FeatureReport>> _features;
    private readonly Lazy<CompareIndex> _compare;
    private readonly Lazy<DecisionReport> _plan;
    private readonly Lazy<DecisionReport> _editions;
    private readonly Lazy<OverviewReport> _overview;
    private readonly Lazy<CaptureReport> _captures;

    private SiteReport(EditionReport edition)
    {
        _edition = edition;
        var decisions = edition.Decisions;
        var catalog = decisions.Catalog;
        Name = catalog.Name;
        Note = catalog.Note;
        LibraryName = decisions.Library?.Name ?? "";
        LibraryNote = decisions.Library?.Notes ?? "";
        Date = edition.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
        Policy = PolicyWording.Lines(decisions.Policy).Select(line => new NamedText(Names.Sentence(line.Name), line.Value)).ToList();
        PolicyText = PolicyWording.Text(decisions.Policy);
        _matrix = new(() => MatrixReport.Of(catalog, Coverage, null));
        _systems = new(() => SystemReport.All(decisions));
        _wrappers = new(() => catalog.Wrappers.Select(wrapper => WrapperPage.Of(edition.Wrappers, wrapper)).ToList());
        _drivers = new(() => catalog.Branches.Select(branch => DriverReport.Of(catalog, branch)).ToList());
        _rigs = new(() => catalog.Rigs.Select(rig => RigReport.Of(decisions, rig)).ToList());
        _features = new(() => Supply.Rows.Select(row => FeatureReport.Of(decisions, row.Feature, row.Cells)).ToList());
        _compare = new(() => CompareIndex.Of(edition.Weighing, edition.Ranking));
        _plan = new(() => edition.Plan.ToReport());
        _editions = new(History.ToReport);
        _overview = new(() => OverviewReport.Of(this));
        _captures = new(() => CaptureReport.Of(decisions));
    }

    /// <summary>The verdicts behind it.</summary>
    internal Decisions Decisions => _edition.Decisions;

    /// <summary>The collection's name.</summary>
    public string Name { get; }

    /// <summary>What its owner says of it, Markdown.</summary>
    public string Note { get; }

    /// <summary>The library's name; empty where the whole collection is shown on default terms.</summary>
    public string LibraryName { get; }

    /// <summary>Whose terms the pages are on, and how to have them on those of the collection's other libraries; empty where it has none.</summary>
    public string LibrariesText
    {
        get
        {
            var others = Decisions.Catalog.Libraries.Where(library => library != Decisions.Library).ToList();
            if (others.Count == 0)
                return "";
            var own = Decisions.Library is { } library ? $"those of {Names.InMiddle(library.Name)}" : "the default ones";
            var more = (Decisions.Library is null, others.Count) switch
            {
                (true, 1) => "a library with its own",
                (true, _) => "libraries with their own",
                (false, 1) => "another library with its own",
                (false, _) => "other libraries with their own",
            };
            return $"The terms of all pages, decisions included, are {own}. The collection has {more}: "
                + $"{Names.List(others.Select(other => $"{Names.InMiddle(other.Name)} (publish --library {other.Id} --out FOLDER)").ToList())}.";
        }
    }

    /// <summary>Remarks on the library, Markdown.</summary>
    public string LibraryNote { get; }

    /// <summary>The date it was given, as year-month-day; empty for none.</summary>
    public string Date { get; }

    /// <summary>The policy, line by line.</summary>
    public IReadOnlyList<NamedText> Policy { get; }

    /// <summary>The policy in one paragraph.</summary>
    public string PolicyText { get; }

    /// <summary>Findings, bars and open questions.</summary>
    public OverviewReport Overview => _overview.Value;

    /// <summary>Titles against cards, for every format.</summary>
    public CoverageReport Coverage => _edition.ByCard;

    /// <summary>Titles against cards, as drawn.</summary>
    public MatrixReport Matrix => _matrix.Value;

    /// <summary>Titles against setups, one matrix for each operating system that has any.</summary>
    public IReadOnlyList<SystemReport> Systems => _systems.Value;

    /// <summary>The cards.</summary>
    public IReadOnlyList<CardPage> Cards => Decisions.Catalog.Cards.Select(PageOf).ToList();

    /// <summary>The titles.</summary>
    public IReadOnlyList<TitleReport> Titles => Decisions.Titles.Select(ReportOf).ToList();

    /// <summary>The features that some title needs or some fact mentions, by family.</summary>
    public IReadOnlyList<FeatureReport> Features => _features.Value;

    /// <summary>The ids of these features.</summary>
    internal IEnumerable<string> FeatureIds => SupplyReport.UsedIn(Decisions).Select(feature => feature.Id);

    /// <summary>The wrappers.</summary>
    public IReadOnlyList<WrapperPage> Wrappers => _wrappers.Value;

    /// <summary>The driver branches.</summary>
    public IReadOnlyList<DriverReport> Drivers => _drivers.Value;

    /// <summary>The rigs.</summary>
    public IReadOnlyList<RigReport> Rigs => _rigs.Value;

    /// <summary>Features against cards.</summary>
    public SupplyReport Supply => _edition.Supply;

    /// <summary>Which titles need a wrapper.</summary>
    public WrapperReport WrapperNeeds => _edition.Wrappers;

    /// <summary>The collection's own pictures.</summary>
    public CaptureReport Captures => _captures.Value;

    /// <summary>What was measured.</summary>
    public BenchReport Bench => _edition.Bench;

    /// <summary>Every two cards, weighed.</summary>
    public CompareIndex Compare => _compare.Value;

    /// <summary>The fewest cards and installs for the library's must-haves.</summary>
    public DecisionReport Plan => _plan.Value;

    /// <summary>The editions so far, and what changed between them.</summary>
    public DecisionReport Editions => _editions.Value;

    /// <summary>True where at least one edition has a name and a date, so that there is a feed.</summary>
    public bool HasFeed => History.Editions.Count > 0;

    /// <summary>The editions behind it.</summary>
    internal EditionHistory History => _edition.History;

    /// <summary>Who says what the collection says.</summary>
    public SourcesReport Sources => _edition.Sources;

    /// <summary>What each tone means.</summary>
    public IReadOnlyList<LegendEntry> Tones { get; } = Enum.GetValues<CellTone>()
        .Select(tone => new LegendEntry(Tile.Kebab(tone), Names.Sentence(CellWording.Of(tone)), Names.Sentence(CellWording.Meaning(tone)))).ToList();

    /// <summary>What each grade of evidence means.</summary>
    public IReadOnlyList<LegendEntry> Evidences { get; } = Enum.GetValues<CellEvidence>()
        .Select(evidence => new LegendEntry(Tile.Kebab(evidence), Names.Sentence(CellWording.Of(evidence)), Names.Sentence(CellWording.Meaning(evidence)))).ToList();

    /// <summary>The site's record of an edition.</summary>
    public static SiteReport Of(EditionReport edition) => new(edition);

    /// <summary>The page of one title.</summary>
    internal TitleReport ReportOf(Title title) => _titles.GetOrAdd(title, one => TitleReport.Of(Decisions, one));

    /// <summary>What one card would add to those owned.</summary>
    internal WorthPage WorthOf(Card card) => WorthPage.Of(_edition.ValueOf(card), card);

    /// <summary>Which driver serves the library best on a card.</summary>
    internal DecisionReport InstallsOf(Card card) => _edition.InstallsOf(card).ToReport();

    /// <summary>The page of one card.</summary>
    internal CardPage PageOf(Card card) => _cards.GetOrAdd(card, one => CardPage.Of(Decisions, _edition.CardOf(one), _edition.MemoryOf(one)));
}

/// <summary>A line of the legend.</summary>
/// <param name="Id">The tone or evidence, kebab-case.</param>
/// <param name="Name">Its word.</param>
/// <param name="Meaning">What it means.</param>
public sealed record LegendEntry(string Id, string Name, string Meaning);

/// <summary>The setups of one operating system.</summary>
public sealed class SystemReport
{
    private readonly Lazy<MatrixReport> _matrix;

    private SystemReport(Decisions decisions, Os os)
    {
        (Id, Name) = (os.Id, os.Name);
        _matrix = new(() => MatrixReport.Of(decisions.Catalog, CoverageReport.BySetup(decisions, os), os));
    }

    /// <summary>The system.</summary>
    public string Id { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Titles against its setups.</summary>
    public MatrixReport Matrix => _matrix.Value;

    /// <summary>One report for each operating system that has a recorded and permitted setup.</summary>
    public static IReadOnlyList<SystemReport> All(Decisions decisions) => decisions.Catalog.Oses
        .Where(os => decisions.Catalog.Cards.Any(card => decisions.RecordedSetups(card).Any(setup => setup.Os == os)))
        .Select(os => new SystemReport(decisions, os)).ToList();
}
