using FeatureMatrix.Deciding;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>Laws of what outcomes are worth (DESIGN section 5).</summary>
public sealed class Worths
{
    private static readonly IReadOnlyList<Standing> All =
        [Standing.DoesNotRun, .. Enumerable.Range(0, 8).SelectMany(severe => Enumerable.Range(0, 8).Select(cosmetic => new Standing(true, severe, cosmetic)))];

    [Theory, InlineData(0.5, 0.8), InlineData(0.4, 0.85), InlineData(0.01, 0.01), InlineData(0.99, 0.99), InlineData(0.05, 0.95)]
    public void Never_contradict_the_order_of_rule_R14_nor_dominance(double severe, double cosmetic)
    {
        var scale = new WorthScale((decimal)severe, (decimal)cosmetic);
        foreach (var (one, other) in All.SelectMany(one => All.Select(other => (one, other))))
        {
            Assert.Equal(one > other, scale.Of(one) > scale.Of(other));
            Assert.True(!one.IsNoWorseThan(other) || scale.Of(one) >= scale.Of(other));
            Assert.InRange(scale.Of(one), 0, 1);
        }
    }
}
