using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>What a gate of a route asks for; a gate that does not open stops the route.</summary>
public abstract record GateReason
{
    private GateReason()
    {
    }

    /// <summary>The renderer exists on the operating system (rule R7).</summary>
    public sealed record RendererOnOs : GateReason;

    /// <summary>The operating system can have the renderer's runtime (rule R7).</summary>
    public sealed record Runtime(Capability Level) : GateReason;

    /// <summary>The driver offers the renderer's API at its level (rule R7).</summary>
    public sealed record ApiOffered(Capability Level) : GateReason;

    /// <summary>The operating system can use the card.</summary>
    public sealed record CardOnOs : GateReason;

    /// <summary>A driver exists although none is recorded.</summary>
    public sealed record DriverExists : GateReason;

    /// <summary>The driver can be forced onto the card (rule R9).</summary>
    public sealed record ForcedInstall : GateReason;

    /// <summary>The wrapper version offers the renderer's API at its level (rule R8).</summary>
    public sealed record WrapperOffers(Capability Level) : GateReason;

    /// <summary>The wrapper version runs on the operating system (rule R8).</summary>
    public sealed record WrapperOnOs : GateReason;

    /// <summary>The operating system can have the runtime that the wrapper version needs (rule R8).</summary>
    public sealed record WrapperRuntime(Capability Level) : GateReason;

    /// <summary>The driver offers the API that the wrapper version draws with (rule R8).</summary>
    public sealed record WrapperTarget(Capability Level) : GateReason;

    /// <summary>Card and driver supply something that the wrapper version cannot do without (rule R8).</summary>
    public sealed record WrapperNeeds(Capability Capability) : GateReason;

    /// <summary>The card has the memory that the wrapper version asks for (rule R8).</summary>
    public sealed record WrapperMemory(long Bytes) : GateReason;

    /// <summary>The frame buffer fits (rule R10).</summary>
    /// <param name="Draw">The mode judged, with its bytes.</param>
    /// <param name="Pool">Bytes of the pool that holds it; null where not recorded.</param>
    /// <param name="WorksTo">The largest common mode that fits; null where none does or nobody knows.</param>
    public sealed record FrameBuffer(DrawMode Draw, long? Pool, Mode? WorksTo) : GateReason;

    /// <summary>The smallest textures fit on a card that cannot take them over the bus (rule R11).</summary>
    public sealed record Textures(TextureFit Fit) : GateReason;

    /// <summary>A defect does not strike (rule R6).</summary>
    public sealed record NoDefect(Defect Defect) : GateReason;

    /// <summary>Somebody watched this route (rule R15).</summary>
    public sealed record Watched : GateReason;
}

/// <summary>A condition of a route.</summary>
/// <param name="Reason">What it asks for.</param>
/// <param name="Answer">The answer.</param>
/// <param name="OpensWhenMissing">True for defects that strike when something is present.</param>
/// <param name="Real">Whether the defect is real at all, where only hearsay says so and it has a cause as well; null otherwise.</param>
public sealed record Gate(GateReason Reason, Answer Answer, bool OpensWhenMissing = false, Answer? Real = null)
{
    /// <summary>True where the state lets the route pass. Broken does not: a broken interface is none.</summary>
    public bool IsOpenAt(Support state) => OpensWhenMissing ? state == Support.No : state >= Support.Emulated;

    /// <summary>True where it is certainly shut.</summary>
    public bool IsShut => Real is null && Answer.Always(state => !IsOpenAt(state));

    /// <summary>True where it is certainly open.</summary>
    public bool IsOpen => Answer.Always(IsOpenAt);

    /// <summary>The unknowns it hangs on.</summary>
    public IEnumerable<UnknownFact> Open => IsOpen ? [] : new[] { Answer.Open, Real?.Open }.OfType<UnknownFact>();
}

/// <summary>One way of meeting a need, and what is known of it on the route.</summary>
public sealed record Choice(Capability Capability, Answer Answer);

/// <summary>A need of the renderer with the answers of one route (rules R4 and R5).</summary>
public sealed record NeedTerm
{
    /// <summary>The renderer.</summary>
    public required Renderer Renderer { get; init; }

    /// <summary>The need.</summary>
    public required Need Need { get; init; }

    /// <summary>The alternatives in the order the title tries them.</summary>
    public required IReadOnlyList<Choice> Choices { get; init; }

    /// <summary>When the need applies; null where it certainly does.</summary>
    public Applicability? Applies { get; init; }

    /// <summary>Every answer it hangs on: those of the alternatives, then those that say whether it applies.</summary>
    public IEnumerable<Answer> Answers => Choices.Select(choice => choice.Answer).Concat(Applies?.Open ?? []);

    /// <summary>Every unknown that may be asked for on the way to what it comes to.</summary>
    public IEnumerable<UnknownFact> Unknowns => Answers.Select(answer => answer.Open).OfType<UnknownFact>()
        .Append(new UnknownFact.RunsWithout(Renderer, Need)).Append(new UnknownFact.RunsBroken(Renderer, Need));

    /// <summary>True where the route was seen to run, which settles every must (rule R15).</summary>
    public bool WasSeenToRun { get; init; }

    /// <summary>
    /// The alternative that meets the need whatever the unknowns turn out to be; null where none does. Earlier alternatives
    /// may be open, as long as none of them can be taken and disappoint.
    /// </summary>
    public Choice? CertainlyMetBy
    {
        get
        {
            foreach (var choice in Choices)
            {
                if (choice.Answer.States.All(Meets))
                    return choice;
                if (choice.Answer.States.Any(state => state != Support.No && !Meets(state)))
                    return null;
            }

            return null;
        }
    }

    private bool Meets(Support state) => state == Support.Yes || (state == Support.Emulated && !Need.HardwareOnly);
}

/// <summary>An observation that contradicts what the facts say, and the facts to look at again (rule R15).</summary>
public sealed record Contradiction(Observation Observation, IReadOnlyList<SupplyFact> Suspects);

/// <summary>A route with every question on the way answered as far as facts go. Evaluating it needs nothing else.</summary>
public sealed record RouteForm
{
    /// <summary>The route.</summary>
    public required Route Route { get; init; }

    /// <summary>What the policy forbids about it.</summary>
    public Forbidden Forbidden { get; init; }

    /// <summary>The conditions, in the order a person would check them.</summary>
    public required IReadOnlyList<Gate> Gates { get; init; }

    /// <summary>The needs.</summary>
    public required IReadOnlyList<NeedTerm> Needs { get; init; }

    /// <summary>The mode it is judged at.</summary>
    public required DrawMode Draw { get; init; }

    /// <summary>The texture preset that fits.</summary>
    public required TextureFit Textures { get; init; }

    /// <summary>Observations that disagree with the facts.</summary>
    public IReadOnlyList<Contradiction> Contradictions { get; init; } = [];

    /// <summary>The observations that apply to this very route.</summary>
    public IReadOnlyList<Observation> Observations { get; init; } = [];

    /// <summary>True where the policy allows it.</summary>
    public bool IsPermitted => Forbidden == Forbidden.Nothing;

    /// <summary>The first gate that is certainly shut: the one reason that kills the route; null where none is.</summary>
    public Gate? ShutGate => Gates.FirstOrDefault(gate => gate.IsShut);

    /// <summary>Every answer that was asked for on the way: of the gates, then of the needs' alternatives.</summary>
    public IEnumerable<Answer> Answers => Gates.Select(gate => gate.Answer).Concat(Needs.SelectMany(need => need.Choices).Select(choice => choice.Answer));
}
