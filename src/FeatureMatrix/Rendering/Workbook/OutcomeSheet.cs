using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// One line for each title and card with the losses in its best and its worst completion: what the counts and scores of the
/// overview calculate from. Weights and worths are the reader's to change.
/// </summary>
internal sealed class OutcomeSheet
{
    private const int HeadingRow = 4;
    private static readonly string[] Headings =
    [
        "Card no.", "Card", "Title no.", "Title", "Verdict", "Weight", "Runs at best", "Severe at best", "Cosmetic at best", "Runs at worst", "Severe at worst",
        "Cosmetic at worst", "Worth at best", "Worth at worst", "Weighted, best", "Weighted, worst",
    ];

    private readonly IXLWorksheet _sheet;
    private int _lastRow = HeadingRow;

    private OutcomeSheet(IXLWorksheet sheet) => _sheet = sheet;

    /// <summary>The worksheet.</summary>
    public IXLWorksheet Sheet => _sheet;

    /// <summary>Adds the sheet. Weights are taken from the coverage sheet, worths from the policy sheet.</summary>
    public static OutcomeSheet Add(Book book, EditionReport edition, string weightsRange, string numbersRange)
    {
        var outcomes = new OutcomeSheet(book.AddSheet("Outcomes"));
        outcomes.Fill(book, edition, weightsRange, numbersRange);
        return outcomes;
    }

    /// <summary>An absolute reference to one of the columns, without its heading.</summary>
    public string Column(string heading)
    {
        var letter = _sheet.Column(Array.IndexOf(Headings, heading) + 1).ColumnLetter();
        return Book.Reference(_sheet, $"${letter}${HeadingRow + 1}:${letter}${Math.Max(_lastRow, HeadingRow + 1)}");
    }

    private void Fill(Book book, EditionReport edition, string weightsRange, string numbersRange)
    {
        Look.Title(Book.Text(_sheet.Cell(1, 1), "Outcomes"));
        Book.Text(_sheet.Cell(2, 1), "What the scores calculate from. Change weights on the Coverage sheet and worths on the Policy sheet.");
        for (var column = 0; column < Headings.Length; column++)
            Book.Text(_sheet.Cell(HeadingRow, column + 1), Headings[column]);
        var worth = Worth.Of(edition.Decisions.Policy);
        for (var card = 0; card < edition.Cards.Count; card++)
        {
            for (var title = 0; title < edition.Cards[card].Cells.Count; title++)
            {
                var cell = edition.Cards[card].Cells[title];
                Row(book, (card + 1, title + 1), cell, edition.Decisions.WeightOf(cell.Title), worth, weightsRange, numbersRange);
            }
        }

        _sheet.Columns(1, 3).Width = 9;
        Book.Width(_sheet, 2, edition.Catalog.Cards.Select(card => card.Name));
        Book.Width(_sheet, 4, edition.Decisions.Titles.Select(title => title.Name));
        _sheet.Column(5).Width = 22;
        _sheet.Columns(6, Headings.Length).Width = 11;
        Look.Note(_sheet.Range(2, 1, 2, 10));
        Look.Heading(_sheet.Range(HeadingRow, 1, HeadingRow, Headings.Length));
        if (_lastRow > HeadingRow)
        {
            Look.Body(_sheet.Range(HeadingRow + 1, 1, _lastRow, Headings.Length));
            _sheet.Range(HeadingRow, 1, _lastRow, Headings.Length).SetAutoFilter();
        }

        Look.Figures(_sheet.Range(HeadingRow, 1, _lastRow, 1));
        Look.Figures(_sheet.Range(HeadingRow, 3, _lastRow, 3));
        Look.Figures(_sheet.Range(HeadingRow, 6, _lastRow, Headings.Length));
        _sheet.SheetView.Freeze(HeadingRow, 4);
        book.FitRows(_sheet, HeadingRow, _lastRow, Headings.Length);
        book.PrepareForPrint(_sheet, HeadingRow);
    }

    private void Row(Book book, (int Card, int Title) number, Cell cell, double weight, Worth worth, string weightsRange, string numbersRange)
    {
        var row = ++_lastRow;
        var (best, worst) = (cell.Verdict.Overall.Best, cell.Verdict.Overall.Worst);
        Numbers(row, 1, number.Card);
        Book.Text(_sheet.Cell(row, 2), cell.Card.Name);
        Numbers(row, 3, number.Title);
        Book.Text(_sheet.Cell(row, 4), cell.Title.Name);
        Look.Tone(Book.Text(_sheet.Cell(row, 5), CellWording.Of(cell.Tone)), cell.Tone);
        book.Formula(_sheet.Cell(row, 6), $"INDEX({weightsRange},MATCH($C{row},{numbersRange},0))", weight, "0.##");
        Numbers(row, 7, best.Runs ? 1 : 0, best.Severe, best.Cosmetic + best.Ungraded);
        Numbers(row, 10, worst.Runs ? 1 : 0, worst.Severe + worst.Ungraded, worst.Cosmetic);
        book.Formula(_sheet.Cell(row, 13), WorthFormula($"G{row}", $"H{row}", $"I{row}"), worth.Most(best), "0.000");
        book.Formula(_sheet.Cell(row, 14), WorthFormula($"J{row}", $"K{row}", $"L{row}"), worth.Least(worst), "0.000");
        book.Formula(_sheet.Cell(row, 15), $"F{row}*M{row}", weight * worth.Most(best), "0.000");
        book.Formula(_sheet.Cell(row, 16), $"F{row}*N{row}", weight * worth.Least(worst), "0.000");
    }

    private void Numbers(int row, int column, params int[] numbers)
    {
        for (var i = 0; i < numbers.Length; i++)
            Book.Number(_sheet.Cell(row, column + i), numbers[i], "0");
    }

    /// <summary>The worth of losses that stand in three cells, by the worths on the policy sheet.</summary>
    public static string WorthFormula(string runs, string severe, string cosmetic) =>
        $"IF({runs}=0,0,SevereWorth^{severe}*(1-(1-SevereWorth)*(1-CosmeticWorth^{cosmetic})))";
}
