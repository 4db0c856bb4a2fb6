namespace FeatureMatrix.Bench;

/// <summary>What a ladder says about a mode of its own card and scene. A prediction is never a measurement and is shown as such.</summary>
public abstract record Prediction
{
    private Prediction()
    {
    }

    /// <summary>The mode lies inside the measured range.</summary>
    /// <param name="Pixels">Width times height of the mode.</param>
    /// <param name="Fps">The best value, frames per second.</param>
    /// <param name="Mean">Where the mean of many runs would lie.</param>
    /// <param name="OneRun">Where one further run would lie.</param>
    /// <param name="Confidence">Of both intervals.</param>
    public sealed record Predicted(long Pixels, double Fps, Interval Mean, Interval OneRun, double Confidence) : Prediction;

    /// <summary>The mode lies below the lowest or above the highest measured one, where nothing is known.</summary>
    public sealed record OutsideMeasured(long Pixels, long Lowest, long Highest) : Prediction;
}
