using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Resolving.Bulk;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving.Bulk;

/// <summary>Titles that ask for the same are solved together, and no others.</summary>
public sealed class Titles_in_bulk
{
    private static readonly WrapperVersion Veil = MakeVeil();
    private static readonly MemoryUse Presets = new() { Presets = [new("low", 1 << 20, TextureFormat.Bits16, true), new("high", 4 << 20, TextureFormat.Bits16, true)] };

    private static readonly Dictionary<string, Asked> Usual = new()
    {
        ["usual"] = new(),
        ["api level"] = new() { Api = Parts.Direct3D.At(2) },
        ["other api"] = new() { Api = Parts.OpenGl.At(1) },
        ["runtime"] = new() { Runtime = Parts.Direct3D.At(2) },
        ["systems"] = new() { Oses = [Parts.Win98, Parts.Win2000] },
        ["strength"] = new() { Strength = Strength.Cosmetic },
        ["when broken"] = new() { WhenBroken = Strength.Bonus },
        ["hardware"] = new() { Hardware = true },
        ["choice"] = new() { Choices = [Parts.OpenGl.At(2)] },
        ["choices"] = new() { Choices = [Parts.Fog.At(1), Parts.OpenGl.At(2)] },
        ["preset"] = new() { Condition = new NeedCondition.AtPreset("high") },
        ["other preset"] = new() { Condition = new NeedCondition.AtPreset("low") },
        ["low preset wanted"] = new() { Condition = new NeedCondition.AtPreset("low"), Wanted = "low" },
        ["high preset wanted"] = new() { Condition = new NeedCondition.AtPreset("low"), Wanted = "high" },
        ["deeper depth buffer"] = new() { Memory = Presets with { DepthBits = 32 } },
        ["more buffers"] = new() { Memory = Presets with { BackBuffers = 2 } },
        ["higher mode"] = new() { Memory = Presets with { LowestMode = new Mode(800, 600) } },
        ["deeper"] = new() { Memory = Presets with { Depths = [32] } },
        ["no presets"] = new() { Memory = new MemoryUse() },
        ["defect"] = new() { Defect = Scope.Everything },
        ["defect on a chip"] = new() { Defect = new Scope { Chip = Parts.Heron } },
        ["defect on a card"] = new() { Defect = new Scope { Card = Parts.Heron16 } },
        ["defect on a system"] = new() { Defect = new Scope { Os = Parts.Win98 } },
        ["defect under an interface"] = new() { Defect = new Scope { Api = Parts.Direct3D } },
        ["defect of versions 0 to 1"] = new() { Defect = new Scope { Drivers = new(Parts.Steady, 0, 1) } },
        ["defect of versions 0 to 2"] = new() { Defect = new Scope { Drivers = new(Parts.Steady, 0, 2) } },
        ["defect of versions 1 to 2"] = new() { Defect = new Scope { Drivers = new(Parts.Steady, 1, 2) } },
        ["defect of another branch"] = new() { Defect = new Scope { Drivers = new(Parts.Moving, 0, 1) } },
        ["rumoured defect"] = new() { Defect = Scope.Everything, DefectGrade = Grade.Hearsay },
        ["defect with a cause"] = new() { Defect = Scope.Everything, IfPresent = Parts.Fog.At(1) },
        ["defect by a wrapper"] = new() { Defect = Scope.Everything, DefectBy = Veil },
    };

    [Fact]
    public void Are_solved_together_where_they_ask_for_the_same_and_apart_where_for_anything_else()
    {
        var titles = Usual.SelectMany(pair => new[] { TitleOf(pair.Key + " 1", pair.Value), TitleOf(pair.Key + " 2", pair.Value) }).ToList();
        var wanted = titles.Zip(Usual.Values.SelectMany(asked => new[] { asked.Wanted, asked.Wanted })).ToDictionary(pair => pair.First, pair => pair.Second);
        var catalog = new Catalog
        {
            Features = [Parts.Direct3D, Parts.OpenGl, Parts.Fog],
            Oses = [Parts.Win98, Parts.Win2000],
            Chips = [Parts.Heron],
            Cards = [Parts.Heron16],
            Wrappers = [Veil.Wrapper],
            Titles = titles,
        };
        var problem = BulkCompiler.Compile(catalog, titles, new Resolver(catalog).SetupsOf(Parts.Heron16), title => Terms.Default with { Preset = wanted[title] });
        Assert.Equal(Enumerable.Range(0, Usual.Count).SelectMany(kind => new[] { kind, kind }), problem.KindOfTitle);
    }

    [Fact]
    public void Share_rooms_without_presets_between_native_and_wrapped_routes()
    {
        Assert.Equal(1, Shared("no presets"));
        Assert.Equal(0, Shared("usual"));

        static int Shared(string asked)
        {
            var title = TitleOf(asked, Usual[asked] with { Choices = [] });
            var catalog = new Catalog { Features = [Parts.Direct3D, Parts.OpenGl], Oses = [Parts.Win98], Chips = [Parts.Heron], Cards = [Parts.Heron16], Wrappers = [Veil.Wrapper], Titles = [title] };
            var routes = BulkCompiler.Compile(catalog, [title], new Resolver(catalog).SetupsOf(Parts.Heron16), _ => Terms.Default).TitleKinds.Single().Routes;
            return routes[0].Intersect(routes[1]).Count();
        }
    }

    [Fact]
    public void Take_rows_of_whole_vectors()
    {
        var lanes = System.Numerics.Vector<ushort>.Count;
        Assert.Equal([0, lanes, lanes, 2 * lanes], new[] { 0, 1, lanes, lanes + 1 }.Select(BulkProblem.RowLengthFor));
    }

    private static WrapperVersion MakeVeil()
    {
        var wrapper = new Wrapper { Id = "veil", Name = "Veil" };
        wrapper.Link([new WrapperVersion { Id = "veil@1", Wrapper = wrapper, Version = "1", Offers = [Parts.Direct3D.At(3)], Target = Parts.OpenGl.At(1), Runtime = Parts.OpenGl.At(1), Evidence = Parts.Word }]);
        return wrapper.Versions[0];
    }

    private static Title TitleOf(string id, Asked asked)
    {
        var title = new Title { Id = id, Name = id, Evidence = Parts.Word };
        title.Link([new Renderer
        {
            Id = "r",
            Title = title,
            Api = asked.Api,
            Runtime = asked.Runtime,
            Oses = asked.Oses,
            Memory = asked.Memory,
            Needs = asked.Choices.Count == 0 ? [] : [new Need { Choices = asked.Choices, Strength = asked.Strength, WhenBroken = asked.WhenBroken, HardwareOnly = asked.Hardware, Condition = asked.Condition, Evidence = Parts.Word }],
            Defects = asked.Defect is null ? [] : [new Defect(asked.IfPresent, asked.Defect, asked.DefectBy, "", Parts.Word with { Grade = asked.DefectGrade })],
        }]);
        return title;
    }

    private sealed record Asked
    {
        public Capability Api { get; init; } = Parts.Direct3D.At(1);

        public Capability Runtime { get; init; } = Parts.Direct3D.At(1);

        public IReadOnlyList<Os> Oses { get; init; } = [Parts.Win98];

        public IReadOnlyList<Capability> Choices { get; init; } = [Parts.Fog.At(1)];

        public Strength Strength { get; init; } = Strength.Severe;

        public Strength? WhenBroken { get; init; }

        public bool Hardware { get; init; }

        public NeedCondition? Condition { get; init; }

        public string Wanted { get; init; } = "";

        public MemoryUse Memory { get; init; } = Presets;

        public Scope? Defect { get; init; }

        public Capability? IfPresent { get; init; }

        public WrapperVersion? DefectBy { get; init; }

        public Grade DefectGrade { get; init; } = Grade.Documented;
    }
}
