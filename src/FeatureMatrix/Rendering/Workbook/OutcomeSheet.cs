using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Reports;

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
        "Card", "Title", "Verdict", "Weight", "Runs at best", "Severe at best", "Cosmetic at best", "Runs at worst", "Severe at worst",
        "Cosmetic at worst", "Worth at best", "Worth at worst", "Weighted, best", "Weighted, worst",
    ];

    private readonly IXLWorksheet _sheet;
    private int _lastRow = HeadingRow;

    private OutcomeSheet(IXLWorksheet sheet) => _sheet = sheet;

    /// <summary>The worksheet.</summary>
    public IXLWorksheet Sheet => _sheet;

    /// <summary>Adds the sheet. Weights are taken from the coverage sheet, worths from the policy sheet.</summary>
    public static OutcomeSheet Add(Book book, EditionReport edition, string weightsRange, string titlesRange)
    {
        var outcomes = new OutcomeSheet(book.AddSheet("Outcomes"));
        outcomes.Fill(book, edition, weightsRange, titlesRange);
        return outcomes;
    }

    /// <summary>An absolute reference to one of the columns, without its heading.</summary>
    public string Column(string heading)
    {
        var letter = _sheet.Column(Array.IndexOf(Headings, heading) + 1).ColumnLetter();
        return $"'{_sheet.Name}'!${letter}${HeadingRow + 1}:${letter}${_lastRow}";
    }

    private void Fill(Book book, EditionReport edition, string weightsRange, string titlesRange)
    {
        Look.Title(Book.Text(_sheet.Cell(1, 1), "Outcomes"));
        Book.Text(_sheet.Cell(2, 1), "What the scores calculate from. Change weights on the Coverage sheet and worths on the Policy sheet.");
        for (var column = 0; column < Headings.Length; column++)
            Book.Text(_sheet.Cell(HeadingRow, column + 1), Headings[column]);
        var worth = Worth.Of(edition.Decisions.Policy);
        foreach (var cell in edition.Cards.SelectMany(card => card.Cells))
            Row(book, cell, edition.Decisions.WeightOf(cell.Title), worth, weightsRange, titlesRange);
        Book.Width(_sheet, 1, edition.Catalog.Cards.Select(card => card.Name));
        Book.Width(_sheet, 2, edition.Decisions.Titles.Select(title => title.Name));
        _sheet.Column(3).Width = 16;
        _sheet.Columns(4, Headings.Length).Width = 11;
        Look.Note(_sheet.Range(2, 1, 2, 8));
        Look.Heading(_sheet.Range(HeadingRow, 1, HeadingRow, Headings.Length));
        if (_lastRow > HeadingRow)
        {
            Look.Body(_sheet.Range(HeadingRow + 1, 1, _lastRow, Headings.Length));
            _sheet.Range(HeadingRow, 1, _lastRow, Headings.Length).SetAutoFilter();
        }

        _sheet.SheetView.Freeze(HeadingRow, 2);
        book.PrepareForPrint(_sheet, HeadingRow, 2);
    }

    private void Row(Book book, Cell cell, double weight, Worth worth, string weightsRange, string titlesRange)
    {
        var row = ++_lastRow;
        var (best, worst) = (cell.Verdict.Overall.Best, cell.Verdict.Overall.Worst);
        Book.Text(_sheet.Cell(row, 1), cell.Card.Name);
        Book.Text(_sheet.Cell(row, 2), cell.Title.Name);
        Book.Text(_sheet.Cell(row, 3), cell.Tone.ToString());
        Look.Tone(_sheet.Cell(row, 3), cell.Tone);
        book.Formula(_sheet.Cell(row, 4), $"INDEX({weightsRange},MATCH($B{row},{titlesRange},0))", weight, "0.##");
        Numbers(row, 5, best.Runs ? 1 : 0, best.Severe, best.Cosmetic + best.Ungraded);
        Numbers(row, 8, worst.Runs ? 1 : 0, worst.Severe + worst.Ungraded, worst.Cosmetic);
        book.Formula(_sheet.Cell(row, 11), WorthFormula($"E{row}", $"F{row}", $"G{row}"), worth.Most(best), "0.000");
        book.Formula(_sheet.Cell(row, 12), WorthFormula($"H{row}", $"I{row}", $"J{row}"), worth.Least(worst), "0.000");
        book.Formula(_sheet.Cell(row, 13), $"D{row}*K{row}", weight * worth.Most(best), "0.000");
        book.Formula(_sheet.Cell(row, 14), $"D{row}*L{row}", weight * worth.Least(worst), "0.000");
    }

    private void Numbers(int row, int column, params int[] numbers)
    {
        for (var i = 0; i < numbers.Length; i++)
            Book.Number(_sheet.Cell(row, column + i), numbers[i], "0");
    }

    private static string WorthFormula(string runs, string severe, string cosmetic) =>
        $"IF({runs}=0,0,SevereWorth^{severe}*(1-(1-SevereWorth)*(1-CosmeticWorth^{cosmetic})))";
}
