using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

using Support = FeatureMatrix.Model.Support;

/// <summary>R4 to R11 and R15 for one route, written from DESIGN and evaluated plainly.</summary>
internal sealed class RouteOracle(Catalog catalog, SupplyOracle supply, World world, Terms terms)
{
    private MemoryOracle Memory => field ??= new(catalog, world, terms, (capability, route) => State(capability, route, []));

    /// <inheritdoc cref="MemoryOracle.IsReduced"/>
    public bool IsReduced(Route route) => Memory.IsReduced(route);

    public RouteRun Compile(Route route)
    {
        var permitted = terms.Policy.Allows(route.Setup.Os) && (!route.IsForced || terms.Policy.AllowForced)
            && (route.Wrapper is null || terms.Policy.Allows(route.Wrapper.Wrapper));
        return Outcomes(route, permitted);
    }

    private RouteRun Outcomes(Route route, bool permitted)
    {
        var renderer = route.Renderer;
        var seen = catalog.Observations.Where(observation => Applies(observation, route)).ToList();
        var watched = seen.Where(observation => observation.Runs is not null).ToList();
        var solid = watched.Where(observation => observation.Evidence.Grade > Grade.Hearsay).ToList();

        // Title, wrapper and operating system are closed: only a sighting that names the odd one out makes such a route exist.
        var saw = (solid.Count > 0 ? solid : watched).Where(observation => observation.Runs == true).ToList();
        var exists = (renderer.Oses.Contains(route.Setup.Os) || saw.Exists(observation => observation.Os is not null))
            && (route.Wrapper is null || Offers(route.Wrapper, renderer.Api!.Value) || saw.Exists(observation => observation.Wrapper is ObservedWrapper.Version));
        if (!exists || (solid.Count > 0 && solid.TrueForAll(observation => observation.Runs == false)))
            return Always(Outcome.DoesNotRun);
        if (solid.Count > 0 && solid.TrueForAll(observation => observation.Runs == true))
            return new RouteRun(route, permitted, Losses(route, seen, wasSeenToRun: true));
        var inferred = Inferred(route, seen);
        if (watched.Count == 0)
            return new RouteRun(route, permitted, inferred);

        // Sightings that disagree, or rumours: it may run as it was seen to, or not.
        var whether = world.Reader(Question.YesOrNo(new UnknownFact.ObservedRun(renderer, route.Setup, route.Wrapper)));
        var running = Losses(route, seen, wasSeenToRun: true);
        Outcome Disputed(int[] completion) => whether(completion) == Support.Yes ? running(completion) : Outcome.DoesNotRun;
        if (solid.Count > 0)
            return new RouteRun(route, permitted, Disputed);
        var rumours = watched.Select(observation => observation.Runs!.Value).Distinct().ToList();
        return new RouteRun(route, permitted, inferred) { IfContradicted = runs => rumours is [var rumour] && rumour == runs ? null : Disputed };

        RouteRun Always(Outcome outcome) => new(route, permitted, _ => outcome);
    }

    private static bool Offers(WrapperVersion version, Capability asked) =>
        version.Offers.Any(offer => offer.Feature == asked.Feature && offer.Step >= asked.Step);

    private bool Applies(Observation seen, Route route) =>
        seen.Renderer == route.Renderer
        && (seen.Card is null || seen.Card == route.Setup.Card)
        && (seen.Driver is null || seen.Driver == route.Setup.Driver)
        && (seen.Os is null || seen.Os == route.Setup.Os)
        && (seen.Mode is null || seen.Mode == Memory.ModeOf(route.Renderer))
        && (seen.Depth is null || seen.Depth == Memory.DepthOf(route.Renderer))
        && seen.Wrapper switch
        {
            ObservedWrapper.NotStated => true,
            ObservedWrapper.None => route.Wrapper is null,
            ObservedWrapper.Version version => version.Used == route.Wrapper,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private Func<int[], Outcome> Inferred(Route route, IReadOnlyList<Observation> seen)
    {
        if (!route.Renderer.Oses.Contains(route.Setup.Os) || (route.Wrapper is { } version && !Offers(version, route.Renderer.Api!.Value)))
            return _ => Outcome.DoesNotRun;
        var gates = Gates(route).ToList();
        if (gates.Any(gate => gate.CertainlyShut))
            return _ => Outcome.DoesNotRun;
        var defects = route.Renderer.Defects.Where(defect => Strikes(defect, route)).ToList();
        if (defects.Any(defect => defect.IfPresent is null && defect.Evidence.Grade > Grade.Hearsay))
            return _ => Outcome.DoesNotRun;
        var open = gates.Select(world.Reader).ToList();
        var vetoes = defects.Select(defect => (
            Real: world.Reader(defect.Evidence.Grade == Grade.Hearsay
                ? Question.YesOrNo(new UnknownFact.DefectIsReal(route.Renderer, defect)) : Question.Answered(true)),
            Present: world.Reader(defect.IfPresent is { } cause ? State(cause, route, seen) : Question.Answered(true)))).ToList();
        var losses = Losses(route, seen, wasSeenToRun: false);
        return completion =>
            open.Any(gate => gate(completion) < Support.Emulated)
            || vetoes.Any(veto => veto.Real(completion) == Support.Yes && veto.Present(completion) != Support.No)
                ? Outcome.DoesNotRun
                : losses(completion);
    }

    private static bool Strikes(Defect defect, Route route) =>
        defect.Wrapper == route.Wrapper && defect.Scope.Covers(
            route.Setup.Card, route.Setup.Driver, route.Setup.Os, route.Wrapper?.Target.Feature ?? route.Renderer.Api!.Value.Feature);

    /// <summary>Everything that must hold before a need matters.</summary>
    private IEnumerable<Question> Gates(Route route)
    {
        var setup = route.Setup;
        var statedForCard = Statements.WeighUnscoped(setup.Card.OsSupport.Where(s => s.Os == setup.Os).Select(s => (s.Support, s.Evidence.Grade)));
        var cardOs = new UnknownFact.CardOs(setup.Card, setup.Os);
        switch (setup.Install)
        {
            case Install.Listed:
                yield return Stated(statedForCard, cardOs, silence: Question.Answered(true));
                break;
            case Install.Forced:
                yield return Stated(statedForCard, cardOs, silence: Question.Answered(true));
                yield return Forced(setup);
                break;
            case Install.Unrecorded:
                yield return Stated(statedForCard, cardOs, silence: Question.YesOrNo(cardOs));
                yield return Question.YesOrNo(new UnknownFact.DriverExists(setup.Card.Chip, setup.Os));
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }

        if (route.Wrapper is { } version)
        {
            var os = new UnknownFact.WrapperOs(version, setup.Os);
            yield return Stated(
                Statements.WeighUnscoped(version.Oses.Where(s => s.Os == setup.Os).Select(s => (s.Support, s.Evidence.Grade))), os, Question.YesOrNo(os));
            yield return RuntimeOn(setup.Os, version.Runtime);
            yield return supply.Ask(version.Target, setup, version.Target.Feature);
            foreach (var need in version.Needs)
                yield return supply.Ask(need.Capability, setup, version.Target.Feature);
            if (version.VideoMemoryBytes > 0)
                yield return Holds(setup.Card, setup.Card.Memory?.Total, version.VideoMemoryBytes);
        }
        else
        {
            yield return RuntimeOn(setup.Os, route.Renderer.Runtime!.Value);
            yield return supply.Ask(route.Renderer.Api!.Value, setup, route.Renderer.Api.Value.Feature);
        }

        yield return Holds(setup.Card, setup.Card.Memory?.FramePool, Memory.FrameBytes(route.Renderer));
        foreach (var gate in Memory.SmallestTextures(route))
            yield return gate;
    }

    private static Question Stated(Weighed weighed, UnknownFact key, Question silence) => weighed.States is null ? silence : Question.Of(key, weighed.States);

    private static Question Forced(Setup setup)
    {
        var key = new UnknownFact.ForcedInstall(setup.Driver, setup.Card);
        var weighed = Statements.WeighUnscoped(setup.Driver.Forced.Where(f => f.Card == setup.Card).Select(f => (f.Works, f.Evidence.Grade)));
        if (weighed.States is null)
            return Question.Answered(true);
        return weighed.States.Contains(Support.Unknown) ? Question.YesOrNo(key) : Question.Of(key, weighed.States);
    }

    private static Question RuntimeOn(Os os, Capability level)
    {
        if (!level.Feature.NeedsRuntime)
            return Question.Answered(true);
        var key = new UnknownFact.Runtime(os, level);
        var weighed = Statements.WeighUnscoped(os.Runtimes.Where(limit => limit.Api == level.Feature)
            .Select(limit => (limit.Highest >= level.Step ? Support.Yes : Support.No, limit.Evidence.Grade)));
        return Stated(weighed, key, Question.YesOrNo(key));
    }

    private static Question Holds(Card card, long? pool, long bytes) =>
        pool is null ? Question.YesOrNo(new UnknownFact.FrameBuffer(card, bytes)) : Question.Answered(bytes <= pool);

    /// <summary>R5's conditions in a completion; null where the need does not apply in any.</summary>
    private Func<int[], bool>? Condition(Need need, Route route)
    {
        switch (need.Condition)
        {
            case null:
                return _ => true;
            case NeedCondition.AtDepth depth:
                return depth.Bits == Memory.DepthOf(route.Renderer) ? _ => true : null;
            case NeedCondition.AtPreset preset:
                if (terms.Preset.Length > 0)
                    return preset.Preset == terms.Preset ? _ => true : null;
                if (route.Setup.Card.Memory is not { } memory)
                    return Memory.IsYes(Question.YesOrNo(new UnknownFact.Preset(route.Setup.Card, route.Renderer, preset.Preset)));
                var judged = Memory.JudgedPreset(route.Renderer.Memory.Presets, memory, route);
                return completion => judged(completion) == preset.Preset;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>What the renderer meets of a capability on this route; what was looked at there wins (R15).</summary>
    private Question State(Capability capability, Route route, IReadOnlyList<Observation> seen)
    {
        var inferred = route.Wrapper is { } version
            ? supply.AskWrapped(capability, route.Setup, version)
            : supply.Ask(capability, route.Setup, route.Renderer.Api!.Value.Feature);
        var looks = seen.SelectMany(o => o.Seen.Select(look => (Seen: SpeaksFor(look, capability), o.Evidence.Grade))).Where(look => look.Seen != Support.Unknown).ToList();
        if (looks.Count == 0)
            return inferred;
        var key = new UnknownFact.ObservedFeature(route.Renderer, route.Setup, route.Wrapper, capability);
        var emulated = inferred.States is [Support.Emulated];
        var solid = looks.Where(look => look.Grade > Grade.Hearsay).Select(look => look.Seen).Distinct().ToList();
        if (solid.Count > 0)
            return solid is [Support.Yes] && emulated ? inferred : Question.Of(key, solid);
        var claims = looks.Select(look => look.Seen).Distinct().ToList();
        if (inferred.Key is not null || (claims.Count == 1 && (claims[0] == inferred.States[0] || (claims[0] == Support.Yes && emulated))))
            return inferred;
        return Question.Of(key, claims.Concat(inferred.States));
    }

    /// <summary>What was seen of the one thing says of the other what it implies, and nothing else.</summary>
    private static Support SpeaksFor(SeenFeature look, Capability asked) =>
        (look.Seen == Support.Yes && look.Capability.Implies(asked)) || (look.Seen == Support.No && asked.Implies(look.Capability)) || look.Capability == asked
            ? look.Seen
            : Support.Unknown;

    /// <summary>What it runs with once it gets that far; by R4, R5 and R14.</summary>
    private Func<int[], Outcome> Losses(Route route, IReadOnlyList<Observation> seen, bool wasSeenToRun)
    {
        var renderer = route.Renderer;
        var needs = renderer.Needs.Select(need => (Need: need, Condition: Condition(need, route))).Where(n => n.Condition is not null).Select(n => (
            n.Need, Applies: n.Condition!, States: n.Need.Choices.Select(choice => world.Reader(State(choice, route, seen))).ToList(),
            RunsWithout: wasSeenToRun ? null : Maybe(new UnknownFact.RunsWithout(renderer, n.Need), n.Need.Strength == Strength.Unknown),
            RunsBroken: wasSeenToRun ? null : Maybe(new UnknownFact.RunsBroken(renderer, n.Need), MayRunBroken(n.Need)))).ToList();
        return completion =>
        {
            var losses = new List<Loss>();
            foreach (var (need, applies, states, runsWithout, runsBroken) in needs)
            {
                if (!applies(completion))
                    continue;
                var state = states.Select(read => read(completion)).FirstOrDefault(support => support != Support.No, Support.No);
                if (state == Support.Yes || (state == Support.Emulated && !need.HardwareOnly))
                    continue;
                var kind = state switch { Support.No => LossKind.Missing, Support.Broken => LossKind.WrongPicture, _ => LossKind.NotInHardware };
                var strength = kind == LossKind.WrongPicture ? WhenBroken(need) : need.Strength;
                if (kind == LossKind.WrongPicture && (strength == Strength.Unknown || need is { Strength: Strength.Must, WhenBroken: null }))
                {
                    if (runsBroken?.Invoke(completion) == Support.No)
                        return Outcome.DoesNotRun;
                    strength = strength == Strength.Must ? Strength.Severe : Strength.Ungraded;
                }

                if (strength == Strength.Unknown)
                {
                    if (runsWithout?.Invoke(completion) == Support.No)
                        return Outcome.DoesNotRun;
                    strength = Strength.Ungraded;
                }

                if (strength == Strength.Must && !wasSeenToRun)
                    return Outcome.DoesNotRun;
                if (strength == Strength.Must && kind != LossKind.WrongPicture)
                    continue;
                if (strength == Strength.Must)
                    strength = Strength.Severe;
                if (strength != Strength.Bonus)
                    losses.Add(new Loss(need.Choices, strength, kind, need));
            }

            return Outcome.RunsWith(CountedOnce(losses));
        };

        Func<int[], Support>? Maybe(UnknownFact key, bool matters) => matters ? world.Reader(Question.YesOrNo(key)) : null;
    }

    private static bool MayRunBroken(Need need) => WhenBroken(need) == Strength.Unknown || need is { Strength: Strength.Must, WhenBroken: null };

    private static Strength WhenBroken(Need need) =>
        need.WhenBroken ?? (need.Strength == Strength.Bonus ? Strength.Ungraded : need.Strength);

    /// <summary>Of two missing things of which one implies the other the graver counts; of equals the one that the other implies (R14).</summary>
    private static IEnumerable<Loss> CountedOnce(List<Loss> losses)
    {
        return losses.Where((loss, i) => !losses.Where((other, j) => i != j && Replaces(other, j, loss, i)).Any());

        static bool Replaces(Loss other, int j, Loss loss, int i)
        {
            var because = Follows(loss, other);
            var therefore = Follows(other, loss);
            if ((!because && !therefore) || loss.Strength > other.Strength)
                return false;
            return loss.Strength < other.Strength || (because && (!therefore || j < i));
        }

        static bool Follows(Loss effect, Loss cause) => effect.Kind == LossKind.Missing && cause.Kind == LossKind.Missing
            && effect.Choices.All(choice => cause.Choices.Any(missing => choice.Implies(missing)));
    }
}
