using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Resolving.Generated;

using Support = FeatureMatrix.Model.Support;

/// <summary>
/// What a generated catalog consists of, in numbers: references are indices taken modulo the list they point into, and −1
/// is "not stated". A plan is easy to draw and to make smaller; <see cref="CatalogBuilder"/> turns it into a catalog.
/// </summary>
internal sealed record CatalogPlan(
    IReadOnlyList<CardPlan> Cards, IReadOnlyList<OsPlan> Oses, IReadOnlyList<BranchPlan> Branches,
    IReadOnlyList<FactPlan> Facts, IReadOnlyList<WrapperPlan> Wrappers, IReadOnlyList<TitlePlan> Titles,
    IReadOnlyList<ObservationPlan> Observations, TermsPlan Terms);

/// <summary>
/// 
/// </summary>
/// <param name="Complete">Bit i: the driver list is declared complete for operating system i.</param>
/// <param name="Memory">Index into <see cref="CatalogBuilder.Memories"/>; −1 for not recorded.</param>
/// <param name="SystemTextures">1 yes, 0 no, −1 not recorded.</param>
internal sealed record CardPlan(int Chip, int Memory, int SystemTextures, int Complete, IReadOnlyList<OsSupportPlan> OsSupport);

internal sealed record OsSupportPlan(int Os, bool Works, Grade Grade);

internal sealed record OsPlan(IReadOnlyList<RuntimePlan> Runtimes);

internal sealed record RuntimePlan(int Highest, Grade Grade);

internal sealed record BranchPlan(IReadOnlyList<VersionPlan> Versions);

/// <summary>
/// 
/// </summary>
/// <param name="Oses">Bit mask.</param>
/// <param name="Lists">Bit mask of cards.</param>
internal sealed record VersionPlan(int Oses, int Lists, IReadOnlyList<ForcedPlan> Forced);

internal sealed record ForcedPlan(int Card, Support Works, Grade Grade);

internal sealed record ScopePlan(int Chip, int Card, int Branch, int First, int Span, int Os, int Api)
{
    public static ScopePlan Everything { get; } = new(-1, -1, -1, 0, 0, -1, -1);
}

internal sealed record CapabilityPlan(int Feature, int Step);

internal sealed record FactPlan(ScopePlan Scope, CapabilityPlan Capability, Reach Reach, Support Support, Grade Grade);

internal sealed record WrapperPlan(IReadOnlyList<WrapperVersionPlan> Versions);

/// <summary>
/// 
/// </summary>
/// <param name="Swapped">False: offers Direct3D on OpenGL; true: the other way round.</param>
/// <param name="Passes">Bit mask of features.</param>
/// <param name="Mebibytes">Video memory it needs; 0 for none.</param>
internal sealed record WrapperVersionPlan(
    bool Swapped, int OfferStep, int TargetStep, int RuntimeStep, int Passes, bool Complete, int Mebibytes,
    IReadOnlyList<FactPlan> Supplies, IReadOnlyList<CapabilityPlan> Needs, IReadOnlyList<OsSupportPlan> Oses);

/// <summary>
/// 
/// </summary>
/// <param name="Hazard">A kind of timing hazard; −1 for none. No cell may depend on it (R12).</param>
internal sealed record TitlePlan(int Hazard, IReadOnlyList<RendererPlan> Renderers);

/// <summary>
/// 
/// </summary>
/// <param name="Api">0 Direct3D, 1 OpenGL, −1 software.</param>
/// <param name="Runtime">Step of the runtime; −1 for the API's own level.</param>
internal sealed record RendererPlan(
    int Api, int Step, int Runtime, int Oses, IReadOnlyList<NeedPlan> Needs, IReadOnlyList<DefectPlan> Defects, MemoryPlan Memory);

/// <summary>
/// 
/// </summary>
/// <param name="WhenBroken">A strength, or −1 where nobody recorded it.</param>
/// <param name="Condition">−1 always, 0 at 32 bit, 1 at the low preset, 2 at the high preset.</param>
internal sealed record NeedPlan(
    IReadOnlyList<CapabilityPlan> Choices, bool HardwareOnly, Strength Strength, int WhenBroken, int Condition);

/// <summary>
/// 
/// </summary>
/// <param name="IfPresent">Null for a defect that needs no cause.</param>
/// <param name="Wrapper">Index into all wrapper versions; −1 for native routes.</param>
internal sealed record DefectPlan(CapabilityPlan? IfPresent, ScopePlan Scope, int Wrapper, Grade Grade);

/// <summary>
/// 
/// </summary>
/// <param name="Presets">0 none, 1 measured, 2 estimated.</param>
internal sealed record MemoryPlan(int Mode, bool Deep, int BackBuffers, int DepthBits, int Presets, TextureFormat Format);

/// <summary>
/// 
/// </summary>
/// <param name="Wrapper">−2 not stated, −1 none, otherwise an index into all wrapper versions.</param>
/// <param name="Runs">1 ran, 0 did not, −1 not noted.</param>
internal sealed record ObservationPlan(
    int Renderer, int Card, int Driver, int Os, int Wrapper, int Depth, int Runs, IReadOnlyList<SeenPlan> Seen, Grade Grade);

internal sealed record SeenPlan(CapabilityPlan Capability, Support Seen);

/// <summary>
/// 
/// </summary>
/// <param name="Oses">Bit mask; −1 for any.</param>
/// <param name="Preset">−1 none wanted, 0 low, 1 high.</param>
internal sealed record TermsPlan(bool AllowForced, int Oses, bool AllowWrappers, int Mode, bool Deep, int Samples, int Preset);
