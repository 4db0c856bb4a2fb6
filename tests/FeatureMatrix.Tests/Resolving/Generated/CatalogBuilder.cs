using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Generated;

using Support = FeatureMatrix.Model.Support;

/// <summary>A catalog made from a plan, with the terms it is judged on.</summary>
internal sealed record GeneratedCatalog(CatalogPlan Plan, Catalog Catalog, Terms Terms);

/// <summary>Builds the catalog of a plan. The vocabulary is fixed; all other names are letters and numbers.</summary>
internal sealed class CatalogBuilder
{
    public const int FeatureCount = 5;

    private const long Mebibyte = 1 << 20;
    private static readonly Evidence Word = Says(Grade.Documented);

    private readonly CatalogPlan _plan;
    private readonly List<Feature> _features;
    private readonly List<Chip> _chips;
    private readonly List<Os> _oses;
    private readonly List<Card> _cards;
    private readonly List<DriverBranch> _branches = [];
    private readonly List<Wrapper> _wrappers = [];
    private readonly List<Title> _titles = [];

    private CatalogBuilder(CatalogPlan plan)
    {
        _plan = plan;
        var palettes = Flag("tex-pal8");
        var alphaPalettes = Flag("tex-pal8-alpha");
        alphaPalettes.Link([palettes.At(1)]);
        Direct3D = Ladder("direct3d", true, "5", "7", "9");
        OpenGl = Ladder("opengl", false, "1.1", "1.3");
        _features = [Flag("fog-table"), palettes, alphaPalettes, Ladder("ps-version", null, "1.1", "1.3", "1.4"), Flag("tex-dxt1"), Direct3D, OpenGl];
        _chips = [.. Enumerable.Range(0, 3).Select(i => new Chip { Id = $"chip-{i}", Name = $"Chip {i}" })];
        _oses = [.. plan.Oses.Select(MakeOs)];
        _cards = [.. plan.Cards.Select(MakeCard)];
    }

    /// <summary>The memories cards come with.</summary>
    public static IReadOnlyList<VideoMemory> Memories { get; } =
    [
        new VideoMemory.Unified(2 * Mebibyte), new VideoMemory.Unified(4 * Mebibyte), new VideoMemory.Unified(8 * Mebibyte),
        new VideoMemory.Unified(16 * Mebibyte), new VideoMemory.Split(2 * Mebibyte, 2 * Mebibyte), new VideoMemory.Split(4 * Mebibyte, 8 * Mebibyte),
    ];

    private static IReadOnlyList<Mode> Modes { get; } = [new(640, 480), new(800, 600), new(1024, 768)];

    private Feature Direct3D { get; }

    private Feature OpenGl { get; }

    private IReadOnlyList<Driver> Drivers => [.. _branches.SelectMany(branch => branch.Versions)];

    private IReadOnlyList<WrapperVersion> WrapperVersions => [.. _wrappers.SelectMany(wrapper => wrapper.Versions)];

    public static GeneratedCatalog Build(CatalogPlan plan) => new CatalogBuilder(plan).Build();

    private static Evidence Says(Grade grade) => new(grade, null, Origin.None);

    private static Feature Flag(string id) => new() { Id = id, Name = id, Family = "f", Evidence = Word };

    private static Feature Ladder(string id, bool? needsRuntime, params string[] levels) => new()
    {
        Id = id,
        Name = id,
        Family = "f",
        Evidence = Word,
        Levels = levels,
        IsApi = needsRuntime is not null,
        NeedsRuntime = needsRuntime == true,
    };

    private static T Pick<T>(IReadOnlyList<T> list, int index) => list[index % list.Count];

    private static IEnumerable<T> Masked<T>(IReadOnlyList<T> list, int mask) => list.Where((_, i) => (mask >> i & 1) == 1);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private GeneratedCatalog Build()
    {
        for (var i = 0; i < _plan.Branches.Count; i++)
            _branches.Add(MakeBranch(i, _plan.Branches[i]));
        for (var i = 0; i < _plan.Wrappers.Count; i++)
            _wrappers.Add(MakeWrapper(i, _plan.Wrappers[i]));
        for (var i = 0; i < _plan.Titles.Count; i++)
            _titles.Add(MakeTitle(i, _plan.Titles[i]));
        var catalog = new Catalog
        {
            Features = _features,
            Oses = _oses,
            Chips = _chips,
            Cards = _cards,
            Branches = _branches,
            Wrappers = _wrappers,
            Titles = _titles,
            Facts = [.. _plan.Facts.Select(MakeFact)],
            Observations = [.. _plan.Observations.Select(MakeObservation)],
        };
        return new GeneratedCatalog(_plan, catalog, MakeTerms(_plan.Terms));
    }

    private Os MakeOs(OsPlan plan, int index) => new()
    {
        Id = $"os-{Text(index)}",
        Name = $"OS {Text(index)}",
        Runtimes = [.. plan.Runtimes.Select(limit => new RuntimeLimit(Direct3D, Math.Max(0, limit.Highest), Says(limit.Grade)))],
    };

    private OsSupport MakeOsSupport(OsSupportPlan plan) =>
        new(Pick(_oses, plan.Os), plan.Works ? Support.Yes : Support.No, Says(plan.Grade));

    private Card MakeCard(CardPlan plan, int index) => new()
    {
        Id = $"card-{Text(index)}",
        Name = $"Card {Text(index)}",
        Chip = Pick(_chips, plan.Chip),
        Evidence = Word,
        Memory = plan.Memory < 0 ? null : Pick(Memories, plan.Memory) with { TexturesFromSystemMemory = plan.SystemTextures < 0 ? null : plan.SystemTextures == 1 },
        OsSupport = [.. plan.OsSupport.Select(MakeOsSupport)],
        DriversCompleteFor = Masked(_oses, plan.Complete).ToHashSet(),
    };

    private DriverBranch MakeBranch(int index, BranchPlan plan)
    {
        var branch = new DriverBranch { Id = $"branch-{Text(index)}", Name = "Branch" };
        branch.Link([.. plan.Versions.Select((version, order) => new Driver
        {
            Id = $"branch-{Text(index)}@{Text(order + 1)}", Branch = branch, Version = Text(order + 1), Order = order, Evidence = Word,
            Oses = [.. Masked(_oses, version.Oses)], Lists = [.. Masked(_cards, version.Lists)],
            Forced = [.. version.Forced.Select(forced => new ForcedInstall(Pick(_cards, forced.Card), forced.Works, Says(forced.Grade)))],
        })]);
        return branch;
    }

    private Scope MakeScope(ScopePlan plan)
    {
        var card = plan.Card < 0 ? null : Pick(_cards, plan.Card);
        var branch = plan.Branch < 0 || _branches.Count == 0 ? null : Pick(_branches, plan.Branch);
        var first = branch is null ? 0 : Math.Max(0, plan.First) % branch.Versions.Count;
        return new Scope
        {
            Card = card,
            Chip = plan.Chip < 0 ? null : card?.Chip ?? Pick(_chips, plan.Chip),
            Drivers = branch is null ? null : new DriverRange(branch, first, Math.Min(first + Math.Max(0, plan.Span), branch.Versions.Count - 1)),
            Os = plan.Os < 0 ? null : Pick(_oses, plan.Os),
            Api = plan.Api < 0 ? null : plan.Api == 0 ? Direct3D : OpenGl,
        };
    }

    private Capability MakeCapability(CapabilityPlan plan)
    {
        var feature = _features[plan.Feature];
        return feature.At(plan.Step % feature.Steps + 1);
    }

    private SupplyFact MakeFact(FactPlan plan) =>
        new(MakeScope(plan.Scope), MakeCapability(plan.Capability), plan.Reach, plan.Support, Says(plan.Grade));

    private Wrapper MakeWrapper(int index, WrapperPlan plan)
    {
        var wrapper = new Wrapper { Id = $"wrapper-{Text(index)}", Name = "Wrapper" };
        wrapper.Link([.. plan.Versions.Select((version, order) => MakeWrapperVersion(wrapper, order, version))]);
        return wrapper;
    }

    private WrapperVersion MakeWrapperVersion(Wrapper wrapper, int order, WrapperVersionPlan plan)
    {
        var (offered, target) = plan.Swapped ? (OpenGl, Direct3D) : (Direct3D, OpenGl);
        return new WrapperVersion
        {
            Id = $"{wrapper.Id}@{Text(order + 1)}",
            Wrapper = wrapper,
            Version = Text(order + 1),
            Evidence = Word,
            Offers = [offered.At(plan.OfferStep % offered.Steps + 1)],
            Target = target.At(plan.TargetStep % target.Steps + 1),
            Runtime = target.At((plan.RuntimeStep < 0 ? plan.TargetStep : plan.RuntimeStep) % target.Steps + 1),
            Supplies = [.. plan.Supplies.Select(supply => MakeFact(supply with { Scope = ScopePlan.Everything }))],
            Passes = [.. Masked(_features.Take(FeatureCount).ToList(), plan.Passes)],
            IsComplete = plan.Complete,
            Needs = [.. plan.Needs.Select(need => new WrapperNeed(MakeCapability(need), Word))],
            Oses = [.. plan.Oses.Select(MakeOsSupport)],
            VideoMemoryBytes = Math.Max(0, plan.Mebibytes) * Mebibyte,
        };
    }

    private Title MakeTitle(int index, TitlePlan plan)
    {
        var title = new Title
        {
            Id = $"title-{Text(index)}",
            Name = "Title",
            Evidence = Word,
            Hazards = plan.Hazard < 0 ? [] : [new TimingHazard((TimingHazardKind)plan.Hazard, false, null, "", "", [], Word)],
        };
        title.Link([.. plan.Renderers.Select((renderer, number) => MakeRenderer(title, number, renderer))]);
        return title;
    }

    private Renderer MakeRenderer(Title title, int index, RendererPlan plan)
    {
        var api = plan.Api switch { < 0 => null, 0 => Direct3D, _ => OpenGl };
        return new Renderer
        {
            Id = $"r{Text(index)}",
            Title = title,
            Oses = [.. Masked(_oses, plan.Oses)],
            Api = api?.At(plan.Step % api.Steps + 1),
            Runtime = api?.At((plan.Runtime < 0 ? plan.Step : plan.Runtime) % api.Steps + 1),
            Needs = [.. plan.Needs.Select(need => MakeNeed(need.Condition > 0 && plan.Memory.Presets == 0 ? need with { Condition = -1 } : need))],
            Defects = [.. plan.Defects.Select(MakeDefect)],
            Memory = MakeMemory(plan.Memory),
        };
    }

    private Need MakeNeed(NeedPlan plan) => new()
    {
        Choices = [.. plan.Choices.Select(MakeCapability).Distinct()],
        HardwareOnly = plan.HardwareOnly,
        Strength = plan.Strength,
        WhenBroken = plan.WhenBroken < 0 ? null : (Strength)plan.WhenBroken,
        Evidence = Word,
        Condition = plan.Condition switch
        {
            < 0 => null,
            0 => new NeedCondition.AtDepth(32),
            1 => new NeedCondition.AtPreset("low"),
            _ => new NeedCondition.AtPreset("high"),
        },
    };

    private Defect MakeDefect(DefectPlan plan) => new(
        plan.IfPresent is { } present ? MakeCapability(present) : null, MakeScope(plan.Scope),
        plan.Wrapper < 0 || WrapperVersions.Count == 0 ? null : Pick(WrapperVersions, plan.Wrapper), "", Says(plan.Grade));

    private static MemoryUse MakeMemory(MemoryPlan plan) => new()
    {
        LowestMode = Pick(Modes, plan.Mode),
        Depths = plan.Deep ? [16, 32] : [16],
        BackBuffers = Math.Max(1, plan.BackBuffers),
        DepthBits = plan.DepthBits < 0 ? null : plan.DepthBits,
        Presets = plan.Presets == 0
            ? []
            : [new("low", Mebibyte, plan.Format, plan.Presets == 1), new("high", 4 * Mebibyte, plan.Format, plan.Presets == 1)],
    };

    private Observation MakeObservation(ObservationPlan plan)
    {
        var renderers = _titles.SelectMany(title => title.Renderers).Where(renderer => !renderer.IsSoftware).ToList();
        return new Observation
        {
            Renderer = Pick(renderers, plan.Renderer),
            Card = plan.Card < 0 ? null : Pick(_cards, plan.Card),
            Driver = plan.Driver < 0 || Drivers.Count == 0 ? null : Pick(Drivers, plan.Driver),
            Os = plan.Os < 0 ? null : Pick(_oses, plan.Os),
            Wrapper = plan.Wrapper == -2
                ? ObservedWrapper.NotStated.Instance
                : plan.Wrapper == -1 || WrapperVersions.Count == 0
                    ? ObservedWrapper.None.Instance
                    : new ObservedWrapper.Version(Pick(WrapperVersions, plan.Wrapper)),
            Depth = plan.Depth < 0 ? null : plan.Depth,
            Runs = plan.Runs < 0 ? null : plan.Runs == 1,
            Evidence = Says(plan.Grade),
            Seen = [.. plan.Seen.Select(seen => new SeenFeature(MakeCapability(seen.Capability), seen.Seen))],
        };
    }

    private Terms MakeTerms(TermsPlan plan) => new()
    {
        Preset = plan.Preset switch { < 0 => "", 0 => "low", _ => "high" },
        Policy = Policy.Default with
        {
            AllowForced = plan.AllowForced,
            Oses = plan.Oses < 0 ? null : [.. Masked(_oses, plan.Oses)],
            Wrappers = plan.AllowWrappers ? null : [],
            Mode = plan.Mode < 0 ? null : Pick(Modes, plan.Mode),
            Depth = plan.Deep ? 32 : null,
            Samples = Math.Max(1, plan.Samples),
        },
    };
}
