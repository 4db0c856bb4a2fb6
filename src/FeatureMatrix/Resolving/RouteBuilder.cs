using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Turns a renderer, a setup and a wrapper version into a <see cref="RouteForm"/>: asks everything that rules R6 to R11 ask
/// of facts, and leaves open what nobody knows.
/// </summary>
internal sealed class RouteBuilder(SupplyTable supply, ObservationIndex observations)
{
    private static readonly string[] PaletteFeatures = ["tex-pal8"];
    private static readonly string[] CompressionFeatures = ["tex-dxt1"];

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
                .Select(need => Term(need, route, terms.Preset, textures)).ToList(),
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
        gates.Add(new Gate(new GateReason.ForcedInstall(), said.Grade > Grade.Inferred ? said with { Grade = Grade.Inferred } : said));
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
            gates.Add(new Gate(new GateReason.WrapperMemory(wrapper.VideoMemoryBytes), Fits(wrapper.VideoMemoryBytes, setup.Card, memory => memory.Total)));
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
        var card = route.Setup.Card;
        var pool = card.Memory?.FramePool;
        var worksTo = pool is { } bytes ? FrameBuffer.LargestThatFits(route.Renderer.Memory, bytes, draw.Depth, draw.Samples) : null;
        return new Gate(new GateReason.FrameBuffer(draw, pool, worksTo), Fits(draw.FrameBytes, card, memory => memory.FramePool));
    }

    private static Answer Fits(long bytes, Card card, Func<VideoMemory, long> pool) => card.Memory is { } memory
        ? new Answer { Support = pool(memory) >= bytes ? Support.Yes : Support.No, Reason = AnswerReason.Arithmetic, Grade = card.Evidence.Grade }
        : Answer.YesOrNo(new UnknownFact.FrameBuffer(card, bytes));

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
        var use = route.Renderer.Memory;
        var palettes = Keeps(PaletteFeatures, TextureFormat.Paletted8);
        var compression = Keeps(CompressionFeatures, TextureFormat.Compressed4, TextureFormat.Compressed8);
        return TextureFit.Of(
            use, route.Setup.Card.Memory, draw, new TextureStorage(palettes.Certainly, compression.Certainly, draw.Depth),
            new TextureStorage(palettes.Perhaps, compression.Perhaps, draw.Depth));

        // An emulated format is expanded somewhere: its size is that of the expansion.
        (bool Certainly, bool Perhaps) Keeps(string[] ids, params TextureFormat[] formats)
        {
            if (!use.Presets.Any(preset => formats.Contains(preset.Format)))
                return (true, true);
            var answers = supply.Features(ids).Select(feature => Supplied(feature.At(1), route)).ToList();
            return (answers.TrueForAll(answer => answer.Support == Support.Yes), answers.TrueForAll(answer => answer.States.Contains(Support.Yes)));
        }
    }

    /// <summary>False where the need asks for another colour depth than the route draws at (rule R5).</summary>
    public static bool MayApply(Need need, DrawMode draw) =>
        need.Condition is not NeedCondition.AtDepth depth || depth.Bits == draw.Depth;

    /// <summary>A need with what the route supplies of it.</summary>
    public NeedTerm Term(Need need, Route route, string wantedPreset, TextureFit textures) => new()
    {
        Renderer = route.Renderer,
        Need = need,
        Choices = need.Choices.Select(capability => new Choice(capability, Supplied(capability, route))).ToList(),
        Applies = need.Condition is NeedCondition.AtPreset at ? Applies(at.Preset, route, wantedPreset, textures) : null,
    };

    /// <summary>Rule R11: the wanted preset counts, else the highest that fits; where memory is not recorded nobody knows.</summary>
    private static Answer Applies(string preset, Route route, string wanted, TextureFit textures)
    {
        if (wanted.Length > 0)
            return Answer.Structural(wanted == preset);
        if (textures.BytesLeft is null)
            return Answer.YesOrNo(new UnknownFact.Preset(route.Setup.Card, route.Renderer, preset));
        return Answer.Structural(textures.Highest?.Name == preset);
    }
}
