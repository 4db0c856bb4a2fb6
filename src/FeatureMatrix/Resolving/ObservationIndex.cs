using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>
/// Rule R15: lays what was seen over what the facts say. An observation speaks for the routes whose keys it states, and only
/// for what was looked at; it wins over inference, and where it contradicts it the cell is flagged.
/// </summary>
internal sealed class ObservationIndex(Catalog catalog, RouteRange ranges)
{
    private readonly ILookup<Renderer, Observation> _byRenderer = catalog.Observations.ToLookup(observation => observation.Renderer);

    /// <summary>The wrapper versions that a renderer was watched with, whether or not they are known to offer its API.</summary>
    public IEnumerable<WrapperVersion> WrappersUsedWith(Renderer renderer) =>
        _byRenderer[renderer].Select(observation => (observation.Wrapper as ObservedWrapper.Version)?.Used).OfType<WrapperVersion>();

    /// <summary>True where a renderer was watched on an operating system, whether or not it is recorded to exist there.</summary>
    public bool HasSeen(Renderer renderer, Os os) => _byRenderer[renderer].Any(observation => observation.Os == os);

    /// <summary>The form with the observations of its route laid over it.</summary>
    public RouteForm Apply(RouteForm form)
    {
        var applicable = _byRenderer[form.Route.Renderer].Where(observation => Matches(observation, form)).ToList();
        if (applicable.Count == 0)
            return form;
        var contradictions = new List<Contradiction>();
        form = form with { Observations = applicable };
        form = ApplySeen(form, applicable, contradictions);
        form = ApplyRuns(form, applicable, contradictions);
        return form with { Contradictions = contradictions };
    }

    private static bool Matches(Observation observation, RouteForm form)
    {
        var route = form.Route;
        return (observation.Card is null || observation.Card == route.Setup.Card)
            && (observation.Driver is null || observation.Driver == route.Setup.Driver)
            && (observation.Os is null || observation.Os == route.Setup.Os)
            && (observation.Mode is null || observation.Mode == form.Draw.Mode)
            && (observation.Depth is null || observation.Depth == form.Draw.Depth)
            && observation.Wrapper switch
            {
                ObservedWrapper.NotStated => true,
                ObservedWrapper.None => route.IsNative,
                ObservedWrapper.Version version => version.Used == route.Wrapper,
                _ => throw new System.Diagnostics.UnreachableException(),
            };
    }

    private RouteForm ApplyRuns(RouteForm form, List<Observation> applicable, List<Contradiction> contradictions)
    {
        var votes = applicable.Where(observation => observation.Runs is not null).ToList();
        if (votes.Count == 0)
            return form;
        var solid = votes.Where(observation => observation.Evidence.Grade > Grade.Hearsay).ToList();
        var saysRuns = (solid.Count > 0 ? solid : votes).Select(observation => observation.Runs!.Value).Distinct().ToList();
        var inferred = InferredToRun(form);
        if (solid.Count == 0 && (inferred is null || (saysRuns.Count == 1 && saysRuns[0] == inferred)))
            return form;
        if (solid.Count == 0 || saysRuns.Count > 1)
            return Watched(form, Disputed(form, votes), votes);

        var answer = new Answer
        {
            Support = saysRuns[0] ? Support.Yes : Support.No,
            Reason = AnswerReason.Observed,
            Grade = solid.Max(observation => observation.Evidence.Grade),
            Observations = solid,
        };
        var seen = saysRuns[0] ? Watched(form, answer, solid) : form with { Gates = [.. form.Gates, new Gate(new GateReason.Watched(), answer)] };
        // Where a closed list keeps the route shut, the sighting was of another one: it names neither system nor version.
        if (inferred is { } before && before != saysRuns[0] && !(saysRuns[0] && seen.Gates.Any(gate => !gate.IsOpen && StaysShut(gate.Reason, solid))))
            contradictions.AddRange(solid.Select(observation => new Contradiction(observation, Suspects(form, before))));
        return seen;
    }

    /// <summary>
    /// "Runs" settles musts and vetoes: every gate is open and no must fails. Only where a renderer exists and what a wrapper
    /// version offers are closed lists: a sighting that does not name the operating system or the version adds nothing to them.
    /// </summary>
    private static RouteForm Watched(RouteForm form, Answer answer, IReadOnlyList<Observation> votes) => form with
    {
        Gates = [.. form.Gates.Where(gate => gate.IsOpen || StaysShut(gate.Reason, votes)), new Gate(new GateReason.Watched(), answer)],
        Needs = form.Needs.Select(need => need with { WasSeenToRun = true }).ToList(),
    };

    private static bool StaysShut(GateReason reason, IReadOnlyList<Observation> votes) =>
        (reason is GateReason.RendererOnOs && !votes.Any(vote => vote.Runs == true && vote.Os is not null))
        || (reason is GateReason.WrapperOffers && !votes.Any(vote => vote.Runs == true && vote.Wrapper is ObservedWrapper.Version));

    private static Answer Disputed(RouteForm form, List<Observation> votes) =>
        Answer.YesOrNo(
            new UnknownFact.ObservedRun(form.Route.Renderer, form.Route.Setup, form.Route.Wrapper), AnswerReason.ObservationsDisagree)
        with
        { Observations = votes };

    private static RouteForm ApplySeen(RouteForm form, List<Observation> applicable, List<Contradiction> contradictions)
    {
        if (applicable.TrueForAll(observation => observation.Seen.Count == 0))
            return form;
        var needs = form.Needs.Select(need => need with
        {
            Choices = need.Choices.Select(choice => choice with { Answer = Seen(choice, form, applicable, contradictions) }).ToList(),
        }).ToList();
        var gates = form.Gates.Select(gate => gate.Reason is GateReason.NoDefect { Defect.IfPresent: { } cause }
            ? gate with { Answer = Seen(new Choice(cause, gate.Answer), form, applicable, contradictions) } : gate).ToList();
        return form with { Needs = needs, Gates = gates };
    }

    private static Answer Seen(Choice choice, RouteForm form, List<Observation> applicable, List<Contradiction> contradictions)
    {
        var votes = applicable
            .SelectMany(observation => observation.Seen.Select(seen => (observation, state: SpeaksFor(seen, choice.Capability))))
            .Where(vote => vote.state != Support.Unknown).ToList();
        if (votes.Count == 0)
            return choice.Answer;
        var solid = votes.Where(vote => vote.observation.Evidence.Grade > Grade.Hearsay).ToList();
        var states = (solid.Count > 0 ? solid : votes).Select(vote => vote.state).Distinct().Order().ToList();
        var inferred = choice.Answer;
        var watchers = votes.Select(vote => vote.observation).Distinct().ToList();
        if (solid.Count == 0 && (!inferred.IsSettled || (states.Count == 1 && Agrees(states[0], inferred.Support))))
            return inferred;
        if (solid.Count == 0 || states.Count > 1)
        {
            var possible = solid.Count == 0 ? states.Union([inferred.Support]).Order().ToList() : states;
            return new Answer
            {
                Support = Support.Unknown,
                Possible = possible,
                Reason = AnswerReason.ObservationsDisagree,
                Observations = watchers,
                Inferred = inferred,
                Open = new UnknownFact.ObservedFeature(form.Route.Renderer, form.Route.Setup, form.Route.Wrapper, choice.Capability),
            };
        }

        if (inferred.IsSettled && !Agrees(states[0], inferred.Support))
            contradictions.AddRange(solid.Select(vote => new Contradiction(vote.observation, inferred.Facts)));
        // Seen on the screen says that it is there, not where it is computed: an emulated supply stays emulated.
        var state = states[0] == Support.Yes && inferred.Support == Support.Emulated ? Support.Emulated : states[0];
        return new Answer
        {
            Support = state,
            Reason = AnswerReason.Observed,
            Grade = solid.Max(vote => vote.observation.Evidence.Grade),
            Observations = watchers,
            Inferred = inferred,
        };
    }

    private static bool Agrees(Support seen, Support inferred) =>
        seen == inferred || (seen == Support.Yes && inferred == Support.Emulated);

    private static Support SpeaksFor(SeenFeature seen, Capability asked) => seen.Seen switch
    {
        Support.Yes when seen.Capability.Implies(asked) => Support.Yes,
        Support.No when asked.Implies(seen.Capability) => Support.No,
        Support.Broken or Support.Emulated when seen.Capability == asked => seen.Seen,
        _ => Support.Unknown,
    };

    /// <summary>What the facts alone say: runs, does not run, or null where nobody knows.</summary>
    private bool? InferredToRun(RouteForm form)
    {
        var range = ranges.Of(form);
        return range.CertainlyRuns ? true : range.CertainlyFails ? false : null;
    }

    /// <summary>The facts that led to the contradicted conclusion.</summary>
    private static List<SupplyFact> Suspects(RouteForm form, bool inferredToRun)
    {
        var gates = form.Gates.Where(gate => inferredToRun ? gate.IsOpen : gate.IsShut).SelectMany(gate => gate.Answer.Facts);
        var needs = form.Needs.Where(need => need.Need.Strength == Strength.Must)
            .SelectMany(need => need.Choices).Where(choice => inferredToRun != choice.Answer.IsCertainlyMissing)
            .SelectMany(choice => choice.Answer.Facts);
        return gates.Concat(needs).Distinct().ToList();
    }
}
