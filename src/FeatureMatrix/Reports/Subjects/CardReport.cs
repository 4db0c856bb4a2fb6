using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What one title loses of a feature, and how it looks there.</summary>
/// <param name="Cell">The title's cell on the card.</param>
/// <param name="Loss">The loss.</param>
/// <param name="Effect">What the viewer sees in this title.</param>
/// <param name="Remedies">What to do about it, the best first.</param>
public sealed record TitleLoss(Cell Cell, Loss Loss, string Effect, IReadOnlyList<Remedy> Remedies);

/// <summary>A title that does not run, or of which nobody knows what it does.</summary>
/// <param name="Cell">Its cell on the card.</param>
/// <param name="Why">What stops it, or what is not known.</param>
/// <param name="Remedies">What to do about it, the best first.</param>
public sealed record TitleInDoubt(Cell Cell, string Why, IReadOnlyList<Remedy> Remedies);

/// <summary>A feature that the card loses somewhere, with the titles by strength of loss.</summary>
public sealed record FeatureLoss(Feature Feature, string Name, IReadOnlyList<TitleLoss> Titles)
{
    /// <summary>What of the remedies has a price on record, and that price; each once.</summary>
    public IReadOnlyList<(string What, string Price)> Costs => Titles.SelectMany(title => title.Remedies).Where(remedy => remedy.Costs.Length > 0)
        .Select(remedy => (remedy.Brief, remedy.Costs)).Distinct().OrderBy(cost => cost.Brief, StringComparer.Ordinal).ToList();
}

/// <summary>What a card loses, title by title and feature by feature, and what to do about it.</summary>
public sealed record CardReport
{
    /// <summary>The card.</summary>
    public required Card Card { get; init; }

    /// <summary>The report in one sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>The policy in words.</summary>
    public required string PolicyText { get; init; }

    /// <summary>What is lost, the feature that hurts most first.</summary>
    public required IReadOnlyList<FeatureLoss> Losses { get; init; }

    /// <summary>Titles that run with nothing lost.</summary>
    public required IReadOnlyList<Cell> WorksFully { get; init; }

    /// <summary>Titles about which something is not known.</summary>
    public required IReadOnlyList<TitleInDoubt> NotKnown { get; init; }

    /// <summary>Titles that do not run on the card, software rendering apart.</summary>
    public required IReadOnlyList<TitleInDoubt> DoesNotRun { get; init; }

    /// <summary>What is not known, the questions that touch most titles first, with what would settle each.</summary>
    public required IReadOnlyList<OpenQuestion> Questions { get; init; }

    /// <summary>Cautions to print beside the advice.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>All cells of the card, in the order of the titles.</summary>
    public required IReadOnlyList<Cell> Cells { get; init; }

    /// <summary>The report of one card.</summary>
    public static CardReport Of(Decisions decisions, Card card)
    {
        var cells = decisions.Titles.Select(title => decisions.CellOn(title, card)).ToList();
        var losses = LossesOf(decisions, cells);
        var notRunning = cells.Where(cell => cell.Tone is CellTone.DoesNotRun or CellTone.SoftwareOnly).ToList();
        var stopped = notRunning.Select(cell => new TitleInDoubt(cell, Names.Sentence(WhyNot.Reason(cell.Verdict)), Remedies.Better(cell.Verdict, decisions.Speeds, decisions))).ToList();
        return new CardReport
        {
            Card = card,
            Headline = HeadlineOf(cells, losses, notRunning),
            PolicyText = PolicyWording.Text(decisions.Policy),
            Losses = losses,
            WorksFully = cells.Where(cell => cell.Tone == CellTone.Works).ToList(),
            NotKnown = cells.Where(cell => cell.Tone is CellTone.NotKnown or CellTone.RunsNotKnown).Select(DoubtOf).ToList(),
            DoesNotRun = stopped,
            Questions = OpenQuestion.Of(cells),
            Cautions = CautionsOf(card, cells, [.. losses.SelectMany(loss => loss.Titles).SelectMany(title => title.Remedies), .. stopped.SelectMany(title => title.Remedies)]),
            Cells = cells,
        };
    }

    /// <summary>What is asked about a cell first; where several answers would have to come together, no question is.</summary>
    private static TitleInDoubt DoubtOf(Cell cell) => cell.Verdict.Headline.Deciding is [var first, ..]
        ? new TitleInDoubt(cell, UnknownWording.Question(first), [new(UnknownWording.HowToSettle(first), "", "")])
        : new TitleInDoubt(cell, "No single answer decides it", []);

    private const int MostNamed = 3;

    /// <summary>The losses as a table: feature, title, strength, what one sees, what to do.</summary>
    public Table ToTable() => new(
        $"What you lose with {Card.Name}", $"{Headline} {PolicyText}",
        [new("Feature"), new("Title"), new("Loss"), new("What you see"), new("What to do")],
        [
            .. Losses.SelectMany(loss => loss.Titles.Select(title => (IReadOnlyList<TableCell>)
            [
                new TableCell(loss.Name), new TableCell(title.Cell.Title.Name), new TableCell(Names.Of(title.Loss.Strength), null, title.Cell.Tone),
                new TableCell(title.Effect), new TableCell(Remedies.Line(title.Remedies)),
            ])),
            .. DoesNotRun.Select(title => RowOf("(all)", title)),
            .. NotKnown.Select(title => RowOf("(not known)", title)),
        ]);

    private static IReadOnlyList<TableCell> RowOf(string feature, TitleInDoubt title) =>
    [
        new TableCell(feature), new TableCell(title.Cell.Title.Name), new TableCell(title.Cell.Label, null, title.Cell.Tone),
        new TableCell(title.Why), new TableCell(Remedies.Line(title.Remedies)),
    ];

    private static string HeadlineOf(List<Cell> cells, List<FeatureLoss> losses, List<Cell> notRunning)
    {
        var losing = losses.SelectMany(loss => loss.Titles).Select(title => title.Cell).Distinct().ToList();
        var back = losing.Count(cell => cell.Verdict.Alternatives.Any(route => !route.Route.IsNative && route.Range.IsCertain && route.Range.Best.Losses.Count == 0));
        var notKnown = cells.Count(cell => cell.Tone is CellTone.NotKnown or CellTone.RunsNotKnown);
        var inSoftware = notRunning.Count(cell => cell.Tone == CellTone.SoftwareOnly);
        var not = notRunning.Count - inSoftware;
        var parts = new List<string>
        {
            losing.Count == 0
                ? $"Nothing is known to be lost in {Names.Count(cells.Count, "title")}"
                : $"Loses {Names.Count(losses.Count, "feature")} in {losing.Count} of {Names.Count(cells.Count, "title")}{Worst(losses)}",
        };
        if (back > 0)
            parts.Add($"{Names.Count(back, "title")} {(back == 1 ? "comes" : "come")} back whole through a wrapper");
        if (not > 0)
            parts.Add($"{Names.Count(not, "title")} {(not == 1 ? "does" : "do")} not run");
        if (inSoftware > 0)
            parts.Add($"{Names.Count(inSoftware, "title")} {(inSoftware == 1 ? "runs" : "run")} in software only");
        if (notKnown > 0)
            parts.Add($"something is not known about {Names.Count(notKnown, "title")}");
        return string.Join("; ", parts) + ".";
    }

    private static string Worst(List<FeatureLoss> losses)
    {
        var severe = losses.Where(loss => loss.Titles.Any(title => title.Loss.Strength == Strength.Severe)).Select(loss => Names.InSentence(loss.Feature.Name)).ToList();
        return severe.Count is 0 || losses.Count == 1 ? "" : $", worst of all {Names.List(severe.Take(MostNamed).ToList())}";
    }

    private static List<FeatureLoss> LossesOf(Decisions decisions, List<Cell> cells) => cells
        .Where(cell => cell.Verdict.Headline.Range.Best.Runs)
        .SelectMany(cell => cell.Verdict.Headline.Range.Best.Losses
            .Where(cell.Verdict.Headline.Range.Worst.Losses.Contains)
            .Select(loss => new TitleLoss(cell, loss, ExplanationBuilder.Effect(loss), Remedies.Against(loss, cell.Verdict, decisions))))
        .GroupBy(loss => loss.Loss.Choices[0].Feature)
        .Select(group => new FeatureLoss(
            group.Key, Names.Sentence(group.Key.Name),
            group.OrderByDescending(loss => loss.Loss.Strength).ThenBy(loss => loss.Cell.Title.Name, StringComparer.Ordinal).ToList()))
        .OrderByDescending(loss => loss.Titles.Count(title => title.Loss.Strength == Strength.Severe))
        .ThenByDescending(loss => loss.Titles.Count).ThenBy(loss => loss.Feature.Id, StringComparer.Ordinal).ToList();

    private static List<string> CautionsOf(Card card, List<Cell> cells, IReadOnlyList<Remedy> remedies)
    {
        var cautions = card.Cautions.ToList();
        if (remedies.Any(one => one.IsForced) || cells.Exists(cell => cell.Verdict.Headline.IsForced || cell.Verdict.Recommended?.Route.IsForced == true))
            cautions.Add(ExplanationBuilder.ForcedCaution);
        cautions.Add("Before fitting it: power off and unplug the PC, mind static, and check slot type and voltage in the documents of both boards. Where they are silent, ask a qualified technician.");
        return cautions;
    }
}

/// <summary>Something not known, with the titles it touches and what would settle it.</summary>
public sealed record OpenQuestion(UnknownFact Unknown, string Question, string HowToSettle, IReadOnlyList<Title> Titles)
{
    /// <summary>The questions behind some cells, those that touch most titles first.</summary>
    public static IReadOnlyList<OpenQuestion> Of(IReadOnlyList<Cell> cells) => cells
        .SelectMany(cell => cell.Verdict.Headline.Deciding.Select(unknown => (unknown, cell.Title)))
        .GroupBy(pair => pair.unknown)
        .Select(group => new OpenQuestion(
            group.Key, UnknownWording.Question(group.Key), UnknownWording.HowToSettle(group.Key), group.Select(pair => pair.Title).Distinct().ToList()))
        .OrderByDescending(question => question.Titles.Count).ThenBy(question => question.Question, StringComparer.Ordinal).ToList();
}
