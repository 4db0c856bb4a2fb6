using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Asking;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Advice;

/// <summary>One thing to test, where, and what the answers would do.</summary>
/// <param name="Proposal">The question and its consequences.</param>
/// <param name="Install">The card, driver and system to test it with; null where it is looked up, not tested.</param>
/// <param name="Titles">The titles that hang on it.</param>
/// <param name="Routes">The routes on that install that show the answer.</param>
public sealed record TestStep(TestProposal Proposal, Setup? Install, IReadOnlyList<Title> Titles, IReadOnlyList<Route> Routes);

/// <summary>What to test next to decide between two cards, batched by card, driver and system.</summary>
/// <param name="Weighing">The decisions it draws on.</param>
/// <param name="Picture">The comparison as far as the picture goes.</param>
/// <param name="Comparison">The comparison that is to be settled: the picture, or where that is decided the picture at the speed floor.</param>
/// <param name="Next">The questions.</param>
/// <param name="Steps">Where to ask them, in the order of swaps.</param>
public sealed record NextTestReport(Weighing Weighing, CardComparison Picture, CardComparison Comparison, NextTest Next, IReadOnlyList<TestStep> Steps)
{
    /// <summary>What to mind at every swap.</summary>
    public static readonly IReadOnlyList<string> SwapCautions =
    [
        "Before each swap: power off and unplug the PC, wait, and mind static; chips and heat sinks may be hot.",
        "Before fitting a card, check slot, key and voltage in the documents of both boards; where they are silent, ask a qualified technician.",
        "Stop and unplug on any smell or smoke, on a bulging or leaking capacitor, or on a leaking battery.",
    ];

    /// <summary>The questions between two cards.</summary>
    public static NextTestReport Of(Weighing weighing, Card first, Card second) => Of(
        weighing, CardComparison.Of(weighing.Picture, first, second), weighing.AtFloor is { } floor ? CardComparison.Of(floor, first, second) : null);

    /// <summary>The questions that comparisons leave: of the picture, and at the speed floor where there is one.</summary>
    public static NextTestReport Of(Weighing weighing, CardComparison picture, CardComparison? atFloor)
    {
        // A decided picture leaves the question of speed.
        var comparison = picture.Winner != Winner.Undecided && atFloor?.Winner == Winner.Undecided ? atFloor : picture;
        var next = NextTest.Of(comparison);
        return new NextTestReport(weighing, picture, comparison, next, TestBatches.Of(weighing, comparison, next.Proposals));
    }

    /// <summary>What a page says in the place of the questions where the library is too large to work them out for every two cards.</summary>
    public static DecisionReport Elsewhere(Weighing weighing, Card first, Card second) => new(
        $"What to test next: {first.Name} or {second.Name}",
        $"With more than {Ranking.MostTitlesTogether} titles this is worked out for two cards at a time, by the command: next {first.Id} {second.Id}.", weighing.PolicyText, [], []);

    /// <summary>The questions as a worksheet to fill in at the bench, in the order of swaps; what is only looked up is left out.</summary>
    public BenchWorksheet ToWorksheet(string name)
    {
        var tasks = Steps.Where(step => step.Install is not null).SelectMany(step => step.Routes.Select(route => (step, route)))
            .GroupBy(pair => pair.route).Select(group => new BenchTask(
                group.Key,
                group.SelectMany(pair => BenchWorksheet.LookAt(pair.step.Proposal.Unknown, group.Key)).Distinct().ToList(),
                string.Join(" ", group.Select(pair => UnknownWording.Question(pair.step.Proposal.Unknown)).Distinct()))).ToList();
        return new BenchWorksheet(name, Weighing.Decisions.Catalog, tasks);
    }

    /// <summary>How many questions were left out of the steps because others do more.</summary>
    public int LeftOut { get; private init; }

    /// <summary>The questions that do most, still in the order of swaps: those that settle it together or alone, then those that narrow most.</summary>
    /// <param name="count">How many.</param>
    public NextTestReport Foremost(int count)
    {
        if (Steps.Count <= count)
            return this;
        var kept = Steps
            .OrderByDescending(step => Next.SmallestSet.Contains(step.Proposal.Unknown))
            .ThenByDescending(step => step.Proposal.Consequences.Any(consequence => consequence.Winner != Winner.Undecided))
            .ThenByDescending(step => step.Proposal.Narrows).Take(count).ToHashSet();
        return this with { Steps = [.. Steps.Where(kept.Contains)], LeftOut = Steps.Count - count };
    }

    /// <summary>What to do first.</summary>
    public string Headline
    {
        get
        {
            var names = $"{Comparison.First.Name} and {Comparison.Second.Name}";
            if (Comparison.Winner != Winner.Undecided)
                return $"Nothing to test: {names} are decided ({DecisionWording.Of(Comparison.Winner, Comparison.First, Comparison.Second)}), whatever is still open.";
            var before = Comparison == Picture
                ? ""
                : $"The picture is decided ({DecisionWording.Of(Picture.Winner, Picture.First, Picture.Second)}); at the speed floor it is not. ";
            return before + FirstStep(names) + (Next.IsExact ? "" : " There was too much to walk it all: fewer answers may do, and some of these may turn out not to matter.")
                + (Next.LeftOut == 0 ? "" : $" {Names.Sentence(Names.Count(Next.LeftOut, "question"))} on which less of the library hangs were left out.");
        }
    }

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"What to test next: {Comparison.First.Name} or {Comparison.Second.Name}", Headline, Weighing.PolicyText, Steps.Count == 0 ? [] : SwapCautions,
        Steps.Count == 0 ? [] : [StepTable()]);

    /// <summary>The whole report as one table. Where nothing is left to ask its only row says so.</summary>
    public Table ToTable()
    {
        var (report, table) = (ToReport(), StepTable());
        return table with
        {
            Title = report.Title,
            Note = string.Join('\n', [report.Headline, .. Steps.Count == 0 ? [] : new[] { table.Note }, report.PolicyText, .. report.Cautions]),
            Rows = Steps.Count == 0 ? [[new TableCell(NoQuestion), .. table.Columns.Skip(1).Select(_ => TableCell.Empty)]] : table.Rows,
        };
    }

    private string NoQuestion => Comparison.Winner == Winner.Undecided ? "no single answer would change it" : "nothing left to ask";

    private string FirstStep(string names)
    {
        if (Next.SmallestSet.Count == 0)
            return $"No {SmallestSetWords} answers settle {names}; start with the first row.";
        var questions = Next.SmallestSet.Select(UnknownWording.Question).ToList();
        return Next.SmallestSet.Count == 1
            ? $"One answer can settle {names}: {questions[0]}"
            : $"{Names.Sentence(Names.Words(Next.SmallestSet.Count))} answers together can settle {names}: {string.Join(" ", questions)}";
    }

    private static string SmallestSetWords => Names.Words(NextTest.MostTogether);

    private Table StepTable() => new(
        "Questions, in the order of swaps",
        $"The difference now: {DecisionWording.Difference(Comparison.Difference)}. {(LeftOut > 0 ? $"These {Steps.Count} questions do most; {LeftOut} more can change who wins as well: --all lists them." : "Each of these can change who wins; what cannot is left out.")}",
        [new("Card"), new("Driver and system"), new("Question"), new("Titles"), new("What the answer would do"), new("Narrows by", true), new("How")],
        Steps.Select(step => (IReadOnlyList<TableCell>)
        [
            new TableCell(step.Install?.Card.Name ?? "no swap"), new TableCell(step.Install is { } install ? Names.Of(install) : "look it up"),
            new TableCell(UnknownWording.Question(step.Proposal.Unknown)),
            new TableCell(Names.List(step.Titles.Select(title => title.Name).ToList())),
            new TableCell(string.Join("; ", step.Proposal.Consequences.Select(Text))),
            new TableCell(DecisionWording.Number(step.Proposal.Narrows), (double)step.Proposal.Narrows),
            new TableCell(UnknownWording.HowToSettle(step.Proposal.Unknown)),
        ]).ToList());

    private string Text(Consequence consequence) =>
        $"{Names.Of(consequence.State)}: {DecisionWording.Of(consequence.Winner, Comparison.First, Comparison.Second)} ({DecisionWording.Difference(consequence.Difference)})";
}
