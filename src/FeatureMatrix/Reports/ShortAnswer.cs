using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>What to do about a cell, in a sentence or two after its label: which route to use, what it costs, what remains, what else would help.</summary>
internal static class ShortAnswer
{
    /// <summary>The sentences, the most important first.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="speeds">What was measured; null to say nothing of speed.</param>
    /// <param name="beyond">Where to look for other systems and cards; null to stay with what the verdict covers.</param>
    public static IEnumerable<string> Of(Verdict verdict, RouteSpeeds? speeds, Decisions? beyond)
    {
        var better = Remedies.Better(verdict, speeds, beyond);
        var slow = TooSlow(verdict, speeds);
        if (verdict.Recommended is { } route)
        {
            yield return Use(verdict, route);
            if (Remedies.CostsOf(route.Route, speeds) is { Length: > 0 } costs)
                yield return $"What it costs: {costs.TrimEnd('.')}.";
            if (route.Range.Best.Losses.FirstOrDefault(route.Range.Worst.Losses.Contains) is { } loss)
                yield return $"What you see: {ExplanationBuilder.Effect(loss).TrimEnd('.')}.";
            if (slow is not null)
                yield return slow;
        }
        else
        {
            yield return $"Why: {WhyNot.Reason(verdict)}.";
        }

        if (verdict.Headline.By.SelectMany(finding => finding.Form.Contradictions).FirstOrDefault() is { } contradiction)
            yield return $"Look again: the records say otherwise than what somebody saw, which counts: {FactWording.Observation(contradiction.Observation)}.";
        if (verdict.Headline.Deciding is { Count: > 0 } open)
            yield return $"Not known: {UnknownWording.Question(open[0])}{(open.Count > 1 ? $" {Names.Sentence(Names.Count(open.Count - 1, "more question"))} below." : "")}";
        if (better.Count > 0 && slow is null)
            yield return $"{Aim(verdict.Recommended)}: {Remedies.Line(better)}.";
        else if (beyond is not null && (verdict.Recommended is null || verdict.Recommended.Range.Best is { Severe: > 0 } or { Ungraded: > 0 }))
            yield return $"{Names.Sentence(Remedies.Nothing)}.";
    }

    private static string Aim(RouteFinding? recommended) => recommended switch
    {
        null => "What to do",
        { Range.CertainlyRuns: false } => "To be sure",
        _ => "To lose less",
    };

    private static string Use(Verdict verdict, RouteFinding route)
    {
        var name = Names.Of(route.Route);
        if (route.Route.Setup.Install == Install.Unrecorded)
            return $"Nobody recorded the driver that it takes: {Names.Of(route.Route.Renderer)} on {route.Route.Setup.Os.Name}.";
        if (!verdict.Headline.By.Contains(route))
            return $"Use {name}: {LabelWording.RangeText(route.Range)}. {(verdict.Headline.Range.CertainlyRuns ? "It removes a loss that is severe or not graded." : "It runs for certain.")}";
        if (verdict.Headline.By.Count > 1)
            return $"Try {name} first; where it fails, another of the routes below runs.";
        return $"{(route.Range.CertainlyRuns ? "Use" : "Try")} {name}.";
    }

    /// <summary>Why the mildest alternative is not recommended although it removes a grave loss: it was measured under the floor (rule R16).</summary>
    private static string? TooSlow(Verdict verdict, RouteSpeeds? speeds)
    {
        var worst = verdict.Headline.Range.Worst;
        var barred = verdict.Alternatives.FirstOrDefault(finding =>
            speeds?.Of(finding.Route).Speed is Speed.Under
            && finding.Range.Worst is { Runs: true } offered && (!worst.Runs || offered.Severe + offered.Ungraded < worst.Severe + worst.Ungraded));
        return barred is null ? null : $"{Names.Of(barred.Route)} loses less but is measured under the speed floor.";
    }
}
