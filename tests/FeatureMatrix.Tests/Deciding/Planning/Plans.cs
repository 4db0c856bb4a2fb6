using CsCheck;
using FeatureMatrix.Deciding.Planning;

namespace FeatureMatrix.Tests.Deciding.Planning;

/// <summary>The search for plans against brute force, a general-purpose solver, and what must hold of any plan.</summary>
public sealed class Plans
{
    private const int MostMoves = 12;
    private const int Usual = 250;
    private const int Campaign = 12_000;

    [Fact]
    public void Equal_brute_force_over_every_set_of_installs() => Gen.Int[0, 1_000_000].Sample(AgreesWithBruteForce, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Equal_brute_force_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithBruteForce, iter: Campaign, threads: 2);

    [Fact]
    public void Keep_every_limit_and_count_rightly_what_they_report() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var random = new Random(seed);
        var problem = PlanProblems.Make(random, cards: 8, rigs: 3, slots: 3, options: 24, musts: 10, titles: 8);
        var limits = PlanProblems.Limits(random, problem);
        foreach (var goal in Enum.GetValues<PlanGoal>())
        {
            if (PlanSearch.Of(problem, goal, limits) is not { } plan)
                continue;
            var value = EveryPlan.ValueOf(problem, plan.Moves.Select(move => (move.Option, move.Rig)).ToList(), limits);
            Assert.Equal(value, plan.Value);
            Assert.True(plan.Value.Score >= limits.LeastScore);
            Assert.Equal(plan.Value.Missed, plan.Missed.Count);
            Assert.All(plan.Seats.GroupBy(seat => (seat.Rig, seat.Slot)).Where(group => group.Key.Slot is not null), group => Assert.Single(group));
            Assert.All(plan.Seats.Where(seat => seat.Slot is not null), seat => Assert.Contains(problem.Cards[seat.Card].Slots[seat.Rig], slot => slot.Number == seat.Slot));
        }
    }, iter: Usual, threads: 1);

    [Fact]
    public void Take_more_must_haves_than_a_word_has_bits()
    {
        var options = Enumerable.Range(0, 10).Select(i => new PlanOption(i, 0, [0], Enumerable.Range(0, 200).Where(must => must % 10 == i).ToList(), [1])).ToList();
        var cards = Enumerable.Range(0, 10).Select(_ => new PlanCard(1, null, null, "", [[]])).ToList();
        var plan = PlanSearch.Of(new PlanProblem(cards, [new PlanRig(null, null)], options, 201, true), PlanGoal.Fewest)!;
        Assert.Equal(new PlanValue(1, 0, 10, 1, 10, 0, 1, 0, 0), plan.Value);
        Assert.Equal([200], plan.Missed);
        Assert.True(plan.IsProved);
    }

    [Fact]
    public void Say_so_and_give_a_bound_where_the_search_is_cut_short()
    {
        var random = new Random(5);
        var problem = PlanProblems.Make(random, cards: 120, rigs: 4, slots: 12, options: 900, musts: 90, titles: 300) with { OneDriverPerSystem = false };
        var plan = PlanSearch.Of(problem, PlanGoal.Most)!;
        Assert.False(plan.IsProved);
        Assert.Equal(EveryPlan.ValueOf(problem, plan.Moves.Select(move => (move.Option, move.Rig)).ToList(), new PlanLimits()), plan.Value);
        Assert.True(plan.Bound.Against(plan.Value, PlanGoal.Most) < 0);
    }

    /// <summary>The answer-set solver clingo, from the Debian package gringo, optimises the same values in the same order.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6)]
    public void Agree_with_a_general_purpose_solver_on_larger_plans(int seed) => AgreesWithSolver(seed);

    [Fact, Trait("Category", "campaign")]
    public void Agree_with_a_general_purpose_solver_on_many_larger_plans()
    {
        for (var seed = 100; seed < 250; seed++)
            AgreesWithSolver(seed);
    }

    private static void AgreesWithSolver(int seed)
    {
        var random = new Random(seed);
        var problem = PlanProblems.Make(random, cards: 14, rigs: 3, slots: 3, options: 45, musts: 20, titles: 12);
        var limits = PlanProblems.Limits(random, problem) with { LeastScore = 0 };
        var goal = seed % 2 == 0 ? PlanGoal.Fewest : PlanGoal.Most;
        var plan = PlanSearch.Of(problem, goal, limits)!;
        Assert.True(plan.IsProved);
        Assert.Equal(SolvedPlan.Best(problem, goal, limits), plan.Value);
    }

    private static void AgreesWithBruteForce(int seed)
    {
        var random = new Random(seed);
        var problem = PlanProblems.Make(random, cards: random.Next(1, 5), rigs: random.Next(1, 4), slots: 3, options: random.Next(1, 8), musts: random.Next(0, 6), titles: random.Next(1, 5));
        if (problem.Options.Sum(option => option.Rigs.Count) > MostMoves)
            return;
        var limits = PlanProblems.Limits(random, problem);
        foreach (var goal in Enum.GetValues<PlanGoal>())
        {
            var plan = PlanSearch.Of(problem, goal, limits);
            var best = EveryPlan.Best(problem, goal, limits);
            Assert.Equal(best, plan?.Value);
            Assert.True(plan is null or { IsProved: true });
        }
    }
}
