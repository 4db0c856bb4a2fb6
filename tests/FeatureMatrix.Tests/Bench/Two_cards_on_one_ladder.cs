using FeatureMatrix.Bench;

namespace FeatureMatrix.Tests.Bench;

public sealed class Two_cards_on_one_ladder
{
    /// <summary>Same rig, 12 ms of processor time; the slower card's knee lies at 0.4, the faster one's at 1.0 megapixels.</summary>
    [Fact]
    public void Are_comparable_only_where_both_are_at_their_limit()
    {
        var slower = Ladders.Fitted(new Ladders.Truth(12, 0, 30));
        var faster = Ladders.Fitted(new Ladders.Truth(12, 0, 12));

        Assert.Equal(
            [
                new CardRow(512 * 384, Bound.Processor, Bound.Processor),
                new CardRow(640 * 480, Bound.Processor, Bound.Processor),
                new CardRow(800 * 600, Bound.Card, Bound.Processor),
                new CardRow(1024 * 768, Bound.Card, Bound.Processor),
                new CardRow(1280 * 1024, Bound.Card, Bound.Card),
                new CardRow(1600 * 1200, Bound.Card, Bound.Card),
            ],
            CardRow.Between(slower, faster));
        Assert.Equal(
            [
                RowMeaning.NotComparable, RowMeaning.NotComparable, RowMeaning.AtLeast, RowMeaning.AtLeast,
                RowMeaning.Comparable, RowMeaning.Comparable,
            ],
            CardRow.Between(slower, faster).Select(row => row.Meaning));
    }

    [Fact]
    public void Meet_only_at_modes_that_both_ran()
    {
        var a = Ladders.Fitted(new Ladders.Truth(2, 1, 20), [640 * 480, 800 * 600, 1024 * 768]);
        var b = Ladders.Fitted(new Ladders.Truth(2, 1, 20), [800 * 600, 1024 * 768, 1600 * 1200]);

        Assert.Equal([800 * 600, 1024 * 768], CardRow.Between(a, b).Select(row => row.Pixels));
    }

    [Theory]
    [InlineData(Bound.NotKnown, Bound.Card, RowMeaning.NotKnown)]
    [InlineData(Bound.Processor, Bound.NotKnown, RowMeaning.NotKnown)]
    [InlineData(Bound.Mixed, Bound.Mixed, RowMeaning.AtLeast)]
    [InlineData(Bound.Mixed, Bound.Card, RowMeaning.AtLeast)]
    public void Say_no_more_than_both_ladders_know(Bound a, Bound b, RowMeaning meaning) =>
        Assert.Equal(meaning, new CardRow(1, a, b).Meaning);
}
