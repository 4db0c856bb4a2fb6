using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What to do about a lost feature: another driver, another system, a wrapper, another card.</summary>
internal static class Remedies
{
    private const int MostOfAKind = 3;

    /// <summary>Everything on record that would keep the feature, for the titles that lose it.</summary>
    public static IReadOnlyList<Remedy> For(Decisions decisions, Card card, Feature feature, IReadOnlyList<TitleLoss> losses)
    {
        var titles = losses.Select(loss => loss.Cell.Title).Distinct().ToList();
        return
        [
            .. ByRoute(losses, feature),
            .. ByOtherSetup(decisions, card, feature, losses),
            .. ByOtherCard(decisions, card, feature, titles),
        ];
    }

    private static IEnumerable<Remedy> ByRoute(IReadOnlyList<TitleLoss> losses, Feature feature) => losses
        .SelectMany(loss => loss.Cell.Verdict.Alternatives.Where(route => Keeps(route.Range, feature)).Select(route => (loss.Cell.Title, route.Route)))
        .GroupBy(pair => (pair.Route.Wrapper, pair.Route.IsForced))
        .Select(group => new Remedy(
            group.Key.Wrapper is { } wrapper
                ? $"use {Names.Of(wrapper)}{(group.Key.IsForced ? " with a forced driver" : "")}"
                : $"force {Names.Of(group.First().Route.Setup.Driver)}",
            group.Select(pair => pair.Title).Distinct().ToList(), group.Key.Wrapper?.Costs ?? ""))
        .OrderByDescending(remedy => remedy.Titles.Count).ThenBy(remedy => remedy.Text, StringComparer.Ordinal).Take(MostOfAKind);

    private static IEnumerable<Remedy> ByOtherSetup(Decisions decisions, Card card, Feature feature, IReadOnlyList<TitleLoss> losses) => decisions
        .RecordedSetups(card)
        .Select(setup => (setup, titles: losses.Where(loss => !IsBy(loss.Cell, setup) && KeepsNatively(decisions.On(loss.Cell.Title, setup), feature))
            .Select(loss => loss.Cell.Title).Distinct().ToList()))
        .Where(pair => pair.titles.Count > 0)
        .OrderByDescending(pair => pair.titles.Count).ThenBy(pair => pair.setup.Install)
        .Take(MostOfAKind)
        .Select(pair => new Remedy($"use {Names.Of(pair.setup)}", pair.titles, pair.setup.Install == Install.Forced ? "a forced driver; see the caution" : ""));

    private static IEnumerable<Remedy> ByOtherCard(Decisions decisions, Card card, Feature feature, List<Title> titles) => decisions.Catalog.Cards
        .Where(other => other != card)
        .Select(other => (other, kept: titles.Where(title => Keeps(decisions.On(title, other).Headline.Range, feature)).ToList()))
        .Where(pair => pair.kept.Count > 0)
        .OrderByDescending(pair => pair.kept.Count).ThenBy(pair => pair.other.Name, StringComparer.Ordinal)
        .Take(1)
        .Select(pair => new Remedy($"use another card: {pair.other.Name} keeps it", pair.kept, ""));

    private static bool IsBy(Cell cell, Setup setup) => cell.Verdict.Headline.By.Any(finding => finding.Route.Setup == setup);

    private static bool KeepsNatively(Verdict verdict, Feature feature) =>
        verdict.Headline.Route == RouteLabel.Natively && Keeps(verdict.Headline.Range, feature);

    private static bool Keeps(OutcomeRange range, Feature feature) =>
        range.CertainlyRuns && !range.Worst.Losses.Any(loss => loss.Choices.Any(choice => choice.Feature == feature));
}
