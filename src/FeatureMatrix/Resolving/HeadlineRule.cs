namespace FeatureMatrix.Resolving;

/// <summary>
/// Rule R16: the headline is the best listed native route where one certainly runs, else the best permitted route in each
/// completion. Rule R14: its label.
/// </summary>
internal static class HeadlineRule
{
    /// <summary>Chooses and labels the headline.</summary>
    /// <param name="all">Every route, permitted or not.</param>
    /// <param name="permitted">Permitted routes that may run.</param>
    /// <param name="pool">The best of the permitted ones in each completion.</param>
    public static Headline Choose(IReadOnlyList<RouteFinding> all, IReadOnlyList<RouteFinding> permitted, BestRoute.Pool pool)
    {
        var native = permitted
            .Where(finding => finding.Route.IsNative && finding.Route.IsListed && finding.Range.CertainlyRuns)
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).FirstOrDefault();
        if (native is not null)
        {
            return new Headline
            {
                Outcome = native.Range.IsCertain ? CertainLabel(native.Range.Best) : OutcomeLabel.RunsNotKnown,
                Route = RouteLabel.Natively,
                Range = native.Range,
                By = [native],
            };
        }

        var label = LabelOf(permitted, pool);
        return new Headline
        {
            Outcome = label,
            Route = RouteOf(all, Leading(pool)),
            Range = label == OutcomeLabel.RunsByOneOf
                ? pool.Range with { Deciding = pool.DecidingRoute.Union(pool.Range.Deciding).ToList() }
                : pool.Range,
            By = NamesAll(pool) ? pool.By : Leading(pool),
        };
    }

    private static OutcomeLabel LabelOf(IReadOnlyList<RouteFinding> permitted, BestRoute.Pool pool)
    {
        if (pool.Range.CertainlyFails)
            return OutcomeLabel.DoesNotRun;
        if (!pool.Range.CertainlyRuns)
            return OutcomeLabel.NotKnown;
        if (!permitted.Any(finding => finding.Range.CertainlyRuns))
            return OutcomeLabel.RunsByOneOf;
        return pool.Range.IsCertain ? CertainLabel(pool.Range.Best) : OutcomeLabel.RunsNotKnown;
    }

    private static OutcomeLabel CertainLabel(Outcome outcome) =>
        outcome.Losses.Count == 0 ? OutcomeLabel.Works : OutcomeLabel.Loses;

    /// <summary>True where no single route stands for the cell: each completion that runs may do so by another.</summary>
    private static bool NamesAll(BestRoute.Pool pool) => pool.Range.CertainlyRuns && !Leading(pool)[0].Range.CertainlyRuns;

    /// <summary>The route that leads: best in its worst completion, then in its best.</summary>
    private static List<RouteFinding> Leading(BestRoute.Pool pool) =>
        pool.By.Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).Take(1).ToList();

    /// <summary>"Wrapper only" judges native routes before policy (rule R14).</summary>
    private static RouteLabel RouteOf(IReadOnlyList<RouteFinding> all, IReadOnlyList<RouteFinding> leading)
    {
        if (leading.Count == 0)
            return RouteLabel.None;
        if (leading[0].Route.IsNative)
            return RouteLabel.Natively;
        var native = all.Where(finding => finding.Route.IsNative && !finding.Range.CertainlyFails).ToList();
        if (native.Count == 0)
            return RouteLabel.WrapperOnly;
        if (native.TrueForAll(finding => !finding.Form.IsPermitted))
            return RouteLabel.NativeNotPermitted;
        return native.Exists(finding => finding.Form.IsPermitted && finding.Range.CertainlyRuns)
            ? RouteLabel.NativeOnlyForced
            : RouteLabel.NativeNotKnown;
    }
}
