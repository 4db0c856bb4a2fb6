using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>Two cards held together against the better of both, title by title, in every completion.</summary>
public sealed class Holdings_on_small_libraries
{
    private const int MostCompletions = 4000;

    [Fact]
    public void Score_as_the_better_card_does_in_every_completion() => Gen.Int[0, 1_000_000].Sample(ScoresAsTheBetter, iter: 150, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Score_as_the_better_card_does_many_times() => Gen.Int[0, 100_000_000].Sample(ScoresAsTheBetter, iter: 5000, threads: 1);

    private static void ScoresAsTheBetter(int seed)
    {
        var small = new SmallLibrary(seed);
        if (EveryCompletion.Of(small, small.First, small.Second, MostCompletions) is not { } completions)
            return;
        var one = Holding.Of(small.Library, entry => [small.Prospects.VerdictOn(entry.Title, small.First)]);
        var both = Holding.Of(small.Library, entry => [small.Prospects.VerdictOn(entry.Title, small.First), small.Prospects.VerdictOn(entry.Title, small.Second)]);
        var better = completions.ConvertAll(completion => completion with { Titles = completion.Titles.Select(title => (title.First > title.Second ? title.First : title.Second, title.First)).ToList() });

        HasTheEndsOf(better.ConvertAll(completion => EveryCompletion.Score(small, completion, first: true)), both.Score, IsExact(both.Stakes));
        HasTheEndsOf(
            better.ConvertAll(completion => EveryCompletion.Score(small, completion, first: true) - EveryCompletion.Score(small, completion, first: false)), both.Over(one),
            IsExact([.. both.Stakes, .. one.Stakes.Select(stake => stake with { Side = Side.Second })]));
        if (both.Stakes.All(stake => stake.Prospect.IsExact))
            Assert.Equal(small.Library.Entries.Where((entry, i) => entry.IsMustHave && better.TrueForAll(completion => Covers(small, completion, i))), both.Covered);
        Assert.Equal(small.Library.Entries.Where(entry => entry.IsMustHave).Except(both.Covered), both.NotCovered);
    }

    private static bool Covers(SmallLibrary small, WholeCompletion completion, int title)
    {
        var alone = completion with { Titles = completion.Titles.Select((standings, i) => i == title ? standings : (Standing.Works, Standing.Works)).ToList() };
        return !EveryCompletion.Misses(small, alone, first: true);
    }

    private static bool IsExact(IReadOnlyList<Stake> stakes) => SharedGroup.Of(stakes).All(group => group.IsExact);

    private static void HasTheEndsOf(List<double> scores, ScoreInterval interval, bool isExact)
    {
        var (low, high) = ((double)interval.Low, (double)interval.High);
        Assert.InRange(scores.Min(), low - 1e-9, high + 1e-9);
        Assert.InRange(scores.Max(), low - 1e-9, high + 1e-9);
        if (isExact)
            Assert.Equal((scores.Min(), scores.Max()), (low, high), (one, other) => Math.Abs(one.Item1 - other.Item1) < 1e-9 && Math.Abs(one.Item2 - other.Item2) < 1e-9);
    }
}
