using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Tests.Support;
using Cell = DocumentFormat.OpenXml.Spreadsheet.Cell;

namespace FeatureMatrix.Tests.Importing.Worksheets;

/// <summary>A worksheet for two cards and three titles, filled in by typing into cells.</summary>
internal static class FilledSheet
{
    /// <summary>The collection it belongs to.</summary>
    public static IReadOnlyList<SourceText> Collection { get; } =
    [
        new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("world.yaml", Rendering.Workbook.Editions.TwoCards),
        new SourceText("boards.yaml", "specimens: {dune-a: {card: dune}}\nrigs: {attic: {name: Attic}}\n"),
    ];

    /// <summary>The empty worksheet.</summary>
    public static byte[] Empty { get; } = Make();

    private static SavedWorkbook EmptySaved { get; } = new(Empty);

    /// <summary>One row of what was seen, and one run, all in order: Low Mist on Dune.</summary>
    public static IReadOnlyList<(string Cell, string Text)> Sound { get; } =
    [
        ("Observations/specimen", "dune-a"), ("Observations/mode", "640x480"), ("Observations/depth", "16"), ("Observations/rig", "attic"),
        ("Observations/runs", "yes"), ("Observations/seen 1", "broken"), ("Observations/date", "2026-03-14"), ("Observations/by", "Ada at the bench"),
        ("Observations/note", "Fog in stripes: \"curtain\", {odd}"),
        ("Runs/title", "low-mist"), ("Runs/scene", "the ferry"), ("Runs/renderer", "direct3d"), ("Runs/wrapper", "none"), ("Runs/card", "dune"),
        ("Runs/driver", "sand-9x 1.0"), ("Runs/os", "windows-98se"), ("Runs/width", "640"), ("Runs/height", "480"), ("Runs/depth", "16"), ("Runs/run", "1"),
        ("Runs/fps", "48.9"), ("Runs/min-fps", "31"), ("Runs/vsync", "off"), ("Runs/date", "2026-03-14"), ("Runs/by", "Ada at the bench"),
    ];

    /// <summary>What the import makes of it.</summary>
    public static WorksheetImport Import(byte[] workbook, params SourceText[] more) => WorksheetImport.Of([.. Collection, .. more], workbook);

    /// <summary>The worksheet with texts typed into cells, which are named by sheet and heading and lie in the first row below it.</summary>
    public static byte[] With(IEnumerable<(string Cell, string Text)> typed, bool numbersAsNumbers = false, IReadOnlyList<(string Sheet, string Address, string Text)>? at = null)
    {
        var stream = new MemoryStream();
        stream.Write(Empty);
        using (var document = SpreadsheetDocument.Open(stream, isEditable: true))
        {
            foreach (var (cell, text) in typed)
                Type(document, cell.Split('/')[0], AddressOf(cell), text, numbersAsNumbers && double.TryParse(text, CultureInfo.InvariantCulture, out _));
            foreach (var (sheet, address, text) in at ?? [])
                Type(document, sheet, address, text, asNumber: false);
        }

        return stream.ToArray();
    }

    /// <summary>Any workbook with texts typed into cells.</summary>
    public static byte[] Typed(byte[] workbook, IReadOnlyList<(string Sheet, string Address, string Text)> texts)
    {
        var stream = new MemoryStream();
        stream.Write(workbook);
        using (var document = SpreadsheetDocument.Open(stream, isEditable: true))
        {
            foreach (var (sheet, address, text) in texts)
                Type(document, sheet, address, text, asNumber: false);
        }

        return stream.ToArray();
    }

    /// <summary>Where the first cell below a heading lies: <c>Observations/runs</c> is <c>K2</c>; with <c>/1</c> the heading itself.</summary>
    public static string AddressOf(string cell)
    {
        var parts = cell.Split('/');
        var column = EmptySaved.ColumnOf(parts[0], parts[1]);
        return column + (parts.Length > 2 ? parts[2] : "2");
    }

    private static void Type(SpreadsheetDocument document, string sheetName, string address, string text, bool asNumber)
    {
        var sheet = document.WorkbookPart!.Workbook.Descendants<Sheet>().Single(one => one.Name == sheetName);
        var part = (WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!);
        var number = uint.Parse(address.TrimStart([.. "ABCDEFGHIJKLMNOPQRSTUVWXYZ"]), CultureInfo.InvariantCulture);
        var data = part.Worksheet.GetFirstChild<SheetData>()!;
        var row = data.Elements<Row>().FirstOrDefault(one => one.RowIndex! == number) ?? data.AppendChild(new Row { RowIndex = number });
        var cell = row.Elements<Cell>().FirstOrDefault(one => one.CellReference == address);
        if (cell is null)
        {
            cell = new Cell { CellReference = address };
            row.InsertBefore(cell, row.Elements<Cell>().FirstOrDefault(one => Order(one.CellReference!) > Order(address)));
        }

        cell.CellValue = null;
        cell.InlineString = null;
        if (asNumber)
            (cell.DataType, cell.CellValue) = (CellValues.Number, new CellValue(text));
        else
            (cell.DataType, cell.InlineString) = (CellValues.InlineString, new InlineString(new Text(text)));
        part.Worksheet.Save();
    }

    private static int Order(string address) => address.TrimEnd([.. "0123456789"]).Aggregate(0, (sum, letter) => (sum * 26) + letter - 'A' + 1);

    private static byte[] Make()
    {
        var catalog = CollectionLoader.Load(Collection).Catalog!;
        var dune = catalog.Cards.Single(card => card.Id == "dune");
        var mist = catalog.Titles.Single(title => title.Id == "low-mist");
        return BenchWorksheetWriter.Write(BenchWorksheet.Of("attic-march", new Decisions(catalog, catalog.Libraries[0]), [dune], [mist], onlyOpen: false));
    }
}
