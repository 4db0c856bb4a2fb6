using System.Globalization;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>A straight axis: values to places in the drawing, and round values to mark.</summary>
internal sealed record Scale(double Low, double High, double Start, double End)
{
    private static readonly double[] RoundSteps = [1, 2, 2.5, 5, 10];

    /// <summary>An axis from a round value at or below the lowest to one at or above the highest.</summary>
    public static Scale Round(double lowest, double highest, double start, double end)
    {
        var step = Step(Math.Max(highest - lowest, 1e-9));
        return new Scale(Math.Floor(lowest / step) * step, Math.Ceiling(highest / step) * step, start, end);
    }

    /// <summary>The place of a value, in the drawing's units.</summary>
    public double At(double value) => Start + (value - Low) / (High - Low) * (End - Start);

    /// <summary>Round values from the low to the high end, about five.</summary>
    public IEnumerable<double> Ticks()
    {
        var step = Step(High - Low);
        for (var i = (int)Math.Ceiling(Low / step - 1e-9); i * step <= High + 1e-9 * step; i++)
            yield return i * step;
    }

    /// <summary>A value as it stands at the axis.</summary>
    public static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static double Step(double span)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(span / 5)));
        return RoundSteps.First(step => step * power >= span / 5 - 1e-12) * power;
    }
}
