using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>Why routes do not count, each with the one reason that decides.</summary>
internal static class WhyNot
{
    /// <summary>Why a title does not run, in a clause: what stops the permitted native route that comes furthest, and the wrapped one.</summary>
    public static string Reason(Verdict verdict)
    {
        if (verdict.Setups.Count == 0)
            return $"{verdict.Card.Name} has no driver there, and the list of its drivers is declared complete";
        if (verdict.Routes.Count == 0)
            return $"{verdict.Title.Name} has no accelerated path on record";
        var permitted = Permitted(verdict);
        var (native, wrapped) = (Furthest(permitted.Where(finding => finding.Route.IsNative)), Furthest(permitted.Where(finding => !finding.Route.IsNative)));
        return (native, wrapped) switch
        {
            (null, null) => "the policy allows no route to it",
            (null, { } only) => Of(only, verdict).Text,
            ({ } only, null) => Of(only, verdict).Text,
            ({ } one, { } other) => $"{Of(one, verdict).Text}; and through a wrapper, {Of(other, verdict).Text}",
        };
    }

    /// <summary>Why a title no longer runs, in a clause: what stops the route by which it ran, or the one that comes furthest.</summary>
    public static string Reason(Verdict verdict, Func<Route, bool> before)
    {
        var permitted = Permitted(verdict);
        return (permitted.Find(finding => before(finding.Route)) ?? Furthest(permitted)) is { } closest ? Of(closest, verdict).Text : Reason(verdict);
    }

    /// <summary>Permitted routes, those on drivers that nobody recorded only where there are no others.</summary>
    private static List<RouteFinding> Permitted(Verdict verdict)
    {
        var permitted = verdict.Routes.Where(finding => finding.Form.IsPermitted).ToList();
        var recorded = permitted.Where(finding => finding.Route.Setup.Install != Install.Unrecorded).ToList();
        return recorded.Count > 0 ? recorded : permitted;
    }

    private static RouteFinding? Furthest(IEnumerable<RouteFinding> findings) =>
        findings.MaxBy(finding => finding.Form.Gates.TakeWhile(gate => !gate.IsShut).Count() + (finding.Form.ShutGate is null ? 1 : 0));

    /// <summary>Each rejected route with the one reason that killed it; routes with the same reason share a line.</summary>
    public static IEnumerable<ExplanationLine> Lines(Verdict verdict)
    {
        var chosen = verdict.Headline.By.Concat(verdict.Alternatives).ToHashSet();
        var rest = verdict.Routes.Where(finding => !chosen.Contains(finding)).ToList();
        var bySystem = rest.Where(finding => IsAboutSystem(finding.Form.ShutGate)).ToList();
        var byWrapperOrPath = bySystem
            .GroupBy(finding => (finding.Form.ShutGate!.Reason, finding.Route.Renderer, finding.Route.Wrapper))
            .Select(group => new ExplanationLine(
                LineKind.Stop,
                GateWording.Stops(group.First().Form.ShutGate!, group.First().Route, group.Select(finding => finding.Route.Setup.Os.Name).Distinct(StringComparer.Ordinal).ToList()),
                group.SelectMany(finding => ExplanationBuilder.Basis(finding.Form.ShutGate!.Answer)).DistinctBy(line => line.Text, StringComparer.Ordinal).ToList()));
        return rest.Except(bySystem)
            .Select(finding => (finding, reason: Of(finding, verdict)))
            .GroupBy(pair => pair.reason.Text, StringComparer.Ordinal)
            .Select(group => group.First().reason with
            {
                Text = $"{RouteList(group.Select(pair => pair.finding.Route).ToList())}: {group.Key}",
            })
            .Concat(byWrapperOrPath.DistinctBy(line => line.Text, StringComparer.Ordinal));
    }

    /// <summary>True where the operating system alone stops the route; one line then speaks for all systems alike.</summary>
    private static bool IsAboutSystem(Gate? gate) => gate?.Reason is
        GateReason.RendererOnOs or GateReason.Runtime or GateReason.CardOnOs or GateReason.WrapperOnOs or GateReason.WrapperRuntime;

    private static ExplanationLine Of(RouteFinding finding, Verdict verdict)
    {
        if (finding.Form.ShutGate is { } gate)
            return new ExplanationLine(LineKind.Stop, GateWording.Stops(gate, finding.Route, [finding.Route.Setup.Os.Name]), ExplanationBuilder.Basis(gate.Answer));
        if (finding.Range.CertainlyFails)
        {
            var must = finding.Form.Needs.FirstOrDefault(need =>
                need.Need.Strength == Strength.Must && need.Choices.All(choice => choice.Answer.IsCertainlyMissing));
            return must is null
                ? new ExplanationLine(LineKind.Stop, "it fails whatever the unknowns turn out to be")
                : new ExplanationLine(
                    LineKind.Stop, $"it must have {Names.Of(must.Need.Choices)}, which is missing",
                    must.Choices.SelectMany(choice => ExplanationBuilder.Basis(choice.Answer)).ToList());
        }

        return finding.Form.Forbidden switch
        {
            Forbidden.Os => new ExplanationLine(LineKind.Stop, $"the policy does not allow {finding.Route.Setup.Os.Name}"),
            Forbidden.Forcing => new ExplanationLine(LineKind.Stop, "the policy does not allow forced drivers"),
            Forbidden.Wrapper => new ExplanationLine(LineKind.Stop, $"the policy does not allow {finding.Route.Wrapper!.Wrapper.Name}"),
            Forbidden.Nothing => new ExplanationLine(
                LineKind.Statement, verdict.Headline.Range.CertainlyRuns ? $"no milder: {LabelWording.RangeText(finding.Range)}" : LabelWording.RangeText(finding.Range)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static string RouteList(List<Route> routes)
    {
        var names = routes.Select(Names.Of).Distinct(StringComparer.Ordinal).ToList();
        return names.Count <= 2 ? Names.List(names) : $"{names[0]} and {Names.Count(names.Count - 1, "more route")}";
    }
}
