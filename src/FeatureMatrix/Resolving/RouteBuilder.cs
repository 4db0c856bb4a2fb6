using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Turns a renderer, a setup and a wrapper version into a <see cref="RouteForm"/>: asks everything that rules R6 to R11 ask
/// of facts, and leaves open what nobody knows.
/// </summary>
internal sealed class RouteBuilder(SupplyTable supply, ObservationIndex observations)
{
    /// <summary>Builds the form of one route.</summary>
    public RouteForm Build(Route route, Terms terms)
    {
        var renderer = route.Renderer;
        var draw = DrawMode.For(renderer.Memory, terms.Policy);
        var textures = Textures(route, draw);
        var form = new RouteForm
        {
            Route = route,
            Forbidden = terms.Forbids(route),
            Gates = Gates(route, draw, textures),
            Needs = renderer.Needs.Where(need => MayApply(need, draw))
                .Select(need => Term(need, route, terms.Preset, draw)).ToList(),
            Draw = draw,
            Textures = textures,
        };
        return observations.Apply(form);
    }

    /// <summary>What the route supplies of a capability to the title (rules R3 and R8).</summary>
    public Answer Supplied(Capability capability, Route route) => route.Wrapper is { } wrapper
        ? WrappedSupply.Ask(capability, wrapper, route.Setup, supply)
        : supply.Ask(capability, route.Setup, route.Renderer.Api!.Value.Feature);

    private List<Gate> Gates(Route route, DrawMode draw, TextureFit textures) =>
        [.. AccessGates(route), .. route.Renderer.Defects.Select(defect => VetoGate(defect, route)).OfType<Gate>(), .. MemoryGates(route, draw, textures)];

    /// <summary>What stands between the renderer and the card before any need is looked at (rules R7 to R9).</summary>
    public List<Gate> AccessGates(Route route)
    {
        var gates = new List<Gate>();
        var setup = route.Setup;
        gates.Add(new Gate(new GateReason.RendererOnOs(), Answer.Structural(route.Renderer.Oses.Contains(setup.Os))));
        AddInstall(gates, setup);
        if (route.Renderer.Runtime is { } runtime && runtime.Feature.NeedsRuntime && route.IsNative)
            gates.Add(new Gate(new GateReason.Runtime(runtime), RuntimeOf(setup.Os, runtime)));
        if (route.Wrapper is { } wrapper)
            AddWrapper(gates, route, wrapper);
        else
            gates.Add(new Gate(new GateReason.ApiOffered(route.Renderer.Api!.Value), supply.Ask(route.Renderer.Api.Value, setup, route.Renderer.Api.Value.Feature)));
        return gates;
    }

    /// <summary>The gate that a defect makes; null where it has nothing to say about the route (rule R6).</summary>
    public Gate? VetoGate(Defect defect, Route route) => Strikes(defect, route) ? DefectGate(defect, route) : null;

    /// <summary>The frame buffer, and the textures where none fit (rules R10 and R11).</summary>
    public static IReadOnlyList<Gate> MemoryGates(Route route, DrawMode draw, TextureFit textures) =>
        textures.NothingFits ? [FrameBufferGate(route, draw), TexturesGate(route, textures)] : [FrameBufferGate(route, draw)];

    private static void AddInstall(List<Gate> gates, Setup setup)
    {
        var open = new UnknownFact.CardOs(setup.Card, setup.Os);
        if (OsAnswer(setup.Card.OsSupport, setup.Os, open) is { } support)
            gates.Add(new Gate(new GateReason.CardOnOs(), support));
        else if (setup.Install == Install.Unrecorded)
            gates.Add(new Gate(new GateReason.CardOnOs(), Answer.YesOrNo(open)));

        if (setup.Install == Install.Unrecorded)
            gates.Add(new Gate(new GateReason.DriverExists(), Answer.YesOrNo(new UnknownFact.DriverExists(setup.Card.Chip, setup.Os))));
        if (setup.Install != Install.Forced)
            return;
        // A forced install succeeds unless a fact says otherwise (rule R9); it is never more than inferred.
        var said = Answer.From(
            setup.Driver.Forced.Where(forced => forced.Card == setup.Card).Select(forced => (forced.Works, forced.Evidence)),
            new UnknownFact.ForcedInstall(setup.Driver, setup.Card)) ?? Answer.Structural(true) with { Grade = Grade.Inferred };
        gates.Add(new Gate(new GateReason.ForcedInstall(), said.AtMost(Grade.Inferred)));
    }

    private static Answer? OsAnswer(IReadOnlyList<OsSupport> statements, Os os, UnknownFact open) =>
        Answer.From(statements.Where(statement => statement.Os == os).Select(statement => (statement.Support, statement.Evidence)), open);

    private void AddWrapper(List<Gate> gates, Route route, WrapperVersion wrapper)
    {
        var setup = route.Setup;
        var api = route.Renderer.Api!.Value;
        gates.Add(new Gate(new GateReason.WrapperOffers(api), Answer.Structural(wrapper.Offers.Any(offer => offer.Implies(api)))));
        var open = new UnknownFact.WrapperOs(wrapper, setup.Os);
        gates.Add(new Gate(new GateReason.WrapperOnOs(), OsAnswer(wrapper.Oses, setup.Os, open) ?? Answer.YesOrNo(open)));
        if (wrapper.Runtime.Feature.NeedsRuntime)
            gates.Add(new Gate(new GateReason.WrapperRuntime(wrapper.Runtime), RuntimeOf(setup.Os, wrapper.Runtime)));
        gates.Add(new Gate(new GateReason.WrapperTarget(wrapper.Target), supply.Ask(wrapper.Target, setup, wrapper.Target.Feature)));
        gates.AddRange(wrapper.Needs.Select(need =>
            new Gate(new GateReason.WrapperNeeds(need.Capability), supply.Ask(need.Capability, setup, wrapper.Target.Feature))));
        if (wrapper.VideoMemoryBytes > 0)
            gates.Add(new Gate(new GateReason.WrapperMemory(wrapper.VideoMemoryBytes), Fits(wrapper.VideoMemoryBytes, setup, memory => memory.Total)));
    }

    /// <summary>Whether an operating system can have a runtime. Silence is unknown; hearsay decides nothing for certain.</summary>
    private static Answer RuntimeOf(Os os, Capability level)
    {
        var open = new UnknownFact.Runtime(os, level);
        var limits = os.Runtimes.Where(runtime => runtime.Api == level.Feature);
        return Answer.From(limits.Select(limit => (limit.Highest >= level.Step ? Support.Yes : Support.No, limit.Evidence)), open)
            ?? Answer.YesOrNo(open);
    }

    private static bool Strikes(Defect defect, Route route) =>
        defect.Wrapper == route.Wrapper
        && defect.Scope.Covers(route.Setup.Card, route.Setup.Driver, route.Setup.Os, route.Wrapper?.Target.Feature ?? route.Renderer.Api!.Value.Feature);

    /// <summary>
    /// A defect in force shuts the route; one that needs a cause does so where the cause is present. Hearsay of a defect
    /// leaves it open.
    /// </summary>
    private Gate DefectGate(Defect defect, Route route)
    {
        var reason = new GateReason.NoDefect(defect);
        var real = Answer.From([(Support.Yes, defect.Evidence)], new UnknownFact.DefectIsReal(route.Renderer, defect))!;
        return defect.IfPresent is { } cause
            ? new Gate(reason, Supplied(cause, route), OpensWhenMissing: true, real.IsSettled ? null : real)
            : new Gate(reason, real, OpensWhenMissing: true);
    }

    private static Gate FrameBufferGate(Route route, DrawMode draw)
    {
        var pool = route.Setup.Memory?.FramePool;
        var worksTo = pool is { } bytes ? FrameBuffer.LargestThatFits(route.Renderer.Memory, bytes, draw.Depth, draw.Samples) : null;
        return new Gate(new GateReason.FrameBuffer(draw, pool, worksTo), Fits(draw.FrameBytes, route.Setup, memory => memory.FramePool));
    }

    private static Answer Fits(long bytes, Setup setup, Func<VideoMemory, long> pool) => setup.Memory is { } memory
        ? new Answer { Support = pool(memory) >= bytes ? Support.Yes : Support.No, Reason = AnswerReason.Arithmetic, Grade = setup.Card.Evidence.Grade }
        : Answer.YesOrNo(new UnknownFact.FrameBuffer(setup.Card, bytes));

    /// <summary>Only measured sizes stop a title for certain; an estimate leaves it open (rule R11).</summary>
    private static Gate TexturesGate(Route route, TextureFit fit)
    {
        var answer = fit.IsCertainlyTooLarge
            ? new Answer { Support = Support.No, Reason = AnswerReason.Arithmetic, Grade = Grade.Measured }
            : Answer.YesOrNo(new UnknownFact.Textures(route.Setup.Card, route.Renderer), AnswerReason.Arithmetic);
        return new Gate(new GateReason.Textures(fit), answer);
    }

    /// <summary>The texture preset that the card holds beside the frame buffer (rule R11).</summary>
    public TextureFit Textures(Route route, DrawMode draw)
    {
        var (palettes, compression) = (KeepsPalettes(route), KeepsCompression(route));
        return TextureFit.Of(
            route.Renderer.Memory, route.Setup.Memory, draw,
            new TextureStorage(palettes is null or { Support: Support.Yes }, compression is null or { Support: Support.Yes }, draw.Depth),
            new TextureStorage(palettes?.States.Contains(Support.Yes) != false, compression?.States.Contains(Support.Yes) != false, draw.Depth));
    }

    /// <summary>
    /// Whether the route keeps a format as it is; null where no preset of the renderer has it. An emulated format is expanded somewhere, and
    /// takes the room of the expansion.
    /// </summary>
    private Answer? Keeps(string id, Route route, params ReadOnlySpan<TextureFormat> formats)
    {
        foreach (var preset in route.Renderer.Memory.Presets)
        {
            if (formats.Contains(preset.Format))
                return supply.Feature(id) is { } feature ? Supplied(feature.At(1), route) : null;
        }

        return null;
    }

    private Answer? KeepsPalettes(Route route) => Keeps("tex-pal8", route, TextureFormat.Paletted8);

    private Answer? KeepsCompression(Route route) => Keeps("tex-dxt1", route, TextureFormat.Compressed4, TextureFormat.Compressed8);

    /// <summary>False where the need asks for another colour depth than the route draws at (rule R5).</summary>
    public static bool MayApply(Need need, DrawMode draw) =>
        need.Condition is not NeedCondition.AtDepth depth || depth.Bits == draw.Depth;

    /// <summary>A need with what the route supplies of it.</summary>
    public NeedTerm Term(Need need, Route route, string wantedPreset, DrawMode draw) => new()
    {
        Renderer = route.Renderer,
        Need = need,
        Choices = need.Choices.Select(capability => new Choice(capability, Supplied(capability, route))).ToList(),
        Applies = need.Condition is NeedCondition.AtPreset at ? Applies(at.Preset, route, wantedPreset, draw) : null,
    };

    /// <summary>
    /// Rule R11: the wanted preset counts, else the highest that fits; the smallest where none is known to fit, for then the title runs with
    /// that one or not at all. Nobody knows where memory is not recorded, nor of the last preset where it is not recorded whether the card takes
    /// textures over the bus. A format that is open leaves it open.
    /// </summary>
    private Applicability Applies(string preset, Route route, string wanted, DrawMode draw)
    {
        if (wanted.Length > 0)
            return Applicability.Certain(wanted == preset);
        var use = route.Renderer.Memory;
        if (route.Setup.Memory is not { } memory)
            return Applicability.Of([Reaches(preset)], yes => yes.Count > 0);

        var (palettes, compression) = (KeepsPalettes(route), KeepsCompression(route));
        var last = memory.TexturesFromSystemMemory is null ? Reaches(use.Presets[^1].Name) : null;
        return Applicability.Of(
            [.. new[] { palettes, compression, last }.OfType<Answer>().Where(answer => answer.Open is not null && answer.States.Contains(Support.Yes))],
            yes => Judged(yes).Name == preset);

        Answer Reaches(string name) => Answer.YesOrNo(new UnknownFact.Preset(route.Setup.Card, route.Renderer, name));

        TexturePreset Judged(IReadOnlySet<Answer> yes)
        {
            if (last is not null && yes.Contains(last))
                return use.Presets[^1];
            var storage = new TextureStorage(IsKept(palettes, yes), IsKept(compression, yes), draw.Depth);
            return TextureFit.Of(use, memory, draw, storage, storage).Highest ?? use.Presets[0];
        }

        static bool IsKept(Answer? answer, IReadOnlySet<Answer> yes) => answer is null || answer.Support == Support.Yes || yes.Contains(answer);
    }
}
