using FeatureMatrix.Deciding;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>At the break-even price a card gives as much score for the money as another at its price.</summary>
public sealed class Prices_that_break_even
{
    private static readonly PriceRange TenToTwelve = new(10, 12, "EUR", true);

    /// <summary>Worked by hand: 30 points for 10 to 12 against 15 points is half the price.</summary>
    [Fact]
    public void Stand_to_each_other_as_the_scores_do() =>
        Assert.Equal(TenToTwelve with { Low = 5, High = 6 }, PriceRange.BreakEven(Points(15, 15), Points(30, 30), TenToTwelve));

    /// <summary>Lowest: 10 · 10 ÷ 40; highest: 12 · 20 ÷ 20.</summary>
    [Fact]
    public void Take_the_cautious_end_of_every_range() =>
        Assert.Equal(TenToTwelve with { Low = 2.5m, High = 12 }, PriceRange.BreakEven(Points(10, 20), Points(20, 40), TenToTwelve));

    [Theory, InlineData(0, 0), InlineData(0, 5)]
    public void Are_none_where_the_other_may_score_nothing(int low, int high) => Assert.Null(PriceRange.BreakEven(Points(1, 1), Points(low, high), TenToTwelve));

    [Fact]
    public void Rest_on_sales_where_there_were_any_and_on_one_currency()
    {
        var card = new Card
        {
            Id = "dune",
            Name = "Dune",
            Chip = new Chip { Id = "sand", Name = "Sand" },
            Evidence = new Evidence(Grade.Documented, null, Origin.None),
            Prices = [new Price(5, 9, "EUR", false, null, ""), new Price(20, 25, "EUR", true, null, ""), new Price(14, 22, "EUR", true, null, ""), new Price(1, 2, "GBP", true, null, "")],
        };

        Assert.Equal(new PriceRange(14, 25, "EUR", true), PriceRange.Of(card, "EUR"));
        Assert.Equal(new PriceRange(14, 25, "EUR", true), PriceRange.Of(card, ""));
        Assert.Equal(new PriceRange(1, 2, "GBP", true), PriceRange.Of(card, "GBP"));
        Assert.Null(PriceRange.Of(card, "USD"));
    }

    private static ScoreInterval Points(decimal low, decimal high) => new(low, high);
}
