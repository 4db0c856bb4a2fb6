using System.Globalization;
using System.Text;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Generated;

/// <summary>
/// All that a verdict says, a line for the cell and a line for each route with what it rests on, as short as can still be read. An
/// answer is its state or the states it may have, the reason, the grade, and how many facts decide (d), lost (l), how much other
/// evidence (e) and how many observations (o) there are.
/// </summary>
internal static class VerdictDump
{
    public static string Of(Verdict verdict)
    {
        var text = new StringBuilder();
        var headline = verdict.Headline;
        text.AppendLine(CultureInfo.InvariantCulture, $"{verdict.Title} on {verdict.Card}: {headline.Outcome}, {headline.Route}{(headline.IsForced ? ", forced" : "")}{(verdict.IsSoftwareOnly ? ", software only" : "")}");
        text.AppendLine($"  first {Names(verdict, headline.By)}; beside {Names(verdict, verdict.Alternatives)}; use {Names(verdict, verdict.Recommended is { } use ? [use] : [])}; software {string.Join(' ', verdict.Software.Select(one => one.Id))}");
        text.AppendLine($"  headline {Of(headline.Range)}");
        if (!ReferenceEquals(headline.Range, verdict.Overall))
            text.AppendLine($"  overall {Of(verdict.Overall)}");
        foreach (var finding in verdict.Routes)
            Append(text, verdict, finding);
        return text.ToString();
    }

    private static void Append(StringBuilder text, Verdict verdict, RouteFinding finding)
    {
        var form = finding.Form;
        text.AppendLine($"  {Name(verdict, finding)} {form.Route.Renderer.Id} on {form.Route.Setup.Driver} {form.Route.Setup.Install} {form.Route.Setup.Os}{(form.Route.Wrapper is { } wrapper ? $" through {wrapper}" : "")}, {form.Forbidden}: {Of(finding.Range)}; {finding.WeakestGrade}");
        text.AppendLine($"    {string.Join("; ", form.Gates.Select(Of))}; {Of(form.Textures)}");
        foreach (var need in form.Needs)
            text.AppendLine($"    needs {need.Need} {need.Need.Strength}{Of(need.Applies)}{(need.WasSeenToRun ? " seen to run" : "")}: {string.Join(" | ", need.Choices.Select(choice => Of(choice.Answer)))}");
        foreach (var contradiction in form.Contradictions)
            text.AppendLine(CultureInfo.InvariantCulture, $"    contradicted ({contradiction.Observation.Evidence.Grade}), {contradiction.Suspects.Count} suspects");
    }

    private static string Names(Verdict verdict, IEnumerable<RouteFinding> findings) => string.Join(' ', findings.Select(finding => Name(verdict, finding)).DefaultIfEmpty("-"));

    private static string Name(Verdict verdict, RouteFinding finding) => "#" + (verdict.Routes.ToList().IndexOf(finding) + 1).ToString(CultureInfo.InvariantCulture);

    private static string Of(OutcomeRange range) =>
        $"{(range.IsExact ? "" : "within ")}{range.Best}{(range.IsCertain ? "" : $" to {range.Worst}")} [{string.Join(" | ", range.Outcomes.Skip(1))}]{(range.Deciding.Count == 0 ? "" : " by " + string.Join(", ", range.Deciding.Select(Of)))}";

    private static string Of(Gate gate) => $"{gate.Reason.GetType().Name} {Of(gate.Answer)}{(gate.Real is { } real ? $" if real {Of(real)}" : "")}{(gate.Reason is GateReason.FrameBuffer frame ? $" to {frame.WorksTo}" : "")}";

    private static string Of(Applicability? applies) => applies is null ? "" : $" where {string.Concat(applies.When.Select(one => one ? '1' : '0'))}";

    private static string Of(TextureFit fit) => string.Create(
        CultureInfo.InvariantCulture,
        $"{fit.BytesLeft / 1024} KiB {fit.Highest?.Name}{(fit.NothingFits ? " none" : "")}{(fit.Spills ? " spills" : "")}{(fit.IsEstimated ? " about" : "")}{(fit.IsReduced ? " reduced" : "")}{(fit.IsCertainlyTooLarge ? " too large" : "")}");

    private static string Of(Answer answer) => string.Create(
        CultureInfo.InvariantCulture,
        $"{string.Join('/', answer.States)} {answer.Reason} {answer.Grade}{Count(answer.Facts.Count, 'd')}{Count(answer.Losing.Count, 'l')}{Count(answer.Evidence.Count, 'e')}{Count(answer.Observations.Count, 'o')}");

    private static string Count(int number, char letter) => number == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {number}{letter}");

    private static string Of(UnknownFact unknown) => unknown switch
    {
        UnknownFact.Supply supply => $"{supply.Capability}@{supply.Card?.Id ?? supply.Chip.Id}+{supply.Driver}",
        UnknownFact.WrapperSupply supply => $"{supply.Capability}@{supply.Wrapper}",
        UnknownFact.ObservedFeature seen => $"seen {seen.Capability}",
        UnknownFact.RunsWithout without => $"runs without {without.Need}",
        UnknownFact.RunsBroken broken => $"runs with {broken.Need} broken",
        UnknownFact.Runtime runtime => runtime.Level.ToString(),
        UnknownFact.Preset preset => $"preset {preset.Name}",
        _ => unknown.GetType().Name,
    };
}
