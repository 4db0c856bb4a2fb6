using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

/// <summary>What one route does in each completion.</summary>
/// <param name="Route">The route.</param>
/// <param name="Permitted">What the policy says.</param>
/// <param name="In">The outcome in a completion.</param>
internal sealed record RouteRun(Route Route, bool Permitted, Func<int[], Outcome> In)
{
    /// <summary>
    /// Where there are only rumours about the route: given what inference certainly says, the outcome instead of the inferred
    /// one, or null where the rumours agree.
    /// </summary>
    public Func<bool, Func<int[], Outcome>?>? IfContradicted { get; init; }

    /// <summary>The route as it is once all completions are known: rumours count only against a certain inference (R15).</summary>
    public RouteRun Settled(IReadOnlyList<int[]> completions)
    {
        if (IfContradicted is null)
            return this;
        var runs = completions.Select(completion => In(completion).Runs).Distinct().ToList();
        return runs is [var certain] && IfContradicted(certain) is { } instead ? this with { In = instead } : this;
    }
}
