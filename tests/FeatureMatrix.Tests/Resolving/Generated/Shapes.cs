using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Generated;

using Support = FeatureMatrix.Model.Support;

/// <summary>Which rules, labels and cases of DESIGN a generated catalog shows.</summary>
internal static class Shapes
{
    /// <summary>All shapes that every campaign has to contain.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. Enum.GetValues<OutcomeLabel>().Select(label => $"label {label}"), .. Enum.GetValues<RouteLabel>().Select(label => $"route {label}"), "forced",
        .. new[] { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11 }.Select(Case), "case 12 a", "case 12 b", "case 12 c", "case 12 d", .. new[] { 13, 14, 15, 16, 17, 18, 19 }.Select(Case),
        "R1 conflict", "R1 hearsay alone", "R1 outranked", "R2 emulated", "R2 implied", "R3 passed on", "R3 emulated over the chip", "R4 unrecorded broken must",
        "R5 any-of", "R5 condition", "R5 unknown strength", "R6 breaks if present", "R6 known defect", "R6 rumoured defect", "R6 unrecorded driver", "R7 runtime missing",
        "R7 API not offered", "R7 software", "R8 supplied", "R8 passed", "R8 left out", "R8 own need", "R8 memory", "R9 forced fails", "R10 memory unknown",
        "R11 spills", "R12 hazard", "R13 shared unknown", "R13 certain", "R14 implied loss", "R15 settles", "R15 disagree", "R16 alternative", "R17 several setups",
    ];

    public static HashSet<string> Of(GeneratedCatalog generated)
    {
        var resolver = new Resolver(generated.Catalog);
        var shapes = new HashSet<string>(StringComparer.Ordinal);
        foreach (var title in generated.Catalog.Titles)
        {
            var verdicts = generated.Catalog.Cards.Select(card => resolver.Resolve(title, card, generated.Terms)).ToList();
            foreach (var verdict in verdicts)
            {
                shapes.UnionWith(OfVerdict(verdict, generated));
                foreach (var setup in verdict.Setups)
                    shapes.UnionWith(OfVerdict(resolver.Resolve(title, setup, generated.Terms), generated));
            }

            if (verdicts.Exists(one => verdicts.Exists(other => other.Card != one.Card && other.Card.Chip == one.Card.Chip
                && other.Overall.Outcomes.Count > 1 && other.Overall.Outcomes.SequenceEqual(one.Overall.Outcomes))))
                shapes.Add("case 19");
        }

        return shapes;
    }

    private static string Case(int number) => $"case {number}";

    private static IEnumerable<string> OfVerdict(Verdict verdict, GeneratedCatalog generated)
    {
        var headline = verdict.Headline;
        var outcomes = verdict.Overall.Outcomes;
        yield return $"label {headline.Outcome}";
        yield return $"route {headline.Route}";
        if (headline.IsForced)
            yield return "forced";
        foreach (var shape in verdict.Routes.SelectMany(OfRoute))
            yield return shape;
        var renderers = verdict.Title.Renderers;
        (string Shape, bool Shown)[] shown =
        [
            ("case 2", renderers.Any(r => r.IsSoftware) && outcomes.Any(o => o.Losses.Any(loss => loss.Choices[0].Feature.Id == "tex-pal8"))),
            ("case 4", verdict.Routes.Any(WrapperWithoutRuntime) && verdict.Routes.Any(f => !f.Route.IsNative && f.Range.CertainlyRuns)),
            ("case 5", headline.Route == RouteLabel.Natively && headline.Outcome == OutcomeLabel.Loses && verdict.Alternatives.Any(f => !f.Route.IsNative)),
            ("case 6", verdict.Setups.Count > 0 && headline.Outcome is OutcomeLabel.Works && verdict.Card.DriversCompleteFor.Any(os => verdict.Setups.All(s => s.Os != os))),
            ("case 7", outcomes.Any(o => o.Ungraded > 0)),
            ("case 10", verdict.Title.Hazards.Count > 0 && headline.Outcome is OutcomeLabel.Works or OutcomeLabel.Loses),
            ("case 11", headline is { IsForced: true, Outcome: OutcomeLabel.Works or OutcomeLabel.RunsNotKnown or OutcomeLabel.Loses }),
            ("case 12 b", headline.Outcome == OutcomeLabel.RunsNotKnown), ("case 12 c", headline.Outcome == OutcomeLabel.NotKnown && headline.Range.Best.Losses.Count > 0),
            ("case 13", outcomes.Any(o => o.Losses.Any(loss => loss.Kind == LossKind.WrongPicture))), ("case 15", verdict.Contradictions.Any()),
            ("case 16", headline.Outcome == OutcomeLabel.RunsByOneOf),
            ("case 17", verdict.Routes.Any(a => verdict.Routes.Any(b => IsFewerSevere(a.Range.Worst, b.Range.Worst)))), ("case 18", generated.Terms.Policy.Samples > 1),
            ("R7 software", renderers.Any(r => r.IsSoftware)), ("R12 hazard", verdict.Title.Hazards.Count > 0), ("R13 certain", verdict.Overall.IsCertain),
            ("R13 shared unknown", verdict.Routes.SelectMany(f => f.Range.Deciding.Distinct()).GroupBy(u => u).Any(group => group.Count() > 1)),
            ("R16 alternative", verdict.Alternatives.Count > 0), ("R17 several setups", verdict.Setups.Count > 1),
        ];
        foreach (var (shape, _) in shown.Where(pair => pair.Shown))
            yield return shape;
    }

    private static bool IsFewerSevere(Outcome one, Outcome other) => one.Runs && other.Runs && one.Severe < other.Severe && one.Cosmetic > other.Cosmetic;

    private static bool WrapperWithoutRuntime(RouteFinding finding) => finding.Form.ShutGate?.Reason is GateReason.WrapperRuntime;

    private static IEnumerable<string> OfRoute(RouteFinding finding)
    {
        var (form, route) = (finding.Form, finding.Route);
        var answers = form.Gates.Select(gate => gate.Answer).Concat(form.Needs.SelectMany(need => need.Choices).Select(choice => choice.Answer)).ToList();
        foreach (var shape in answers.SelectMany(OfAnswer))
            yield return shape;
        foreach (var shape in form.Gates.Select(OfGate).OfType<string>())
            yield return shape;
        var losses = finding.Range.Outcomes.SelectMany(outcome => outcome.Losses).ToList();
        var missing = form.Needs.Where(need => need.Choices.All(choice => choice.Answer.IsCertainlyMissing)).ToList();
        (string Shape, bool Shown)[] shown =
        [
            ("case 3", route.Wrapper is { } wrapper && wrapper.Supplies.Any(fact => fact.Capability.Feature.Id == "tex-pal8")
                && route.Renderer.Memory.Presets.Any(preset => preset.Format == TextureFormat.Paletted8)),
            ("case 9", form.Textures is { IsReduced: true, IsEstimated: true, Highest: not null }),
            ("case 12 a", missing.Exists(need => need.Need.Strength == Strength.Must) && form.Needs.Any(need => need.Choices.Any(choice => !choice.Answer.IsSettled))),
            ("case 12 d", form.Needs.Any(need => need.Choices.Count > 1 && !need.Choices[0].Answer.IsSettled && need.CertainlyMetBy == need.Choices[1])),
            ("case 14", form.Gates.Any(gate => gate is { Reason: GateReason.NoDefect, IsShut: true }) && form.Needs.All(need => need.CertainlyMetBy is not null)),
            ("R4 unrecorded broken must", form.Needs.Any(need => need.Need is { Strength: Strength.Must, WhenBroken: null } && need.Choices[0].Answer.States.Contains(Support.Broken))),
            ("R5 any-of", form.Needs.Any(need => need.Choices.Count > 1)), ("R5 condition", form.Needs.Any(need => need.Need.Condition is not null)),
            ("R5 unknown strength", form.Needs.Any(need => need.Need.Strength == Strength.Unknown)), ("R6 unrecorded driver", route.Setup.Install == Install.Unrecorded),
            ("R8 supplied", route.Wrapper is { } version && form.Needs.Any(need => version.Supplies.Any(fact => fact.Capability.Feature == need.Choices[0].Capability.Feature))),
            ("R8 passed", route.Wrapper is { } passing && form.Needs.Any(need => passing.Passes.Contains(need.Choices[0].Capability.Feature))),
            ("R11 spills", form.Textures.Spills),
            ("R14 implied loss", losses.Count > 0 && missing.Exists(one => missing.Exists(two => one != two && one.Choices[0].Capability.Implies(two.Choices[0].Capability)))),
        ];
        foreach (var (shape, _) in shown.Where(pair => pair.Shown))
            yield return shape;
    }

    private static IEnumerable<string> OfAnswer(Answer answer)
    {
        if (answer.Losing.Count > 0)
            yield return "R1 outranked";
        if (answer.Losing.Any(fact => fact.Support == Support.Yes && !fact.Scope.NamesDriver) && answer.Facts.Any(fact => fact.Scope.NamesDriver) && answer.Support == Support.No)
            yield return "case 1";
        if (answer.Support == Support.Emulated)
            yield return "R2 emulated";
        var named = answer.Reason switch
        {
            AnswerReason.Conflict => "R1 conflict",
            AnswerReason.HearsayOnly => "R1 hearsay alone",
            AnswerReason.PassedOn => "R3 passed on",
            AnswerReason.EmulatedOverChip => "R3 emulated over the chip",
            AnswerReason.Implied => "R2 implied",
            AnswerReason.LeftOutOfCompleteList => "R8 left out",
            AnswerReason.Observed => "R15 settles",
            AnswerReason.ObservationsDisagree => "R15 disagree",
            _ => null,
        };
        if (named is not null)
            yield return named;
    }

    private static string? OfGate(Gate gate) => gate switch
    {
        { Reason: GateReason.Runtime, IsShut: true } => "R7 runtime missing",
        { Reason: GateReason.ApiOffered, IsShut: true } => "R7 API not offered",
        { Reason: GateReason.NoDefect { Defect.Evidence.Grade: Grade.Hearsay } } => "R6 rumoured defect",
        { Reason: GateReason.NoDefect { Defect.IfPresent: not null } } => "R6 breaks if present",
        { Reason: GateReason.NoDefect } => "R6 known defect",
        { Reason: GateReason.WrapperNeeds } => "R8 own need",
        { Reason: GateReason.WrapperMemory } => "R8 memory",
        { Reason: GateReason.ForcedInstall, IsOpen: false } => "R9 forced fails",
        { Reason: GateReason.FrameBuffer, IsShut: true } => "case 8",
        { Reason: GateReason.FrameBuffer { Pool: null } } => "R10 memory unknown",
        _ => null,
    };
}
