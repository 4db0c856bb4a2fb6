using FeatureMatrix.Bench;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace FeatureMatrix.Tests.Bench;

/// <summary>Invented ladders of which the truth is known.</summary>
internal static class Ladders
{
    public static readonly long[] Modes =
        [512 * 384, 640 * 480, 800 * 600, 1024 * 768, 1280 * 1024, 1600 * 1200];

    /// <summary>Runs of a scene that follow the model exactly up to normal noise, a share of the frame time.</summary>
    public static IReadOnlyList<LadderRun> Simulate(
        Truth truth, int runsPerMode, double noise, MersenneTwister random, double spoilt = 0, long[]? modes = null) =>
    [
        .. (modes ?? Modes).SelectMany(pixels => Enumerable.Range(0, runsPerMode).Select(_ =>
        {
            var time = truth.TimeAt(pixels) * (1 + noise * Normal.Sample(random, 0, 1));
            // A disc or a background task at work: the run takes 30 to 80 % longer.
            if (random.NextDouble() < spoilt)
                time *= 1.3 + 0.5 * random.NextDouble();
            return new LadderRun(pixels, 1000 / time);
        })),
    ];

    /// <summary>Three runs a mode, half a percent of noise.</summary>
    public static LadderFit Fitted(Truth truth, long[]? modes = null) =>
        Assert.IsType<LadderFit>(Ladder.Of(Simulate(truth, 3, 0.005, new MersenneTwister(6), modes: modes)));

    /// <summary>t(p) = max(c, a + k · p), milliseconds and megapixels.</summary>
    internal sealed record Truth(double ProcessorTime, double FixedTime, double PixelTime)
    {
        public double Knee => (ProcessorTime - FixedTime) / PixelTime;

        public double TimeAt(long pixels) => Math.Max(ProcessorTime, FixedTime + PixelTime * pixels / 1e6);

        /// <summary>5 to 25 ms of processor time, a knee between the third-lowest and the second-highest mode, up to half the time fixed.</summary>
        public static Truth Any(MersenneTwister random)
        {
            var processor = 5 + 20 * random.NextDouble();
            var constant = processor / 2 * random.NextDouble();
            var knee = 0.4 + 0.8 * random.NextDouble();
            return new Truth(processor, constant, (processor - constant) / knee);
        }
    }
}
