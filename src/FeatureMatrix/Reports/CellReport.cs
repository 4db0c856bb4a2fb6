using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>A setup's cell with its explanation.</summary>
public sealed record SetupCell(string SetupId, string Name, Tile Tile, ExplanationLine Explanation);

/// <summary>Why a title does what it does on a card, and on each of the card's setups.</summary>
/// <param name="Tile">The cell of the whole card.</param>
/// <param name="Heading">Title and card.</param>
/// <param name="Explanation">The explanation of the whole card.</param>
/// <param name="Setups">The cells of the recorded setups that the policy allows.</param>
public sealed record CellReport(Tile Tile, string Heading, ExplanationLine Explanation, IReadOnlyList<SetupCell> Setups)
{
    /// <summary>The report of a title on a card.</summary>
    public static CellReport Of(Decisions decisions, Title title, Card card)
    {
        var cell = Cell.Of(decisions.On(title, card), card, null, decisions.Speeds);
        var setups = decisions.RecordedSetups(card).Select(setup =>
        {
            var one = Cell.Of(decisions.On(title, setup), card, setup, decisions.Speeds);
            return new SetupCell(Tile.IdOf(setup), Names.Sentence(Names.Of(setup)), Tile.Of(one), one.Explain());
        }).ToList();
        return new CellReport(Tile.Of(cell), $"{title.Name} on {card.Name}", cell.Explain(), setups);
    }
}
