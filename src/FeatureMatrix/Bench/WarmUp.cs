namespace FeatureMatrix.Bench;

/// <summary>Whether first runs differ from the later ones, as they do while caches and textures are still being filled.</summary>
public abstract record WarmUp
{
    private WarmUp()
    {
    }

    /// <summary>No condition has three runs, or the later ones do not scatter at all.</summary>
    public sealed record NotKnown : WarmUp;

    /// <summary>First runs were tested against the later ones.</summary>
    /// <param name="Percent">How much faster the first runs are than the later ones; below 0 where slower.</param>
    /// <param name="P">The probability of such a difference, to either side, where there is none.</param>
    /// <param name="Confidence">The confidence asked.</param>
    public sealed record Tested(double Percent, double P, double Confidence) : WarmUp
    {
        /// <summary>Whether the first runs stand apart; they are then better discarded, with that reason.</summary>
        public bool Shown => P < 1 - Confidence;
    }

    /// <summary>
    /// Tests all conditions together. In each, the logarithm of the first run is compared with the mean logarithm m of the n − 1
    /// later ones, whose difference has the variance σ² n / (n − 1); σ² is pooled over the later runs of all conditions, and differences
    /// are weighted by the reciprocal of their variances, which gives Student t with Σ (n − 2) degrees of freedom.
    /// </summary>
    /// <param name="conditions">Frames per second, all above 0, in the order of the runs.</param>
    /// <param name="confidence">At which a difference counts as shown.</param>
    public static WarmUp Of(IEnumerable<Sample> conditions, double confidence = Confidence.Usual)
    {
        var (weights, weighted, squares, freedom) = (0.0, 0.0, 0.0, 0);
        foreach (var runs in conditions.Where(runs => runs.Count >= 3))
        {
            var logarithms = runs.Values.Select(fps => Math.Log(fps)).ToList();
            var later = Sample.Of(logarithms.Skip(1));
            var weight = (runs.Count - 1.0) / runs.Count;
            weights += weight;
            weighted += weight * (logarithms[0] - later.Mean!.Value);
            squares += Math.Pow(later.StandardDeviation!.Value, 2) * (later.Count - 1);
            freedom += later.Count - 1;
        }

        if (freedom == 0 || squares == 0)
            return new NotKnown();
        var difference = weighted / weights;
        var t = difference / Math.Sqrt(squares / freedom / weights);
        return new Tested(100 * (Math.Exp(difference) - 1), Confidence.TwoSidedP(t, freedom), Confidence.Checked(confidence));
    }
}
