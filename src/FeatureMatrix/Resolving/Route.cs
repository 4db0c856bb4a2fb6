using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>How one renderer reaches the screen on one setup: natively, or through one wrapper version.</summary>
/// <param name="Renderer">The graphics path.</param>
/// <param name="Setup">Card, driver and operating system.</param>
/// <param name="Wrapper">The wrapper version; null for native.</param>
public sealed record Route(Renderer Renderer, Setup Setup, WrapperVersion? Wrapper)
{
    /// <summary>True where no wrapper is in between.</summary>
    public bool IsNative => Wrapper is null;

    /// <summary>True where the driver package lists the card.</summary>
    public bool IsListed => Setup.Install == Install.Listed;

    /// <summary>True where the driver is forced (rule R9).</summary>
    public bool IsForced => Setup.Install == Install.Forced;

    /// <summary>
    /// Which of two equally good routes is preferred (rule R16): native before wrapped, listed before forced before
    /// unrecorded, then the newer driver and wrapper, then by name so that the order of files does not matter.
    /// </summary>
    public static int ComparePreference(Route one, Route other)
    {
        var result = other.IsNative.CompareTo(one.IsNative);
        if (result == 0)
            result = one.Setup.Install.CompareTo(other.Setup.Install);
        if (result == 0)
            result = string.CompareOrdinal(one.Setup.Os.Id, other.Setup.Os.Id);
        if (result == 0)
            result = string.CompareOrdinal(one.Setup.Driver.Branch.Id, other.Setup.Driver.Branch.Id);
        if (result == 0)
            result = other.Setup.Driver.Order.CompareTo(one.Setup.Driver.Order);
        if (result == 0)
            result = string.CompareOrdinal(one.Renderer.Id, other.Renderer.Id);
        if (result == 0)
            result = string.CompareOrdinal(one.Wrapper?.Wrapper.Id, other.Wrapper?.Wrapper.Id);
        if (result == 0)
            result = Place(other).CompareTo(Place(one));
        return result;

        static int Place(Route route) =>
            route.Wrapper is { } version ? route.Wrapper.Wrapper.Versions.ToList().IndexOf(version) : 0;
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Renderer} on {Setup}{(Wrapper is null ? "" : " through " + Wrapper.Id)}";
}

/// <summary>What a policy forbids about a route.</summary>
public enum Forbidden
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>The operating system.</summary>
    Os,

    /// <summary>The wrapper.</summary>
    Wrapper,

    /// <summary>Forcing a driver.</summary>
    Forcing,
}
