using FeatureMatrix.Deciding.Planning;

namespace FeatureMatrix.Tests.Deciding.Planning;

/// <summary>Made-up planning problems, and limits, from a seed.</summary>
internal static class PlanProblems
{
    public static PlanProblem Make(Random random, int cards, int rigs, int slots, int options, int musts, int titles)
    {
        var counted = random.Next(5) > 0;
        var all = Enumerable.Range(0, rigs).Select(_ => new PlanRig(
            counted || random.Next(3) > 0 ? random.Next(slots + 1) : null, random.Next(3) == 0 ? Enumerable.Repeat("plug", random.Next(3)).ToList() : null)).ToList();
        var boards = Enumerable.Range(0, cards).Select(i => new PlanCard(
            random.Next(3) == 0 ? random.Next(1, 3) : 0, random.Next(6) == 0 ? null : random.Next(1, 30),
            random.Next(6) == 0 && i > 0 ? random.Next(i) : null, random.Next(4) == 0 ? "plug" : "",
            all.Select(rig => (IReadOnlyList<PlanSlot>)Enumerable.Range(0, rig.Slots ?? 0).Where(_ => random.Next(3) > 0).Select(slot => new PlanSlot(slot, random.Next(2) == 0)).ToList()).ToList())).ToList();
        var moves = Enumerable.Range(0, options).Select(_ => new PlanOption(
            random.Next(cards), random.Next(2), Enumerable.Range(0, rigs).Where(_ => random.Next(4) > 0).ToList(),
            Enumerable.Range(0, musts).Where(_ => random.Next(musts > 6 ? 4 : 2) == 0).ToList(),
            Enumerable.Range(0, titles).Select(_ => random.Next(2) * (long)random.Next(5) * 100).ToList())).ToList();
        return new PlanProblem(boards, all, moves, musts, random.Next(2) == 0);
    }

    public static PlanLimits Limits(Random random, PlanProblem problem) => new()
    {
        Budget = random.Next(2) == 0 ? random.Next(50) : null,
        MostBought = random.Next(4) == 0 ? random.Next(3) : null,
        LeastScore = random.Next(3) == 0 ? random.Next(600) : 0,
        Without = random.Next(4) == 0 ? new HashSet<int> { random.Next(problem.Cards.Count) } : new HashSet<int>(),
    };

    /// <summary>The order of the two goals, written apart from the search.</summary>
    public static decimal[] Key(PlanValue value, PlanGoal goal) => goal == PlanGoal.Fewest
        ? [value.Missed, value.Bought, value.Cards, value.Rigs, value.Installs, value.Doubts, -value.Score, value.Unpriced, value.Price]
        : [value.Missed, -value.Score, value.Bought, value.Cards, value.Rigs, value.Installs, value.Doubts, value.Unpriced, value.Price];
}
