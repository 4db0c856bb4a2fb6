using ClosedXML.Excel;
using FeatureMatrix.Importing.Workbooks;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Writes a whole collection as a workbook to edit: a sheet for each kind of record, lists to choose from, a note at every cell.</summary>
public static class CollectionBookWriter
{
    private const int SpareRows = 200;
    private const int LongestNote = 250;

    private static readonly IReadOnlyList<string> Instructions =
    [
        "Each sheet holds one kind of record, a row for each. Change cells, or fill in a row below the last one; then save and say: featmatrix import workbook FILE",
        "The command shows what would change in the collection and writes nothing until it is told to.",
        "Choose a cell to see what its column means. Cells with a list offer names; lists with a fixed set of words take no others. The sheet Columns explains every column.",
        "An empty cell says nothing: what is not written is not known.",
        "To take a row out of the collection write yes in its first column. A row that is deleted here stays in the collection.",
        "Ids name records in other rows. Where an id changes here, change it in those rows too.",
        "Sheets and columns keep their names; rows may be sorted. Sheets of your own are passed over.",
    ];

    /// <summary>The workbook's bytes; the same collection gives the same bytes.</summary>
    public static byte[] Write(CollectionBook content)
    {
        using var book = new Book();
        Book.Describe(book.Workbook, content.Name, "The collection itself");
        ReadMe(book, content);
        var sheets = content.Sheets.Select(sheet => (Content: sheet, Sheet: book.AddSheet(sheet.Name))).ToList();
        Explain(book, content);
        var words = Words(book, content);
        foreach (var (one, sheet) in sheets)
            Fill(book, sheet, one, words);
        return WorkbookWriter.Finished(book);
    }

    private static void ReadMe(Book book, CollectionBook content)
    {
        var sheet = book.AddSheet("Read me");
        Look.Title(Book.Text(sheet.Cell(1, 1), $"The collection: {content.Name}"));
        var row = 2;
        foreach (var line in Instructions)
            Book.Text(sheet.Cell(++row, 1), line).Style.Alignment.WrapText = true;
        sheet.Column(1).Width = 26;
        sheet.Column(2).Width = 90;
        for (var line = 3; line <= row; line++)
            Look.Note(sheet.Range(line, 1, line, 2));
        var heading = row + 2;
        Book.Text(sheet.Cell(heading, 1), "Sheet");
        Book.Text(sheet.Cell(heading, 2), "Its rows");
        Book.Text(sheet.Cell(heading, 3), "Rows");
        row = heading;
        foreach (var one in content.Sheets)
        {
            Book.Text(sheet.Cell(++row, 1), one.Name);
            Book.Text(sheet.Cell(row, 2), one.Meaning);
            Book.Number(sheet.Cell(row, 3), one.Rows.Count, "0");
        }

        Look.Heading(sheet.Range(heading, 1, heading, 3));
        Look.Body(sheet.Range(heading + 1, 1, row, 3));
        Look.Figures(sheet.Range(heading, 3, row, 3));
        book.FitRows(sheet, heading, row, 2);
        book.PrepareForPrint(sheet, 1);
    }

    private static void Explain(Book book, CollectionBook content)
    {
        var sheet = book.AddSheet("Columns");
        string[] headings = ["Sheet", "Column", "Meaning", "New row needs it", "Legal words"];
        for (var column = 0; column < headings.Length; column++)
            Book.Text(sheet.Cell(1, column + 1), headings[column]);
        var row = 1;
        foreach (var (one, column) in content.Sheets.SelectMany(one => one.Columns.Where(column => !column.IsHidden).Select(column => (one, column))))
        {
            string[] texts = [one.Name, column.Heading, column.Meaning, column.IsRequired ? "yes" : "", string.Join(", ", column.Legal)];
            row++;
            for (var cell = 0; cell < texts.Length; cell++)
                Book.Text(sheet.Cell(row, cell + 1), texts[cell]);
        }

        (sheet.Column(1).Width, sheet.Column(2).Width, sheet.Column(3).Width, sheet.Column(4).Width, sheet.Column(5).Width) = (18, 28, 80, 12, 40);
        Look.Heading(sheet.Range(1, 1, 1, headings.Length));
        Look.Body(sheet.Range(2, 1, row, headings.Length));
        sheet.Range(1, 1, row, headings.Length).SetAutoFilter();
        book.FitRows(sheet, 1, row, headings.Length);
        sheet.SheetView.Freeze(1, 2);
        book.PrepareForPrint(sheet, 1);
    }

    private static Dictionary<string, string> Words(Book book, CollectionBook content)
    {
        var lists = content.Names.Concat(content.Sheets.SelectMany(sheet => sheet.Columns).Where(column => column.Legal.Count > 0)
            .Select(column => KeyValuePair.Create(string.Join(", ", column.Legal), column.Legal))).DistinctBy(list => list.Key).ToList();
        return WordSheet.Add(book, [.. lists.Select(list => (list.Key, list.Value))]);
    }

    private static void Fill(Book book, IXLWorksheet sheet, CollectionBookSheet content, Dictionary<string, string> words)
    {
        var last = 1 + content.Rows.Count + SpareRows;
        for (var column = 1; column <= content.Columns.Count; column++)
        {
            var about = content.Columns[column - 1];
            Book.Text(sheet.Cell(1, column), about.Heading);
            for (var row = 0; row < content.Rows.Count; row++)
            {
                if (content.Rows[row][column - 1] is { Length: > 0 } text)
                    Book.Text(sheet.Cell(row + 2, column), text);
            }

            sheet.Range(2, column, last, column).Style.NumberFormat.Format = "@";
            if (about.IsHidden)
                sheet.Column(column).Hide();
            else
                Offer(sheet.Range(2, column, last, column), about, words);
            Book.Width(sheet, column, content.Rows.Select(row => row[column - 1]).Append(about.Heading), most: 40);
        }

        var shown = content.Columns.Count(column => !column.IsHidden);
        Look.Heading(sheet.Range(1, 1, 1, shown));
        if (content.Rows.Count > 0)
        {
            Look.Body(sheet.Range(2, 1, content.Rows.Count + 1, shown));
            sheet.Range(1, 1, content.Rows.Count + 1, shown).SetAutoFilter();
        }

        book.FitRows(sheet, 1, content.Rows.Count + 1, shown);
        sheet.SheetView.Freeze(1, 2);
        book.PrepareForPrint(sheet, 1, 2);
    }

    /// <summary>The note of a column, and its list: a fixed set of words admits no others, names admit all.</summary>
    private static void Offer(IXLRange range, CollectionBookColumn column, Dictionary<string, string> words)
    {
        var rule = range.SetDataValidation();
        rule.InputTitle = column.Heading.Length > 32 ? column.Heading[..32] : column.Heading;
        rule.InputMessage = column.Meaning.Length > LongestNote ? column.Meaning[..LongestNote] + "…" : column.Meaning;
        rule.IgnoreBlanks = true;
        if (column.Legal.Count > 0)
        {
            rule.List(words[string.Join(", ", column.Legal)], inCellDropdown: true);
            rule.ErrorMessage = $"One of: {string.Join(", ", column.Legal)}.";
        }
        else if (words.TryGetValue(column.Names, out var list))
        {
            rule.List(list, inCellDropdown: true);
            rule.ShowErrorMessage = false;
        }
    }
}
