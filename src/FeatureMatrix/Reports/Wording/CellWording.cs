using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Tones and evidence in words: what a legend and a filter say.</summary>
public static class CellWording
{
    /// <summary>A tone in a few words.</summary>
    public static string Of(CellTone tone) => tone switch
    {
        CellTone.Works => "works",
        CellTone.Cosmetic => "cosmetic loss",
        CellTone.Ungraded => "loss not graded",
        CellTone.Severe => "severe loss",
        CellTone.RunsNotKnown => "runs, loss not known",
        CellTone.NotKnown => "not known",
        CellTone.SoftwareOnly => "software only",
        CellTone.DoesNotRun => "does not run",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A tone with its count as part of a sentence: <c>3 work</c>.</summary>
    public static string Count(CellTone tone, int count) => tone switch
    {
        CellTone.Works => $"{count} {(count == 1 ? "works" : "work")}",
        CellTone.Cosmetic => $"{count} with a cosmetic loss",
        CellTone.Ungraded => $"{count} with a loss not graded",
        CellTone.Severe => $"{count} with a severe loss",
        CellTone.RunsNotKnown => $"{count} {(count == 1 ? "runs" : "run")}, loss not known",
        CellTone.NotKnown => $"{count} not known",
        CellTone.SoftwareOnly => $"{count} in software only",
        CellTone.DoesNotRun => $"{count} {(count == 1 ? "does" : "do")} not run",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Evidence in a word.</summary>
    public static string Of(CellEvidence evidence) => evidence switch
    {
        CellEvidence.Seen => "seen",
        CellEvidence.Documented => "documented",
        CellEvidence.Inferred => "inferred",
        CellEvidence.NotKnown => "not known",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What an evidence means, for the legend.</summary>
    public static string Meaning(CellEvidence evidence) => evidence switch
    {
        CellEvidence.Seen => "somebody watched this very route",
        CellEvidence.Documented => "everything it rests on is measured or documented",
        CellEvidence.Inferred => "something it rests on is inferred",
        CellEvidence.NotKnown => "something that decides is not known",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What a tone means, for the legend.</summary>
    public static string Meaning(CellTone tone) => tone switch
    {
        CellTone.Works => "runs with nothing lost",
        CellTone.Cosmetic => "runs; what is lost shows, but nobody would stop playing",
        CellTone.Ungraded => "runs; nobody graded how badly the loss shows",
        CellTone.Severe => "runs; at least one loss spoils the picture",
        CellTone.RunsNotKnown => "runs for certain; what is lost is not known",
        CellTone.NotKnown => "nobody knows whether it runs",
        CellTone.SoftwareOnly => "no accelerated route runs; the processor can draw it",
        CellTone.DoesNotRun => "no route on record runs",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What the short texts of some cells mean, as far as it does not go without saying.</summary>
    public static string ShortLegend(IReadOnlyList<Cell> cells)
    {
        (string Mark, string Meaning, Func<Cell, bool> Occurs)[] marks =
        [
            ("loses N", "so many features are missing or wrong, and how badly", cell => cell.Tone is CellTone.Severe or CellTone.Ungraded or CellTone.Cosmetic),
            ("loss?", "what is lost is not known", cell => cell.Tone == CellTone.RunsNotKnown),
            ("wrapper", "only through one", cell => ShortWay(cell).Contains("wrapper", StringComparison.Ordinal)),
            ("not known", "nobody has looked", cell => cell.Tone == CellTone.NotKnown),
            ("software", "drawn by the processor alone", cell => cell.Tone == CellTone.SoftwareOnly),
            ("no", "does not run", cell => cell.Tone == CellTone.DoesNotRun),
            ("+", "a wrapper or another driver loses less", cell => cell.HasMilderAlternative),
            ("!", "somebody saw something else than the records say", cell => cell.IsContradicted),
        ];
        return string.Join("; ", marks.Where(mark => cells.Any(mark.Occurs)).Select(mark => $"{mark.Mark}: {mark.Meaning}")) is { Length: > 0 } legend ? legend + "." : "";
    }

    /// <summary>A cell in a few words: <c>loses 2 (1 severe), wrapper +</c>.</summary>
    public static string ShortText(Cell cell)
    {
        var severe = cell.Verdict.Headline.Range.Best.Severe;
        var strength = cell.Tone switch
        {
            CellTone.Severe => severe == cell.Verdict.Headline.Range.Best.Losses.Count ? " (severe)" : $" ({severe} severe)",
            CellTone.Ungraded => " (not graded)",
            CellTone.Cosmetic => " (cosmetic)",
            _ => "",
        };
        var way = ShortWay(cell);
        return $"{cell.Short}{strength}{(way.Length > 0 ? $", {way}" : "")}{(cell.HasMilderAlternative ? " +" : "")}{(cell.IsContradicted ? " !" : "")}";
    }

    // A native route goes without saying.
    private static string ShortWay(Cell cell) =>
        cell.Way == "native" || cell.Tone is CellTone.NotKnown or CellTone.SoftwareOnly or CellTone.DoesNotRun ? "" : cell.Way;

    /// <summary>What is recommended in place of the headline, as the tail of its label; empty where nothing is (rule R16).</summary>
    public static string Instead(Verdict verdict) => verdict.Recommended is not { } better ? ""
        : $"; {LabelWording.RangeText(better.Range)} {(better.Route.Wrapper is { } wrapper ? $"through {Names.Of(wrapper)}" : $"with {Names.Of(better.Route.Setup)}")}";
}
