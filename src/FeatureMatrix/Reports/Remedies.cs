using FeatureMatrix.Bench;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>Something to do about a title on a card.</summary>
/// <param name="Text">What to do, down to driver and system.</param>
/// <param name="Brief">The same in a few words, for when something else was named before.</param>
/// <param name="Costs">What it costs; empty where nothing is recorded.</param>
/// <param name="IsForced">True where a driver is forced, so that the caution has to stand beside it.</param>
public sealed record Remedy(string Text, string Brief, string Costs, bool IsForced = false);

/// <summary>
/// What to do about a loss or a title that does not run. The one rule for every report: what is recommended comes first, then other
/// routes that the policy allows, then what it forbids, then settings, other systems and other cards.
/// </summary>
internal static class Remedies
{
    /// <summary>What to say where there is nothing.</summary>
    public const string Nothing = "nothing recorded here helps";

    private const int MostRoutes = 3;

    /// <summary>Everything on record that would undo a loss of the headline, or make it milder.</summary>
    public static IReadOnlyList<Remedy> Against(Loss loss, Verdict verdict, Decisions decisions)
    {
        return
        [
            .. OnThisCard(verdict, range => range.CertainlyRuns && Left(range).All(left => left.Strength < loss.Strength), decisions.Speeds, _ => ""),
            .. OtherCard(decisions, verdict, range => Left(range).All(left => left.Strength < loss.Strength), other => Left(other.Headline.Range).Any() ? " loses less of it" : " keeps it"),
        ];

        IEnumerable<Loss> Left(OutcomeRange range) => range.Worst.Losses.Where(left => left.Choices.Any(choice => choice.Feature == loss.Choices[0].Feature));
    }

    /// <summary>Everything on record that would do better than what is recommended; for a title that does not run, everything that would or might run.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="speeds">What was measured; null to say nothing of speed.</param>
    /// <param name="beyond">Where to look for other systems and cards; null to stay with what the verdict covers.</param>
    public static IReadOnlyList<Remedy> Better(Verdict verdict, RouteSpeeds? speeds, Decisions? beyond)
    {
        var now = verdict.Recommended?.Range ?? OutcomeRange.Certain(Outcome.DoesNotRun);
        var here = OnThisCard(verdict, IsBetter, speeds, range => $": {LabelWording.RangeText(range)}");
        if (beyond is null)
            return here;
        return
        [
            .. InSoftware(verdict),
            .. here,
            .. now.CertainlyFails ? OtherSetting(beyond, verdict) : [],
            .. OtherSystem(beyond, verdict, IsBetter),
            .. now.Worst is { Runs: true, Severe: 0, Ungraded: 0 } ? [] : OtherCard(beyond, verdict, IsBetter, other => $" ({LabelWording.Label(other)})"),
        ];

        bool IsBetter(OutcomeRange range) => OutcomeRange.Compare(range, now) < 0;
    }

    /// <summary>Remedies in one line: the first in full, the others briefly.</summary>
    public static string Line(IReadOnlyList<Remedy> remedies) => remedies.Count == 0
        ? Nothing
        : string.Join("; or ", remedies.Select((one, i) => i == 0 ? one.Text : one.Brief));

    /// <summary>Other routes on the setups that the verdict covers; what the policy forbids only where nothing else helps.</summary>
    private static List<Remedy> OnThisCard(Verdict verdict, Func<OutcomeRange, bool> helps, RouteSpeeds? speeds, Func<OutcomeRange, string> outcome)
    {
        var candidates = verdict.Routes
            .Where(finding => !verdict.Headline.By.Contains(finding) && finding.Route.Setup.Install != Install.Unrecorded && helps(finding.Range)).ToList();
        var permitted = candidates.Where(finding => finding.Form.IsPermitted)
            .OrderBy(finding => finding == verdict.Recommended ? 0 : verdict.Alternatives.Contains(finding) ? 1 : 2)
            .ThenBy(finding => finding, Comparer<RouteFinding>.Create(RouteFinding.Compare))
            .DistinctBy(finding => (finding.Route.Wrapper, finding.Route.IsForced, finding.Route.IsNative ? finding.Route.Setup.Driver : null))
            .Take(MostRoutes)
            .Select(finding => new Remedy(
                $"use {Names.Of(finding.Route)}{outcome(finding.Range)}", Brief(finding.Route) + outcome(finding.Range), CostsOf(finding.Route, speeds), finding.Route.IsForced))
            .ToList();
        return permitted.Count > 0 ? permitted : candidates.Where(finding => !finding.Form.IsPermitted)
            .OrderBy(finding => Forbidden(finding.Route, verdict.Terms.Policy).Count)
            .ThenBy(finding => finding, Comparer<RouteFinding>.Create(RouteFinding.Compare))
            .Take(1)
            .Select(finding => Allowing(finding, verdict.Terms.Policy, speeds, outcome)).ToList();
    }

    private static Remedy Allowing(RouteFinding finding, Policy policy, RouteSpeeds? speeds, Func<OutcomeRange, string> outcome)
    {
        var allow = $"allow {Names.List(Forbidden(finding.Route, policy))}";
        var costs = string.Join(" ", new[] { policy.Allows(finding.Route.Setup.Os) ? "" : "Another system to install.", CostsOf(finding.Route, speeds) }.Where(part => part.Length > 0));
        return new Remedy(
            $"{allow} and use {Names.Of(finding.Route)}{outcome(finding.Range)}", $"{allow} and use {Brief(finding.Route)}", costs, finding.Route.IsForced);
    }

    /// <summary>Everything about a route that the policy forbids.</summary>
    private static IReadOnlyList<string> Forbidden(Route route, Policy policy) =>
    [
        .. policy.Allows(route.Setup.Os) ? [] : new[] { route.Setup.Os.Name },
        .. route.IsForced && !policy.AllowForced ? new[] { "forced drivers" } : [],
        .. route.Wrapper is { } wrapper && !policy.Allows(wrapper.Wrapper) ? new[] { wrapper.Wrapper.Name } : [],
    ];

    private static string Brief(Route route) => route.Wrapper is { } wrapper
        ? $"{Names.Of(wrapper)}{(route.IsForced ? " with a forced driver" : "")}"
        : Names.Of(route.Setup);

    /// <summary>What a route costs, in sentences; empty where nothing is recorded.</summary>
    public static string CostsOf(Route route, RouteSpeeds? speeds) => string.Join(" ", new[]
    {
        route.Wrapper is { Costs.Length: > 0 } wrapper ? wrapper.Costs : "",
        route.IsForced ? "A forced driver; see the caution." : "",
        speeds?.Of(route).Speed is Speed.Under ? "Measured under the speed floor." : "",
    }.Where(part => part.Length > 0));

    private static IEnumerable<Remedy> InSoftware(Verdict verdict) => verdict.IsSoftwareOnly
        ? [new Remedy($"let the processor draw it: {Names.List(verdict.Software.Select(one => $"{Names.Of(one)} on {Names.List(one.Oses.Select(os => os.Name).ToList())}").ToList(), "or")}", "let the processor draw it", "")]
        : [];

    /// <summary>The title's lowest mode and depth, where the policy asks for more and that is what stops it.</summary>
    private static IEnumerable<Remedy> OtherSetting(Decisions decisions, Verdict verdict)
    {
        var policy = verdict.Terms.Policy;
        if (policy.Mode is null && policy.Depth is null && policy.Samples == 1)
            yield break;
        var terms = verdict.Terms with { Policy = policy with { Mode = null, Depth = null, Samples = 1 } };
        var lower = decisions.Resolver.Resolve(verdict.Title, verdict.Card, verdict.Setups, terms);
        if (lower.Recommended is not { } best)
            yield break;
        var text = $"lower the setting to {best.Form.Draw.Mode} and {best.Form.Draw.Depth} bit: {LabelWording.RangeText(best.Range)} by {Names.Of(best.Route)}";
        yield return new Remedy(text, text, "", best.Route.IsForced);
    }

    private static IEnumerable<Remedy> OtherSystem(Decisions decisions, Verdict verdict, Func<OutcomeRange, bool> helps)
    {
        if (verdict.Os is null || decisions.On(verdict.Title, verdict.Card).Recommended is not { } best || !helps(best.Range))
            yield break;
        yield return new Remedy(
            $"use {Names.Of(best.Route)}: {LabelWording.RangeText(best.Range)}", Brief(best.Route), CostsOf(best.Route, decisions.Speeds), best.Route.IsForced);
    }

    /// <summary>The card on which the title does best.</summary>
    private static IEnumerable<Remedy> OtherCard(Decisions decisions, Verdict verdict, Func<OutcomeRange, bool> helps, Func<Verdict, string> reason) => decisions.Catalog.Cards
        .Where(other => other != verdict.Card)
        .Select(other => decisions.On(verdict.Title, other))
        .Where(other => other.Headline.Range.CertainlyRuns && helps(other.Headline.Range))
        .OrderBy(other => other.Headline.Range, Comparer<OutcomeRange>.Create(OutcomeRange.Compare))
        .ThenBy(other => other.Card.Name, StringComparer.Ordinal)
        .Take(1)
        .Select(other => $"another card: {other.Card.Name}{reason(other)}")
        .Select(text => new Remedy($"use {text}", text, ""));
}
