using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Planning;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding.Planning;

/// <summary>Plans for generated libraries against every set of installs, each title judged over every completion.</summary>
public sealed class Plans_of_small_libraries
{
    private const int MostCompletions = 2000;
    private const int MostSetups = 9;
    private const int Usual = 60;
    private const int Campaign = 5000;

    [Fact]
    public void Equal_brute_force_over_sets_of_setups() => Gen.Int[0, 1_000_000].Sample(AgreesWithBruteForce, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Equal_brute_force_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithBruteForce, iter: Campaign, threads: 2);

    private static void AgreesWithBruteForce(int seed)
    {
        var small = new SmallLibrary(seed);
        var owned = new Random(seed).Next(3);
        var setups = small.Catalog.Cards.SelectMany(small.Resolver.SetupsOf).Where(setup => setup.Install == Install.Listed).ToList();
        if (setups.Count > MostSetups)
            return;
        var worst = setups.Select(setup => small.Library.Entries.Select(entry => EveryCompletion.Worst(small, entry, setup, MostCompletions)).ToList()).ToList();
        if (worst.Exists(list => list.Contains(null)))
            return;
        var inventory = Inventory.Of(
            small.Library, small.Catalog.Cards, [], card => setups.Where(setup => setup.Card == card), (title, setup) => small.Resolver.Resolve(title, setup, small.TermsOf(title)));
        var problem = inventory.ToProblem(card => small.Catalog.Cards[owned] == card ? 1 : 0, card => card.Prices[0].High);
        var plan = PlanSearch.Of(problem, PlanGoal.Fewest)!;

        var policy = small.Library.Policy;
        var best = Enumerable.Range(0, 1 << setups.Count).Select(set => Enumerable.Range(0, setups.Count).Where(i => (set >> i & 1) != 0).ToList())
            .Where(set => !policy.OneDriverPerOs || set.GroupBy(i => (setups[i].Card, setups[i].Os)).All(group => group.Count() == 1))
            .Select(set => (
                Missed: small.Library.Entries.Select((entry, title) => entry.IsMustHave && !set.Exists(i => Covers(entry, worst[i][title]!.Value))).Count(missed => missed),
                Bought: set.Select(i => setups[i].Card).Distinct().Count(card => card != small.Catalog.Cards[owned]),
                Cards: set.Select(i => setups[i].Card).Distinct().Count(), Installs: set.Count,
                Loss: -small.Library.Entries.Select((entry, title) => entry.Weight * set.Select(i => Worth(worst[i][title]!.Value)).DefaultIfEmpty(0).Max()).Sum()))
            .Min();
        var value = plan.Value;
        Assert.Equal((best.Missed, best.Bought, best.Cards, best.Installs), (value.Missed, value.Bought, value.Cards, value.Installs));
        Assert.Equal(-best.Loss, (double)value.ScoreNumber, 1e-7);

        double Worth(Standing standing) => standing.Runs
            ? Math.Pow(policy.SevereWorth, standing.Severe) * (1 - ((1 - policy.SevereWorth) * (1 - Math.Pow(policy.CosmeticWorth, standing.Cosmetic))))
            : 0;
    }

    private static bool Covers(LibraryEntry entry, Standing standing) => entry.MustHaveTolerance switch
    {
        Strength.Bonus => standing is { Runs: true, Severe: 0, Cosmetic: 0 },
        Strength.Cosmetic => standing is { Runs: true, Severe: 0 },
        _ => standing.Runs,
    };
}
