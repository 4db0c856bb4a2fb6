using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What a card supplies of a feature, over its recorded drivers, systems and APIs.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Card">The card.</param>
/// <param name="Text">In a word or two: yes, no, emulated, broken, not known, a level, or what differs.</param>
/// <param name="States">The states that occur, best first.</param>
public sealed record SupplyCell(Feature Feature, Card Card, string Text, IReadOnlyList<Support> States);

/// <summary>Features against cards.</summary>
public sealed record SupplyReport(IReadOnlyList<Card> Cards, IReadOnlyList<(Feature Feature, IReadOnlyList<SupplyCell> Cells)> Rows)
{
    /// <summary>Features that some title needs or some fact mentions, by family, against cards.</summary>
    public static SupplyReport Of(Decisions decisions, IReadOnlyList<Card>? cards = null)
    {
        cards ??= decisions.Catalog.Cards;
        var contexts = cards.Select(card => (Card: card, Contexts: ContextsOf(decisions, card))).ToList();
        var rows = UsedIn(decisions).Select(feature => (feature, (IReadOnlyList<SupplyCell>)contexts.Select(one => CellOf(feature, one.Card, one.Contexts, decisions.Resolver.Supply)).ToList())).ToList();
        return new SupplyReport(cards, rows);
    }

    /// <summary>The features that some title needs or some fact mentions, by family.</summary>
    public static IEnumerable<Feature> UsedIn(Decisions decisions)
    {
        var used = decisions.Catalog.Facts.Select(fact => fact.Capability.Feature)
            .Concat(decisions.Titles.SelectMany(title => title.Renderers).SelectMany(renderer => renderer.Needs)
                .SelectMany(need => need.Choices).Select(choice => choice.Feature))
            .Where(feature => !feature.IsApi).ToHashSet();
        return decisions.Catalog.Features.Where(used.Contains)
            .OrderBy(feature => feature.Family, StringComparer.Ordinal).ThenBy(feature => feature.Name, StringComparer.Ordinal);
    }

    /// <summary>The report as a table.</summary>
    public Table ToTable() => new(
        "Features by card", "Over all recorded drivers; where they differ, both are named.",
        [new TableColumn("Family"), new TableColumn("Feature"), .. Cards.Select(card => new TableColumn(card.Name))],
        Rows.Select(row => (IReadOnlyList<TableCell>)
            [new TableCell(row.Feature.Family), new TableCell(row.Feature.Name), .. row.Cells.Select(cell => new TableCell(cell.Text))]).ToList());

    /// <summary>The recorded setups of a card with each API that they certainly offer.</summary>
    private static List<(Setup, Feature)> ContextsOf(Decisions decisions, Card card) => decisions.RecordedSetups(card)
        .SelectMany(setup => decisions.Catalog.Features.Where(api => api.IsApi && decisions.Resolver.Supply.Ask(api.At(1), setup, api).Support >= Support.Emulated)
            .Select(api => (setup, api))).ToList();

    private static SupplyCell CellOf(Feature feature, Card card, List<(Setup, Feature)> contexts, SupplyTable supply)
    {
        if (contexts.Count == 0)
            return new SupplyCell(feature, card, "no driver recorded", []);
        return feature.HasLevels ? Ladder(feature, card, contexts, supply) : Flag(feature, card, contexts, supply);
    }

    private static SupplyCell Flag(Feature feature, Card card, List<(Setup, Feature)> contexts, SupplyTable supply)
    {
        var states = contexts.Select(context => supply.Ask(feature.At(1), context.Item1, context.Item2).Support).Distinct().OrderDescending().ToList();
        var text = states.Count == 1 ? Names.Of(states[0]) : $"{Names.List(states.Select(Names.Of).ToList(), "or")}, by driver";
        return new SupplyCell(feature, card, text, states);
    }

    private static SupplyCell Ladder(Feature feature, Card card, List<(Setup, Feature)> contexts, SupplyTable supply)
    {
        var highest = contexts.Select(context => Enumerable.Range(1, feature.Steps)
            .Where(step => supply.Ask(feature.At(step), context.Item1, context.Item2).Support >= Support.Emulated).DefaultIfEmpty(0).Max()).ToList();
        var isKnown = contexts.TrueForAll(context => Enumerable.Range(1, feature.Steps)
            .All(step => supply.Ask(feature.At(step), context.Item1, context.Item2).IsSettled));
        var (low, high) = (highest.Min(), highest.Max());
        if (high == 0)
            return new SupplyCell(feature, card, isKnown ? "none" : "not known", [isKnown ? Support.No : Support.Unknown]);
        var text = low == high ? Level(high) : $"{Level(low)} to {Level(high)}, by driver";
        return new SupplyCell(feature, card, isKnown ? text : $"{text} or more", [Support.Yes]);

        string Level(int step) => step == 0 ? "none" : feature.At(step).Level;
    }
}
