using System.Globalization;
using DocumentFormat.OpenXml;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Workbook;

/// <summary>The sheet whose rows are written one by one holds what the report says, and looks as other sheets do.</summary>
public sealed class A_matrix_of_many_setups
{
    private const string Sheet = "Coverage by setup";

    [Fact]
    public void Holds_every_cell_of_the_report()
    {
        foreach (var yaml in new[] { Editions.TwoCards, Editions.Hostile })
        {
            var edition = Editions.Of(yaml);
            var saved = Editions.Saved(edition);
            for (var row = 0; row < edition.BySetup.Rows.Count; row++)
            {
                var line = edition.BySetup.Rows[row];
                Assert.Equal(
                    [(row + 1).ToString(CultureInfo.InvariantCulture), line.Title.Name.Trim(), line.Weight.ToString("R", CultureInfo.InvariantCulture), .. line.Cells.Select(cell => cell.Label)],
                    Enumerable.Range(1, 3 + line.Cells.Count).Select(column => saved[Sheet, $"{Letters(column)}{row + 5}"].Trim()));
            }

            Assert.Equal("", saved[Sheet, $"A{edition.BySetup.Rows.Count + 5}"]);
        }
    }

    [Fact]
    public void Is_valid_and_complete_where_there_are_thousands_of_cells()
    {
        var saved = new SavedWorkbook(Write(400, 60));

        Assert.All([FileFormatVersions.Office2007, FileFormatVersions.Microsoft365], version => Assert.Empty(saved.ErrorsFor(version)));
        Assert.Equal((400 * 63) + 3 + 60 + 2, saved.Cells.Keys.Count(key => key.Sheet == Sheet));
        Assert.Equal("verdict 23541", saved[Sheet, "BK404"]);
    }

    [Fact]
    public void Says_the_same_after_LibreOffice_has_read_and_saved_it()
    {
        var written = new SavedWorkbook(Write(40, 30));
        var again = new SavedWorkbook(LibreOffice.Recalculate(Write(40, 30)));

        Assert.Equal(
            written.Cells.Where(cell => cell.Key.Sheet == Sheet).Select(cell => (cell.Key.Address, cell.Value.Value)).Order(),
            again.Cells.Where(cell => cell.Key.Sheet == Sheet).Select(cell => (cell.Key.Address, cell.Value.Value)).Order());
    }

    [Fact]
    public void Asks_for_a_title_only_once_those_before_it_are_written()
    {
        var asked = 0;
        var names = Enumerable.Range(1, 50).Select(title => $"Title {title}").ToList();
        using var book = new Book();
        SetupCoverageSheet.Add(book, Sheet, "Heading", "Note", ["Setup"], names, names.Select(name =>
        {
            asked++;
            return new ShownTitle(name, 1, [new ShownVerdict("works", CellTone.Works, CellEvidence.Seen)]);
        }));
        Assert.Equal(0, asked);
        WorkbookWriter.Finished(book);
        Assert.Equal(50, asked);
    }

    private static byte[] Write(int titles, int setups)
    {
        var (tones, evidences) = (Enum.GetValues<CellTone>(), Enum.GetValues<CellEvidence>());
        var names = Enumerable.Range(1, titles).Select(title => $"=Title {title}").ToList();
        using var book = new Book();
        SetupCoverageSheet.Add(book, Sheet, "Many setups", "Invented.", [.. Enumerable.Range(1, setups).Select(setup => $"<Setup> {setup} & others")], names, names.Select((name, row) => new ShownTitle(
            name, row / 4.0, Enumerable.Range(0, setups).Select(column => new ShownVerdict($"verdict {row * column}", tones[(row + column) % tones.Length], evidences[row % evidences.Length])))));
        return WorkbookWriter.Finished(book);
    }

    private static string Letters(int column) => column <= 26 ? ((char)('A' + column - 1)).ToString() : Letters((column - 1) / 26) + Letters(((column - 1) % 26) + 1);
}
