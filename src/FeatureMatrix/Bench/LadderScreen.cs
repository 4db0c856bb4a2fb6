namespace FeatureMatrix.Bench;

/// <summary>
/// Sets aside the runs of a ladder that lie too far from the others of their mode: the generalized extreme Studentized
/// deviate test (B. Rosner, Technometrics 25, 1983) on externally Studentized residuals (R. D. Cook and S. Weisberg,
/// Residuals and Influence in Regression, 1982, section 2.2.2). The farthest run is taken out, one after the other, up to a fifth of all; those up to the
/// last step that passes Student t at 1 − 0.01 / 2N are the outliers, so that two of them cannot hide each other. All modes lend
/// their spread, so three runs a mode are enough; a run without two companions in its mode is never taken, because
/// nobody could say which of two is odd.
/// </summary>
internal static class LadderScreen
{
    private const double Significance = 0.01;

    public static (IReadOnlyList<LadderRun> Kept, IReadOnlyList<LadderRun> Outlying) Of(IReadOnlyList<LadderRun> runs)
    {
        List<LadderRun> kept = [.. runs];
        List<LadderRun> taken = [];
        var outliers = 0;
        while (taken.Count < runs.Count / 5 && Farthest(kept) is var (run, significant))
        {
            kept.Remove(run);
            taken.Add(run);
            if (significant)
                outliers = taken.Count;
        }

        kept.AddRange(taken.Skip(outliers));
        return (kept, [.. taken.Take(outliers)]);
    }

    private static (LadderRun Run, bool Significant)? Farthest(List<LadderRun> runs)
    {
        var deviations = runs.GroupBy(run => run.Pixels).SelectMany(Deviations).ToList();
        var freedom = runs.Count - runs.Select(run => run.Pixels).Distinct().Count() - 1;
        var judged = deviations.Where(run => run.Companions >= 2).ToList();
        if (freedom < 1 || judged.Count == 0)
            return null;

        var farthest = judged.MaxBy(run => run.Studentized);
        var critical = Confidence.TwoSidedT(1 - Significance / runs.Count, freedom);
        var others = Math.Max(0, deviations.Sum(run => run.Squared) - farthest.Studentized) / freedom;
        return (farthest.Run, farthest.Studentized > critical * critical * others + 1e-18);
    }

    private static IEnumerable<(LadderRun Run, int Companions, double Squared, double Studentized)> Deviations(
        IEnumerable<LadderRun> mode)
    {
        LadderRun[] runs = [.. mode];
        var mean = runs.Average(run => run.Time);
        var scale = runs.Select(run => run.Time).Order().ElementAt(runs.Length / 2);
        return runs.Select(run =>
        {
            var share = (run.Time - mean) / scale;
            return (run, runs.Length - 1, share * share, share * share / (1 - 1.0 / runs.Length));
        });
    }
}
