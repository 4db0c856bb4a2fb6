using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;

namespace FeatureMatrix.Reports.Wording;

/// <summary>The sentences of a plan.</summary>
internal static class PlanWording
{
    private const int FewEnoughToSpell = 2;

    /// <summary>What to do, whether it is enough, and what more the slots would bear.</summary>
    public static string Headline(PlanReport report)
    {
        if (report.Inventory.MustHaves.Count == 0)
            return $"The library has no must-haves to plan for. {MostText(report)}".TrimEnd();
        if (report.Fewest.Rows.Count == 0)
            return $"No install on record{Within(report)} covers any must-have for certain.";
        return $"{Names.Sentence(What(report, report.Fewest))}: {Result(report)}. {MostText(report)}".TrimEnd();
    }

    /// <summary>How a plan was found and what it comes to.</summary>
    public static string Note(PlanReport report, ChosenPlan chosen)
    {
        if (chosen.Rows.Count == 0)
            return "Nothing to install.";
        var value = chosen.Plan.Value;
        var proof = chosen.Plan.IsProved
            ? "Every other choice was ruled out"
            : "The search was cut short: this is the best plan found, and a better one may exist";
        var rigs = report.Inventory.Rigs.Count == 0 ? "No PC is on record, so slots were not counted" : Names.Count(value.Rigs, "PC");
        return $"{Names.Count(value.Cards, "card")}, {rigs}, {Names.Count(value.Installs, "install")}. "
            + $"Score {DecisionWording.Interval(chosen.Together.Score)}, of which single installs guarantee {DecisionWording.Number(value.ScoreNumber)}. {proof}.";
    }

    /// <summary>The installs of a plan in one line.</summary>
    public static string InstallList(ChosenPlan chosen) => string.Join("; ", chosen.Rows.Select(row =>
        $"{row.Option.Setup.Card.Name}{(row.Rig is { } rig ? $" in {Names.InMiddle(rig.Name)}" : "")}: {Names.Of(row.Option.Setup)}"));

    /// <summary>What has to be bought.</summary>
    public static string Buys(PlanReport report, ChosenPlan chosen)
    {
        var buy = ToBuy(report, chosen);
        return buy.Count == 0 ? "nothing" : Names.List(buy.Select(card => $"{card.Name} ({DecisionWording.Price(report.Weighing.PriceOf(card))})").ToList());
    }

    /// <summary>What to mind before following it.</summary>
    public static IReadOnlyList<string> Cautions(PlanReport report)
    {
        var rows = report.Fewest.Rows.Concat(report.Most.Rows).ToList();
        if (rows.Count == 0)
            return [];
        var forced = rows.Exists(row => row.Option.Setup.Install == Install.Forced) ? new[] { ExplanationBuilder.ForcedCaution } : [];
        return
        [
            .. NextTestReport.SwapCautions, .. forced,
            .. rows.SelectMany(row => row.Boards).Distinct().SelectMany(card => card.Cautions.Select(caution => $"{card.Name}: {caution}")),
        ];
    }

    /// <summary>Why no install of the plan covers a must-have.</summary>
    public static string WhyUncovered(PlanReport report, LibraryEntry entry)
    {
        var number = report.Inventory.MustHaves.ToList().IndexOf(entry);
        var able = report.Inventory.Installs.Where(install => install.Holding.Covered.Contains(report.Inventory.MustHaves[number]))
            .Select(install => install.Setup.Card.Name).Distinct().ToList();
        if (able.Count > 0)
            return $"only {Names.List(able, "or")} would cover it; no slot, system or money is left for it here";
        var best = report.Inventory.Installs.Select(install => install.Holding.Stakes.Single(stake => stake.Entry == entry))
            .OrderByDescending(stake => stake.Prospect.Best).ThenByDescending(stake => stake.Prospect.Worst).FirstOrDefault();
        if (best is null || !best.Prospect.Best.Runs)
            return "it runs on no install on record";
        return best.CoverageUnder(report.Weighing.Library.Policy) == Coverage.Pending
            ? $"not known: {UnknownWording.Short(best.Prospect.Unknowns.ToList())}"
            : "every install on record loses more of it than you accept";
    }

    private static string What(PlanReport report, ChosenPlan chosen)
    {
        var value = chosen.Plan.Value;
        if (value.Installs > FewEnoughToSpell)
        {
            var rigs = report.Inventory.Rigs.Count == 0 ? "" : $" in {Names.Count(value.Rigs, "PC")}";
            var buy = ToBuy(report, chosen).Count == 0 ? "nothing to buy" : $"buy {Buys(report, chosen)}";
            return $"{Names.Count(value.Cards, "card")}{rigs} with {Names.Count(value.Installs, "install")}, {buy}";
        }

        return Names.List(chosen.Rows.Select(row => One(report, row)).ToList());
    }

    private static string One(PlanReport report, PlannedInstall row)
    {
        var card = row.Option.Setup.Card;
        var verb = row.IsToBuy ? $"buy {card.Name} ({DecisionWording.Price(report.Weighing.PriceOf(card))}) and put it" : $"put {card.Name}";
        var beside = row.Companion is { } companion ? $" beside {companion.Name}" : "";
        var where = row.Rig is { } rig ? $"{verb} into {Names.InMiddle(rig.Name)}{beside}" : $"{(row.IsToBuy ? $"buy {card.Name} ({DecisionWording.Price(report.Weighing.PriceOf(card))})" : $"take {card.Name}")}{beside}";
        return $"{where} with {Names.Of(row.Option.Setup)}";
    }

    private static string Result(PlanReport report)
    {
        var proof = report.Fewest.Plan.IsProved ? ", and no plan needs less" : ", the best found before the search was cut short";
        if (report.Uncovered.Count == 0)
            return $"that covers every must-have{proof}";
        var names = Names.List(report.Uncovered.Select(entry => entry.Title.Name).ToList());
        return $"that covers {report.Inventory.MustHaves.Count - report.Uncovered.Count} of {Names.Count(report.Inventory.MustHaves.Count, "must-have")}{proof}; "
            + $"nothing{Within(report)} covers {names} for certain as well";
    }

    private static string Within(PlanReport report) => report.Budget is { } budget
        ? $" within {DecisionWording.Number(budget)} {report.Weighing.Decisions.Catalog.Currency}".TrimEnd()
        : "";

    private static string MostText(PlanReport report)
    {
        var (least, most) = (report.Fewest.Plan.Value, report.Most.Plan.Value);
        if (most.Score <= least.Score || report.Most.Rows.Count == 0)
            return "";
        var bought = ToBuy(report, report.Most).Except(ToBuy(report, report.Fewest)).ToList();
        var with = bought.Count == 0 ? "what you own" : Names.List(bought.Select(card => $"{card.Name} ({DecisionWording.Price(report.Weighing.PriceOf(card))})").ToList());
        if (least.Installs > 0 && most.Score - least.Score < PlanReport.Near * least.Score)
            return $"Filling the other slots{Within(report)} with {with} adds no more than {DecisionWording.Number(most.ScoreNumber - least.ScoreNumber)} to a guaranteed {DecisionWording.Number(least.ScoreNumber)}.";
        var already = least.Installs > 0 ? $" ({DecisionWording.Number(most.ScoreNumber)} instead of {DecisionWording.Number(least.ScoreNumber)} guaranteed)" : "";
        return $"The most weight{Within(report)}{already} takes {Names.Count(most.Cards, "card")} and {Names.Count(most.Installs, "install")}, with {with}.";
    }

    private static List<Card> ToBuy(PlanReport report, ChosenPlan chosen)
    {
        var owned = report.Weighing.Owned;
        return chosen.Plan.Seats.Select(seat => report.Inventory.Cards[seat.Card]).Where(card => !owned.Contains(card)).Distinct().ToList();
    }
}
