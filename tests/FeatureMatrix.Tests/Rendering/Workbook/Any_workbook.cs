using System.Globalization;
using DocumentFormat.OpenXml;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Tests.Demo;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Workbook;

/// <summary>What holds for every workbook: a valid file, the same bytes each time, text that stays text.</summary>
public sealed class Any_workbook(LodenSluice bench) : IClassFixture<LodenSluice>
{
    private static readonly FileFormatVersions[] Versions =
        [FileFormatVersions.Office2007, FileFormatVersions.Office2013, FileFormatVersions.Office2019, FileFormatVersions.Microsoft365];

    [Fact]
    public void Is_valid_Open_XML_for_the_whole_demo_and_for_one_of_its_libraries()
    {
        foreach (var library in new[] { null, bench.Catalog.Libraries[0] })
        {
            var saved = Editions.Saved(Editions.Of(bench.Catalog, library, new DateOnly(2026, 3, 14)));
            Assert.All(Versions, version => Assert.Empty(saved.ErrorsFor(version)));
        }
    }

    [Fact]
    public void Is_valid_Open_XML_for_small_and_empty_collections()
    {
        foreach (var yaml in new[] { Editions.TwoCards, Editions.Hostile, "collection: {name: Nothing yet}" })
        {
            var saved = Editions.Saved(Editions.Of(yaml));
            Assert.All(Versions, version => Assert.Empty(saved.ErrorsFor(version)));
        }
    }

    [Fact]
    public void Has_the_same_bytes_whenever_and_wherever_it_is_written()
    {
        var edition = Editions.Of(Editions.TwoCards, new DateOnly(2026, 3, 14));
        var (culture, folder, zone) = (CultureInfo.CurrentCulture, Environment.CurrentDirectory, Environment.GetEnvironmentVariable("TZ"));
        var first = WorkbookWriter.Write(edition);
        try
        {
            // The build knows no culture but the invariant one; one with a decimal comma is made from it.
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            comma.NumberFormat.NumberGroupSeparator = ".";
            CultureInfo.CurrentCulture = comma;
            Environment.CurrentDirectory = Path.GetTempPath();
            Environment.SetEnvironmentVariable("TZ", "Pacific/Chatham");
            TimeZoneInfo.ClearCachedData();
            var second = WorkbookWriter.Write(Editions.Of(Editions.TwoCards, new DateOnly(2026, 3, 14)));
            Assert.Equal(new SavedWorkbook(first).Parts, new SavedWorkbook(second).Parts);
            Assert.Equal(first, second);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
            Environment.CurrentDirectory = folder;
            Environment.SetEnvironmentVariable("TZ", zone);
            TimeZoneInfo.ClearCachedData();
        }
    }

    [Fact]
    public void Keeps_hostile_names_as_text()
    {
        var saved = Editions.Saved(Editions.Of(Editions.Hostile));
        foreach (var name in Editions.HostileNames)
        {
            var cells = saved.Cells.Where(cell => cell.Value.Value == name.Trim()).ToList();
            Assert.True(cells.Count > 0, $"nowhere: {name}");
            Assert.All(cells, cell => Assert.True(cell.Value.IsText && cell.Value.Formula.Length == 0, $"{cell.Key}: {name}"));
        }
    }

    [Fact]
    public void Says_who_made_it_and_of_what_edition_it_is()
    {
        var parts = Editions.Saved(Editions.Of(Editions.TwoCards, new DateOnly(2026, 3, 14))).Parts.ToDictionary(part => part.Path, part => part.Text);
        var properties = parts["docProps/core.xml"];
        Assert.Contains(">Two cards<", properties, StringComparison.Ordinal);
        Assert.Contains(">2026-03-14T00:00:00.0000000Z<", properties, StringComparison.Ordinal);
        Assert.DoesNotContain(parts.Values, text => text.Contains(Environment.UserName + "<", StringComparison.Ordinal));
    }

    [Fact]
    public void Has_the_parts_that_were_read_and_approved()
    {
        var parts = Editions.Saved(Editions.Of(Editions.TwoCards, new DateOnly(2026, 3, 14))).Parts;
        Golden.Matches("workbook/two-cards.txt", string.Concat(parts.Select(part => $"=== {part.Path}\n{part.Text.Replace("><", ">\n<", StringComparison.Ordinal)}\n")));
    }

    [Fact]
    public void Asks_what_would_decide_and_says_where_nothing_is_left_to_ask()
    {
        var decided = Editions.Saved(Editions.Of(Editions.TwoCards));
        var open = Editions.Saved(Editions.Of(Editions.TwoCards.Replace("fog-table: no, stencil-bits", "stencil-bits", StringComparison.Ordinal)));

        Assert.StartsWith("Nothing to test: Dune and Delta are decided", decided["Next tests", "A2"], StringComparison.Ordinal);
        Assert.Equal(["nothing left to ask", ""], [decided["Next tests", "A5"], decided["Next tests", "A6"]]);
        Assert.Equal("What to test next: Dune or Delta", open["Next tests", "A1"]);
        Assert.StartsWith("Does Silt supply table fog under Direct3D with Sil", open["Next tests", "C5"], StringComparison.Ordinal);
    }

    [Fact]
    public void Links_only_to_places_that_exist()
    {
        var saved = Editions.Saved(Editions.Of(bench.Catalog, null));
        var sheets = saved.Sheets.Select(name => $"'{name.Replace("'", "''", StringComparison.Ordinal)}'").ToHashSet();
        Assert.NotEmpty(saved.Links);
        Assert.All(saved.Links.Values.Where(target => !target.StartsWith("http", StringComparison.Ordinal)),
            target => Assert.Contains(target[..target.LastIndexOf('!')], sheets));
    }
}
