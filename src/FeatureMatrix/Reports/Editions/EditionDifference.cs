using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Editions;

/// <summary>A cell whose verdict reads otherwise than in the earlier edition.</summary>
/// <param name="Title">The title's name.</param>
/// <param name="Card">The card's name.</param>
/// <param name="Before">The earlier label.</param>
/// <param name="Now">The later label.</param>
/// <param name="Because">What the collection says anew, no longer, or otherwise, as far as the cell drew on it.</param>
public sealed record ChangedCell(string Title, string Card, string Before, string Now, IReadOnlyList<string> Because);

/// <summary>A statement that says something else than before about the same thing.</summary>
public sealed record Correction(string About, string Before, string Now);

/// <summary>What changed from one edition to the next, and what caused it.</summary>
public sealed record EditionDifference
{
    /// <summary>A table shows no more causes of one change.</summary>
    private const int MostCauses = 4;

    private EditionDifference(EditionState before, EditionState now)
    {
        Before = before;
        Now = now;
        var then = before.Cells.ToDictionary(cell => (cell.Title, cell.Card));
        var (said, says) = (Said(before), Said(now));
        Cells =
        [
            .. now.Cells.Where(cell => then.TryGetValue((cell.Title, cell.Card), out var old) && old.Label != cell.Label)
                .Select(cell => (Old: then[(cell.Title, cell.Card)], New: cell))
                .Select(pair => new ChangedCell(
                    now.Titles[pair.New.Title], now.Cards[pair.New.Card], pair.Old.Label, pair.New.Label, Causes(pair.Old, pair.New, said, says)))
                .OrderBy(cell => cell.Title, StringComparer.Ordinal).ThenBy(cell => cell.Card, StringComparer.Ordinal),
        ];
        Corrections =
        [
            .. from About in said.Keys.Intersect(says.Keys).Order(StringComparer.Ordinal)
               where said[About].Count == 1 && says[About].Count == 1 && !said[About].SetEquals(says[About])
               select new Correction(About.TrimEnd(':'), said[About].Single(), says[About].Single()),
        ];
        Added = [.. Only(now.Titles, before.Titles), .. Only(now.Cards, before.Cards)];
        Gone = [.. Only(before.Titles, now.Titles), .. Only(before.Cards, now.Cards)];
    }

    /// <summary>The earlier edition.</summary>
    public EditionState Before { get; }

    /// <summary>The later one, or the collection as it is now.</summary>
    public EditionState Now { get; }

    /// <summary>Cells that both have and that read differently.</summary>
    public IReadOnlyList<ChangedCell> Cells { get; }

    /// <summary>Statements that both have and that say different things.</summary>
    public IReadOnlyList<Correction> Corrections { get; }

    /// <summary>Titles and cards that only the later one has.</summary>
    public IReadOnlyList<string> Added { get; }

    /// <summary>Titles and cards that only the earlier one has.</summary>
    public IReadOnlyList<string> Gone { get; }

    /// <summary>The difference in a sentence.</summary>
    public string Headline
    {
        get
        {
            var parts = new List<string> { Cells.Count == 0 ? "No verdict changed" : $"{Names.Count(Cells.Count, "verdict")} changed" };
            if (Corrections.Count > 0)
                parts.Add($"{Names.Count(Corrections.Count, "statement")} corrected");
            if (Added.Count > 0)
                parts.Add($"new: {Names.List(Added)}");
            if (Gone.Count > 0)
                parts.Add($"no longer in it: {Names.List(Gone)}");
            return $"{string.Join("; ", parts)}.";
        }
    }

    /// <summary>Compares two editions.</summary>
    public static EditionDifference Between(EditionState before, EditionState now) => new(before, now);

    /// <summary>The whole difference.</summary>
    public DecisionReport ToReport() => new(
        $"From {Before.CalledBy} to {Now.CalledBy}", Headline, Now.Policy, [],
        [
            new Table(
                $"Verdicts that changed from {Before.CalledBy} to {Now.CalledBy}", "", [new("Title"), new("Card"), new("Before"), new("Now"), new("Because")],
                [.. Cells.Select(cell => (IReadOnlyList<TableCell>)[new(cell.Title), new(cell.Card), new(cell.Before), new(cell.Now), new(Shown(cell.Because))])]) { WhenEmpty = "No verdict changed." },
            new Table(
                $"Corrections from {Before.CalledBy} to {Now.CalledBy}", "", [new("About"), new("Before"), new("Now")],
                [.. Corrections.Select(one => (IReadOnlyList<TableCell>)[new(one.About), new(one.Before), new(one.Now)])]) { WhenEmpty = "No corrections." },
        ]);

    private static string Shown(IReadOnlyList<string> causes) => causes.Count <= MostCauses
        ? string.Join("; ", causes)
        : $"{string.Join("; ", causes.Take(MostCauses))}; and {Names.Count(causes.Count - MostCauses, "more statement")}";

    private static Dictionary<string, SortedSet<string>> Said(EditionState state) =>
        state.Cells.SelectMany(cell => cell.RestsOn).Distinct().GroupBy(statement => statement.About, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => new SortedSet<string>(group.Select(statement => statement.Says), StringComparer.Ordinal), StringComparer.Ordinal);

    private static IEnumerable<string> Only(IReadOnlyDictionary<string, string> those, IReadOnlyDictionary<string, string> butNot) =>
        those.Where(one => !butNot.ContainsKey(one.Key)).Select(one => one.Value).Order(StringComparer.Ordinal);

    /// <summary>
    /// A statement caused the change if one of the two verdicts drew on it and the other edition does not make it anywhere. Where there is
    /// none, the terms differ, or the rules of the program do.
    /// </summary>
    private List<string> Causes(
        EditionCell old, EditionCell cell, Dictionary<string, SortedSet<string>> said, Dictionary<string, SortedSet<string>> says)
    {
        var fresh = cell.RestsOn.Where(statement => !Has(said, statement)).ToList();
        var stale = old.RestsOn.Where(statement => !Has(says, statement)).ToList();
        var causes = fresh.Select(statement => stale.Find(gone => gone.About == statement.About) is { } was
                ? $"{statement.About} {statement.Says}, before: {Short(was.Says, statement.Says)}"
                : $"new: {statement}")
            .Concat(stale.Where(statement => !fresh.Exists(one => one.About == statement.About)).Select(statement => $"no longer said: {statement}"))
            .ToList();
        if (causes.Count > 0)
            return causes;
        return Before.Policy != Now.Policy ? ["the terms changed"]
            : Before.Program != Now.Program ? [$"the program changed from {Before.Program} to {Now.Program}"]
            : ["something that the verdict does not name"];
    }

    /// <summary>What was said before, without grade and source where they are the same as now.</summary>
    private static string Short(string was, string now)
    {
        var evidence = was.LastIndexOf(" (", StringComparison.Ordinal);
        return evidence > 0 && now.EndsWith(was[evidence..], StringComparison.Ordinal) ? was[..evidence] : was;
    }

    private static bool Has(Dictionary<string, SortedSet<string>> all, Statement statement) =>
        all.TryGetValue(statement.About, out var says) && says.Contains(statement.Says);
}
