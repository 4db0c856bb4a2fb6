using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Labels (rule R14): an outcome and a route, in words.</summary>
public static class LabelWording
{
    /// <summary>The whole label: outcome, route, and what must not be overlooked.</summary>
    /// <example><c>loses table fog (severe), natively</c>; <c>works, wrapper only</c>; <c>works, natively (forced)</c></example>
    public static string Label(Verdict verdict)
    {
        if (verdict.IsSoftwareOnly)
            return "software only";
        var headline = verdict.Headline;
        if (headline.Outcome == OutcomeLabel.DoesNotRun)
            return DoesNotRunText(verdict);
        var route = RouteText(headline.Route);
        var forced = headline.IsForced ? " (forced)" : "";
        var text = route.Length > 0 ? $"{OutcomeText(headline)}, {route}{forced}" : OutcomeText(headline) + forced;
        if (headline.Outcome == OutcomeLabel.RunsByOneOf)
            text += $"; decided by {UnknownWording.Short(headline.Deciding)}";
        return PresetText(headline) is { } preset ? $"{text}; {preset}" : text;
    }

    /// <summary>The outcome half alone.</summary>
    public static string OutcomeText(Headline headline) => headline.Outcome switch
    {
        OutcomeLabel.Works => "works",
        OutcomeLabel.Loses => LosesText(headline.Range.Best),
        OutcomeLabel.RunsNotKnown => $"runs, {NotKnownText(headline.Range)} not known",
        OutcomeLabel.RunsByOneOf =>
            $"runs by one of {Names.List(headline.By.Select(finding => RouteName(finding, headline.By)).Distinct(StringComparer.Ordinal).ToList(), "or")}",
        OutcomeLabel.NotKnown => $"not known, at best {AtBest(headline.Range.Best)}",
        OutcomeLabel.DoesNotRun => "does not run",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The route half alone; empty where nothing runs.</summary>
    public static string RouteText(RouteLabel route) => route switch
    {
        RouteLabel.Natively => "natively",
        RouteLabel.WrapperOnly => "wrapper only",
        RouteLabel.NativeNotKnown => "through a wrapper, native not known",
        RouteLabel.NativeNotPermitted => "through a wrapper, native not permitted",
        RouteLabel.NativeOnlyForced => "through a wrapper, natively only with a forced driver",
        RouteLabel.None => "",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>An outcome in words: <c>works</c>, <c>loses table fog (severe)</c>, <c>does not run</c>.</summary>
    public static string OutcomeText(Outcome outcome)
    {
        if (!outcome.Runs)
            return "does not run";
        return outcome.Losses.Count == 0 ? "works" : LosesText(outcome);
    }

    /// <summary>A range in words, from best to worst.</summary>
    public static string RangeText(OutcomeRange range)
    {
        if (range.IsCertain)
            return OutcomeText(range.Best);
        if (!range.CertainlyRuns)
            return $"not known, at best {AtBest(range.Best)}";
        return range.Best.Losses.Count == 0 ? $"runs, at worst {OutcomeText(range.Worst)}" : $"{OutcomeText(range.Best)}, at worst {OutcomeText(range.Worst)}";
    }

    /// <summary>One loss: the capability, how badly it shows, and how it fails where that is not simply missing.</summary>
    public static string LossText(Loss loss)
    {
        var kind = loss.Kind switch
        {
            LossKind.Missing => "",
            LossKind.WrongPicture => "wrong picture, ",
            LossKind.NotInHardware => "not in hardware, ",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return $"{Names.Of(loss.Choices)} ({kind}{Names.Of(loss.Strength)})";
    }

    /// <summary>Case 9: which texture preset fits, where that is less than the title offers.</summary>
    public static string? PresetText(Headline headline)
    {
        if (headline.Outcome == OutcomeLabel.DoesNotRun || headline.By.Count == 0)
            return null;
        var fit = headline.By[0].Form.Textures;
        if (fit.Highest is not { } preset || !fit.IsReduced)
            return null;
        return $"texture preset up to {preset.Name}{(fit.IsEstimated ? " (estimated)" : "")}";
    }

    /// <summary>
    /// Cases 8 and 14: where a single thing stops the likeliest route, the label names it.
    /// </summary>
    private static string DoesNotRunText(Verdict verdict)
    {
        var closest = verdict.Routes.Where(finding => finding.Form.IsPermitted && finding.Form.Gates.Count(gate => gate.IsShut) == 1)
            .Select(finding => finding.Form.ShutGate!.Reason).FirstOrDefault(reason => reason is GateReason.FrameBuffer or GateReason.NoDefect);
        return closest switch
        {
            GateReason.FrameBuffer { WorksTo: { } mode } frame => $"does not run at {frame.Draw.Mode}; works to {mode}",
            GateReason.FrameBuffer frame => $"does not run at {frame.Draw.Mode}",
            GateReason.NoDefect { Defect.Scope.NamesDriver: true } when verdict.Setups.Count == 1 => "does not run on this driver",
            _ => "does not run",
        };
    }

    private static string LosesText(Outcome outcome) => $"loses {Names.List(outcome.Losses.Select(LossText).ToList())}";

    private static string AtBest(Outcome best) => best.Losses.Count == 0 ? "works" : LosesText(best);

    /// <summary>What is not known: the needs whose loss differs between completions, or what decides.</summary>
    private static string NotKnownText(OutcomeRange range)
    {
        var certain = range.Best.Losses.Where(range.Worst.Losses.Contains).ToList();
        var open = UnknownWording.Short(range.Deciding);
        return certain.Count == 0 ? open : $"loses {Names.List(certain.Select(LossText).ToList())}, {open}";
    }

    private static string RouteName(RouteFinding finding, IReadOnlyList<RouteFinding> among)
    {
        var renderer = Names.Of(finding.Route.Renderer);
        var route = finding.Route.Wrapper is { } wrapper ? $"{renderer} through {Names.Of(wrapper)}" : renderer;
        var severalSetups = among.Select(other => other.Route.Setup).Distinct().Skip(1).Any();
        return severalSetups ? $"{route} with {Names.Of(finding.Route.Setup.Driver)}" : route;
    }
}
