using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Deciding.Kinds;
using FeatureMatrix.Tests.Deciding.Generated;
using FeatureMatrix.Tests.Resolving.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>The quick way, sums by kinds of titles and setups, against every completion, and against the slow way on libraries too large for that.</summary>
public sealed class Sums_by_kinds
{
    private const int MostCompletions = 2000;
    private const int Usual = 100;
    private const int Campaign = 4000;

    [Fact]
    public void Say_who_wins_as_every_completion_does() => Gen.Int[0, 1_000_000].Sample(AgreesWithBruteForce, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Say_who_wins_as_every_completion_does_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithBruteForce, iter: Campaign, threads: 1);

    [Fact]
    public void Say_who_wins_in_catalogs_with_every_odd_corner() => AgreeInOddCorners(Usual);

    [Fact, Trait("Category", "campaign")]
    public void Say_who_wins_in_catalogs_with_every_odd_corner_many_times() => AgreeInOddCorners(Campaign);

    [Fact]
    public void Agree_with_the_slow_way_on_larger_libraries() => Gen.Int[0, 1_000_000].Sample(AgreesWithTheSlowWay, iter: Usual / 4, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Agree_with_the_slow_way_on_larger_libraries_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithTheSlowWay, iter: Campaign / 4, threads: 1);

    [Fact]
    public void Decide_most_pairs_of_small_libraries_alone()
    {
        var (told, all) = (0, 0);
        for (var seed = 0; seed < 60; seed++)
        {
            var small = new SmallLibrary(seed);
            foreach (var (_, _, winner) in Pairs(small))
            {
                all++;
                told += winner is null ? 0 : 1;
            }
        }

        Assert.Equal(180, all);
        Assert.InRange(told, 120, 180);
    }

    private static void AgreeInOddCorners(int catalogs) => CatalogGenerator.Plans.Sample(
        plan =>
        {
            var generated = CatalogBuilder.Build(plan);
            AgreesWithBruteForce(new SmallLibrary(generated.Catalog, generated.Terms));
        },
        iter: catalogs, threads: 1, print: plan => CatalogDump.Of(CatalogBuilder.Build(plan)));

    private static void AgreesWithBruteForce(int seed) => AgreesWithBruteForce(new SmallLibrary(seed));

    private static void AgreesWithBruteForce(SmallLibrary small)
    {
        foreach (var (first, second, winner) in Pairs(small))
        {
            if (EveryCompletion.Of(small, first.Card, second.Card, MostCompletions) is not { } completions)
                continue;
            var expected = completions.Select(completion => EveryCompletion.WinnerIn(small, completion)).Distinct().ToList() is [var only] ? only : Winner.Undecided;
            if (winner is not null)
                Assert.Equal(expected, winner);
            HasTheEndsOf(completions.Select(completion => EveryCompletion.Score(small, completion, first: true)).ToList(), first);
            HasTheEndsOf(completions.Select(completion => EveryCompletion.Score(small, completion, first: false)).ToList(), second);
            foreach (var (entry, coverage) in first.MustHaves)
                Assert.Equal(small.Prospects.Stake(entry, first.Card).CoverageUnder(small.Library.Policy), coverage);
        }
    }

    private static void HasTheEndsOf(List<double> scores, CardSums sums)
    {
        var (low, high) = ((double)sums.Score.Low, (double)sums.Score.High);
        if (sums.IsExact)
        {
            Assert.Equal(scores.Min(), low, 1e-9);
            Assert.Equal(scores.Max(), high, 1e-9);
        }
        else
        {
            Assert.InRange(scores.Min(), low - 1e-9, high + 1e-9);
            Assert.InRange(scores.Max(), low - 1e-9, high + 1e-9);
        }
    }

    private static void AgreesWithTheSlowWay(int seed)
    {
        var small = new SmallLibrary(seed, titles: 12);
        foreach (var (first, second, winner) in Pairs(small))
        {
            var slow = CardComparison.Of(small.Prospects, first.Card, second.Card);
            // Past its limit the slow way calls undecided what it cannot walk; what it decides holds all the same.
            if (winner is not null && (slow.IsExact || slow.Winner != Winner.Undecided))
                Assert.Equal(slow.Winner, winner);
            if (first.IsExact && slow.IsExact)
                Assert.Equal(slow.FirstScore, CardComparison.Rounded(first.Score));
        }
    }

    private static IEnumerable<(CardSums First, CardSums Second, Winner? Winner)> Pairs(SmallLibrary small)
    {
        var cards = small.Catalog.Cards;
        var worths = new WorthTable(WorthScale.Of(small.Library.Policy));
        var kinds = KindTable.Of(small.Resolver, small.Prospects, cards, small.TermsOf);
        var sums = cards.Select(card => CardSums.Of(kinds, small.Prospects, card, worths)).ToList();
        return
            from i in Enumerable.Range(0, sums.Count)
            from j in Enumerable.Range(i + 1, sums.Count - i - 1)
            select (sums[i], sums[j], PairOfSums.WinnerOf(kinds, worths, sums[i], sums[j]));
    }
}
