using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>Whatever is typed wherever, the import answers: with faults by cell, or with a change after which the collection loads.</summary>
public sealed class Careless_typing
{
    private const int Rounds = 60;

    private static readonly string[] Typed =
    [
        "", "x", "yes", "no", "1", "-1", "=1+1", "{", "}", "[a", "a, b", "a: b", "a: b: c", "{a: b}", "\"", "'", "#", "# no comment", "null", "~", "&a", "*a", "!t", "%", "|", ">", "-", "- a", "?", ": ",
        "a/b", "~1", "../../x.yaml", "vocabulary/x.yaml", "two\nlines", "\ttab", "a\u0085b", "\u2028", "\ud83e\udd85", "card", "chip", "title", "none", "like-engine", "1999-13-40", "999999999999999999999",
        new string('a', 300), new string('[', 60), "kite-2", "direct3d 7", "fog-table", "must", "demo.yaml", "a.yaml",
    ];

    [Fact]
    public void Ends_in_faults_or_in_a_collection_that_loads()
    {
        var files = CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files;
        var sheets = A_collection_as_a_workbook.Sheets(A_collection_as_a_workbook.BookOf(files), keepsSigns: true);
        var (refused, accepted) = (0, 0);
        for (var seed = 1; seed <= Rounds; seed++)
        {
            var random = new Random(seed);
            var chosen = sheets[random.Next(sheets.Count)];
            var import = WorkbookImport.Of(files, [.. sheets.Select(sheet => sheet == chosen ? Mistyped(sheet, random) : sheet)]);
            Assert.Equal(import.Faults.Count == 0, import.Change is not null);
            Assert.All(import.Faults, fault => Assert.NotEqual("", fault.Message));
            if (import.Change is { } change)
                Assert.NotNull(change.Result.Catalog);
            (refused, accepted) = import.Change is null ? (refused + 1, accepted) : (refused, accepted + 1);
        }

        Assert.True(refused > 10 && accepted > 5, $"{refused} refused, {accepted} accepted");
    }

    private static SheetCells Mistyped(SheetCells sheet, Random random)
    {
        var cells = sheet.Cells.ToDictionary(cell => cell.Key, cell => cell.Value);
        var (rows, columns) = (sheet.Rows.Count, sheet.Cells.Keys.Max(key => key.Column));
        var at = (1 + random.Next(1, rows + 2), random.Next(1, columns + 1));
        if (Typed[random.Next(Typed.Length)] is { Length: > 0 } text)
            cells[at] = text.Trim().Length == 0 ? "x" : text.Trim();
        else
            cells.Remove(at);
        return sheet with { Cells = cells };
    }
}
