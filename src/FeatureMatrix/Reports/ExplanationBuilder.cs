using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>
/// Words the causes of a verdict: the route chosen, losses with their effect, gaps with what would settle them, alternatives,
/// each rejected route with the one reason that killed it, and the facts behind all of it.
/// </summary>
public static class ExplanationBuilder
{
    /// <summary>The caution that belongs to every forced driver.</summary>
    public const string ForcedCaution =
        "Forcing a driver onto a board that it does not list can leave a system that no longer starts: image the system first, know how to boot for recovery, and follow the board's and the driver's own documents. Never change a board's BIOS for it.";

    /// <summary>The explanation of a verdict about a title on one card or setup.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="speeds">What was measured; null to say nothing of speed.</param>
    /// <param name="beyond">Where to look for other systems and cards that do better; null to stay with what the verdict covers.</param>
    public static ExplanationLine Explain(Verdict verdict, RouteSpeeds? speeds = null, Decisions? beyond = null)
    {
        var lines = ShortAnswer.Of(verdict, speeds, beyond).Select(text => new ExplanationLine(LineKind.Answer, text)).ToList();
        lines.AddRange(HeadlineLines(verdict, speeds));
        AddSection(lines, "Not known", verdict.Headline.Deciding.Select(Gap));
        AddSection(lines, "Beside it", verdict.Alternatives.Select(finding => Alternative(finding, speeds)));
        if (verdict.Headline.IsForced || verdict.Recommended?.Route.IsForced == true)
            lines.Add(new ExplanationLine(LineKind.Caution, ForcedCaution));
        AddSection(lines, "Look again", verdict.Contradictions.Select(Contradiction));
        AddSection(lines, "Software rendering, shown apart", verdict.Software.Select(renderer =>
            new ExplanationLine(LineKind.Statement, $"{Names.Of(renderer)} on {Names.List(renderer.Oses.Select(os => os.Name).ToList())}: the processor draws, whatever the card")));
        AddSection(lines, "Routes that do not count", WhyNot.Lines(verdict));
        lines.Add(new ExplanationLine(
            LineKind.Statement, verdict.Headline.Range.IsCertain ? "By the routes listed; certain, barring defects nobody recorded." : "By the routes listed."));
        var where = verdict.Setups.Count == 1
            ? $"{verdict.Card.Name}, {Names.Of(verdict.Setups[0])}"
            : verdict.Os is { } os ? $"{verdict.Card.Name} under {os.Name}" : verdict.Card.Name;
        return new ExplanationLine(LineKind.Statement, $"{verdict.Title.Name} on {where}: {LabelWording.Label(verdict)}", lines);
    }

    private static IEnumerable<ExplanationLine> HeadlineLines(Verdict verdict, RouteSpeeds? speeds)
    {
        if (verdict.Headline.By.Count == 0)
        {
            if (verdict.Setups.Count == 0)
                yield return new ExplanationLine(LineKind.Stop, $"{verdict.Card.Name} has no driver there, and the list of its drivers is declared complete");
            else if (verdict.Routes.Count == 0)
                yield return new ExplanationLine(LineKind.Stop, $"{verdict.Title.Name} has no accelerated path on record");
            yield break;
        }

        foreach (var finding in verdict.Headline.By)
            yield return WithSpeed(RouteLine(finding, "By"), finding.Route, speeds);
    }

    /// <summary>A route with everything that decides it.</summary>
    public static ExplanationLine RouteLine(RouteFinding finding, string lead)
    {
        var lines = new List<ExplanationLine>();
        foreach (var gate in finding.Form.Gates.Where(gate => gate.IsOpen))
        {
            if (GateWording.Passes(gate, finding.Route) is { } passes)
                lines.Add(new ExplanationLine(LineKind.Met, passes, gate.Reason is GateReason.Watched ? [] : Basis(gate.Answer)));
        }

        lines.AddRange(finding.Form.Needs.Select(need => NeedLine(need, finding.Range)));
        if (finding.Form.Textures is { Highest: { } preset } fit)
            lines.Add(new ExplanationLine(LineKind.Statement, TextureText(preset, fit)));
        return new ExplanationLine(
            LineKind.Heading, $"{lead} {Names.Of(finding.Route)}: {LabelWording.RangeText(finding.Range)}", lines);
    }

    private static string TextureText(TexturePreset preset, TextureFit fit)
    {
        var spill = fit.Spills ? ", partly in main memory" : "";
        return $"textures: preset {preset.Name} fits{spill} in {Names.Mebibytes(fit.BytesLeft ?? 0)} left{(fit.IsEstimated ? " (estimated)" : "")}";
    }

    /// <summary>A need with what the route supplies: met, lost with its effect, or not known.</summary>
    private static ExplanationLine NeedLine(NeedTerm term, OutcomeRange range)
    {
        var name = Names.Of(term.Need.Choices);
        var basis = term.Choices.SelectMany(choice => Basis(choice.Answer)).ToList();
        var loss = range.Best.Losses.Concat(range.Worst.Losses).FirstOrDefault(loss => loss.Need == term.Need);
        if (term.CertainlyMetBy is { } met)
        {
            var emulated = met.Answer.Support == Support.Emulated ? ", emulated" : "";
            var earlier = term.Choices.TakeWhile(choice => choice != met).Where(choice => !choice.Answer.IsSettled).Select(choice => Names.Of(choice.Capability)).ToList();
            var whatever = earlier.Count > 0 ? $"; {Names.List(earlier, "or")} is not known and does not matter" : "";
            return new ExplanationLine(LineKind.Met, $"{Names.Of(met.Capability)}: there{emulated}{whatever}", Basis(met.Answer));
        }

        if (term.Choices.Any(choice => !choice.Answer.IsSettled) && (loss is null || !range.Best.Losses.Contains(loss) || !range.Worst.Losses.Contains(loss)))
        {
            var open = term.Choices.First(choice => !choice.Answer.IsSettled).Answer;
            return new ExplanationLine(
                LineKind.Gap, $"{name} ({Names.Of(term.Need.Strength)}): not known, {FactWording.Reason(open)}. {UnknownWording.HowToSettle(open.Open!)}", basis);
        }

        if (loss is not null)
            return new ExplanationLine(LineKind.Loss, $"loses {LabelWording.LossText(loss)}: {Effect(loss)}", basis);
        return new ExplanationLine(LineKind.Met, $"{name}: nothing lost ({Names.Of(term.Need.Strength)})", basis);
    }

    /// <summary>What the viewer sees: the title's own text, else the feature's.</summary>
    public static string Effect(Loss loss)
    {
        var effect = loss.Need.Effect.Length > 0 ? loss.Need.Effect : loss.Choices[0].Feature.SeenWhenMissing;
        return effect.Length > 0 ? effect : "nobody described what it looks like";
    }

    private static ExplanationLine Gap(UnknownFact unknown) =>
        new(LineKind.Gap, $"{UnknownWording.Question(unknown)} {UnknownWording.HowToSettle(unknown)}");

    private static ExplanationLine Alternative(RouteFinding finding, RouteSpeeds? speeds)
    {
        var route = WithSpeed(RouteLine(finding, "Through"), finding.Route, speeds);
        var costs = finding.Route.Wrapper is { Costs.Length: > 0 } wrapper
            ? route.Because.Append(new ExplanationLine(LineKind.Statement, $"what it costs: {wrapper.Costs}")).ToList()
            : route.Because;
        var text = finding.Route.IsNative
            ? $"With a forced driver, {Names.Of(finding.Route)}: {LabelWording.RangeText(finding.Range)}"
            : $"{LabelWording.RangeText(finding.Range)} by {Names.Of(finding.Route)}";
        var fast = speeds is not null && SpeedWording.Short(speeds.Of(finding.Route)) is { Length: > 0 } fps ? $", {fps}" : "";
        return new ExplanationLine(LineKind.Heading, Names.Sentence(text) + fast, costs);
    }

    /// <summary>The line of a route with its speed below it, where one was measured.</summary>
    private static ExplanationLine WithSpeed(ExplanationLine line, Route route, RouteSpeeds? speeds) =>
        speeds?.Of(route) is { Speed: not Speed.NotMeasured } speed
            ? line with { Because = [.. line.Because, new ExplanationLine(LineKind.Statement, $"speed at {speed.Mode}: {SpeedWording.Text(speed)}")] }
            : line;

    private static ExplanationLine Contradiction(Contradiction contradiction) =>
        new(LineKind.Caution, $"An observation contradicts the records: {FactWording.Observation(contradiction.Observation)}",
            contradiction.Suspects.Select(fact => new ExplanationLine(LineKind.Fact, $"look again at {FactWording.Fact(fact)}")).ToList());

    /// <summary>What an answer rests on, line by line.</summary>
    internal static List<ExplanationLine> Basis(Answer answer)
    {
        var lines = answer.Facts.Select(fact => new ExplanationLine(LineKind.Fact, FactWording.Fact(fact))).ToList();
        lines.AddRange(answer.Losing.Select(fact => new ExplanationLine(LineKind.Fact, $"outranked: {FactWording.Fact(fact)}")));
        lines.AddRange(answer.Evidence.Select(evidence => new ExplanationLine(LineKind.Fact, FactWording.Evidence(evidence))));
        lines.AddRange(answer.Observations.Select(seen => new ExplanationLine(LineKind.Fact, FactWording.Observation(seen))));
        if (answer.Reason is not (AnswerReason.Stated or AnswerReason.Structure or AnswerReason.Silent or AnswerReason.Observed or AnswerReason.Arithmetic))
            lines.Insert(0, new ExplanationLine(LineKind.Fact, FactWording.Reason(answer)));
        return lines;
    }

    private static void AddSection(List<ExplanationLine> lines, string heading, IEnumerable<ExplanationLine> content)
    {
        var all = content.ToList();
        if (all.Count > 0)
            lines.Add(new ExplanationLine(LineKind.Heading, heading, all));
    }
}
