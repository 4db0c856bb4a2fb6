using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Tests.Cli.Import;
using FeatureMatrix.Tests.Importing.Worksheets;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>Worksheets from the command line: out, filled in, and back.</summary>
public sealed class WorksheetCommandTests
{
    private const string Collection =
        """
        collection: {name: Bench}
        chips: {ox: {name: OX, source: The box, supply: {fog-table: yes}}}
        cards: {ox4: {name: Ostrel 4, chip: ox, source: The box}}
        drivers: {ox-9x: {name: OX 9x, os: [windows-98se], lists: [ox4], offers: {direct3d: "7"}, source: Its readme, versions: [{version: "2.1"}]}}
        titles: {tide: {name: Gravel Tide, os: [windows-98se], source: Its manual, renderers: {d3d: {api: direct3d 6, needs: {severe: [fog-table]}}}}}
        """;

    [Theory]
    [InlineData("worksheet ox4 --name march --out", "march", "1 test in ")]
    [InlineData("repeat tide ox4 --out", "repeat-tide-ox4", "Gravel Tide on Ostrel 4: not known, at best works")]
    public void What_was_seen_comes_back(string command, string name, string said)
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        Assert.StartsWith(said, bench.Done(command, own["sheet.xlsx"]), StringComparison.Ordinal);
        Assert.Equal(
            "Read 0 observations and 0 runs; 1 row without an answer passed over.\nThe collection holds all of it already.\n",
            bench.Done("import worksheet", own["sheet.xlsx"], "--write"));

        var saved = new SavedWorkbook(File.ReadAllBytes(own["sheet.xlsx"]));
        string Cell(string heading) => saved.ColumnOf(WorksheetLayout.Observations, heading) + "2";
        var filled = FilledSheet.Typed(File.ReadAllBytes(own["sheet.xlsx"]), new[] { ("runs", "yes"), ("seen 1", "broken"), ("date", "2026-03-14"), ("by", "Ada") }
            .Select(typed => (WorksheetLayout.Observations, Cell(typed.Item1), typed.Item2)).ToList());
        File.WriteAllBytes(own["filled.xlsx"], filled);

        Assert.EndsWith("Nothing was written. Say --write to write it.\n", bench.Done("import worksheet", own["filled.xlsx"]), StringComparison.Ordinal);
        Assert.Empty(bench.Load().Observations);
        Assert.EndsWith($"from-worksheet-{name}.yaml\n", bench.Done("import worksheet", own["filled.xlsx"], "--write"), StringComparison.Ordinal);
        Assert.Equal("fog-table Broken", string.Join(' ', Assert.Single(bench.Load().Observations).Seen.Select(seen => $"{seen.Capability} {seen.Seen}")));
        Assert.EndsWith("The collection holds all of it already.\n", bench.Done("import worksheet", own["filled.xlsx"], "--write"), StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_are_told_by_sheet_and_cell_and_nothing_is_written()
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        bench.Done("worksheet --out", own["sheet.xlsx"]);
        var saved = new SavedWorkbook(File.ReadAllBytes(own["sheet.xlsx"]));
        var runs = saved.ColumnOf(WorksheetLayout.Observations, "runs") + "2";
        File.WriteAllBytes(own["sheet.xlsx"], FilledSheet.Typed(File.ReadAllBytes(own["sheet.xlsx"]), [(WorksheetLayout.Observations, runs, "perhaps")]));

        Assert.Equal(1, bench.Run("import worksheet", own["sheet.xlsx"], "--write"));
        Assert.Contains($"Observations!{runs}: 'perhaps' is no value of 'runs'", bench.Told, StringComparison.Ordinal);
        Assert.Contains($"faults in {own["sheet.xlsx"]}; nothing was written.", bench.Told, StringComparison.Ordinal);
        Assert.Empty(bench.Load().Observations);
    }

    [Fact]
    public void What_does_not_exist_is_wrong_usage()
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        Assert.Equal(2, bench.Run("worksheet ox5 --out", own["sheet.xlsx"]));
        Assert.Equal(2, bench.Run("repeat tide ox5 --out", own["sheet.xlsx"]));
        Assert.Equal(2, bench.Run("import worksheet", own["nowhere.xlsx"]));
        Assert.False(File.Exists(own["sheet.xlsx"]));
    }
}
