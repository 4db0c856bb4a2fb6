namespace FeatureMatrix.Deciding.Kinds;

/// <summary>What standings are worth, each worked out once.</summary>
internal sealed class WorthTable(WorthScale scale)
{
    private readonly Dictionary<Standing, decimal> _known = [];

    /// <summary>The worth of a standing.</summary>
    public decimal Of(Standing standing)
    {
        if (!_known.TryGetValue(standing, out var worth))
            _known[standing] = worth = scale.Of(standing);
        return worth;
    }
}
