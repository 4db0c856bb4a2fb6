using CsCheck;
using FeatureMatrix.Deciding;
using FeatureMatrix.Tests.Deciding.Generated;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>What a page is given to weigh a comparison anew, followed with plain arithmetic, against the comparison weighed anew.</summary>
public sealed class Exported_differences
{
    [Fact]
    public void Follow_changed_weights_and_worths() => Gen.Int[0, 1_000_000].Sample(FollowsChanges, iter: 150, threads: 1);

    [Fact, Trait("Category", "campaign")]
    public void Follow_changed_weights_and_worths_many_times() => Gen.Int[0, 100_000_000].Sample(FollowsChanges, iter: 5000, threads: 1);

    [Fact]
    public void Are_locked_where_they_would_be_too_large()
    {
        var small = new SmallLibrary(1);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var export = DifferenceExport.Of(comparison);
        Assert.False(export.IsLocked);
        Assert.Equal(comparison.Groups.Select(group => group.Stakes), export.Groups.Select(group => group.Stakes));
        Assert.Equal(comparison.Titles.Where(title => !title.IsEqual).Select(title => title.Entry.Title), export.ByTitle.Keys);
        Assert.All(export.Groups, group => Assert.True(group.Branches.Count * group.Stakes.Count <= DifferenceExport.MostSpans));
    }

    private static void FollowsChanges(int seed)
    {
        var small = new SmallLibrary(seed);
        var comparison = CardComparison.Of(small.Prospects, small.First, small.Second);
        var export = DifferenceExport.Of(comparison);
        var random = new Random(seed);
        var weights = small.Library.Entries.ToDictionary(entry => entry.Title, _ => random.Next(0, 5) * 0.5);
        var scale = new WorthScale(0.1m * random.Next(1, 10), 0.1m * random.Next(1, 10));

        var changed = comparison.With(scale, entry => weights[entry.Title]);

        if (export.IsLocked || !changed.IsExact)
            return;
        Assert.Equal(changed.Difference, Sum(export.Groups));
        foreach (var title in changed.Titles.Where(title => export.ByTitle.ContainsKey(title.Entry.Title)))
            Assert.Equal(new ScoreInterval(decimal.Round(title.Difference.Low, 18), decimal.Round(title.Difference.High, 18)), Sum(export.ByTitle[title.Entry.Title]));

        ScoreInterval Sum(IReadOnlyList<ExportedGroup> groups) => new(
            decimal.Round(groups.Sum(group => group.Branches.Min(branch => branch.Select((span, i) => Worths(group.Stakes[i], span).Min()).Sum())), 18),
            decimal.Round(groups.Sum(group => group.Branches.Max(branch => branch.Select((span, i) => Worths(group.Stakes[i], span).Max()).Sum())), 18));

        List<decimal> Worths(Stake stake, ExportedSpan span) => new[] { span.Covered, span.Missed }.OfType<(Standing Low, Standing High)>()
            .SelectMany(ends => new[] { ends.Low, ends.High })
            .Select(standing => (stake.Side == Side.First ? 1 : -1) * (decimal)weights[stake.Entry.Title] * scale.Of(standing)).ToList();
    }
}
