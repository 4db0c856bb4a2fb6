using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>One of the two verdicts of a comparison, in words, with what a page needs to weigh it anew.</summary>
/// <param name="Name">The picture, or the picture at the speed floor.</param>
/// <param name="Verdict">Who wins.</param>
/// <param name="MustHavesFirst">The must-haves on the first card.</param>
/// <param name="MustHavesSecond">The must-haves on the second card.</param>
/// <param name="WithoutWeights">Who is never worse.</param>
/// <param name="ScoreFirst">The first card's score.</param>
/// <param name="ScoreSecond">The second card's score.</param>
/// <param name="Difference">First less second.</param>
/// <param name="Beam">The difference as it is drawn.</param>
/// <param name="Comparison">The comparison itself.</param>
/// <param name="Export">What follows weights and worths.</param>
public sealed record ComparedView(
    string Name, string Verdict, string MustHavesFirst, string MustHavesSecond, string WithoutWeights, string ScoreFirst, string ScoreSecond,
    string Difference, Beam Beam, CardComparison Comparison, DifferenceExport Export);

/// <summary>
/// An interval of differences on a beam 100 wide whose middle is zero: the first card pulls to the left, the second to the right.
/// </summary>
/// <param name="Start">Left end, 0 to 100.</param>
/// <param name="Width">Width; a point is drawn as wide as the pen.</param>
public sealed record Beam(double Start, double Width)
{
    /// <summary>How much of each side the farthest end takes.</summary>
    public const double Reach = 44;

    /// <summary>The beam of a difference, first less second.</summary>
    public static Beam Of(ScoreInterval difference)
    {
        var farthest = (double)Math.Max(Math.Abs(difference.Low), Math.Abs(difference.High));
        var unit = farthest > 0 ? Reach / farthest : 0;
        return new Beam(Math.Round(50 - ((double)difference.High * unit), 2), Math.Round((double)difference.Width * unit, 2));
    }
}

/// <summary>A title on both cards.</summary>
/// <param name="Id">The title.</param>
/// <param name="Name">Its name.</param>
/// <param name="Weight">What it weighs in the library.</param>
/// <param name="First">Its cell on the first card.</param>
/// <param name="Second">Its cell on the second card.</param>
/// <param name="Difference">Weight × worth on the first card less the same on the second.</param>
/// <param name="Why">Why it differs; empty where both do alike.</param>
public sealed record ComparedTitle(string Id, string Name, decimal Weight, Tile First, Tile Second, string Difference, string Why);

/// <summary>A feature that one card keeps and the other loses in the same title.</summary>
/// <param name="FeatureId">The feature.</param>
/// <param name="Name">Its name.</param>
/// <param name="Text">Which card loses it, and where.</param>
/// <param name="FirstKeeps">True where the first card keeps it.</param>
public sealed record KeptAndLost(string FeatureId, string Name, string Text, bool FirstKeeps);

/// <summary>A price that the page lets change.</summary>
public sealed record ComparedPrice(decimal Low, decimal High, string Currency);

/// <summary>Two cards on a page of their own.</summary>
public sealed record ComparePage
{
    private const int MostKept = 6;

    /// <summary>The first card's id.</summary>
    public required string FirstId { get; init; }

    /// <summary>The first card's name.</summary>
    public required string FirstName { get; init; }

    /// <summary>The second card's id.</summary>
    public required string SecondId { get; init; }

    /// <summary>The second card's name.</summary>
    public required string SecondName { get; init; }

    /// <summary>The report that the command prints: heading, answer, policy and tables.</summary>
    public required DecisionReport Report { get; init; }

    /// <summary>The picture, and the picture at the speed floor where the library has one.</summary>
    public required IReadOnlyList<ComparedView> Views { get; init; }

    /// <summary>True where the comparison is too large to be weighed anew in the page.</summary>
    public required bool IsLocked { get; init; }

    /// <summary>Titles that differ or may differ, those that swing most first.</summary>
    public required IReadOnlyList<ComparedTitle> Swing { get; init; }

    /// <summary>Titles on which both cards do alike in every completion.</summary>
    public required IReadOnlyList<ComparedTitle> Alike { get; init; }

    /// <summary>How many those are, in words.</summary>
    public string AlikeText => $"{Names.Sentence(Names.Count(Alike.Count, "title"))} on which both do alike, whatever is still open";

    /// <summary>All titles with their weights in the order of the library: what the exported numbers of titles mean.</summary>
    public required IReadOnlyList<(string Id, decimal Weight)> Order { get; init; }

    /// <summary>What is left after one severe loss, 0 to 1.</summary>
    public required decimal SevereWorth { get; init; }

    /// <summary>What is left after one cosmetic loss, 0 to 1.</summary>
    public required decimal CosmeticWorth { get; init; }

    /// <summary>The first card's price; null where none is on record.</summary>
    public required ComparedPrice? FirstPrice { get; init; }

    /// <summary>The second card's price.</summary>
    public required ComparedPrice? SecondPrice { get; init; }

    /// <summary>Features that one keeps and the other loses.</summary>
    public required IReadOnlyList<KeptAndLost> Kept { get; init; }

    /// <summary>What to test next to decide between the two; null where both verdicts are decided.</summary>
    public required DecisionReport? Next { get; init; }

    /// <summary>The page of a comparison.</summary>
    public static ComparePage Of(Weighing weighing, Card first, Card second)
    {
        var report = CompareReport.Of(weighing, first, second);
        var picture = report.Picture;
        var views = new List<ComparedView> { ViewOf("The picture", picture) };
        if (report.AtFloor is { } floor)
            views.Add(ViewOf("The picture at the speed floor", floor));
        var swing = report.SwingTitles.ToList();
        return new ComparePage
        {
            FirstId = first.Id,
            FirstName = first.Name,
            SecondId = second.Id,
            SecondName = second.Name,
            Report = report.ToReport(),
            Views = views,
            IsLocked = views.Exists(view => view.Export.IsLocked),
            Swing = swing.ConvertAll(title => TitleOf(report, title)),
            Alike = picture.Titles.Where(title => title.IsEqual).Select(title => TitleOf(report, title)).ToList(),
            Order = picture.Titles.Select(title => (title.Entry.Title.Id, (decimal)title.Entry.Weight)).ToList(),
            SevereWorth = picture.Scale.Severe,
            CosmeticWorth = picture.Scale.Cosmetic,
            FirstPrice = PriceOf(weighing.PriceOf(first)),
            SecondPrice = PriceOf(weighing.PriceOf(second)),
            Kept = KeptBy(report, swing),
            Next = views.Exists(view => view.Comparison.Winner == Winner.Undecided) ? NextOf(weighing, report) : null,
        };
    }

    private static DecisionReport NextOf(Weighing weighing, CompareReport report) => weighing.Library.Entries.Count > Ranking.MostTitlesTogether
        ? NextTestReport.Elsewhere(weighing, report.Picture.First, report.Picture.Second)
        : NextTestReport.Of(weighing, report.Picture, report.AtFloor).ToReport();

    private static ComparedPrice? PriceOf(PriceRange? price) => price is null ? null : new ComparedPrice(price.Low, price.High, price.Currency);

    private static ComparedView ViewOf(string name, CardComparison comparison) => new(
        name, DecisionWording.Of(comparison.Winner, comparison.First, comparison.Second),
        DecisionWording.MustHaves(comparison.MustHaves(Side.First)), DecisionWording.MustHaves(comparison.MustHaves(Side.Second)),
        DecisionWording.Of(comparison.Dominance, comparison.First, comparison.Second), DecisionWording.Interval(comparison.FirstScore),
        DecisionWording.Interval(comparison.SecondScore), DecisionWording.Difference(comparison.Difference), Beam.Of(comparison.Difference),
        comparison, DifferenceExport.Of(comparison));

    private static ComparedTitle TitleOf(CompareReport report, TitleComparison title) => new(
        title.Entry.Title.Id, title.Entry.Title.Name, (decimal)title.Entry.Weight, TileOf(report, title.Entry.Title, report.Picture.First),
        TileOf(report, title.Entry.Title, report.Picture.Second), DecisionWording.Difference(title.Difference), title.IsEqual ? "" : CompareWording.Why(report, title));

    private static Tile TileOf(CompareReport report, Title title, Card card) => report.Weighing.Decisions.CellOn(title, card).Tile;

    private static List<KeptAndLost> KeptBy(CompareReport report, List<TitleComparison> swing)
    {
        var (first, second) = (report.Picture.First, report.Picture.Second);
        return swing.SelectMany(title =>
            {
                var one = LostBy(report, title.Entry.Title, first);
                var two = LostBy(report, title.Entry.Title, second);
                return one is null || two is null
                    ? []
                    : two.Except(one).Select(feature => (feature, firstKeeps: true, title.Entry.Title))
                        .Concat(one.Except(two).Select(feature => (feature, firstKeeps: false, title.Entry.Title)));
            })
            .GroupBy(item => (item.feature, item.firstKeeps))
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key.feature.Id, StringComparer.Ordinal).Take(MostKept)
            .Select(group =>
            {
                var (keeps, loses) = group.Key.firstKeeps ? (first, second) : (second, first);
                return new KeptAndLost(
                    group.Key.feature.Id, Names.Sentence(group.Key.feature.Name),
                    $"{keeps.Name} keeps it in {Names.List(group.Select(item => item.Title.Name).ToList())}, {loses.Name} loses it there.", group.Key.firstKeeps);
            }).ToList();
    }

    /// <summary>The features that a title loses on a card for certain; null where it is not certain that it runs.</summary>
    private static List<Feature>? LostBy(CompareReport report, Title title, Card card)
    {
        var range = report.Weighing.Picture.VerdictOn(title, card).Overall;
        return range.CertainlyRuns
            ? range.Best.Losses.Where(range.Worst.Losses.Contains).Select(loss => loss.Choices[0].Feature).Distinct().ToList()
            : null;
    }
}
