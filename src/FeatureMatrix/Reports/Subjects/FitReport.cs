using FeatureMatrix.Deciding.Fit;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>Whether a card's and a PC's documents agree, slot by slot, with reasons and cautions.</summary>
public static class FitReport
{
    /// <summary>The answer for each slot of a rig; a rig without recorded slots is not known.</summary>
    /// <param name="card">The card.</param>
    /// <param name="rig">The PC.</param>
    /// <param name="oses">The systems to be run there.</param>
    /// <param name="driverForced">True where a driver is to be forced onto the card.</param>
    public static ExplanationLine Of(Card card, Rig rig, IReadOnlyList<Os> oses, bool driverForced)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(rig);
        var documents = FitInputs.Of(card);
        var answers = rig.Slots.Select(slot => (Slot: slot, Answer: FitCheck.Compare(documents, FitInputs.Of(rig, slot, oses, driverForced)))).ToList();
        var lines = answers.Select(pair => Slot(pair.Slot, pair.Answer)).ToList();
        if (answers.Count == 0)
            lines.Add(new(LineKind.Gap, "No slot of this PC is recorded."));
        lines.AddRange(card.Cautions.Select(caution => new ExplanationLine(LineKind.Caution, $"This board's own: {caution}")));
        var cautions = answers.SelectMany(pair => pair.Answer.Cautions).DefaultIfEmpty(FitCaution.Mains).Distinct();
        lines.AddRange(cautions.Select(caution => new ExplanationLine(LineKind.Caution, FitWording.Caution(caution))));
        lines.Add(new(LineKind.Statement, "This compares what documents are recorded to state. The card's and the board's own documents decide, and a qualified technician where they are silent."));
        var best = answers.Count == 0 ? FitVerdict.NotKnown : answers.Min(pair => pair.Answer.Verdict);
        return new ExplanationLine(LineKind.Statement, $"{card.Name} in {Names.InMiddle(rig.Name)}: {FitWording.Verdict(best)}", lines);
    }

    private static ExplanationLine Slot(RigSlot slot, FitAnswer answer)
    {
        List<ExplanationLine> lines =
        [
            .. answer.Findings.Select(finding => new ExplanationLine(
                Kind(finding.Verdict), $"{FitWording.Aspect(finding.Aspect)}: {FitWording.Verdict(finding.Verdict)}; {FitWording.Reason(finding.Reason)}")),
        ];
        if (answer.Bus is { } bus)
            lines.Add(new(LineKind.Fact, FitWording.Bus(bus)));
        return new ExplanationLine(LineKind.Heading, $"{slot.Bus.Name}: {FitWording.Verdict(answer.Verdict)}", lines);
    }

    private static LineKind Kind(FitVerdict verdict) => verdict switch
    {
        FitVerdict.DocumentsAgree => LineKind.Met,
        FitVerdict.NotKnown => LineKind.Gap,
        FitVerdict.DoNotInsert => LineKind.Stop,
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
