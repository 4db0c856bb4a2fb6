using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>Places in a ranking against who beats whom in every completion.</summary>
public sealed class Rankings_on_small_libraries
{
    private const int MostCompletions = 2000;
    private const int Usual = 100;
    private const int Campaign = 5000;

    [Fact]
    public void Count_who_beats_whom_in_every_completion() => Gen.Int[0, 1_000_000].Sample(AgreesWithBruteForce, iter: Usual, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Count_who_beats_whom_many_times() => Gen.Int[0, 100_000_000].Sample(AgreesWithBruteForce, iter: Campaign, threads: 2);

    private static void AgreesWithBruteForce(int seed)
    {
        var small = new SmallLibrary(seed);
        var cards = small.Catalog.Cards;
        var winners = new Dictionary<(Card, Card), Winner>();
        foreach (var (one, other) in cards.SelectMany(one => cards.Where(other => other != one).Select(other => (one, other))))
        {
            if (EveryCompletion.Of(small, one, other, MostCompletions) is not { } completions || !CardComparison.Of(small.Prospects, one, other).IsExact)
                return;
            winners[(one, other)] = completions.Select(completion => EveryCompletion.WinnerIn(small, completion)).Distinct().ToList() is [var only] ? only : Winner.Undecided;
        }

        var ranked = Ranking.Of(small.Prospects, small.Resolver, small.TermsOf, cards);
        Assert.Equal(cards.Count, ranked.Count);
        foreach (var place in ranked)
        {
            var against = cards.Where(other => other != place.Card).ToLookup(other => winners[(place.Card, other)]);
            Assert.Equal(1 + against[Winner.Second].Count(), place.Best);
            Assert.Equal(place.Best + against[Winner.Undecided].Count(), place.Worst);
            Assert.Equal(against[Winner.Equal], place.EqualTo);
            Assert.Equal(against[Winner.Undecided], place.UndecidedWith);
        }
    }
}
