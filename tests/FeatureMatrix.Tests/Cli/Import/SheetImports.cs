namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>A spreadsheet of somebody's own, from the draft of a mapping to the collection.</summary>
public sealed class SheetImports
{
    private const string Collection =
        """
        collection: {name: Bench}
        chips: {ox: {name: OX, source: The box}}
        cards: {ox4: {name: Ostrel 4, chip: ox, source: The box}}
        titles: {tide: {name: Gravel Tide, os: [windows-98se], source: Its manual, renderers: {gl: {api: opengl 1.2}}}}
        """;

    private const string Mapping =
        """
        sheet:
          name: list
          states: observations
          source: {text: The list, grade: hearsay}
          columns: {Game: title, Ostrel 4: {card: ox4}, Year: nothing}
          words: {ok: {runs: yes}}

        """;

    [Fact]
    public void Without_a_mapping_a_draft_is_printed_that_reads_the_sheet_when_its_words_are_explained()
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        File.WriteAllText(own["list.csv"], "Game,Year,Ostrel 4\nGravel Tide,1999,ok\n");
        var draft = bench.Done("import sheet", own["list.csv"]);

        Assert.Equal(
            """
            # A draft: say of each column what it holds, or 'nothing', and of each word what it means. data/README.md has the keys.
            sheet:
              name: list
              states: observations
              heading-row: "1"
              source: {text: list.csv, grade: hearsay}
              columns:
                Game: title
                Year: nothing
                Ostrel 4: {card: ox4}
              words:
                ok: unknown

            """, draft);
        File.WriteAllText(own["list.sheet"], draft.Replace("ok: unknown", "ok: {runs: yes}", StringComparison.Ordinal));
        bench.Done("import sheet", own["list.csv"], own["list.sheet"], "--write");
        Assert.Single(bench.Load().Observations);
    }

    [Fact]
    public void Nothing_is_written_before_it_is_asked_for_and_nothing_twice()
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        File.WriteAllText(own["list.csv"], "Game;Ostrel 4;Year\nGravel Tide;OK;1999\n");
        File.WriteAllText(own["list.sheet"], Mapping);

        Assert.EndsWith("Nothing was written. Say --write to write it.\n", bench.Done("import sheet", own["list.csv"], own["list.sheet"]), StringComparison.Ordinal);
        Assert.Empty(bench.Load().Observations);
        bench.Done("import sheet", own["list.csv"], own["list.sheet"], "--write");
        Assert.Equal(true, Assert.Single(bench.Load().Observations).Runs);
        Assert.EndsWith("nothing would change.\n", bench.Done("import sheet", own["list.csv"], own["list.sheet"], "--write"), StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_are_told_by_place_and_leave_the_collection_as_it_is()
    {
        using var bench = new ImportBench(Collection);
        using var own = new TemporaryFolder();
        File.WriteAllText(own["list.csv"], "Game;Ostrel 4;Year\nGravel Tide;OK!;1999\nGravle Tide;ok;\n");
        File.WriteAllText(own["list.sheet"], Mapping);

        Assert.Equal(1, bench.Run("import sheet", own["list.csv"], own["list.sheet"], "--write"));
        Assert.StartsWith("list.csv!B2: the mapping does not say what 'OK!' means; did you mean 'ok'?", bench.Told, StringComparison.Ordinal);
        Assert.Empty(bench.Load().Observations);
        Assert.Equal(2, bench.Run("import sheet", own["nowhere.csv"], own["list.sheet"]));
    }
}
