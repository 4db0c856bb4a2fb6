using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// Two cards that the reader chooses from lists, title by title. It calculates from the outcomes of each card alone: where both cards wait
/// for the same unknown fact the difference is wider than that of the Compare sheet, so what it decides is decided, and not conversely.
/// </summary>
internal sealed class AnyTwoSheet
{
    private const int FirstRow = 4;
    private const int HeadingRow = 13;
    private static readonly string[] Headings =
        ["No.", "Title", "Weight", "First", "Second", "First, worst", "First, best", "Second, worst", "Second, best", "Ahead"];

    private readonly Book _book;
    private readonly EditionReport _edition;
    private readonly IXLWorksheet _sheet;
    private readonly IXLWorksheet _coverage;
    private readonly OutcomeSheet _outcomes;
    private readonly Worth _worth;
    private readonly (int First, int Second) _chosen;

    private AnyTwoSheet(Book book, EditionReport edition, IXLWorksheet coverage, OutcomeSheet outcomes, (int First, int Second) chosen)
    {
        (_book, _edition, _coverage, _outcomes, _chosen) = (book, edition, coverage, outcomes, chosen);
        _worth = Worth.Of(edition.Decisions.Policy);
        _sheet = book.AddSheet("Any two cards");
    }

    /// <summary>Adds the sheet, with a pair chosen to begin with.</summary>
    public static void Add(Book book, EditionReport edition, IXLWorksheet overview, IXLWorksheet coverage, OutcomeSheet outcomes, CompareReport pair)
    {
        var cards = edition.Cards.Select(card => card.Card).ToList();
        var two = new AnyTwoSheet(book, edition, coverage, outcomes, (cards.IndexOf(pair.Picture.First), cards.IndexOf(pair.Picture.Second)));
        two.Head(overview);
        for (var i = 0; i < edition.ByCard.Rows.Count; i++)
            two.Row(i);
        two.Finish();
    }

    private void Head(IXLWorksheet overview)
    {
        Look.Title(Book.Text(_sheet.Cell(1, 1), "Any two cards"));
        Book.Text(_sheet.Cell(2, 1), "Choose two cards from the lists. Each card is weighed by itself here, and must-haves are not looked at. Where both wait for the same unknown fact, "
            + "the range below is wider than it is: what this sheet decides is decided, but 'undecided' and 'open' may be decided by the command 'compare' and on the site's page of the two, which join what both share.");
        Choice(FirstRow, "First card", _chosen.First, overview);
        Choice(FirstRow + 1, "Second card", _chosen.Second, overview);
        var (first, second) = (Score(_chosen.First), Score(_chosen.Second));
        Scores(FirstRow + 2, "Score at worst", OverviewSheet.WorstScores(overview, _edition), first.Worst, second.Worst);
        Scores(FirstRow + 3, "Score at best", OverviewSheet.BestScores(overview, _edition), first.Best, second.Best);
        var (low, high) = (Math.Round(first.Worst - second.Best, 9), Math.Round(first.Best - second.Worst, 9));
        Name(FirstRow + 4, "First less second, lowest");
        _book.Formula(_sheet.Cell(FirstRow + 4, 4), "ROUND(D6-E7,9)", low, "0.000");
        Name(FirstRow + 5, "First less second, highest");
        _book.Formula(_sheet.Cell(FirstRow + 5, 4), "ROUND(D7-E6,9)", high, "0.000");
        Name(FirstRow + 6, "The scores alone say");
        _book.Formula(
            _sheet.Cell(FirstRow + 6, 4), "IF(D8>0,D4,IF(D9<0,D5,IF(AND(D8=0,D9=0),\"equal\",\"undecided\")))",
            low > 0 ? CardName(_chosen.First) : high < 0 ? CardName(_chosen.Second) : low == 0 && high == 0 ? "equal" : "undecided").Style.Font.Bold = true;
        for (var column = 0; column < Headings.Length; column++)
            Book.Text(_sheet.Cell(HeadingRow, column + 1), Headings[column]);
    }

    private void Choice(int row, string name, int chosen, IXLWorksheet overview)
    {
        Name(row, name);
        var cell = Book.Text(_sheet.Cell(row, 4), CardName(chosen));
        Look.Changeable(cell);
        var rule = cell.SetDataValidation();
        rule.List(OverviewSheet.CardNames(overview, _edition), inCellDropdown: true);
        rule.InputTitle = name;
        rule.InputMessage = "Choose from the list.";
        _book.Formula(_sheet.Cell(row, 5), $"MATCH(D{row},{OverviewSheet.CardNames(overview, _edition)},0)", chosen + 1, "0");
    }

    private void Scores(int row, string name, string scores, double first, double second)
    {
        Name(row, name);
        _book.Formula(_sheet.Cell(row, 4), $"INDEX({scores},$E${FirstRow})", first, "0.000");
        _book.Formula(_sheet.Cell(row, 5), $"INDEX({scores},$E${FirstRow + 1})", second, "0.000");
    }

    private void Row(int index)
    {
        var row = HeadingRow + 1 + index;
        var line = _edition.ByCard.Rows[index];
        Book.Number(_sheet.Cell(row, 1), index + 1, "0");
        Book.Text(_sheet.Cell(row, 2), line.Title.Name);
        _book.Formula(_sheet.Cell(row, 3), $"INDEX({CoverageSheet.Weights(_coverage, _edition.ByCard)},MATCH($A{row},{CoverageSheet.Numbers(_coverage, _edition.ByCard)},0))", line.Weight, "0.##");
        Side(row, 4, index, _chosen.First, FirstRow);
        Side(row, 5, index, _chosen.Second, FirstRow + 1);
        var first = Weighted(index, _chosen.First);
        var second = Weighted(index, _chosen.Second);
        Weigh(row, 6, "Weighted, worst", FirstRow, first.Worst);
        Weigh(row, 7, "Weighted, best", FirstRow, first.Best);
        Weigh(row, 8, "Weighted, worst", FirstRow + 1, second.Worst);
        Weigh(row, 9, "Weighted, best", FirstRow + 1, second.Best);
        _book.Formula(
            _sheet.Cell(row, 10), $"IF(F{row}>I{row},$D${FirstRow},IF(G{row}<H{row},$D${FirstRow + 1},IF(AND(F{row}=G{row},H{row}=I{row},F{row}=H{row}),\"alike\",\"open\")))",
            first.Worst > second.Best ? CardName(_chosen.First)
            : first.Best < second.Worst ? CardName(_chosen.Second)
            : first == second && first.Worst == first.Best ? "alike" : "open");
    }

    private void Side(int row, int column, int title, int card, int choiceRow) => _book.Formula(
        _sheet.Cell(row, column),
        $"INDEX({CoverageSheet.Labels(_coverage, _edition.ByCard)},MATCH($A{row},{CoverageSheet.Numbers(_coverage, _edition.ByCard)},0),$E${choiceRow})",
        _edition.ByCard.Rows[title].Cells[card].Label);

    private void Weigh(int row, int column, string heading, int choiceRow, double value) => _book.Formula(
        _sheet.Cell(row, column), $"SUMIFS({_outcomes.Column(heading)},{_outcomes.Column("Card no.")},$E${choiceRow},{_outcomes.Column("Title no.")},$A{row})", value, "0.000");

    private (double Worst, double Best) Weighted(int title, int card)
    {
        var cell = _edition.Cards[card].Cells[title];
        var weight = _edition.Decisions.WeightOf(cell.Title);
        return (weight * _worth.Least(cell.Verdict.Overall.Worst), weight * _worth.Most(cell.Verdict.Overall.Best));
    }

    private (double Worst, double Best) Score(int card)
    {
        var total = _edition.Cards[card].Cells.Sum(cell => _edition.Decisions.WeightOf(cell.Title));
        var titles = Enumerable.Range(0, _edition.Cards[card].Cells.Count).Select(title => Weighted(title, card)).ToList();
        return total == 0 ? (0, 0) : (titles.Sum(title => title.Worst) / total, titles.Sum(title => title.Best) / total);
    }

    private string CardName(int card) => _edition.Cards[card].Card.Name;

    private void Name(int row, string name)
    {
        Book.Text(_sheet.Cell(row, 1), name);
        _sheet.Range(row, 1, row, 3).Merge();
        _sheet.Cell(row, 4).Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
        _sheet.Cell(row, 5).Style.Alignment.Horizontal = XLAlignmentHorizontalValues.Left;
    }

    private void Finish()
    {
        var last = HeadingRow + _edition.ByCard.Rows.Count;
        _sheet.Column(1).Width = 5;
        Book.Width(_sheet, 2, _edition.ByCard.Rows.Select(row => row.Title.Name), most: 32);
        _sheet.Column(3).Width = 9;
        _sheet.Columns(4, 5).Width = 30;
        _sheet.Columns(6, 9).Width = 9;
        _sheet.Column(10).Width = 24;
        Look.Note(_sheet.Range(2, 1, 2, 8));
        Look.Heading(_sheet.Range(HeadingRow, 1, HeadingRow, Headings.Length));
        if (last > HeadingRow)
            Look.Body(_sheet.Range(HeadingRow + 1, 1, last, Headings.Length));
        Look.Figures(_sheet.Range(HeadingRow, 1, last, 1));
        Look.Figures(_sheet.Range(HeadingRow, 3, last, 3));
        Look.Figures(_sheet.Range(HeadingRow, 6, last, 9));
        _book.FitRows(_sheet, HeadingRow, last, Headings.Length);
        _sheet.SheetView.FreezeRows(HeadingRow);
        _book.PrepareForPrint(_sheet, HeadingRow);
        if (_book.Workbook.TryGetWorksheet("Compare", out var compare))
            _sheet.Position = compare.Position + 1;
    }
}
