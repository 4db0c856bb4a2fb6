using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>A column of a coverage matrix: a card with all its setups, or one setup.</summary>
/// <param name="Card">The card.</param>
/// <param name="Setup">The setup; null for the whole card.</param>
/// <param name="Heading">What stands above the column.</param>
/// <param name="Counts">How many titles have each tone, in the order of the tones.</param>
/// <param name="Weight">The weight of the titles with each tone.</param>
public sealed record CoverageColumn(
    Card Card, Setup? Setup, string Heading, IReadOnlyDictionary<CellTone, int> Counts, IReadOnlyDictionary<CellTone, double> Weight);

/// <summary>A row of a coverage matrix: a title with its cells in the order of the columns.</summary>
public sealed record CoverageRow(Title Title, double Weight, IReadOnlyList<Cell> Cells);

/// <summary>Titles against cards or setups.</summary>
/// <param name="Heading">What the matrix shows, with collection and library.</param>
/// <param name="PolicyText">The policy it was made under, in words.</param>
/// <param name="Terms">What of it is not as usual, in a sentence.</param>
/// <param name="Columns">The columns, left to right.</param>
/// <param name="Rows">The rows, top to bottom.</param>
public sealed record CoverageReport(string Heading, string PolicyText, string Terms, IReadOnlyList<CoverageColumn> Columns, IReadOnlyList<CoverageRow> Rows)
{
    /// <summary>Whole cards as columns: each cell is the card's best permitted setup (rule R17).</summary>
    public static CoverageReport ByCard(Decisions decisions, IReadOnlyList<Card>? cards = null)
    {
        cards ??= decisions.Catalog.Cards;
        return Build(decisions, "Coverage by card", cards.Select(card => (card, (Setup?)null, card.Name)).ToList());
    }

    /// <summary>Setups as columns.</summary>
    public static CoverageReport BySetup(Decisions decisions, IReadOnlyList<Card>? cards = null)
    {
        cards ??= decisions.Catalog.Cards;
        return Build(decisions, "Coverage by setup", cards
            .SelectMany(card => decisions.RecordedSetups(card).Select(setup => (card, (Setup?)setup, $"{card.Name}, {Names.Of(setup)}"))).ToList());
    }

    /// <summary>The setups of one operating system as columns.</summary>
    public static CoverageReport BySetup(Decisions decisions, Os os) => Build(
        decisions, $"Coverage under {os.Name}", decisions.Catalog.Cards
            .SelectMany(card => decisions.RecordedSetups(card).Where(setup => setup.Os == os).Select(setup => (card, (Setup?)setup, $"{card.Name}, {Names.Of(setup)}"))).ToList());

    /// <summary>The matrix as a table: titles down, columns across, whole labels in the cells, with what is recommended instead.</summary>
    public Table ToTable() => ToTable(PolicyText, cell => cell.Label + CellWording.Instead(cell.Verdict));

    /// <summary>The matrix in a few words a cell, with their meaning above it: narrow enough for a post in a forum.</summary>
    public Table ToShortTable() => ToTable($"{CellWording.ShortLegend([.. Rows.SelectMany(row => row.Cells)])} {Terms}".Trim(), CellWording.ShortText);

    private Table ToTable(string note, Func<Cell, string> text) => new(
        Heading, note,
        [new TableColumn("Title"), .. Columns.Select(column => new TableColumn(column.Heading))],
        Rows.Select(row => (IReadOnlyList<TableCell>)[new TableCell(row.Title.Name), .. row.Cells.Select(cell => new TableCell(text(cell), null, cell.Tone))]).ToList());

    private static CoverageReport Build(Decisions decisions, string what, IReadOnlyList<(Card Card, Setup? Setup, string Heading)> columns)
    {
        var rows = decisions.Titles.Select(title => new CoverageRow(title, decisions.WeightOf(title), columns
            .Select(column => column.Setup is { } setup ? decisions.CellOn(title, setup) : decisions.CellOn(title, column.Card)).ToList())).ToList();
        var counted = columns.Select((column, i) =>
        {
            var byTone = rows.ToLookup(row => row.Cells[i].Tone);
            var tones = Enum.GetValues<CellTone>();
            return new CoverageColumn(
                column.Card, column.Setup, column.Heading,
                tones.ToDictionary(tone => tone, tone => byTone[tone].Count()),
                tones.ToDictionary(tone => tone, tone => byTone[tone].Sum(row => row.Weight)));
        }).ToList();
        var library = decisions.Library is { } chosen ? $", library {chosen.Name}" : "";
        return new CoverageReport($"{what}: {decisions.Catalog.Name}{library}", PolicyWording.Text(decisions.Policy), PolicyWording.Short(decisions.Policy), counted, rows);
    }
}
