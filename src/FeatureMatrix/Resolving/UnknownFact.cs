using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>What something that nobody knows belongs to.</summary>
public enum UnknownReach
{
    /// <summary>One card.</summary>
    Card,

    /// <summary>One chip: all cards that carry it ask the same.</summary>
    Chip,

    /// <summary>One title: any card may ask the same about it, but no other title.</summary>
    Title,

    /// <summary>A wrapper or an operating system: any title on any card may ask the same.</summary>
    Anywhere,
}

/// <summary>
/// One thing nobody knows: a variable of the completions (rule R13). Two places that ask about an equal unknown get the
/// same answer in each completion; that is how two cards of one chip come out exactly equal (DESIGN case 19).
/// </summary>
public abstract record UnknownFact
{
    private UnknownFact()
    {
    }

    /// <summary>The features it asks about; none where it is about something else.</summary>
    public IReadOnlyList<Feature> Features => this switch
    {
        Supply supply => [supply.Capability.Feature],
        WrapperSupply supply => [supply.Capability.Feature],
        ObservedFeature seen => [seen.Capability.Feature],
        RunsWithout without => without.Need.Choices.Select(choice => choice.Feature).Distinct().ToList(),
        RunsBroken broken => broken.Need.Choices.Select(choice => choice.Feature).Distinct().ToList(),
        LossIsCosmetic loss => loss.Need.Choices.Select(choice => choice.Feature).Distinct().ToList(),
        ReachesFloor => [],
        WrapperOs or Runtime or CardOs or DriverExists or ForcedInstall or FrameBuffer or Textures or Preset or DefectIsReal or ObservedRun => [],
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What it belongs to: cards that do not have that in common cannot share it.</summary>
    public UnknownReach Reach => this switch
    {
        Supply { Card: not null } or CardOs or ForcedInstall or FrameBuffer or Textures or Preset or ObservedRun or ObservedFeature or ReachesFloor => UnknownReach.Card,
        Supply or DriverExists => UnknownReach.Chip,
        RunsWithout or RunsBroken or DefectIsReal or LossIsCosmetic => UnknownReach.Title,
        WrapperSupply or WrapperOs or Runtime => UnknownReach.Anywhere,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>
    /// Whether a capability is supplied: one (feature, chip, driver version, operating system, API), plus the card where a
    /// card fact exists.
    /// </summary>
    public sealed record Supply(Capability Capability, Chip Chip, Card? Card, Driver Driver, Os Os, Feature Api) : UnknownFact;

    /// <summary>Whether a wrapper version supplies a capability that it neither lists nor hands through.</summary>
    public sealed record WrapperSupply(Capability Capability, WrapperVersion Wrapper) : UnknownFact;

    /// <summary>Whether a wrapper version runs on an operating system.</summary>
    public sealed record WrapperOs(WrapperVersion Wrapper, Os Os) : UnknownFact;

    /// <summary>Whether an operating system can have a runtime.</summary>
    public sealed record Runtime(Os Os, Capability Level) : UnknownFact;

    /// <summary>Whether an operating system can use a card at all.</summary>
    public sealed record CardOs(Card Card, Os Os) : UnknownFact;

    /// <summary>Whether a driver exists that the collection does not list.</summary>
    public sealed record DriverExists(Chip Chip, Os Os) : UnknownFact;

    /// <summary>Whether a driver can be forced onto a card that it does not list.</summary>
    public sealed record ForcedInstall(Driver Driver, Card Card) : UnknownFact;

    /// <summary>Whether the frame buffer fits, where the card's memory is not recorded.</summary>
    public sealed record FrameBuffer(Card Card, long Bytes) : UnknownFact;

    /// <summary>Whether the smallest textures fit, where only an estimate says that they do not.</summary>
    public sealed record Textures(Card Card, Renderer Renderer) : UnknownFact;

    /// <summary>Whether a texture preset is in use, where the card's memory is not recorded.</summary>
    public sealed record Preset(Card Card, Renderer Renderer, string Name) : UnknownFact;

    /// <summary>Whether a renderer runs without something whose strength nobody knows: yes, or it was a must.</summary>
    public sealed record RunsWithout(Renderer Renderer, Need Need) : UnknownFact;

    /// <summary>Whether a renderer runs when something it must have is broken: with a severe loss, or not at all.</summary>
    public sealed record RunsBroken(Renderer Renderer, Need Need) : UnknownFact;

    /// <summary>Whether a defect that is only hearsay is real.</summary>
    public sealed record DefectIsReal(Renderer Renderer, Defect Defect) : UnknownFact;

    /// <summary>Whether a route runs, where observations disagree.</summary>
    public sealed record ObservedRun(Renderer Renderer, Setup Setup, WrapperVersion? Wrapper) : UnknownFact;

    /// <summary>What is seen of a capability on a route, where observations disagree.</summary>
    public sealed record ObservedFeature(Renderer Renderer, Setup Setup, WrapperVersion? Wrapper, Capability Capability) : UnknownFact;

    /// <summary>
    /// Whether a loss that nobody graded is cosmetic: yes, or it is severe. Only decisions settle it; a verdict shows such a loss
    /// as not graded. Missing and broken are graded apart where they were recorded apart (rule R4).
    /// </summary>
    public sealed record LossIsCosmetic(Renderer Renderer, Need Need, bool WhenBroken) : UnknownFact;

    /// <summary>Whether a route that nobody measured reaches the library's speed floor.</summary>
    public sealed record ReachesFloor(Renderer Renderer, Setup Setup, WrapperVersion? Wrapper) : UnknownFact;
}
