using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>One thing to test, where, and what the answers would do.</summary>
/// <param name="Proposal">The question and its consequences.</param>
/// <param name="Install">The card, driver and system to test it with; null where it is looked up, not tested.</param>
/// <param name="Titles">The titles that hang on it.</param>
public sealed record TestStep(TestProposal Proposal, Setup? Install, IReadOnlyList<Title> Titles);

/// <summary>What to test next to decide between two cards, batched by card, driver and system.</summary>
public sealed record NextTestReport(Weighing Weighing, CardComparison Comparison, NextTest Next, IReadOnlyList<TestStep> Steps)
{
    /// <summary>What to mind at every swap.</summary>
    public static readonly IReadOnlyList<string> SwapCautions =
    [
        "Before each swap: power off and unplug the PC, wait, and mind static; chips and heat sinks may be hot.",
        "Before fitting a card, check slot, key and voltage in the documents of both boards; where they are silent, ask a qualified technician.",
        "Stop and unplug on any smell or smoke, on a bulging or leaking capacitor, or on a leaking battery.",
    ];

    /// <summary>The questions between two cards.</summary>
    public static NextTestReport Of(Weighing weighing, Card first, Card second)
    {
        var comparison = CardComparison.Of(weighing.Picture, first, second);
        var next = NextTest.Of(comparison);
        var steps = next.Proposals.Select(proposal => StepOf(weighing, comparison, proposal)).ToList();
        // One install after the other, the one that bears on most first; within it the questions keep their rank.
        var batches = steps.GroupBy(step => step.Install).OrderBy(batch => batch.Min(step => steps.IndexOf(step))).SelectMany(batch => batch).ToList();
        return new NextTestReport(weighing, comparison, next, batches);
    }

    /// <summary>What to do first.</summary>
    public string Headline
    {
        get
        {
            var names = $"{Comparison.First.Name} and {Comparison.Second.Name}";
            if (Comparison.Winner != Winner.Undecided)
                return $"Nothing to test: {names} are decided ({DecisionWording.Of(Comparison.Winner, Comparison.First, Comparison.Second)}), whatever is still open.";
            if (Next.SmallestSet.Count == 0)
                return $"No three answers settle {names}; start with the first row, which narrows the difference most.";
            var questions = Next.SmallestSet.Select(UnknownWording.Question).ToList();
            return Next.SmallestSet.Count == 1
                ? $"One answer can settle {names}: {questions[0]}"
                : $"{Next.SmallestSet.Count} answers together can settle {names}: {string.Join(" ", questions)}";
        }
    }

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"What to test next: {Comparison.First.Name} or {Comparison.Second.Name}", Headline, Weighing.PolicyText, Steps.Count == 0 ? [] : SwapCautions,
        [
            new Table(
                "Questions, in the order of swaps", $"The difference now: {DecisionWording.Difference(Comparison.Difference)}.",
                [new("Card"), new("Driver and system"), new("Question"), new("Titles"), new("What the answer would do"), new("Narrows by", true), new("How")],
                Steps.Select(step => (IReadOnlyList<TableCell>)
                [
                    new TableCell(step.Install?.Card.Name ?? "no swap"), new TableCell(step.Install is { } install ? Names.Of(install) : "look it up"),
                    new TableCell(UnknownWording.Question(step.Proposal.Unknown)),
                    new TableCell(Names.List(step.Titles.Select(title => title.Name).ToList())),
                    new TableCell(string.Join("; ", step.Proposal.Consequences.Select(Text))),
                    new TableCell(DecisionWording.Number(step.Proposal.Narrows), (double)step.Proposal.Narrows),
                    new TableCell(UnknownWording.HowToSettle(step.Proposal.Unknown)),
                ]).ToList()),
        ]);

    private string Text(Consequence consequence) =>
        $"{Names.Of(consequence.State)}: {DecisionWording.Of(consequence.Winner, Comparison.First, Comparison.Second)} ({DecisionWording.Difference(consequence.Difference)})";

    private static TestStep StepOf(Weighing weighing, CardComparison comparison, TestProposal proposal)
    {
        var stakes = comparison.Groups.SelectMany(group => group.Stakes).Where(stake => stake.Prospect.Unknowns.Contains(proposal.Unknown)).ToList();
        var titles = stakes.Select(stake => stake.Entry.Title).Distinct().ToList();
        var install = stakes.Select(stake => weighing.Picture.VerdictOn(stake.Entry.Title, stake.Side == Side.First ? comparison.First : comparison.Second))
            .SelectMany(verdict => verdict.Routes).Where(finding => finding.Form.IsPermitted && Asks(finding, proposal.Unknown))
            .Select(finding => finding.Route.Setup).FirstOrDefault(setup => setup.Install != Install.Unrecorded);
        return new TestStep(proposal, install, titles);
    }

    private static bool Asks(RouteFinding finding, UnknownFact unknown) => unknown switch
    {
        UnknownFact.LossIsCosmetic loss => finding.Route.Renderer == loss.Renderer,
        UnknownFact.RunsWithout without => finding.Route.Renderer == without.Renderer,
        UnknownFact.RunsBroken broken => finding.Route.Renderer == broken.Renderer,
        UnknownFact.FrameBuffer or UnknownFact.Preset or UnknownFact.Runtime or UnknownFact.DriverExists => false,
        _ => finding.Form.Gates.Any(gate => gate.Answer.Open == unknown)
            || finding.Form.Needs.Any(need => need.Choices.Any(choice => choice.Answer.Open == unknown)),
    };
}
