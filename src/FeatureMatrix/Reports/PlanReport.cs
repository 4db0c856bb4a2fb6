using System.Globalization;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>The fewest cards and installs that cover all must-haves, starting from what is owned.</summary>
public sealed record PlanReport
{
    /// <summary>The most must-haves one plan takes.</summary>
    public const int MostMustHaves = 64;

    /// <summary>The decisions it draws on.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The installs of the plan.</summary>
    public required IReadOnlyList<DriverOption> Installs { get; init; }

    /// <summary>The choice as it was found, with its bound.</summary>
    public required FewestInstalls Choice { get; init; }

    /// <summary>Must-haves that no install on record covers for certain.</summary>
    public required IReadOnlyList<LibraryEntry> Uncovered { get; init; }

    /// <summary>Everything the plan gives.</summary>
    public required Holding Together { get; init; }

    /// <summary>Cards among them that are not owned.</summary>
    public required IReadOnlyList<Card> ToBuy { get; init; }

    /// <summary>Plans a library; cards above the budget at their highest price on record are left out.</summary>
    public static PlanReport Of(Weighing weighing, decimal? budget = null)
    {
        var decisions = weighing.Decisions;
        var owned = weighing.Owned;
        var cards = decisions.Catalog.Cards.Where(card => owned.Contains(card) || budget is null || weighing.PriceOf(card)?.High <= budget).ToList();
        var musts = weighing.Library.Entries.Where(entry => entry.IsMustHave).Take(MostMustHaves).ToList();
        var options = cards.SelectMany(card => decisions.RecordedSetups(card))
            .Select(setup => new DriverOption(setup, Holding.Of(weighing.Library, entry => [decisions.On(entry.Title, setup)]))).ToList();
        var offers = options.Select((option, i) => new InstallOption(
            i, cards.IndexOf(option.Setup.Card), owned.Contains(option.Setup.Card), Bits(musts, option.Holding.Covered), option.Holding.Score.Low)).ToList();
        var choice = FewestInstalls.Of(offers, Bits(musts, musts));
        var chosen = choice.Chosen.Select(offer => options[offer.Index])
            .OrderBy(option => option.Setup.Card.Id, StringComparer.Ordinal).ThenBy(option => option.Setup.Driver.Id, StringComparer.Ordinal).ToList();
        return new PlanReport
        {
            Weighing = weighing,
            Installs = chosen,
            Choice = choice,
            Uncovered = musts.Where((_, i) => (choice.CannotCover >> i & 1) != 0).ToList(),
            Together = Holding.Of(weighing.Library, entry => chosen.Select(option => decisions.On(entry.Title, option.Setup))),
            ToBuy = chosen.Select(option => option.Setup.Card).Distinct().Where(card => !owned.Contains(card)).ToList(),
        };
    }

    /// <summary>The plan in a sentence.</summary>
    public string Headline
    {
        get
        {
            if (Installs.Count == 0)
                return Uncovered.Count == 0 ? "The library has no must-haves to plan for." : "No install on record covers any must-have for certain.";
            var buy = ToBuy.Count == 0
                ? "nothing to buy"
                : $"buy {Names.List(ToBuy.Select(card => $"{card.Name} ({DecisionWording.Price(Weighing.PriceOf(card))})").ToList())}";
            var uncovered = Uncovered.Count == 0
                ? "every must-have is covered"
                : $"{Names.List(Uncovered.Select(entry => entry.Title.Name).ToList())} cannot be covered for certain";
            var proof = Choice.IsProved ? " No plan needs less." : "";
            return $"{Names.Count(Choice.Cost.Cards, "card")} and {Names.Count(Choice.Cost.Installs, "install")}, {buy}: {uncovered}.{proof}";
        }
    }

    /// <summary>The whole report.</summary>
    public DecisionReport ToReport() => new(
        $"Plan for {Weighing.Library.Name}", Headline, Weighing.PolicyText, Installs.Count == 0 ? [] : NextTestReport.SwapCautions,
        [
            new Table(
                "Installs",
                $"Lower bound on installs before the search: {Choice.LowerBound.ToString(CultureInfo.InvariantCulture)}. Together they score {DecisionWording.Interval(Together.Score)}.",
                [new("Card"), new("Owned"), new("Driver and system"), new("Covers"), new("Price")],
                Installs.Select(option => (IReadOnlyList<TableCell>)
                [
                    new TableCell(option.Setup.Card.Name), new TableCell(ToBuy.Contains(option.Setup.Card) ? "no" : "yes"), new TableCell(Names.Of(option.Setup)),
                    new TableCell(Names.List(option.Holding.Covered.Select(entry => entry.Title.Name).ToList())),
                    new TableCell(ToBuy.Contains(option.Setup.Card) ? DecisionWording.Price(Weighing.PriceOf(option.Setup.Card)) : ""),
                ]).ToList()),
        ]);

    private static ulong Bits(List<LibraryEntry> musts, IReadOnlyList<LibraryEntry> covered) =>
        musts.Select((entry, i) => covered.Contains(entry) ? 1ul << i : 0).Aggregate(0ul, (one, other) => one | other);
}
