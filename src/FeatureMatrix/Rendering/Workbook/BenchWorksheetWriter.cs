using ClosedXML.Excel;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>Writes a bench worksheet: rows to fill in, with lists to choose from, and room for a run log.</summary>
public static class BenchWorksheetWriter
{
    private const int SpareRows = 200;
    private static readonly string[] RunColumns =
    [
        "title", "scene", "renderer", "wrapper", "card", "specimen", "driver", "os", "rig", "width", "height", "depth", "refresh", "samples", "filtering",
        "preset", "vsync", "sound", "factor", "run", "fps", "min-fps", "discarded", "date", "by", "note",
    ];

    /// <summary>The worksheet's bytes; the same tests give the same bytes.</summary>
    public static byte[] Write(BenchWorksheet worksheet) => Write(worksheet, null);

    /// <summary>The bytes of a sheet with which somebody else can repeat a result.</summary>
    public static byte[] Write(RepeatReport report) => Write(report.Worksheet, report);

    private static byte[] Write(BenchWorksheet worksheet, RepeatReport? repeat)
    {
        using var book = new Book();
        if (repeat is not null)
            RepeatSheet.Add(book, repeat);
        Book.Describe(book.Workbook, worksheet.Name);
        ReadMe(book, worksheet);
        var observations = book.AddSheet(WorksheetLayout.Observations);
        var runs = book.AddSheet(WorksheetLayout.Runs);
        var words = Words(book, worksheet.Catalog);
        Observations(book, observations, worksheet, words);
        Runs(book, runs, worksheet, words);
        return WorkbookWriter.Finished(book);
    }

    private static void ReadMe(Book book, BenchWorksheet worksheet)
    {
        var sheet = book.AddSheet("Read me");
        Look.Title(Book.Text(sheet.Cell(1, 1), $"Bench worksheet: {worksheet.Catalog.Name}"));
        Book.Text(sheet.Cell(2, 1), WorksheetLayout.NameLabel);
        Book.Text(sheet.Cell(2, 2), worksheet.Name);
        var row = 3;
        foreach (var line in BenchWorksheet.Instructions.Concat(BenchWorksheet.Cautions))
        {
            Book.Text(sheet.Cell(++row, 1), line).Style.Alignment.WrapText = true;
            if (BenchWorksheet.Cautions.Contains(line))
                sheet.Cell(row, 1).Style.Font.Bold = true;
        }

        sheet.Column(1).Width = 100;
        sheet.Column(2).Width = 30;
        book.FitRows(sheet, 4, row, 1);
        book.PrepareForPrint(sheet, 1);
    }

    private static Dictionary<string, string> Words(Book book, Catalog catalog)
    {
        (string Heading, IEnumerable<string> Words)[] lists =
        [
            ("title", catalog.Titles.Select(title => title.Id)),
            ("renderer", catalog.Titles.SelectMany(title => title.Renderers).Select(renderer => renderer.Id).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)),
            ("card", catalog.Cards.Select(card => card.Id)), ("specimen", catalog.Specimens.Select(specimen => specimen.Id)),
            ("driver", catalog.Drivers.Select(WorksheetLayout.Written)), ("os", catalog.Oses.Select(os => os.Id)),
            ("wrapper", catalog.WrapperVersions.Select(WorksheetLayout.Written).Prepend("none")), ("rig", catalog.Rigs.Select(rig => rig.Id)),
            ("runs", ["yes", "no"]), ("seen", ["yes", "broken", "no"]), ("grade", ["measured", "documented", "inferred", "hearsay"]), ("vsync", ["on", "off"]), ("sound", ["on", "off"]),
        ];
        return WordSheet.Add(book, [.. lists.Select(list => (list.Heading, (IReadOnlyList<string>)[.. list.Words]))]);
    }

    private static void Observations(Book book, IXLWorksheet sheet, BenchWorksheet worksheet, Dictionary<string, string> words)
    {
        var columns = WorksheetLayout.ObservationColumns;
        for (var row = 0; row < worksheet.Tasks.Count; row++)
        {
            var task = worksheet.Tasks[row];
            var (route, lookAt, why) = task;
            Put("title", route.Renderer.Title.Id);
            Put("renderer", route.Renderer.Id);
            Put("card", route.Setup.Card.Id);
            Put("driver", WorksheetLayout.Written(route.Setup.Driver));
            Put("os", route.Setup.Os.Id);
            Put("wrapper", route.Wrapper is { } wrapper ? WorksheetLayout.Written(wrapper) : "none");
            for (var i = 0; i < Math.Min(lookAt.Count, WorksheetLayout.Features); i++)
            {
                Put(WorksheetLayout.Feature(i + 1), lookAt[i].Written);
                Put(WorksheetLayout.LookFor(i + 1), lookAt[i].LookFor);
            }

            Put("mode", task.Mode?.ToString() ?? "");
            Put("depth", task.Depth?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "");
            Put("why", why);

            void Put(string column, string text) => Book.Text(sheet.Cell(row + 2, columns.ToList().IndexOf(column) + 1), text);
        }

        Finish(book, sheet, columns, worksheet.Tasks.Count, words, column => column.StartsWith("seen", StringComparison.Ordinal) ? "seen" : column);
    }

    private static void Runs(Book book, IXLWorksheet sheet, BenchWorksheet worksheet, Dictionary<string, string> words)
    {
        var columns = RunColumns.ToList();
        for (var row = 0; row < worksheet.RunsToRepeat.Count; row++)
        {
            foreach (var (column, text) in WorksheetLayout.CellsOf(worksheet.RunsToRepeat[row]).Where(cell => columns.Contains(cell.Column)))
                Book.Text(sheet.Cell(row + 2, columns.IndexOf(column) + 1), text);
        }

        Finish(book, sheet, RunColumns, worksheet.RunsToRepeat.Count, words, column => column == "runs" ? "" : column);
    }

    private static void Finish(Book book, IXLWorksheet sheet, IReadOnlyList<string> columns, int rows, Dictionary<string, string> words, Func<string, string> listOf)
    {
        var last = 1 + rows + SpareRows;
        for (var column = 1; column <= columns.Count; column++)
        {
            var name = columns[column - 1];
            Book.Text(sheet.Cell(1, column), name);
            sheet.Column(column).Width = WorksheetLayout.WidthOf(name);
            var range = sheet.Range(2, column, last, column);
            range.Style.NumberFormat.Format = name is "width" or "height" or "depth" or "run" or "samples" ? "0" : name is "fps" or "min-fps" or "refresh" ? "0.0##" : "@";
            if (words.TryGetValue(listOf(name), out var list))
            {
                var rule = range.SetDataValidation();
                rule.List(list, inCellDropdown: true);
                rule.ShowErrorMessage = false;
            }
        }

        Look.Heading(sheet.Range(1, 1, 1, columns.Count));
        if (rows > 0)
        {
            Look.Body(sheet.Range(2, 1, rows + 1, columns.Count));
            book.FitRows(sheet, 2, rows + 1, columns.Count);
        }

        sheet.SheetView.Freeze(1, 1);
        book.PrepareForPrint(sheet, 1, 1);
    }
}
