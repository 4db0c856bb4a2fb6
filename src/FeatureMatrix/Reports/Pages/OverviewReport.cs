using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Pages;

/// <summary>A finding worth reading first, with where to read on.</summary>
/// <param name="Text">The finding in a sentence.</param>
/// <param name="Kind">What it is about: card, title, feature, wrapper or question.</param>
/// <param name="Id">Its id.</param>
public sealed record Finding(string Text, string Kind, string Id);

/// <summary>A card with its bar.</summary>
public sealed record CardBar(string CardId, string Name, string Below, Bar Bar, string Headline);

/// <summary>What the first page says.</summary>
/// <param name="Findings">Headline findings, most telling first.</param>
/// <param name="Bars">One bar for each card, the card with the most certain worth first.</param>
/// <param name="Questions">The open questions that touch most cells.</param>
/// <param name="CountText">What the edition holds, in words.</param>
public sealed record OverviewReport(IReadOnlyList<Finding> Findings, IReadOnlyList<CardBar> Bars, IReadOnlyList<NamedText> Questions, string CountText)
{
    private const int MostQuestions = 8;

    /// <summary>The overview of an edition whose other reports are ready.</summary>
    internal static OverviewReport Of(SiteReport edition)
    {
        var coverage = edition.Coverage;
        var bars = edition.Matrix.Columns.Zip(coverage.Columns, edition.Cards)
            .OrderByDescending(item => item.Second.Weight[CellTone.Works])
            .ThenByDescending(item => item.Second.Weight[CellTone.Cosmetic]).ThenBy(item => item.First.Name, StringComparer.Ordinal)
            .Select(item => new CardBar(item.First.CardId, item.First.Name, item.First.Below, item.First.Bar, item.Third.Headline)).ToList();
        var cells = coverage.Rows.SelectMany(row => row.Cells).ToList();
        var questions = cells.SelectMany(cell => cell.Verdict.Headline.Deciding.Select(unknown => (unknown, cell)))
            .GroupBy(pair => pair.unknown)
            .OrderByDescending(group => group.Count()).ThenBy(group => UnknownWording.Question(group.Key), StringComparer.Ordinal)
            .Take(MostQuestions)
            .Select(group => new NamedText(
                UnknownWording.Question(group.Key), $"{UnknownWording.HowToSettle(group.Key)} {Names.Sentence(Names.Count(group.Count(), "cell"))} {(group.Count() == 1 ? "waits" : "wait")} for it.")).ToList();
        return new OverviewReport(FindingsOf(edition, coverage, cells).ToList(), bars, questions,
            $"{Names.Count(coverage.Columns.Count, "card")}, {Names.Count(coverage.Rows.Count, "title")}, {Names.Count(edition.Drivers.Sum(driver => driver.Versions.Count), "driver version")}, "
            + $"{Names.Count(edition.Wrappers.Sum(wrapper => wrapper.Versions.Count), "wrapper version")}");
    }

    /// <summary>Who loses nothing in most titles: as the cells stand, and where wrappers are fitted as well.</summary>
    private static Finding WholeFinding(CoverageReport coverage)
    {
        var titles = Names.Count(coverage.Rows.Count, "title");
        var (plain, plainCount) = Most(coverage.Columns.Select(column => column.Counts[CellTone.Works]).ToList());
        var (helped, helpedCount) = Most(coverage.Columns.Select((_, i) => coverage.Rows.Count(row => row.Cells[i].Verdict.Overall.Worst.Equals(Outcome.Works))).ToList());
        var text = plain.Count == coverage.Columns.Count && plain.Count > 1
            ? $"Every card loses nothing in {plainCount} of {titles}"
            : $"{Names.List(plain.Select(card => card.Name).ToList())} {(plain.Count == 1 ? "loses" : "lose")} nothing in {plainCount} of {titles}{(coverage.Columns.Count > 1 ? ", more than any other card" : "")}";
        if (helpedCount > plainCount)
            text += $"; with wrappers {Names.List(helped.Select(card => card.Name).ToList())} {(helped.Count == 1 ? "does" : "do")} in {helpedCount}";
        return new Finding($"{text}.", "card", plain[0].Id);

        (IReadOnlyList<Card> Cards, int Count) Most(List<int> counts)
        {
            var most = counts.Max();
            return (coverage.Columns.Where((_, i) => counts[i] == most).Select(column => column.Card).ToList(), most);
        }
    }

    private static IEnumerable<Finding> FindingsOf(SiteReport edition, CoverageReport coverage, List<Cell> cells)
    {
        if (coverage.Rows.Count > 0 && coverage.Columns.Count > 0)
            yield return WholeFinding(coverage);

        if (coverage.Rows.Where(row => row.Cells.All(cell => cell.Tone is CellTone.DoesNotRun or CellTone.SoftwareOnly)).ToList() is { Count: > 0 } nowhere)
            yield return new Finding($"{Names.List(nowhere.Select(row => row.Title.Name).ToList())} {(nowhere.Count == 1 ? "runs" : "run")} on no card here, software rendering apart.", "title", nowhere[0].Title.Id);

        if (coverage.Rows.Where(row => row.Cells.Count(cell => cell.Verdict.Headline.Range.CertainlyRuns) == 1).ToList() is { Count: > 0 } lonely)
        {
            foreach (var group in lonely.GroupBy(row => row.Cells.Single(cell => cell.Verdict.Headline.Range.CertainlyRuns).Card).OrderByDescending(group => group.Count()).Take(1))
                yield return new Finding($"Only {group.Key.Name} certainly runs {Names.List(group.Select(row => row.Title.Name).ToList())}.", "card", group.Key.Id);
        }

        if (edition.Features.MaxBy(feature => feature.Lost.Sum(row => row.Tiles.Count)) is { Lost.Count: > 0 } feature)
            yield return new Finding($"{feature.Name} is lost or not known in more cells than anything else: {feature.Lost.Sum(row => row.Tiles.Count)}, on {Names.Count(feature.Lost.Count, "card")}.", "feature", feature.Id);

        if (edition.Wrappers.MaxBy(wrapper => wrapper.Uses.Select(use => use.TitleId).Distinct(StringComparer.Ordinal).Count()) is { Uses.Count: > 0 } wrapper)
            yield return new Finding($"{wrapper.Name} is the wrapper that matters to most titles: {wrapper.Uses.Select(use => use.TitleId).Distinct(StringComparer.Ordinal).Count()}.", "wrapper", wrapper.Id);

        var open = cells.Count(cell => cell.Evidence == CellEvidence.NotKnown);
        yield return new Finding(open == 0
            ? "No cell waits for an unknown fact."
            : $"{open} of {Names.Count(cells.Count, "cell")} {(open == 1 ? "waits" : "wait")} for a fact that nobody has recorded.", "question", "");

        if (cells.Where(cell => cell.IsContradicted).ToList() is { Count: > 0 } contradicted)
            yield return new Finding($"In {Names.Count(contradicted.Count, "cell")} somebody saw something else than the records say: {Names.List(contradicted.Select(cell => $"{cell.Title.Name} on {cell.Card.Name}").Take(3).ToList())}.", "title", contradicted[0].Title.Id);
    }
}
