namespace FeatureMatrix.Rendering.Workbook;

/// <summary>The sheet with the words that drop-down lists offer, a column for each list.</summary>
internal static class WordSheet
{
    /// <summary>Adds the sheet; returns where each list stands, as formulas write it.</summary>
    public static Dictionary<string, string> Add(Book book, IReadOnlyList<(string Heading, IReadOnlyList<string> Words)> lists)
    {
        var sheet = book.AddSheet("Words");
        var ranges = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var column = 0; column < lists.Count; column++)
        {
            var (heading, words) = lists[column];
            Book.Text(sheet.Cell(1, column + 1), heading);
            for (var row = 0; row < words.Count; row++)
                Book.Text(sheet.Cell(row + 2, column + 1), words[row]);
            Book.Width(sheet, column + 1, words.Append(heading), most: 32);
            var letter = sheet.Column(column + 1).ColumnLetter();
            ranges[heading] = Book.Reference(sheet, $"${letter}$2:${letter}${Math.Max(2, words.Count + 1)}");
        }

        Look.Heading(sheet.Range(1, 1, 1, lists.Count));
        sheet.SheetView.FreezeRows(1);
        book.PrepareForPrint(sheet, 1);
        return ranges;
    }
}
