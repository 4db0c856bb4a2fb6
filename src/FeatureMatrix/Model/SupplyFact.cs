namespace FeatureMatrix.Model;

/// <summary>
/// What a statement is about (rule R1). A part left null does not restrict. Where both a chip and a card are given the
/// card is one with that chip.
/// </summary>
public sealed record Scope
{
    /// <summary>Covers everything.</summary>
    public static Scope Everything { get; } = new();

    /// <summary>Cards with this chip only.</summary>
    public Chip? Chip { get; init; }

    /// <summary>This card only.</summary>
    public Card? Card { get; init; }

    /// <summary>These driver versions only.</summary>
    public DriverRange? Drivers { get; init; }

    /// <summary>This operating system only.</summary>
    public Os? Os { get; init; }

    /// <summary>Under this API only.</summary>
    public Feature? Api { get; init; }

    /// <summary>True where a driver restricts it: such facts are decided apart from the chip's (rule R3).</summary>
    public bool NamesDriver => Drivers is not null;

    /// <summary>True where a chip or a card restricts it.</summary>
    public bool NamesHardware => Chip is not null || Card is not null;

    /// <summary>True where the statement is about this card, driver, operating system and API.</summary>
    public bool Covers(Card card, Driver driver, Os os, Feature api) =>
        (Chip is null || Chip == card.Chip)
        && (Card is null || Card == card)
        && (Drivers is null || Drivers.Contains(driver))
        && (Os is null || Os == os)
        && (Api is null || Api == api);

    /// <summary>
    /// True where every setup that this scope covers is covered by the other. A card stands for its chip, a version for
    /// every range that holds it, and versions made for one operating system for that system.
    /// </summary>
    public bool IsWithin(Scope other) =>
        (other.Chip is null || other.Chip == (Chip ?? Card?.Chip))
        && (other.Card is null || other.Card == Card)
        && (other.Drivers is null || (Drivers is not null && other.Drivers.Contains(Drivers)))
        && (other.Os is null || other.Os == (Os ?? Drivers?.OnlyOs()))
        && (other.Api is null || other.Api == Api);

    /// <summary>Within the other, and not conversely (rule R1).</summary>
    public bool IsNarrowerThan(Scope other) => IsWithin(other) && !other.IsWithin(this);
}

/// <summary>How a statement about a level speaks of the rest of the ladder.</summary>
public enum Reach
{
    /// <summary>This level and all below; none above. The short form of a supplied level.</summary>
    UpTo,

    /// <summary>This level and all below; silent about those above.</summary>
    AtLeast,

    /// <summary>This level; a "no" also speaks for all above. The only reach a flag needs.</summary>
    At,
}

/// <summary>A statement that something supplies a capability, or does not (rules R1 and R2).</summary>
/// <param name="Scope">What it is about.</param>
/// <param name="Capability">The flag or level.</param>
/// <param name="Reach">How it speaks of the other levels of the ladder.</param>
/// <param name="Support">What is supplied; never <see cref="Support.Unknown"/>.</param>
/// <param name="Evidence">Who says so.</param>
public sealed record SupplyFact(Scope Scope, Capability Capability, Reach Reach, Support Support, Evidence Evidence)
{
    /// <summary>A remark beside the statement, for people; empty for none.</summary>
    public string Note { get; init; } = "";

    /// <summary>What it claims about a capability; <see cref="Support.Unknown"/> where it is silent.</summary>
    public Support ClaimFor(Capability asked)
    {
        if (asked.Feature != Capability.Feature)
            return Support.Unknown;
        return Reach switch
        {
            Reach.UpTo => asked.Step <= Capability.Step ? Support : Support.No,
            Reach.AtLeast => asked.Step <= Capability.Step ? Support : Support.Unknown,
            Reach.At => asked.Step == Capability.Step || (Support == Support.No && asked.Step > Capability.Step)
                ? Support
                : Support.Unknown,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
