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

        /// <summary>The grade that the winners share, apart from hearsay that doubts them and stands last; null where there are none.</summary>
        public Grade? Grade => Winners.Count == 0 ? null : Winners[0].Evidence.Grade;
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

        // Hearsay is weighed apart: it overrides nothing, so it must not make a better-graded wider fact fall out either.
        var hearsay = Narrowest(speaking).Where(fact => fact.Evidence.Grade == Grade.Hearsay).ToList();
        var narrowest = Narrowest(speaking.Where(fact => fact.Evidence.Grade > Grade.Hearsay).ToList());
        if (narrowest.Count == 0)
            return Result(hearsay, AnswerReason.HearsayOnly);
        var best = narrowest.Max(fact => fact.Evidence.Grade);
        var winners = narrowest.Where(fact => fact.Evidence.Grade == best).ToList();
        var claims = Claims(winners);
        var doubts = hearsay.Where(fact => (claims.Count > 1 || fact.ClaimFor(asked) != claims[0])
            && winners.Exists(winner => fact.Scope.IsNarrowerThan(winner.Scope))).ToList();
        return Result([.. winners, .. doubts], claims.Count == 1 && doubts.Count == 0 ? AnswerReason.Stated : AnswerReason.Conflict);

        static List<SupplyFact> Narrowest(List<SupplyFact> facts) =>
            facts.Where(fact => !facts.Exists(other => other.Scope.IsNarrowerThan(fact.Scope))).ToList();

        Decision Result(IReadOnlyList<SupplyFact> deciding, AnswerReason reason) =>
            new(Claims(deciding), reason, deciding, speaking.Where(fact => !deciding.Contains(fact)).ToList());

        List<Support> Claims(IEnumerable<SupplyFact> facts) =>
            facts.Select(fact => fact.ClaimFor(asked)).Distinct().Order().ToList();
    }
}
