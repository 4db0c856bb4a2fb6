using System.Globalization;
using FeatureMatrix.Bench;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

/// <summary>
/// Do the 95 % intervals of a ladder cover the truth in 95 % of ladders? Each of 5,000 simulated ladders of six modes draws its
/// own truth and a noise between 1 and 5 %.
/// </summary>
public sealed class Ladder_recovery
{
    private const int Simulations = 5000;

    /// <summary>
    /// Last result, covered in percent (the predicted mode lies anywhere between):
    /// <code>
    ///                        processor time  pixel time  fixed time  knee  prediction
    /// 3 runs a mode               95.0          95.0        94.8     95.2     95.3
    /// 5 runs a mode               95.0          94.7        94.0     94.5     95.0
    /// 3 runs, 4 % spoilt          95.5          94.7        94.5     94.4     94.7
    /// </code>
    /// The simulation itself is uncertain by 0.6 points. In the worst single case seen (a mode almost at the knee, 5 % of noise, spoilt
    /// runs) the prediction beside the knee fell to 93 %.
    /// </summary>
    [Theory]
    [InlineData(3, 0)]
    [InlineData(5, 0)]
    [InlineData(3, 0.04)]
    public void Intervals_cover_the_truth_as_often_as_they_claim(int runsPerMode, double spoilt)
    {
        var random = new MersenneTwister(20061231);
        var covered = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < Simulations; i++)
        {
            var truth = Ladders.Truth.Any(random);
            var noise = 0.01 + 0.04 * random.NextDouble();
            var fit = Assert.IsType<LadderFit>(
                Ladder.Of(Ladders.Simulate(truth, runsPerMode, noise, random, spoilt)));
            Count("processor time", fit.ProcessorTime.Interval.Contains(truth.ProcessorTime));
            Count("pixel time", fit.PixelTime.Interval.Contains(truth.PixelTime));
            Count("fixed time", fit.FixedTime.Interval.Contains(truth.FixedTime));
            Count("knee", fit.Knee.Interval.Contains(truth.Knee));
            var between = random.Next((int)Ladders.Modes[0], (int)Ladders.Modes[^1]);
            var predicted = Assert.IsType<Prediction.Predicted>(fit.Predict(between));
            Count("prediction", predicted.Mean.Contains(1000 / truth.TimeAt(between)));
        }

        var result = string.Join(", ", covered.Select(pair =>
            string.Create(CultureInfo.InvariantCulture, $"{pair.Key} {100.0 * pair.Value / Simulations:F1}")));
        TestContext.Current.TestOutputHelper!.WriteLine(result);
        Assert.True(covered.Values.All(hits => Math.Abs(100.0 * hits / Simulations - 95) <= 1.5), result);

        void Count(string quantity, bool hit) => covered[quantity] = covered.GetValueOrDefault(quantity) + (hit ? 1 : 0);
    }
}
