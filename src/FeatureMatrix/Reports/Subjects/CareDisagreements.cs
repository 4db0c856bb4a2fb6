using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>Where records disagree with each other or with what was seen, as far as a verdict asked for them.</summary>
internal static class CareDisagreements
{
    public static IEnumerable<CareItem> Of(Decisions decisions)
    {
        var said = new HashSet<string>();
        foreach (var card in decisions.Catalog.Cards)
        {
            foreach (var title in decisions.Titles)
            {
                var verdict = decisions.On(title, card);
                var explain = $"explain {title.Id} {card.Id}";
                foreach (var item in verdict.Routes.SelectMany(finding => finding.Form.Answers).Select(answer => Conflict(answer, explain)).OfType<CareItem>()
                    .Concat(verdict.Contradictions.Select(one => Contradiction(one, title, explain))))
                {
                    if (said.Add($"{item.Kind} {item.Text}"))
                        yield return item;
                }
            }
        }
    }

    /// <summary>Pictures that show something else than the records come to.</summary>
    public static IEnumerable<CareItem> WithCaptures(Decisions decisions) => decisions.Catalog.Captures
        .SelectMany(capture => capture.Baseline is { } baseline ? [(capture, capture.Loses), (baseline, capture.Loses)] : Array.Empty<(Capture Capture, IReadOnlyList<Capability> Lost)>())
        .Select(one => (one.Capture, Text: CaptureWording.Against(CaptureCheck.Of(decisions, one.Capture, one.Lost)))).Where(one => one.Text.Length > 0).Distinct()
        .Select(one => new CareItem("capture against records", one.Capture.Id, one.Text, $"explain {one.Capture.Renderer.Title.Id} {one.Capture.Setup.Card.Id}"));

    /// <summary>What this collection says otherwise than one that it builds on.</summary>
    public static IEnumerable<CareItem> WithShared(IEnumerable<HiddenKey> hidden) => hidden.Select(one => new CareItem(
        "said otherwise here", one.About, $"Its '{one.Key}' counts as at {CareGaps.Place(one.Origin)}, not as at {CareGaps.Place(one.Below)}.",
        "To have both weighed by grade, write it under 'facts' instead."));

    private static CareItem? Conflict(Answer answer, string explain) => answer.Reason switch
    {
        AnswerReason.Conflict when answer.Facts.Count > 1 => new CareItem(
            "conflict", Names.Of(answer.Facts[0].Capability), string.Join("; ", answer.Facts.Select(FactWording.Fact)), explain),
        AnswerReason.ObservationsDisagree => new CareItem(
            "observations disagree", answer.Observations is [var first, ..] ? first.Renderer.Title.Name : "",
            string.Join("; ", answer.Observations.Select(FactWording.Observation)), explain),
        _ => null,
    };

    private static CareItem Contradiction(Contradiction one, Title title, string explain) => new(
        "observation against records", title.Name,
        $"{FactWording.Observation(one.Observation)} against {(one.Suspects.Count > 0 ? string.Join("; ", one.Suspects.Select(FactWording.Fact)) : "what follows from the records")}", explain);
}
