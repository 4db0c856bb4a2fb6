using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>A question that an evaluation cannot go on without.</summary>
internal readonly record struct Question(UnknownFact Unknown, IReadOnlyList<Support> Possible);

/// <summary>What evaluating a route under a partial completion gives: an outcome, or the next question.</summary>
internal readonly record struct Step(Outcome? Outcome, Question? Ask);

/// <summary>Evaluates a route form under what a completion has settled so far. Nothing is asked before it matters.</summary>
internal static class RouteEvaluation
{
    /// <summary>The outcome of a route, or the first unknown it depends on.</summary>
    public static Step Evaluate(RouteForm form, IReadOnlyDictionary<UnknownFact, Support> settled) =>
        Evaluate(form.Gates, form.Needs, settled);

    /// <summary>The outcome of some gates and needs of a route.</summary>
    public static Step Evaluate(
        IReadOnlyList<Gate> gates, IReadOnlyList<NeedTerm> needs, IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        Question? ask = null;
        foreach (var gate in gates)
        {
            if (gate.IsShut)
                return new Step(Outcome.DoesNotRun, null);
            if (gate.IsOpen)
                continue;
            if (Pending(gate, settled) is not { } question)
                return new Step(Outcome.DoesNotRun, null);
            if (question.Unknown is not null)
                ask ??= question;
        }

        List<Loss>? losses = null;
        foreach (var need in needs)
        {
            var result = NeedEvaluation.Evaluate(need, settled);
            if (result.Fails)
                return new Step(Outcome.DoesNotRun, null);
            ask ??= result.Ask;
            if (result.Loss is { } loss)
                (losses ??= []).Add(loss);
        }

        if (ask is not null)
            return new Step(null, ask);
        return new Step(losses is null ? Outcome.Works : Outcome.RunsWith(WithoutImplied(losses)), null);
    }

    /// <summary>What must be asked of a gate; an empty question where it is open, null where it is shut.</summary>
    private static Question? Pending(Gate gate, IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        Question? ask = null;
        if (Passes(gate.Answer) || (gate.Real is { } real && Passes(real)))
            return default(Question);
        return ask;

        bool Passes(Answer answer)
        {
            var state = answer.Support;
            if (answer.Open is null || settled.TryGetValue(answer.Open, out state))
                return gate.IsOpenAt(state);
            ask ??= new Question(answer.Open, answer.Possible);
            return false;
        }
    }

    /// <summary>Leaves out losses that another loss implies; of such a pair the graver one counts (rule R14).</summary>
    /// <example>No pixel shaders 1.1 means no 1.4 either: one loss, with the graver strength of the two.</example>
    private static List<Loss> WithoutImplied(List<Loss> losses)
    {
        var kept = new List<Loss>(losses.Count);
        for (var i = 0; i < losses.Count; i++)
        {
            if (!IsCovered(i))
                kept.Add(losses[i]);
        }

        return kept;

        bool IsCovered(int i)
        {
            for (var j = 0; j < losses.Count; j++)
            {
                if (i != j && IsCoveredBy(losses[i], i, losses[j], j))
                    return true;
            }

            return false;
        }

        static bool IsCoveredBy(Loss loss, int i, Loss other, int j)
        {
            var follows = Follows(loss, other);
            var precedes = Follows(other, loss);
            if (!follows && !precedes)
                return false;
            if (loss.Strength != other.Strength)
                return loss.Strength < other.Strength;
            return follows && (!precedes || i > j);
        }

        // The first loss follows from the second: whatever would have met it needs something that is missing.
        static bool Follows(Loss implied, Loss cause)
        {
            if (cause.Kind != LossKind.Missing || implied.Kind != LossKind.Missing)
                return false;
            for (var i = 0; i < implied.Choices.Count; i++)
            {
                if (!NeedsOneOf(implied.Choices[i], cause.Choices))
                    return false;
            }

            return true;
        }

        static bool NeedsOneOf(Capability choice, IReadOnlyList<Capability> missing)
        {
            for (var i = 0; i < missing.Count; i++)
            {
                if (choice.Implies(missing[i]))
                    return true;
            }

            return false;
        }
    }
}

/// <summary>What one need comes to (rules R2, R4 and R5).</summary>
internal readonly record struct NeedResult(bool Fails, Loss? Loss, Question? Ask)
{
    public static NeedResult Met { get; }

    public static NeedResult Fatal { get; } = new(true, null, null);
}

/// <summary>Evaluates one need under what a completion has settled so far.</summary>
internal static class NeedEvaluation
{
    /// <summary>Met, lost, fatal, or a question.</summary>
    public static NeedResult Evaluate(NeedTerm term, IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        if (term.Need.Strength == Strength.Bonus && term.Choices.All(choice => !choice.Answer.States.Contains(Support.Broken)))
            return NeedResult.Met;
        if (term.Applies is { } applies)
        {
            var holds = applies.Holds(settled, out var ask);
            if (ask is not null)
                return Asking(ask);
            if (!holds)
                return NeedResult.Met;
        }

        foreach (var choice in term.Choices)
        {
            if (!TryState(choice.Answer, settled, out var state))
                return Asking(choice.Answer);
            switch (state)
            {
                case Support.No:
                    continue;
                case Support.Yes:
                    return NeedResult.Met;
                case Support.Emulated:
                    return term.Need.HardwareOnly ? Missing(term, LossKind.NotInHardware, settled) : NeedResult.Met;
                case Support.Broken:
                    return Broken(term, settled);
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
        }

        return Missing(term, LossKind.Missing, settled);
    }

    private static NeedResult Missing(NeedTerm term, LossKind kind, IReadOnlyDictionary<UnknownFact, Support> settled) =>
        term.Need.Strength switch
        {
            Strength.Bonus => NeedResult.Met,
            Strength.Must => term.WasSeenToRun ? NeedResult.Met : NeedResult.Fatal,
            Strength.Unknown => IfItRuns(term, new UnknownFact.RunsWithout(term.Renderer, term.Need), settled, Strength.Ungraded, kind),
            var strength => Lost(term, strength, kind),
        };

    /// <summary>
    /// Rule R4: a recorded strength for the broken case counts; otherwise the need's own, an ungraded loss for a bonus, and
    /// for a must nobody knows whether it runs with a severe loss or not at all.
    /// </summary>
    private static NeedResult Broken(NeedTerm term, IReadOnlyDictionary<UnknownFact, Support> settled)
    {
        var unknown = new UnknownFact.RunsBroken(term.Renderer, term.Need);
        return (term.Need.WhenBroken, term.Need.Strength) switch
        {
            (Strength.Bonus, _) => NeedResult.Met,
            (Strength.Must, _) => term.WasSeenToRun ? Lost(term, Strength.Severe, LossKind.WrongPicture) : NeedResult.Fatal,
            (Strength.Unknown, _) => IfItRuns(term, unknown, settled, Strength.Ungraded, LossKind.WrongPicture),
            ({ } recorded, _) => Lost(term, recorded, LossKind.WrongPicture),
            (null, Strength.Bonus) => Lost(term, Strength.Ungraded, LossKind.WrongPicture),
            (null, Strength.Must) => IfItRuns(term, unknown, settled, Strength.Severe, LossKind.WrongPicture),
            (null, Strength.Unknown) => IfItRuns(term, unknown, settled, Strength.Ungraded, LossKind.WrongPicture),
            (null, var strength) => Lost(term, strength, LossKind.WrongPicture),
        };
    }

    private static NeedResult IfItRuns(
        NeedTerm term, UnknownFact unknown, IReadOnlyDictionary<UnknownFact, Support> settled, Strength strength, LossKind kind)
    {
        if (term.WasSeenToRun)
            return Lost(term, strength, kind);
        if (!settled.TryGetValue(unknown, out var runs))
            return new NeedResult(false, null, new Question(unknown, [Support.No, Support.Yes]));
        return runs == Support.No ? NeedResult.Fatal : Lost(term, strength, kind);
    }

    private static NeedResult Lost(NeedTerm term, Strength strength, LossKind kind) =>
        new(false, new Loss(term.Need.Choices, strength, kind, term.Need), null);

    private static bool TryState(Answer answer, IReadOnlyDictionary<UnknownFact, Support> settled, out Support state)
    {
        state = answer.Support;
        return answer.Open is null || settled.TryGetValue(answer.Open, out state);
    }

    private static NeedResult Asking(Answer answer) => new(false, null, new Question(answer.Open!, answer.Possible));
}
