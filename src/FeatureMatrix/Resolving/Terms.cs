using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>On what terms a title is judged: the policy, and what the library wants of this title.</summary>
public sealed record Terms
{
    /// <summary>The default policy and nothing wanted in particular.</summary>
    public static Terms Default { get; } = new();

    /// <summary>What is allowed and how losses weigh.</summary>
    public Policy Policy { get; init; } = Policy.Default;

    /// <summary>The texture preset that is wanted; empty for the highest that fits.</summary>
    public string Preset { get; init; } = "";

    /// <summary>Says whether a route was measured under the library's speed floor; null where nothing was measured.</summary>
    public Predicate<Route>? IsMeasuredUnderFloor { get; init; }

    /// <summary>The terms of one entry of a library.</summary>
    public static Terms Of(Library library, LibraryEntry entry) => new() { Policy = library.Policy, Preset = entry.Preset };

    /// <summary>What the policy forbids about a route.</summary>
    public Forbidden Forbids(Route route)
    {
        if (!Policy.Allows(route.Setup.Os))
            return Forbidden.Os;
        if (route.IsForced && !Policy.AllowForced)
            return Forbidden.Forcing;
        return route.Wrapper is { } wrapper && !Policy.Allows(wrapper.Wrapper) ? Forbidden.Wrapper : Forbidden.Nothing;
    }
}
