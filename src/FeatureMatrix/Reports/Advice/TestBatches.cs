using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Asking;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Advice;

/// <summary>
/// Where to ask which question: on the fewest cards and installs that show all answers, owned cards first, and in an order that takes
/// each card and each system once.
/// </summary>
internal static class TestBatches
{
    public static IReadOnlyList<TestStep> Of(Weighing weighing, CardComparison comparison, IReadOnlyList<TestProposal> proposals)
    {
        var found = proposals.Select(proposal => (Proposal: proposal, Routes: RoutesOf(weighing, comparison, proposal.Unknown))).ToList();
        var installs = found.SelectMany(pair => pair.Routes).Select(route => route.Setup).Distinct().ToList();
        var chosen = Fewest(weighing, installs, found.ConvertAll(pair => pair.Routes.Select(route => route.Setup).ToHashSet()));
        var steps = found.ConvertAll(pair =>
        {
            var install = chosen.Find(setup => pair.Routes.Exists(route => route.Setup == setup));
            return new TestStep(pair.Proposal, install, TitlesOf(comparison, pair.Proposal.Unknown), pair.Routes.Where(route => route.Setup == install).ToList());
        });
        return InOrderOfSwaps(steps);
    }

    private static List<Setup> Fewest(Weighing weighing, List<Setup> installs, List<HashSet<Setup>> askedOn)
    {
        var cards = installs.Select(setup => setup.Card).Distinct().ToList();
        var owned = weighing.Owned;
        var questions = Enumerable.Range(0, askedOn.Count).Where(i => askedOn[i].Count > 0).ToList();
        var problem = new PlanProblem(
            cards.Select(card => new PlanCard(owned.Contains(card) ? 1 : 0, null, null, "", [[]])).ToList(), [new PlanRig(null, null)],
            installs.Select((setup, i) => new PlanOption(
                cards.IndexOf(setup.Card), i, [0], Enumerable.Range(0, questions.Count).Where(j => askedOn[questions[j]].Contains(setup)).ToList(), [])).ToList(),
            questions.Count, OneDriverPerSystem: false);
        return PlanSearch.Of(problem, PlanGoal.Fewest)!.Moves.Select(move => move.Option).Order().Select(i => installs[i]).ToList();
    }

    /// <summary>What needs no swap first; then card by card, the one first that bears on most, and on each card system by system.</summary>
    private static List<TestStep> InOrderOfSwaps(List<TestStep> steps)
    {
        return steps.OrderBy(step => step.Install is not null)
            .ThenBy(step => Rank(other => other.Install?.Card == step.Install?.Card))
            .ThenBy(step => Rank(other => other.Install?.Card == step.Install?.Card && other.Install?.Os == step.Install?.Os))
            .ThenBy(step => Rank(other => other.Install == step.Install)).ToList();

        int Rank(Predicate<TestStep> same) => steps.FindIndex(same);
    }

    private static List<Title> TitlesOf(CardComparison comparison, UnknownFact unknown) => comparison.Groups.SelectMany(group => group.Stakes)
        .Where(stake => stake.Prospect.Unknowns.Contains(unknown)).Select(stake => stake.Entry.Title).Distinct().ToList();

    private static List<Route> RoutesOf(Weighing weighing, CardComparison comparison, UnknownFact unknown) => comparison.Groups.SelectMany(group => group.Stakes)
        .Where(stake => stake.Prospect.Unknowns.Contains(unknown))
        .SelectMany(stake => weighing.Picture.VerdictOn(stake.Entry.Title, stake.Side == Side.First ? comparison.First : comparison.Second).Routes)
        .Where(finding => finding.Form.IsPermitted && finding.Route.Setup.Install != Install.Unrecorded && !finding.Range.CertainlyFails && Asks(finding, unknown))
        .Select(finding => finding.Route).Distinct().ToList();

    private static bool Asks(RouteFinding finding, UnknownFact unknown) => unknown switch
    {
        UnknownFact.LossIsCosmetic loss => finding.Route.Renderer == loss.Renderer,
        UnknownFact.RunsWithout without => finding.Route.Renderer == without.Renderer,
        UnknownFact.RunsBroken broken => finding.Route.Renderer == broken.Renderer,
        UnknownFact.ReachesFloor speed => finding.Route == new Route(speed.Renderer, speed.Setup, speed.Wrapper),
        UnknownFact.FrameBuffer or UnknownFact.Preset or UnknownFact.Runtime or UnknownFact.DriverExists => false,
        _ => finding.Form.Gates.Any(gate => gate.Answer.Open == unknown)
            || finding.Form.Needs.Any(need => need.Choices.Any(choice => choice.Answer.Open == unknown)),
    };
}
