using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Measured;

/// <summary>
/// The bench log as it is read: series with their noise, ladders with what limits them, comparisons, headroom and the speed beside each verdict.
/// </summary>
public sealed record BenchReport
{
    private const string Interval = "Intervals cover the mean at 95 %. A prediction is marked as one and stays inside what was measured with the same card and scene.";

    /// <summary>Which collection and library.</summary>
    public required string Heading { get; init; }

    /// <summary>The series, mode by mode.</summary>
    public required IReadOnlyList<SeriesReport> Series { get; init; }

    /// <summary>The scenes that ran at two modes at least: the ladders.</summary>
    public required IReadOnlyList<SceneReport> Scenes { get; init; }

    /// <summary>Everything that differs in one thing alone.</summary>
    public required IReadOnlyList<AgainstReport> Comparisons { get; init; }

    /// <summary>The comparisons that change something other than the card.</summary>
    public IReadOnlyList<AgainstReport> Changes => [.. Comparisons.Where(comparison => comparison.Change.What != "card")];

    /// <summary>Synthetic results.</summary>
    public required IReadOnlyList<ScoreReport> Scores { get; init; }

    /// <summary>What setups have left above the floor; empty where the library states none.</summary>
    public required IReadOnlyList<HeadroomReport> Headroom { get; init; }

    /// <summary>Cards side by side at one mode of one scene.</summary>
    public required IReadOnlyList<CardBars> Bars { get; init; }

    /// <summary>Series as a table.</summary>
    public required Table SeriesTable { get; init; }

    /// <summary>Ladders as a table, predicted modes included.</summary>
    public required Table LadderTable { get; init; }

    /// <summary>Which rows between cards mean something.</summary>
    public required Table CardRowTable { get; init; }

    /// <summary>Comparisons as a table.</summary>
    public required Table ComparisonTable { get; init; }

    /// <summary>Headroom as a table.</summary>
    public required Table HeadroomTable { get; init; }

    /// <summary>Synthetic results as a table.</summary>
    public required Table ScoreTable { get; init; }

    /// <summary>The speed of every cell's headline route as a table: titles down, cards across.</summary>
    public required Table SpeedTable { get; init; }

    /// <summary>
    /// The comparisons between two things, each named by a part of its name and in either order; an empty word stands for anything.
    /// </summary>
    public Table ComparisonsOf(string one, string other)
    {
        return BenchTables.Comparisons(
            [.. Comparisons.Where(comparison => Fits(comparison.Change, one, other) || Fits(comparison.Change, other, one))],
            ComparisonTable.Title);

        static bool Fits(Change change, string a, string b) =>
            change.A.Contains(a, StringComparison.OrdinalIgnoreCase) && change.B.Contains(b, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The report of a collection's whole log, or of a part.</summary>
    /// <param name="decisions">The verdicts and the log.</param>
    /// <param name="card">Only this card; null for all.</param>
    /// <param name="title">Only this title; null for all.</param>
    /// <param name="floor">Frames per second for the headroom; null for the library's.</param>
    /// <param name="confidence">Of the headroom, one-sided.</param>
    public static BenchReport Of(Decisions decisions, Card? card = null, Title? title = null, double? floor = null, double confidence = Confidence.Usual)
    {
        bool Wanted(Card ofCard, Title ofTitle) => (card is null || ofCard == card) && (title is null || ofTitle == title);
        IReadOnlyList<BenchSeries> log = [.. decisions.Log.Where(series => Wanted(series.Circumstances.Card, series.Circumstances.Title))];
        var scores = ScoreReport.All(decisions.Catalog.Runs.Where(run => Wanted(run.Card, run.Title)));
        IReadOnlyList<SeriesReport> series = [.. log.SelectMany(SeriesReport.All)];
        var scenes = SceneReport.All(log);
        var comparisons = AgainstReport.All(log);
        var headroom = (floor ?? decisions.Policy.FpsFloor) is { } limit ? HeadroomReport.All(log, limit, confidence) : [];
        var of = decisions.Library is { } library ? $"{decisions.Catalog.Name}, for {Names.InMiddle(library.Name)}" : decisions.Catalog.Name;
        return new BenchReport
        {
            Heading = $"The bench: {of}",
            Series = series,
            Scenes = scenes,
            Comparisons = comparisons,
            Headroom = headroom,
            Scores = scores,
            Bars = CardBars.All(log, decisions.Policy.FpsFloor),
            SeriesTable = BenchTables.Series(series, $"Runs: {of}", Interval),
            LadderTable = BenchTables.Ladders(scenes, $"Resolution ladders: {of}", Interval),
            CardRowTable = BenchTables.CardRows(scenes, $"What rows between cards say: {of}"),
            ComparisonTable = BenchTables.Comparisons(comparisons, $"Comparisons: {of}"),
            HeadroomTable = BenchTables.Headroom(headroom, $"Headroom: {of}"),
            ScoreTable = BenchTables.Scores(scores, $"Synthetic results: {of}"),
            SpeedTable = BenchTables.Speeds(decisions, title, card, $"Speed beside the verdicts: {of}"),
        };
    }
}
