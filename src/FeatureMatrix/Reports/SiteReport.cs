using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>A name and a value, both for people.</summary>
public sealed record NamedText(string Name, string Text);

/// <summary>An edition as the site shows it: the one record that templates get.</summary>
public sealed class SiteReport
{
    private SiteReport(EditionReport edition)
    {
        var decisions = edition.Decisions;
        var catalog = decisions.Catalog;
        Decisions = decisions;
        Name = catalog.Name;
        Note = catalog.Note;
        LibraryName = decisions.Library?.Name ?? "";
        LibraryNote = decisions.Library?.Notes ?? "";
        Date = edition.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
        Policy = PolicyWording.Lines(decisions.Policy).Select(line => new NamedText(Names.Sentence(line.Name), line.Value)).ToList();
        PolicyText = PolicyWording.Text(decisions.Policy);
        Coverage = edition.ByCard;
        Matrix = MatrixReport.Of(catalog, Coverage, null);
        Systems = SystemReport.All(decisions);
        Cards = edition.Cards.Zip(edition.Memory, (card, memory) => CardPage.Of(decisions, card, memory)).ToList();
        Titles = decisions.Titles.Select(title => TitleReport.Of(decisions, title)).ToList();
        Wrappers = catalog.Wrappers.Select(wrapper => WrapperPage.Of(edition.Wrappers, wrapper)).ToList();
        Drivers = catalog.Branches.Select(branch => DriverReport.Of(catalog, branch)).ToList();
        Rigs = catalog.Rigs.Select(rig => RigReport.Of(decisions, rig)).ToList();
        Supply = edition.Supply;
        Features = Supply.Rows.Select(row => FeatureReport.Of(decisions, row.Feature, row.Cells)).ToList();
        WrapperNeeds = edition.Wrappers;
        Sources = edition.Sources;
        Bench = edition.Bench;
        var weighing = new Weighing(decisions);
        Compare = CompareIndex.Of(weighing);
        Plan = PlanReport.Of(weighing).ToReport();
        History = edition.History;
        Editions = History.ToReport();
        Overview = OverviewReport.Of(this);
    }

    /// <summary>The verdicts behind it.</summary>
    internal Decisions Decisions { get; }

    /// <summary>The collection's name.</summary>
    public string Name { get; }

    /// <summary>What its owner says of it, Markdown.</summary>
    public string Note { get; }

    /// <summary>The library's name; empty where the whole collection is shown on default terms.</summary>
    public string LibraryName { get; }

    /// <summary>Remarks on the library, Markdown.</summary>
    public string LibraryNote { get; }

    /// <summary>The date it was given, as year-month-day; empty for none.</summary>
    public string Date { get; }

    /// <summary>The policy, line by line.</summary>
    public IReadOnlyList<NamedText> Policy { get; }

    /// <summary>The policy in one paragraph.</summary>
    public string PolicyText { get; }

    /// <summary>Findings, bars and open questions.</summary>
    public OverviewReport Overview { get; }

    /// <summary>Titles against cards, for every format.</summary>
    public CoverageReport Coverage { get; }

    /// <summary>Titles against cards, as drawn.</summary>
    public MatrixReport Matrix { get; }

    /// <summary>Titles against setups, one matrix for each operating system that has any.</summary>
    public IReadOnlyList<SystemReport> Systems { get; }

    /// <summary>The cards.</summary>
    public IReadOnlyList<CardPage> Cards { get; }

    /// <summary>The titles.</summary>
    public IReadOnlyList<TitleReport> Titles { get; }

    /// <summary>The features that some title needs or some fact mentions, by family.</summary>
    public IReadOnlyList<FeatureReport> Features { get; }

    /// <summary>The wrappers.</summary>
    public IReadOnlyList<WrapperPage> Wrappers { get; }

    /// <summary>The driver branches.</summary>
    public IReadOnlyList<DriverReport> Drivers { get; }

    /// <summary>The rigs.</summary>
    public IReadOnlyList<RigReport> Rigs { get; }

    /// <summary>Features against cards.</summary>
    public SupplyReport Supply { get; }

    /// <summary>Which titles need a wrapper.</summary>
    public WrapperReport WrapperNeeds { get; }

    /// <summary>What was measured.</summary>
    public BenchReport Bench { get; }

    /// <summary>Every two cards, weighed.</summary>
    public CompareIndex Compare { get; }

    /// <summary>The fewest cards and installs for the library's must-haves.</summary>
    public DecisionReport Plan { get; }

    /// <summary>The editions so far, and what changed between them.</summary>
    public DecisionReport Editions { get; }

    /// <summary>True where at least one edition has a name and a date, so that there is a feed.</summary>
    public bool HasFeed => History.Editions.Count > 0;

    /// <summary>The editions behind it.</summary>
    internal EditionHistory History { get; }

    /// <summary>Who says what the collection says.</summary>
    public SourcesReport Sources { get; }

    /// <summary>What each tone means.</summary>
    public IReadOnlyList<LegendEntry> Tones { get; } = Enum.GetValues<CellTone>()
        .Select(tone => new LegendEntry(Tile.Kebab(tone), Names.Sentence(CellWording.Of(tone)), Names.Sentence(CellWording.Meaning(tone)))).ToList();

    /// <summary>What each grade of evidence means.</summary>
    public IReadOnlyList<LegendEntry> Evidences { get; } = Enum.GetValues<CellEvidence>()
        .Select(evidence => new LegendEntry(Tile.Kebab(evidence), Names.Sentence(CellWording.Of(evidence)), Names.Sentence(CellWording.Meaning(evidence)))).ToList();

    /// <summary>The site's record of an edition.</summary>
    public static SiteReport Of(EditionReport edition) => new(edition);

    /// <summary>Why a title does what it does on a card, and on each of the card's setups.</summary>
    public CellReport Explain(string titleId, string cardId) => CellReport.Of(
        Decisions, Decisions.Catalog.Titles.Single(title => title.Id == titleId), Decisions.Catalog.Cards.Single(card => card.Id == cardId));
}

/// <summary>A line of the legend.</summary>
/// <param name="Id">The tone or evidence, kebab-case.</param>
/// <param name="Name">Its word.</param>
/// <param name="Meaning">What it means.</param>
public sealed record LegendEntry(string Id, string Name, string Meaning);

/// <summary>The setups of one operating system.</summary>
public sealed record SystemReport(string Id, string Name, MatrixReport Matrix)
{
    /// <summary>One report for each operating system that has a recorded and permitted setup.</summary>
    public static IReadOnlyList<SystemReport> All(Decisions decisions) => decisions.Catalog.Oses
        .Where(os => decisions.Catalog.Cards.Any(card => decisions.RecordedSetups(card).Any(setup => setup.Os == os)))
        .Select(os => new SystemReport(os.Id, os.Name, MatrixReport.Of(decisions.Catalog, CoverageReport.BySetup(decisions, os), os))).ToList();
}
