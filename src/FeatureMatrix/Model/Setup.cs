namespace FeatureMatrix.Model;

/// <summary>How a driver comes onto a card.</summary>
public enum Install
{
    /// <summary>The package lists the card.</summary>
    Listed,

    /// <summary>The package lists only a sibling with the same chip (rule R9).</summary>
    Forced,

    /// <summary>A driver that an incomplete list may have left out.</summary>
    Unrecorded,
}

/// <summary>Card, driver and operating system: with a renderer and a wrapper version or none, the unit of truth.</summary>
public sealed record Setup(Card Card, Driver Driver, Os Os, Install Install)
{
    /// <summary>
    /// The memory on the board; null where not recorded. The card's own, unless somebody asks what another amount would do.
    /// </summary>
    public VideoMemory? Memory { get; init; } = Card.Memory;

    /// <inheritdoc/>
    public override string ToString() => $"{Card.Id} + {Driver.Id} on {Os.Id}";
}
