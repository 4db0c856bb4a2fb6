using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What nobody recorded yet.</summary>
internal static class CareGaps
{
    /// <summary>Prices older than this say little about today's.</summary>
    private const int DaysAPriceHolds = 365;

    /// <summary>What is missing of a card.</summary>
    public static IEnumerable<CareItem> OfCard(Catalog catalog, Card card)
    {
        if (!catalog.Drivers.Any(driver => driver.Lists.Contains(card)))
            yield return new CareItem("no driver list", card.Name, "No driver lists it, so only what an unrecorded driver may do is known.", $"new driver ID --card {card.Id} --os SYSTEM");
        if (card.Memory is null)
            yield return new CareItem("no memory", card.Name, "Every memory question is open.", $"Write 'memory' in {Place(card.Evidence)}.");
    }

    /// <summary>Observations that decide nothing, each with the reason.</summary>
    public static IEnumerable<CareItem> OfObservations(Decisions decisions)
    {
        var idle = new IdleObservations(decisions);
        return decisions.Catalog.Observations.Select(seen => (seen, reason: idle.Reason(seen))).Where(pair => pair.reason is not null)
            .Select(pair => new CareItem(
                "recorded, decides nothing", pair.seen.Renderer.Title.Name, $"{Names.Sentence(FactWording.Observation(pair.seen))}: {pair.reason}.",
                pair.seen.Card is { } card ? $"explain {pair.seen.Renderer.Title.Id} {card.Id}" : $"State the card in {Place(pair.seen.Evidence)}."));
    }

    /// <summary>What is missing of a title.</summary>
    public static IEnumerable<CareItem> OfTitle(Title title)
    {
        var needs = title.Renderers.SelectMany(renderer => renderer.Needs).Where(need => need.Strength is Strength.Ungraded or Strength.Unknown).ToList();
        if (needs.Count > 0)
        {
            var names = Names.List([.. needs.Select(need => Names.Of(need.Choices)).Distinct()]);
            yield return new CareItem("no severity", title.Name, $"Nobody graded what it looks like without {names}.", $"Grade it in {Place(needs[0].Evidence)}, or record what was seen under 'observations'.");
        }

        if (title.Renderers.Any(renderer => !renderer.IsSoftware) && title.Renderers.All(renderer => renderer.Needs.Count == 0))
            yield return new CareItem("no needs", title.Name, "It counts as needing nothing in particular.", $"Write 'needs' in {Place(title.Evidence)}.");
    }

    /// <summary>A card whose latest price is too old, or has no date.</summary>
    public static IEnumerable<CareItem> StalePrices(Card card, DateOnly today)
    {
        if (card.Prices.Count == 0)
            yield break;
        var latest = card.Prices.Max(price => price.Date);
        if (latest is { } date && today.DayNumber - date.DayNumber <= DaysAPriceHolds)
            yield break;
        var text = latest is { } day
            ? $"The latest is of {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}."
            : "None has a date.";
        yield return new CareItem("old price", card.Name, text, $"Add one under 'prices' in {Place(card.Evidence)}.");
    }

    /// <summary>File, line and column.</summary>
    public static string Place(Origin origin) => string.Create(CultureInfo.InvariantCulture, $"{origin.File}({origin.Line},{origin.Column})");

    private static string Place(Evidence evidence) => Place(evidence.Origin);
}
