using ClosedXML.Excel;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Workbook;

/// <summary>What a cell of the matrix shows.</summary>
internal readonly record struct ShownVerdict(string Label, CellTone Tone, CellEvidence Evidence);

/// <summary>A title with its verdicts, in the order of the columns.</summary>
internal sealed record ShownTitle(string Name, double Weight, IEnumerable<ShownVerdict> Verdicts);

/// <summary>
/// Titles against setups, which may be a million cells: the rows go into the file one by one. It looks as the sheet of the cards does; nothing
/// calculates from it, so that its weights are not to be changed.
/// </summary>
internal static class SetupCoverageSheet
{
    private const int Heading = CoverageSheet.HeadingRow;
    private const int FirstVerdict = CoverageSheet.FirstCardColumn;
    private static readonly CellTone[] Tones = Enum.GetValues<CellTone>();
    private static readonly CellEvidence[] Evidences = Enum.GetValues<CellEvidence>();

    /// <summary>Adds the sheet of an edition.</summary>
    public static void Add(Book book, CoverageReport report) => Add(
        book, "Coverage by setup", report.Heading, report.PolicyText, [.. report.Columns.Select(column => column.Heading)], [.. report.Rows.Select(row => row.Title.Name)],
        report.Rows.Select(row => new ShownTitle(row.Title.Name, row.Weight, row.Cells.Select(cell => new ShownVerdict(cell.Label, cell.Tone, cell.Evidence)))));

    /// <summary>Adds the sheet; the titles are asked for while the file is written.</summary>
    public static void Add(Book book, string name, string heading, string note, IReadOnlyList<string> setups, IReadOnlyList<string> names, IEnumerable<ShownTitle> titles)
    {
        var sheet = book.AddSheet(name);
        var (lastRow, lastColumn) = (Heading + names.Count, FirstVerdict - 1 + setups.Count);
        CoverageSheet.Head(sheet, heading, note, setups);
        CoverageSheet.SetWidths(sheet, names, setups);
        Look.Note(sheet.Range(2, 1, 2, Math.Max(3, Math.Min(lastColumn, 8))));
        book.FitRows(sheet, Heading, Heading, lastColumn);
        Look.Heading(sheet.Range(Heading, 1, Heading, lastColumn));
        Look.Figures(sheet.Range(Heading, 1, Heading, 1));
        Look.Figures(sheet.Range(Heading, 3, Heading, 3));
        if (names.Count > 0)
        {
            Samples(sheet);
            sheet.Range(Heading, 1, lastRow, lastColumn).SetAutoFilter();
            var widths = Enumerable.Range(1, lastColumn).Select(column => sheet.Column(column).Width).ToArray();
            book.Bulk.Add(new BulkRows(sheet.Name, Heading + 1, lastRow, lastColumn, Rows(titles, widths)));
        }

        sheet.SheetView.Freeze(Heading, 3);
        book.PrepareForPrint(sheet, Heading, 3, lastRow, lastColumn);
    }

    /// <summary>A cell of every look, between two rows and two columns so that all have the borders of the inside.</summary>
    private static void Samples(IXLWorksheet sheet)
    {
        var last = SampleRow(Tones[^1], Evidences[^1]) + 1;
        Look.Body(sheet.Range(Heading + 1, 1, last, FirstVerdict + 1));
        Look.Figures(sheet.Range(Heading, 1, last, 1));
        Look.Figures(sheet.Range(Heading, 3, last, 3));
        foreach (var (tone, evidence) in Tones.SelectMany(tone => Evidences.Select(evidence => (tone, evidence))))
        {
            var row = SampleRow(tone, evidence);
            Look.Number(sheet.Cell(row, 1), "0");
            sheet.Cell(row, 2).Style.Font.Bold = true;
            Look.Number(sheet.Cell(row, 3), "0.##");
            Look.Tone(sheet.Cell(row, FirstVerdict), tone);
            Look.Evidence(sheet.Cell(row, FirstVerdict), evidence);
        }
    }

    private static int SampleRow(CellTone tone, CellEvidence evidence) =>
        Heading + 2 + (Array.IndexOf(Tones, tone) * Evidences.Length) + Array.IndexOf(Evidences, evidence);

    private static IEnumerable<BulkRow> Rows(IEnumerable<ShownTitle> titles, double[] widths)
    {
        var lines = new Dictionary<(string Text, int Width), int>();
        var any = SampleRow(Tones[0], Evidences[0]);
        var number = 0;
        foreach (var title in titles)
        {
            number++;
            List<BulkCell> cells = [new((any, 1), null, number), new((any, 2), title.Name), new((any, 3), null, title.Weight)];
            var highest = Lines(title.Name, widths[1]);
            foreach (var verdict in title.Verdicts)
            {
                highest = Math.Max(highest, Lines(verdict.Label, widths[cells.Count] * (verdict.Tone is CellTone.Severe or CellTone.DoesNotRun ? 1.0 : 1.1)));
                cells.Add(new BulkCell((SampleRow(verdict.Tone, verdict.Evidence), FirstVerdict), verdict.Label));
            }

            yield return new BulkRow(Book.HeightOf(highest), cells);
        }

        int Lines(string text, double width)
        {
            if (!lines.TryGetValue((text, (int)width), out var count))
                lines[(text, (int)width)] = count = TextLines.Count(text, width);
            return count;
        }
    }
}
