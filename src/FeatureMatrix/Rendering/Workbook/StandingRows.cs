using ClosedXML.Excel;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>
/// The working of a comparison: a row for each standing that a title may have on a card in a completion of what is shared. Titles
/// that share nothing add up; within a group the completions compete.
/// </summary>
internal sealed class StandingRows(
    Book book, IXLWorksheet sheet, CardComparison comparison, string weights, string titleNumbers, IReadOnlyDictionary<Title, int> numbers, int headingRow)
{
    /// <summary>The columns whose sums are the ends of the difference and of both scores.</summary>
    public const string LowestDifference = "T", HighestDifference = "U", FirstLowest = "V", FirstHighest = "W", SecondLowest = "X", SecondHighest = "Y";

    private int _row;

    /// <summary>The headings, from column A.</summary>
    public static IReadOnlyList<string> Headings { get; } =
    [
        "Group", "Case", "Title", "Card", "Side", "Runs", "Severe", "Cosmetic", "Weight", "Worth", "Counts", "Lowest", "Highest",
        "First, low", "First, high", "Second, low", "Second, high", "Differ, low", "Differ, high",
        "Group differs, low", "Group differs, high", "Group first, low", "Group first, high", "Group second, low", "Group second, high",
    ];

    /// <summary>Writes headings and rows; returns the last row.</summary>
    public int Write()
    {
        _row = headingRow;
        for (var column = 0; column < Headings.Count; column++)
            Book.Text(sheet.Cell(headingRow, column + 1), Headings[column]);
        for (var group = 0; group < comparison.Groups.Count; group++)
            Group(group + 1, comparison.Groups[group]);
        return Math.Max(_row, headingRow + 1);
    }

    private void Group(int number, SharedGroup group)
    {
        var first = _row + 1;
        var cases = group.Branches.Select((branch, i) => Case(number, i + 1, group, branch)).ToList();
        Put(LowestDifference, "MIN", "R", cases.Min(one => one.FirstLow - one.SecondHigh));
        Put(HighestDifference, "MAX", "S", cases.Max(one => one.FirstHigh - one.SecondLow));
        Put(FirstLowest, "MIN", "N", cases.Min(one => one.FirstLow));
        Put(FirstHighest, "MAX", "O", cases.Max(one => one.FirstHigh));
        Put(SecondLowest, "MIN", "P", cases.Min(one => one.SecondLow));
        Put(SecondHighest, "MAX", "Q", cases.Max(one => one.SecondHigh));

        void Put(string column, string function, string over, double value) =>
            book.Formula(sheet.Cell($"{column}{first}"), $"{function}({over}{first}:{over}{_row})", value, "0.000");
    }

    private Ends Case(int group, int number, SharedGroup shared, Branch branch)
    {
        var first = _row + 1;
        var ends = new Ends(0, 0, 0, 0);
        for (var i = 0; i < shared.Stakes.Count; i++)
        {
            var (low, high) = Stake(group, number, shared.Stakes[i], branch.Standings[i]);
            ends = shared.Stakes[i].Side == Side.First
                ? ends with { FirstLow = ends.FirstLow + low, FirstHigh = ends.FirstHigh + high }
                : ends with { SecondLow = ends.SecondLow + low, SecondHigh = ends.SecondHigh + high };
        }

        Put("N", 1, "L", ends.FirstLow);
        Put("O", 1, "M", ends.FirstHigh);
        Put("P", 2, "L", ends.SecondLow);
        Put("Q", 2, "M", ends.SecondHigh);
        book.Formula(sheet.Cell($"R{first}"), $"N{first}-Q{first}", ends.FirstLow - ends.SecondHigh, "0.000");
        book.Formula(sheet.Cell($"S{first}"), $"O{first}-P{first}", ends.FirstHigh - ends.SecondLow, "0.000");
        return ends;

        void Put(string column, int side, string over, double value) =>
            book.Formula(sheet.Cell($"{column}{first}"), $"SUMIF(E{first}:E{_row},{side},{over}{first}:{over}{_row})", value, "0.000");
    }

    private (double Low, double High) Stake(int group, int number, Stake stake, IReadOnlyList<Standing> standings)
    {
        var first = _row + 1;
        var values = standings.Select(standing => One(group, number, stake, standing)).ToList();
        book.Formula(sheet.Cell($"L{first}"), $"MIN(K{first}:K{_row})", values.Min(), "0.000");
        book.Formula(sheet.Cell($"M{first}"), $"MAX(K{first}:K{_row})", values.Max(), "0.000");
        return (values.Min(), values.Max());
    }

    private double One(int group, int number, Stake stake, Standing standing)
    {
        var row = ++_row;
        Book.Number(sheet.Cell(row, 1), group, "0");
        Book.Number(sheet.Cell(row, 2), number, "0");
        Book.Text(sheet.Cell(row, 3), stake.Entry.Title.Name);
        Book.Text(sheet.Cell(row, 4), (stake.Side == Side.First ? comparison.First : comparison.Second).Name);
        Book.Number(sheet.Cell(row, 5), stake.Side == Side.First ? 1 : 2, "0");
        Book.Number(sheet.Cell(row, 6), standing.Runs ? 1 : 0, "0");
        Book.Number(sheet.Cell(row, 7), standing.Severe, "0");
        Book.Number(sheet.Cell(row, 8), standing.Cosmetic, "0");
        var worth = (double)comparison.Scale.Of(standing);
        book.Formula(sheet.Cell(row, 9), $"INDEX({weights},MATCH({numbers[stake.Entry.Title]},{titleNumbers},0))", stake.Entry.Weight, "0.##");
        book.Formula(sheet.Cell(row, 10), OutcomeSheet.WorthFormula($"F{row}", $"G{row}", $"H{row}"), worth, "0.000");
        book.Formula(sheet.Cell(row, 11), $"I{row}*J{row}", stake.Entry.Weight * worth, "0.000");
        return stake.Entry.Weight * worth;
    }

    private sealed record Ends(double FirstLow, double FirstHigh, double SecondLow, double SecondHigh);
}
