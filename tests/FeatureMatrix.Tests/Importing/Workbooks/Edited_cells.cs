using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Tests.Importing.Worksheets;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>Changed cells change their own characters of a file and no others.</summary>
public sealed class Edited_cells
{
    private const string Hardware =
        """
        # What we own
        collection: {name: Reed bench}
        chips:
          # The older one
          sand:
            name: Sand   # as printed
            source: bench
            supply: {fog-table: yes, tex-pal8: "no"}   # seen twice
          silt: {name: "Silt", source: bench, supply: {mt-units: 1+}}
        cards:
          dune: # found in spring
            name: Dune
            chip: sand
            memory:
              unified: 16 MiB
            source: manual
            prices:
              - {sold: 10 EUR}   # at a fair
              - {asked: 30 EUR}
          delta: {name: Delta, chip: silt, source: manual}

        """;

    private const string Titles =
        """
        titles:
          low-mist:
            name: Low Mist
            os: [windows-98se]
            source: notes
            renderers:
              direct3d:
                api: direct3d 6
                needs:
                  severe: {fog-table: The far bank shows.}
                  cosmetic: [tex-dxt1, mt-units 2]   # both seen
        libraries:
          evening: {name: Evening, titles: [low-mist]}
        drivers:
          sand-9x:
            name: Sand drivers
            os: [windows-98se]
            lists: [dune]
            offers: {direct3d: "7"}
            source: readme
            versions:
              - "1.0"   # on the disk
              - {version: "2.0", released: 1999-03-01}

        """;

    private static readonly SourceText[] Files = [new("vocabulary/v.yaml", Worlds.Vocabulary), new("hardware.yaml", Hardware), new("titles.yaml", Titles)];

    private static EditedBook Book => new(Files);

    [Fact]
    public void Change_one_text_and_leave_its_comment()
    {
        Gives(Book.Type("Chips", ("id", "sand"), "name", "Sand 2"), Hardware.Replace("name: Sand   #", "name: Sand 2   #", StringComparison.Ordinal));
        Gives(Book.Type("Cards", ("id", "dune"), "memory unified", "32 MiB"), Hardware.Replace("16 MiB", "\"32 MiB\"", StringComparison.Ordinal));
    }

    [Fact]
    public void Add_keys_where_the_record_ends_and_take_them_out_with_their_line()
    {
        Gives(Book.Type("Cards", ("id", "dune"), "year", "1999"), Hardware.Replace("      - {asked: 30 EUR}\n", "      - {asked: 30 EUR}\n    year: \"1999\"\n", StringComparison.Ordinal));
        Gives(Book.Type("Cards", ("id", "delta"), "memory unified", "8 MiB"), Hardware.Replace("chip: silt, source: manual}", "chip: silt, source: manual, memory: {unified: \"8 MiB\"}}", StringComparison.Ordinal));
        Gives(Book.Type("Cards", ("id", "dune"), "memory unified", ""), Hardware.Replace("    memory:\n      unified: 16 MiB\n", "", StringComparison.Ordinal));
        Gives(Book.Type("Chips", ("id", "sand"), "source", ""), Hardware.Replace("    source: bench\n", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Lengthen_a_short_statement_only_where_it_has_more_to_say()
    {
        Gives(Book.Type("Supply", ("feature", "tex-pal8"), "is", "broken"), Hardware.Replace("tex-pal8: \"no\"", "tex-pal8: broken", StringComparison.Ordinal));
        Gives(Book.Type("Supply", ("feature", "fog-table"), "os", "windows-98se"), Hardware.Replace("fog-table: yes", "fog-table: {is: yes, os: windows-98se}", StringComparison.Ordinal));
        Gives(Book.Type("Supply", ("feature", "mt-units"), "reach", ""), Hardware.Replace("mt-units: 1+", "mt-units: \"1\"", StringComparison.Ordinal));
        Gives(Book.Type("Driver versions", ("version", "1.0"), "released", "1998-01-02"), titles: Titles.Replace("- \"1.0\"   #", "- {version: \"1.0\", released: \"1998-01-02\"}   #", StringComparison.Ordinal));
        Gives(
            Book.Add("Supply", ("kind", "driver"), ("id", "sand-9x"), ("version", "1.0"), ("feature", "fog-table"), ("is", "no")),
            titles: Titles.Replace("- \"1.0\"   #", "- {version: \"1.0\", supply: {fog-table: no}}   #", StringComparison.Ordinal));
        Gives(Book.Type("Library titles", ("title", "low-mist"), "weight", "3"), titles: Titles.Replace("titles: [low-mist]", "titles: {low-mist: \"3\"}", StringComparison.Ordinal));
    }

    [Fact]
    public void Move_a_need_to_another_strength()
    {
        Gives(Book.Type("Needs", ("need", "mt-units 2"), "strength", "must"), titles: Titles
            .Replace("[tex-dxt1, mt-units 2]", "[tex-dxt1]", StringComparison.Ordinal).Replace("# both seen\n", "# both seen\n          must: [\"mt-units 2\"]\n", StringComparison.Ordinal)
            .Replace("\"mt-units 2\"]\n", "mt-units 2]\n", StringComparison.Ordinal));
        Gives(Book.Type("Needs", ("need", "fog-table"), "effect", "Bare hills"), titles: Titles.Replace("The far bank shows.", "Bare hills", StringComparison.Ordinal));
        Gives(Book.Type("Needs", ("need", "fog-table"), "need", "tex-pal8"), titles: Titles.Replace("{fog-table: The", "{tex-pal8: The", StringComparison.Ordinal));
        Gives(Book.Type("Needs", ("need", "fog-table"), "hardware", "yes"), titles: Titles.Replace("{fog-table: The far bank shows.}", "{fog-table: {hardware: yes, effect: The far bank shows.}}", StringComparison.Ordinal));
        Gives(Book.Type("Needs", ("need", "tex-dxt1"), "effect", "Mud"), titles: Titles.Replace("[tex-dxt1,", "[{need: tex-dxt1, effect: Mud},", StringComparison.Ordinal));
    }

    [Fact]
    public void Take_out_rows_that_say_so_and_no_others()
    {
        Gives(Book.Type("Prices", ("sold", "10 EUR"), "take out", "yes"), Hardware.Replace("      - {sold: 10 EUR}   # at a fair\n", "", StringComparison.Ordinal));
        Gives(Book.Type("Supply", ("feature", "fog-table"), "take out", "yes"), Hardware.Replace("{fog-table: yes, tex-pal8", "{tex-pal8", StringComparison.Ordinal));
        Gives(Book.Type("Needs", ("need", "tex-dxt1"), "take out", "yes"), titles: Titles.Replace("[tex-dxt1, mt", "[mt", StringComparison.Ordinal));
        Gives(Book.Type("Cards", ("id", "delta"), "take out", "yes"), Hardware.Replace("  delta: {name: Delta, chip: silt, source: manual}\n", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Add_new_rows_beside_their_kind()
    {
        Gives(
            Book.Add("Chips", ("id", "clay"), ("name", "=Clay"), ("source", "bench")).Add("Supply", ("kind", "chip"), ("id", "clay"), ("feature", "ps-version"), ("level", "1.4"), ("reach", "at-least"))
                .Add("Cards", ("id", "dam"), ("name", "Dam"), ("chip", "clay"), ("source", "manual"), ("os", "windows-95: no, windows-98se: yes"), ("cautions", "Hot, so wait.\nHeavy")),
            Hardware.Replace("supply: {mt-units: 1+}}\n", "supply: {mt-units: 1+}}\n  clay:\n    name: \"=Clay\"\n    source: bench\n    supply: {ps-version: 1.4+}\n", StringComparison.Ordinal).Replace("ps-version: 1.4+", "ps-version: \"1.4+\"", StringComparison.Ordinal)
            + "  dam:\n    name: Dam\n    chip: clay\n    os: {windows-95: no, windows-98se: yes}\n    cautions: [\"Hot, so wait.\", Heavy]\n    source: manual\n");
        Gives(
            Book.Add("Needs", ("kind", "title"), ("id", "low-mist"), ("renderer", "direct3d"), ("strength", "bonus"), ("any-of", "tex-8888, mt-units 3")),
            titles: Titles.Replace("# both seen\n", "# both seen\n          bonus:\n            - any-of: [tex-8888, mt-units 3]\n", StringComparison.Ordinal));
    }

    [Fact]
    public void Copy_a_row_with_another_id_into_a_new_record()
    {
        Gives(
            Book.Copy("Cards", ("id", "delta"), ("id", "delta-2"), ("name", "Delta 2")),
            Hardware + "  delta-2: {name: Delta 2, chip: silt, source: manual}\n");
    }

    [Fact]
    public void Rename_an_id_where_it_stands()
    {
        Gives(
            Book.Type("Cards", ("id", "delta"), "id", "delta-2"), Hardware.Replace("  delta: {", "  delta-2: {", StringComparison.Ordinal));
        var import = Book.Type("Chips", ("id", "silt"), "id", "sylt").Import();
        Assert.Equal("Cards!D3: unknown chip 'silt'; did you mean 'sylt'?", Assert.Single(import.Faults.Select(fault => $"{fault.Place}: {fault.Message}")));
    }

    [Fact]
    public void Change_nothing_the_second_time()
    {
        var book = Book.Add("Chips", ("id", "clay"), ("name", "-Clay"), ("source", "bench")).Type("Chips", ("id", "sand"), "name", "@Sand")
            .Type("Needs", ("need", "mt-units 2"), "strength", "must").Type("Prices", ("sold", "10 EUR"), "take out", "yes");
        var once = Applied(book.Import());

        // What was new has its place now, so the same workbook written anew says it all.
        Assert.Empty(new EditedBook(once).Import().Change!.Files);
        Assert.Equal("@Sand", CollectionLoader.Load(once).Catalog!.Chips.Single(chip => chip.Id == "sand").Name);
    }

    [Fact]
    public void Stay_out_of_the_way_of_what_the_files_learnt_meanwhile()
    {
        var meanwhile = Files.Select(file => file with { Text = file.Text.Replace("name: Sand   #", "name: Sand old   #", StringComparison.Ordinal).Replace("name: Dune", "name: Dune old", StringComparison.Ordinal) }).ToList();

        var other = Book.Type("Chips", ("id", "sand"), "year", "1999").Import(meanwhile);
        var same = Book.Type("Chips", ("id", "sand"), "name", "Sand new").Import(meanwhile);

        Assert.Empty(other.Notes);
        Assert.Contains("name: Sand old   #", other.Change!.Files.Single().After, StringComparison.Ordinal);
        Assert.Equal("Chips!C2: also changed in the collection since the workbook was written, where it is 'Sand old' now; the workbook's word would replace it", Assert.Single(same.Notes));
        Assert.Contains("name: Sand new   #", same.Change!.Files.Single().After, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_read_from_a_file_that_LibreOffice_saved()
    {
        var written = CollectionBookWriter.Write(A_collection_as_a_workbook.BookOf(Files));
        var typed = FilledSheet.Typed(written, [("Chips", "C2", "=1+1"), ("Supply", "F3", "broken")]);

        var import = WorkbookImport.Of(Files, LibreOffice.Recalculate(typed));

        Assert.Equal("", string.Join('\n', import.Faults));
        Assert.Equal(2, import.ChangedCount);
        Assert.Equal(
            Hardware.Replace("name: Sand   #", "name: \"=1+1\"   #", StringComparison.Ordinal).Replace("tex-pal8: \"no\"", "tex-pal8: broken", StringComparison.Ordinal),
            import.Change!.Files.Single().After);
    }

    private static void Gives(EditedBook book, string hardware = Hardware, string titles = Titles)
    {
        var import = book.Import();
        Assert.Equal("", string.Join('\n', import.Faults));
        var after = Applied(import);
        Assert.Equal(hardware, after.Single(file => file.Path == "hardware.yaml").Text);
        Assert.Equal(titles, after.Single(file => file.Path == "titles.yaml").Text);
    }

    private static List<SourceText> Applied(WorkbookImport import)
    {
        var after = import.Change!.Files.ToDictionary(file => file.Path, file => file.After);
        return [.. Files.Select(file => after.TryGetValue(file.Path, out var text) ? file with { Text = text } : file)];
    }
}
