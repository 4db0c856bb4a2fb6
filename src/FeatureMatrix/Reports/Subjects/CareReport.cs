using System.Globalization;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>How much of what matters is recorded of one card.</summary>
/// <param name="Card">The card.</param>
/// <param name="Asked">Features that at least one title asks for.</param>
/// <param name="Recorded">How many of them something is recorded of, for this card, its chip, or a driver that lists it.</param>
/// <param name="Drivers">Driver versions that list it.</param>
public sealed record CardCompleteness(Card Card, int Asked, int Recorded, int Drivers)
{
    /// <summary>Whole percents, rounded down so that 100 means all; 100 where titles ask for nothing.</summary>
    public int Percent => Asked == 0 ? 100 : Recorded * 100 / Asked;
}

/// <summary>Something in the collection that a hand could better.</summary>
/// <param name="Kind">What sort of thing, such as <c>no driver list</c>.</param>
/// <param name="About">What it is about.</param>
/// <param name="Text">What there is.</param>
/// <param name="Remedy">What to do, where possible as a command.</param>
public sealed record CareItem(string Kind, string About, string Text, string Remedy);

/// <summary>What a collection lacks most and where it disagrees with itself: help for its keeper, not a judgement.</summary>
/// <param name="Cards">By completeness, the emptiest first.</param>
/// <param name="Items">Disagreements first, then what is missing.</param>
public sealed record CareReport(IReadOnlyList<CardCompleteness> Cards, IReadOnlyList<CareItem> Items)
{
    /// <summary>Looks through a collection.</summary>
    /// <param name="decisions">The collection on its terms.</param>
    /// <param name="unsourced">Statements without a source by file, as the loader counted them.</param>
    /// <param name="hidden">Keys whose value in a shared collection does not count here.</param>
    /// <param name="today">The day by which prices are judged; null not to judge them.</param>
    public static CareReport Of(Decisions decisions, IReadOnlyList<(string Place, string Text)> unsourced, IReadOnlyList<HiddenKey> hidden, DateOnly? today) => new(
        Completeness(decisions.Catalog),
        [
            .. CareDisagreements.Of(decisions),
            .. CareDisagreements.WithCaptures(decisions),
            .. CareDisagreements.WithShared(hidden),
            .. CareGaps.OfObservations(decisions),
            .. decisions.Catalog.Cards.SelectMany(card => CareGaps.OfCard(decisions.Catalog, card)),
            .. decisions.Titles.SelectMany(CareGaps.OfTitle),
            .. unsourced.Select(one => new CareItem("no source", one.Place, one.Text, "Write 'source' once for all of it.")),
            .. today is { } day ? decisions.Catalog.Cards.SelectMany(card => CareGaps.StalePrices(card, day)) : [],
        ]);

    /// <summary>The cards as a table.</summary>
    public Table ToCardTable() => new(
        "How much is recorded of each card", "Of the features that titles ask for: how many have a statement about the card, its chip, or a driver that lists it.",
        [new("Card"), new("Recorded", true), new("Features"), new("Drivers", true)],
        [
            .. Cards.Select(one => (IReadOnlyList<TableCell>)
            [
                new(one.Card.Name), one.Asked == 0 ? new("–") : new($"{Print(one.Percent)} %", one.Percent), new($"{Print(one.Recorded)} of {Print(one.Asked)}"), new(Print(one.Drivers), one.Drivers),
            ]),
        ]);

    /// <summary>The items as a table.</summary>
    public Table ToTable() => new Table(
        "Worth a look", Items.Count == 0 ? "" : $"{Names.Count(Items.Count, "item")}.",
        [new("Kind"), new("About"), new("What there is"), new("What to do")],
        [.. Items.Select(item => (IReadOnlyList<TableCell>)[new(item.Kind), new(item.About), new(item.Text), new(item.Remedy)])])
    {
        WhenEmpty = "Nothing stands out.",
    };

    private static List<CardCompleteness> Completeness(Catalog catalog)
    {
        var asked = catalog.Titles.SelectMany(title => title.Renderers).SelectMany(renderer => renderer.Needs)
            .SelectMany(need => need.Choices).Select(choice => choice.Feature).ToHashSet();
        return
        [
            .. catalog.Cards.Select(card =>
                {
                    var recorded = catalog.Facts.Where(fact => asked.Contains(fact.Capability.Feature) && Concerns(fact.Scope, card))
                        .Select(fact => fact.Capability.Feature).Distinct().Count();
                    return new CardCompleteness(card, asked.Count, recorded, catalog.Drivers.Count(driver => driver.Lists.Contains(card)));
                })
                .OrderBy(one => one.Percent).ThenBy(one => one.Card.Name, StringComparer.Ordinal),
        ];
    }

    private static bool Concerns(Scope scope, Card card) =>
        (scope.Chip is null || scope.Chip == card.Chip) && (scope.Card is null || scope.Card == card)
        && (scope.NamesHardware || (scope.Drivers is { } drivers && drivers.Branch.Versions.Any(driver => drivers.Contains(driver) && driver.Lists.Contains(card))));

    private static string Print(int number) => number.ToString(CultureInfo.InvariantCulture);
}
