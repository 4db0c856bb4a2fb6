using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>Rule R1: which of several statements about one capability counts.</summary>
internal static class FactWeighing
{
    /// <summary>What the facts decide together.</summary>
    /// <param name="Claims">One state where it is decided; several where they disagree; none where there is no fact.</param>
    /// <param name="Reason">Stated, Conflict, HearsayOnly or Silent.</param>
    /// <param name="Winners">The facts that decide, or that disagree.</param>
    /// <param name="Losers">The rest.</param>
    internal sealed record Decision(
        IReadOnlyList<Support> Claims, AnswerReason Reason, IReadOnlyList<SupplyFact> Winners, IReadOnlyList<SupplyFact> Losers)
    {
        public static Decision None { get; } = new([], AnswerReason.Silent, [], []);

        public bool IsSettled => Reason == AnswerReason.Stated;

        public Grade? Grade => Winners.Count == 0 ? null : Winners.Max(fact => fact.Evidence.Grade);
    }

    /// <summary>
    /// Weighs facts that all cover the setup in question. The narrowest count; among them the better grade; if those disagree
    /// it is a conflict, never a fall-back to something wider. Hearsay that is narrower than a better fact and disagrees
    /// with it makes a conflict; hearsay alone is reported as such.
    /// </summary>
    /// <example>
    /// Chip: documented yes. Driver 2.10 and later: measured no. Both cover the setup with 2.11: the narrower no counts.
    /// </example>
    public static Decision Weigh(IReadOnlyList<SupplyFact> covering, Capability asked)
    {
        var speaking = covering.Where(fact => fact.ClaimFor(asked) != Support.Unknown).ToList();
        if (speaking.Count == 0)
            return Decision.None;

        var narrowest = speaking.Where(fact => !speaking.Exists(other => other.Scope.IsNarrowerThan(fact.Scope))).ToList();
        var best = narrowest.Max(fact => fact.Evidence.Grade);
        if (best > Grade.Hearsay)
            return Among(narrowest.Where(fact => fact.Evidence.Grade == best).ToList(), AnswerReason.Stated);

        var better = speaking.Where(fact => fact.Evidence.Grade > Grade.Hearsay).ToList();
        if (better.Count == 0)
            return Among(narrowest, AnswerReason.HearsayOnly);

        var wider = Weigh(better, asked);
        var hearsay = Claims(narrowest);
        return wider.IsSettled && hearsay.Count == 1 && hearsay[0] == wider.Claims[0]
            ? Result(wider.Winners, AnswerReason.Stated)
            : Result([.. wider.Winners, .. narrowest], AnswerReason.Conflict);

        Decision Among(List<SupplyFact> winners, AnswerReason reasonIfAgreed) =>
            Result(winners, Claims(winners).Count == 1 || reasonIfAgreed == AnswerReason.HearsayOnly ? reasonIfAgreed : AnswerReason.Conflict);

        Decision Result(IReadOnlyList<SupplyFact> winners, AnswerReason reason) =>
            new(Claims(winners), reason, winners, speaking.Where(fact => !winners.Contains(fact)).ToList());

        List<Support> Claims(IEnumerable<SupplyFact> facts) =>
            facts.Select(fact => fact.ClaimFor(asked)).Distinct().Order().ToList();
    }
}
