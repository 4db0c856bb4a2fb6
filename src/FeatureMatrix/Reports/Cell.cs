using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports;

/// <summary>How a cell reads at a glance; from good to bad, with "not known" apart from "fails".</summary>
public enum CellTone
{
    /// <summary>Runs with nothing lost.</summary>
    Works,

    /// <summary>Runs; what is lost is cosmetic.</summary>
    Cosmetic,

    /// <summary>Runs; something is lost that nobody graded.</summary>
    Ungraded,

    /// <summary>Runs; something severe is lost.</summary>
    Severe,

    /// <summary>Runs; what is lost is not known.</summary>
    RunsNotKnown,

    /// <summary>Nobody knows whether it runs.</summary>
    NotKnown,

    /// <summary>Only software rendering runs.</summary>
    SoftwareOnly,

    /// <summary>Does not run.</summary>
    DoesNotRun,
}

/// <summary>How good the evidence behind a cell is, as its drawing shows it.</summary>
public enum CellEvidence
{
    /// <summary>Somebody watched this very route.</summary>
    Seen,

    /// <summary>Everything it rests on is measured or documented.</summary>
    Documented,

    /// <summary>Something it rests on is inferred.</summary>
    Inferred,

    /// <summary>Something that decides is not known.</summary>
    NotKnown,
}

/// <summary>One cell of a coverage matrix. Its explanation is asked for separately.</summary>
public sealed record Cell
{
    /// <summary>The title.</summary>
    public required Title Title { get; init; }

    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>The setup, where the column is one; null where the column is a whole card.</summary>
    public Setup? Setup { get; init; }

    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The whole label.</summary>
    public required string Label { get; init; }

    /// <summary>The word or number that comes first in a narrow cell.</summary>
    public required string Short { get; init; }

    /// <summary>How it goes: <c>native</c>, <c>wrapper</c>, <c>forced</c>, or empty.</summary>
    public required string Way { get; init; }

    /// <summary>How it reads at a glance.</summary>
    public required CellTone Tone { get; init; }

    /// <summary>How good the evidence is.</summary>
    public required CellEvidence Evidence { get; init; }

    /// <summary>True where an observation contradicts the records.</summary>
    public bool IsContradicted { get; init; }

    /// <summary>True where an alternative is milder than the headline.</summary>
    public bool HasMilderAlternative { get; init; }

    /// <summary>How fast the route of the headline was measured; null where several routes lead, none, or nobody asked.</summary>
    public RouteSpeed? Speed { get; private init; }

    private RouteSpeeds? Speeds { get; init; }

    private Decisions? Beyond { get; init; }

    /// <summary>The cell as it is drawn.</summary>
    public Tile Tile => field ??= Tile.Of(this);

    /// <summary>The explanation in full.</summary>
    public ExplanationLine Explain() => ExplanationBuilder.Explain(Verdict, Speeds, Beyond);

    /// <summary>The cell of a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="card">The card.</param>
    /// <param name="setup">The setup; null for the whole card.</param>
    /// <param name="speeds">What was measured; null to say nothing of speed.</param>
    /// <param name="beyond">Where its explanation looks for cards that do better; null to look at this one alone.</param>
    public static Cell Of(Verdict verdict, Card card, Setup? setup, RouteSpeeds? speeds = null, Decisions? beyond = null)
    {
        var tone = ToneOf(verdict);
        return new Cell
        {
            Title = verdict.Title,
            Card = card,
            Setup = setup,
            Verdict = verdict,
            Label = LabelWording.Label(verdict),
            Short = ShortOf(verdict, tone),
            Way = WayOf(verdict),
            Tone = tone,
            Evidence = EvidenceOf(verdict),
            IsContradicted = verdict.Headline.By.Any(finding => finding.Form.Contradictions.Count > 0),
            HasMilderAlternative = verdict.Alternatives.Count > 0,
            Speed = verdict.Headline.By.Count == 1 ? speeds?.Of(verdict.Headline.By[0].Route) : null,
            Speeds = speeds,
            Beyond = beyond,
        };
    }

    private static CellTone ToneOf(Verdict verdict) => verdict.Headline.Outcome switch
    {
        OutcomeLabel.Works => CellTone.Works,
        OutcomeLabel.Loses => LossTone(verdict.Headline.Range.Best),
        OutcomeLabel.RunsNotKnown => CellTone.RunsNotKnown,
        OutcomeLabel.RunsByOneOf => verdict.Headline.Range.IsCertain && verdict.Headline.Range.Best.Losses.Count == 0 ? CellTone.Works : CellTone.RunsNotKnown,
        OutcomeLabel.NotKnown => CellTone.NotKnown,
        OutcomeLabel.DoesNotRun => verdict.IsSoftwareOnly ? CellTone.SoftwareOnly : CellTone.DoesNotRun,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static CellTone LossTone(Outcome outcome)
    {
        if (outcome.Severe > 0)
            return CellTone.Severe;
        return outcome.Ungraded > 0 ? CellTone.Ungraded : CellTone.Cosmetic;
    }

    private static string ShortOf(Verdict verdict, CellTone tone) => tone switch
    {
        CellTone.Works => "works",
        CellTone.Cosmetic or CellTone.Ungraded or CellTone.Severe =>
            $"loses {verdict.Headline.Range.Best.Losses.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
        CellTone.RunsNotKnown => "runs, loss?",
        CellTone.NotKnown => "not known",
        CellTone.SoftwareOnly => "software",
        CellTone.DoesNotRun => "no",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string WayOf(Verdict verdict)
    {
        if (verdict.Headline.By.Count == 0)
            return "";
        var way = verdict.Headline.Route == RouteLabel.Natively ? "native" : "wrapper";
        return verdict.Headline.IsForced ? $"{way}, forced" : way;
    }

    private static CellEvidence EvidenceOf(Verdict verdict)
    {
        var headline = verdict.Headline;
        if (!headline.Range.IsCertain)
            return CellEvidence.NotKnown;
        if (headline.By.Count == 0)
            return verdict.Routes.Any(finding => finding.Form.ShutGate?.Reason is GateReason.Watched) ? CellEvidence.Seen : CellEvidence.Documented;
        if (headline.By.Any(finding => finding.IsObserved))
            return CellEvidence.Seen;
        return headline.By.All(finding => finding.WeakestGrade >= Grade.Documented) ? CellEvidence.Documented : CellEvidence.Inferred;
    }
}
