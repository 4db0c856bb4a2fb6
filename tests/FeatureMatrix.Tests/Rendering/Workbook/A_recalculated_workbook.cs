using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Tests.Demo;
using FeatureMatrix.Tests.Importing.Worksheets;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Workbook;

/// <summary>LibreOffice calculates what the program did, and goes on doing so when the reader types over weights and worths.</summary>
public sealed class A_recalculated_workbook(LodenSluice bench) : IClassFixture<LodenSluice>
{
    [Fact]
    public void Agrees_with_every_value_that_was_written_beside_a_formula()
    {
        var edition = Editions.Of(bench.Catalog, bench.Catalog.Libraries[0], new DateOnly(2026, 3, 14));
        var written = Editions.Saved(edition);
        Assert.All(written.Formulas, cell => Assert.NotEqual("", cell.Value.Value));
        AssertSame(written, new SavedWorkbook(LibreOffice.Recalculate(WorkbookWriter.Write(edition))));
    }

    [Fact]
    public void Agrees_also_where_names_look_like_criteria_and_formulas()
    {
        var edition = Editions.Of(Editions.Hostile);
        AssertSame(Editions.Saved(edition), new SavedWorkbook(LibreOffice.Recalculate(WorkbookWriter.Write(edition))));
    }

    [Fact]
    public void Does_calculate_and_not_just_repeat_what_it_read()
    {
        var written = Editions.Saved(Editions.Of(Editions.TwoCards));
        var formula = written.Formulas.First(cell => cell.Key.Sheet == "Overview").Key;
        var again = new SavedWorkbook(LibreOffice.Recalculate(written.With((formula.Sheet, formula.Address, 999))));
        AssertNumber(written[formula.Sheet, formula.Address], again[formula.Sheet, formula.Address], formula.ToString());
    }

    [Fact]
    public void Gives_the_answer_for_the_weights_and_worths_that_were_typed_in()
    {
        var catalog = Worlds.Load(Editions.TwoCards);
        var library = catalog.Libraries.Single();
        var written = Editions.Saved(Editions.Of(catalog, library));
        var typed = written.With(
            ("Coverage", $"C{written.RowOf("Coverage", "Low Mist")}", 0.5), ("Coverage", $"C{written.RowOf("Coverage", "Copper Gate")}", 4),
            ("Policy", WorthCell(written, "severe"), 0.3), ("Policy", WorthCell(written, "cosmetic"), 0.9));
        var changed = new Library
        {
            Id = library.Id,
            Name = library.Name,
            Policy = library.Policy with { SevereWorth = 0.3, CosmeticWorth = 0.9 },
            Entries = library.Entries.Select(entry => entry.Title.Id switch
            {
                "low-mist" => entry with { Weight = 0.5 },
                "copper-gate" => entry with { Weight = 4 },
                _ => entry,
            }).ToList(),
        };
        AssertSame(Editions.Saved(Editions.Of(catalog, changed)), new SavedWorkbook(LibreOffice.Recalculate(typed)));
    }

    [Fact]
    public void Gives_the_statistics_without_a_run_that_was_discarded_and_with_one_that_was_corrected()
    {
        const string log =
            """
            title,scene,card,driver,os,width,height,run,fps,discarded
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,1,50,DISCARDED
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,2,60.5,
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,3,61.25,
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,4,SPEED,
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,800,600,1,44,
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,1024,768,1,20,the disk was busy
            """;
        var written = Saved("", "6.1");
        var again = new SavedWorkbook(LibreOffice.Recalculate(written.With(
            ("Runs", $"{written.ColumnOf("Runs", "Discarded")}5", 1), ("Runs", $"{written.ColumnOf("Runs", "Average")}8", 61))));
        AssertSame(Saved("1", "61"), again);

        SavedWorkbook Saved(string discarded, string speed)
        {
            var catalog = BenchWorlds.Load(Editions.TwoCards, log.Replace("DISCARDED", discarded, StringComparison.Ordinal).Replace("SPEED", speed, StringComparison.Ordinal));
            return Editions.Saved(Editions.Of(catalog, catalog.Libraries.Single()));
        }
    }

    [Fact]
    public void Holds_speeds_against_the_floor_that_was_typed_in()
    {
        const string log =
            """
            title,scene,card,driver,os,width,height,run,fps
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,1,50
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,640,480,2,50.1
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,800,600,1,44
            low-mist,ferry,dune,sand-9x 1.0,windows-98se,800,600,2,46
            low-mist,quay,dune,sand-9x 1.0,windows-98se,640,480,1,31
            low-mist,quay,dune,sand-9x 1.0,windows-98se,640,480,2,31.1
            low-mist,quay,dune,sand-9x 1.0,windows-98se,800,600,1,90
            """;
        var written = Editions.Saved(Editions.Of(BenchWorlds.Load(Editions.TwoCards, log), null));
        var floor = $"B{written.RowOf("Policy", "Speed floor, frames a second (empty for none)")}";
        var again = new SavedWorkbook(LibreOffice.Recalculate(written.With(("Policy", floor, 45))));

        Assert.Equal(["no floor stated", "no floor stated", "no floor stated", "not known"], Column(written));
        Assert.Equal(["over the floor", "not known", "under the floor", "not known"], Column(again));

        static IEnumerable<string> Column(SavedWorkbook book)
        {
            var column = book.ColumnOf("Bench", "Against the floor");
            return Enumerable.Range(5, 4).Select(row => book["Bench", $"{column}{row}"]);
        }
    }

    [Fact]
    public void Weighs_the_two_cards_that_were_chosen()
    {
        var edition = Editions.Of(Editions.TwoCards);
        var written = Editions.Saved(edition);
        var (first, second) = (written["Any two cards", "D4"], written["Any two cards", "D5"]);
        var again = new SavedWorkbook(LibreOffice.Recalculate(FilledSheet.Typed(
            WorkbookWriter.Write(edition), [("Any two cards", "D4", second), ("Any two cards", "D5", first)])));

        Assert.Equal(["Delta", "Dune"], new[] { first, second }.Order());
        Assert.Equal(written["Any two cards", "D10"], again["Any two cards", "D10"]);
        AssertNumber(Negative(written["Any two cards", "D9"]), again["Any two cards", "D8"], "lowest");
        AssertNumber(Negative(written["Any two cards", "D8"]), again["Any two cards", "D9"], "highest");
        for (var row = 14; row <= 16; row++)
        {
            Assert.Equal(written["Any two cards", $"D{row}"], again["Any two cards", $"E{row}"]);
            AssertNumber(written["Any two cards", $"F{row}"], again["Any two cards", $"H{row}"], $"row {row}");
            Assert.Equal(written["Any two cards", $"J{row}"], again["Any two cards", $"J{row}"]);
        }

        static string Negative(string number) => (-Number(number)).ToString("R", CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Has_the_scores_that_the_rules_give()
    {
        // Weights 3, 1 and 2. Dune loses palettes, which nobody graded, and the shadows: worth 1, 0.5 to 0.8 of the cosmetic span, and one cosmetic loss.
        var written = Editions.Saved(Editions.Of(Editions.TwoCards));
        var (row, worst, best) = (written.RowOf("Overview", "Dune"), written.ColumnOf("Overview", "Score at worst"), written.ColumnOf("Overview", "Score at best"));
        // One cosmetic loss leaves 1 - 0.5 * (1 - 0.8) = 0.9; one severe loss leaves 0.5.
        AssertNumber(((3 + (1 * 0.5) + (2 * 0.9)) / 6).ToString("R", CultureInfo.InvariantCulture), written["Overview", $"{worst}{row}"], "worst");
        AssertNumber(((3 + (1 * 0.9) + (2 * 0.9)) / 6).ToString("R", CultureInfo.InvariantCulture), written["Overview", $"{best}{row}"], "best");
    }

    private static string WorthCell(SavedWorkbook written, string loss) => $"B{written.RowOf("Policy", $"Worth kept after a {loss} loss")}";

    private static void AssertSame(SavedWorkbook expected, SavedWorkbook actual)
    {
        Assert.Equal(expected.Formulas.Select(cell => cell.Key).Order(), actual.Formulas.Select(cell => cell.Key).Order());
        foreach (var (key, cell) in expected.Formulas)
        {
            if (cell.IsText)
                Assert.Equal((key, cell.Value), (key, actual.Cells[key].Value));
            else
                AssertNumber(cell.Value, actual.Cells[key].Value, $"{key} {cell.Formula}");
        }
    }

    private static void AssertNumber(string expected, string actual, string where) => Assert.True(
        Math.Abs(Number(expected) - Number(actual)) < 1e-9, $"{where}: expected {expected}, was {actual}");

    private static double Number(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
