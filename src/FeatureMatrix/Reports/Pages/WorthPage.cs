using FeatureMatrix.Model;
using FeatureMatrix.Reports.Advice;

namespace FeatureMatrix.Reports.Pages;

/// <summary>What a card would add, on one page to print and take along.</summary>
/// <param name="CardId">The card.</param>
/// <param name="Report">What the command prints.</param>
/// <param name="Most">The most to pay.</param>
/// <param name="Facts">What tells the board: chip, memory, bus, hardware IDs, prices.</param>
/// <param name="LookAt">What to look at before paying.</param>
/// <param name="ToWrite">What to write down at the stall.</param>
public sealed record WorthPage(
    string CardId, DecisionReport Report, string Most, IReadOnlyList<NamedText> Facts, IReadOnlyList<string> LookAt, IReadOnlyList<string> ToWrite)
{
    // Common practice, no source.
    private static readonly IReadOnlyList<string> Look =
    [
        "Chip and memory chips carry the markings on record; boards of one name were sold with less memory.",
        "No bulging or leaking capacitors, no scorched, corroded or missing parts, no bent contacts; the fan turns by hand.",
        "Whether it fits your PC is for the documents of both boards to say; where they are silent, ask a qualified technician before you plug it in.",
    ];

    private static readonly IReadOnlyList<string> Write = ["Price asked", "Seller", "Marking on the chip", "Condition"];

    /// <summary>The page of a card.</summary>
    public static WorthPage Of(CardValueReport report, Card card) => new(card.Id, report.ToReport(), report.MostText, CardPage.FactsOf(card), Look, Write);
}
