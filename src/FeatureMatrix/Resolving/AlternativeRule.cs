namespace FeatureMatrix.Resolving;

/// <summary>Rule R16: what is shown beside the headline, and what is recommended.</summary>
internal static class AlternativeRule
{
    /// <summary>
    /// Permitted wrapped or forced routes with a milder outcome than the headline, for certain or perhaps: the best for each
    /// wrapper version and way of installing, best first.
    /// </summary>
    public static IReadOnlyList<RouteFinding> Alternatives(Headline headline, IReadOnlyList<RouteFinding> permitted) =>
        permitted
            .Where(finding => !headline.By.Contains(finding) && (!finding.Route.IsNative || finding.Route.IsForced) && IsMilder(finding.Range, headline.Range))
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare))
            .DistinctBy(finding => (finding.Route.Wrapper, finding.Route.Setup.Install)).ToList();

    /// <summary>
    /// An alternative replaces the headline only if it removes a severe or ungraded loss and is not measured under the speed
    /// floor; among the rest the route best in its worst completion, then in its best, then native, then listed.
    /// </summary>
    public static RouteFinding? Recommend(Headline headline, IReadOnlyList<RouteFinding> alternatives, Terms terms)
    {
        var worst = headline.Range.Worst;
        return headline.By
            .Concat(alternatives.Where(finding => RemovesGraveLoss(finding.Range.Worst) && terms.IsMeasuredUnderFloor?.Invoke(finding.Route) != true))
            .Order(Comparer<RouteFinding>.Create(RouteFinding.Compare)).FirstOrDefault();

        bool RemovesGraveLoss(Outcome offered) =>
            offered.Runs && (!worst.Runs || offered.Severe + offered.Ungraded < worst.Severe + worst.Ungraded);
    }

    private static bool IsMilder(OutcomeRange offered, OutcomeRange than)
    {
        var worst = Outcome.CompareWorst(offered.Worst, than.Worst);
        return worst < 0 || Outcome.CompareBest(offered.Best, than.Best) < 0;
    }
}
