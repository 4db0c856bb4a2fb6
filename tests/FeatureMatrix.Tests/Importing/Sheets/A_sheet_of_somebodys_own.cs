using System.Text;
using ClosedXML.Excel;
using FeatureMatrix.Importing.Sheets;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Sheets;

/// <summary>Sheets in three shapes that people keep, read by mappings into a small collection.</summary>
public sealed class A_sheet_of_somebodys_own
{
    private const string World =
        """
        collection: {name: Two boards}
        chips: {heron: {name: Heron, source: manual}, egret: {name: Egret, source: manual}}
        cards:
          heron-16: {name: Heron 16, chip: heron, source: manual}
          egret-8: {name: Egret 8, chip: egret, source: manual}
        titles:
          bay: {name: Reed Bay, os: [windows-98se], source: notes, renderers: {d3d: {api: direct3d 6, needs: {severe: {fog-table: The far bank shows}}}}}
          quay:
            name: Long Quay
            os: [windows-98se]
            source: notes
            renderers:
              d3d: {api: direct3d 6}
              gl: {api: opengl 1.1}   # faster
        """;

    private const string Results =
        """
        Game,Who,Heron 16,EGRET
        reed bay,Ada,Fine,no  FOG
        ,Bo,?,crash
        Mole Harbour,Ada,fine,
        Quay (GL),Ada,,fine
        """;

    private const string ResultsMapping =
        """
        sheet:
          name: list
          states: observations
          source: {text: "The list of 2019", grade: hearsay}
          same: {os: windows-98se}
          fill-down: [Game]
          columns:
            Game: title
            Who: by
            Heron 16: {card: heron-16}
            Egret: {card: egret-8}
          words:
            fine: {runs: yes}
            no fog: {runs: yes, fog-table: no, note: clear}
            crash: {runs: no}
            "?": unknown
          names: {Quay (GL): {title: quay, renderer: gl}}
          add-titles: {api: direct3d 7, os: [windows-98se]}
        """;

    private const string Capabilities =
        """
        Table fog,tex-pal8,Stencil bits,Board
        x,-,8,Heron 16
        ,bad,none,egret-8
        """;

    private const string CapabilitiesMapping =
        """
        sheet:
          name: caps
          states: facts
          source: {text: A caps sheet}
          columns: {Table fog: {feature: fog-table}, tex-pal8: {feature: tex-pal8, words: {bad: {is: broken, note: All green}}}, Stencil bits: {feature: Stencil bits}, Board: card}
          words: {x: yes, "-": no}
        """;

    private const string Needs =
        """
        Title,Path,Fog,Stencil,Seen
        Reed Bay,d3d,bad,,
        Long Quay,gl,bad,slight,A hard edge
        Mole Harbour,,slight,must,
        """;

    private const string NeedsMapping =
        """
        sheet:
          name: wants
          states: needs
          source: {text: Wants, grade: inferred}
          columns: {Title: title, Path: renderer, Fog: {feature: fog-table}, Stencil: {feature: stencil-bits 8}, Seen: effect}
          words: {bad: severe, slight: cosmetic}
          add-titles: {api: direct3d 7, os: [windows-98se]}
        """;

    [Fact]
    public void Of_results_becomes_observations_and_new_titles()
    {
        var import = Import(Results, ResultsMapping);

        Assert.Equal(
            """
            # Written by 'import sheet'. Importing the same sheet again replaces this file.
            sources:
              from-sheet-list: {text: "The list of 2019", grade: hearsay}
            titles:
              mole-harbour: {name: "Mole Harbour", source: from-sheet-list, renderers: {direct3d: {api: "direct3d 7", os: [windows-98se]}}}
            observations:
              - {title: bay, card: heron-16, os: windows-98se, runs: yes, by: "Ada", source: from-sheet-list}
              - {title: bay, card: egret-8, os: windows-98se, runs: yes, seen: {fog-table: no}, by: "Ada", note: clear, source: from-sheet-list}
              - {title: bay, card: egret-8, os: windows-98se, runs: no, by: "Bo", source: from-sheet-list}
              - {title: mole-harbour, card: heron-16, os: windows-98se, runs: yes, by: "Ada", source: from-sheet-list}
              - {title: quay, renderer: gl, card: egret-8, os: windows-98se, runs: yes, by: "Ada", source: from-sheet-list}

            """, Written(import));
        Assert.All(import.Change!.Result.Catalog!.Observations, one => Assert.Equal(Grade.Hearsay, one.Evidence.Grade));
    }

    [Fact]
    public void Says_what_it_understood_before_it_changes_anything() => Assert.Equal(
        """
        Sheet list.csv, headings in row 1: whether titles run and what was seen.
          column A 'Game': title
          column B 'Who': by
          column C 'Heron 16': answers about card heron-16
          column D 'EGRET': answers about card egret-8
        Words:
          'Fine' (3 cells): runs yes
          'no  FOG' (1 cell): runs yes, fog-table no, note clear
          '?' (1 cell): says nothing
          'crash' (1 cell): runs no
        2 empty cells among the answers: not known, nothing is written.
        5 answers from 4 rows; 0 rows without any.
        New titles: Mole Harbour.

        """, SheetImportReport.Understood(Import(Results, ResultsMapping)));

    [Fact]
    public void Of_capabilities_becomes_facts() => Assert.Equal(
        """
        # Written by 'import sheet'. Importing the same sheet again replaces this file.
        sources:
          from-sheet-caps: {text: "A caps sheet"}
        facts:
          - {card: heron-16, fog-table: yes, tex-pal8: no, stencil-bits: "8", source: from-sheet-caps}
          - {card: egret-8, tex-pal8: {is: broken, note: "All green"}, stencil-bits: none, source: from-sheet-caps}

        """, Written(Import(Capabilities, CapabilitiesMapping)));

    [Fact]
    public void Of_needs_joins_the_renderers_of_titles_and_leaves_what_somebody_wrote()
    {
        var import = Import(Needs, NeedsMapping);

        Assert.Equal(["bay, d3d: has a need of fog-table already, which stays"], import.Kept);
        Assert.Contains("needs: {cosmetic: [fog-table], must: [\"stencil-bits 8\"]}", Written(import), StringComparison.Ordinal);
        var world = import.Change!.Files.Single(file => file.Path == "world.yaml");
        Assert.Contains("  # faster", world.After, StringComparison.Ordinal);
        var quay = import.Change.Result.Catalog!.Titles.Single(title => title.Id == "quay").Renderers.Single(renderer => renderer.Id == "gl");
        Assert.Equal(
            ["Severe fog-table A hard edge", "Cosmetic stencil-bits 8 A hard edge"],
            quay.Needs.Select(need => $"{need.Strength} {need.Choices.Single()} {need.Effect}").OrderDescending(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(Results, ResultsMapping)]
    [InlineData(Capabilities, CapabilitiesMapping)]
    [InlineData(Needs, NeedsMapping)]
    public void Imported_a_second_time_changes_nothing(string sheet, string mapping)
    {
        var first = Import(sheet, mapping).Change!;
        var files = Files.Where(file => first.Files.All(change => change.Path != file.Path)).Concat(first.Files.Select(file => new SourceText(file.Path, file.After))).ToList();

        Assert.Empty(Import(sheet, mapping, files).Change!.Files);
    }

    [Fact]
    public void Whose_answer_was_withdrawn_withdraws_it()
    {
        var first = Import(Results, ResultsMapping).Change!;
        var again = Import(Results.Replace("crash", "", StringComparison.Ordinal), ResultsMapping, [.. Files, new SourceText(first.Files[0].Path, first.Files[0].After)]);

        var change = Assert.Single(again.Change!.Files);
        Assert.Equal(first.Files[0].After, change.Before);
        Assert.DoesNotContain("runs: no", change.After, StringComparison.Ordinal);
    }

    [Fact]
    public void Says_the_same_as_a_workbook()
    {
        using var book = new XLWorkbook();
        book.AddWorksheet("Cover").Cell(1, 1).SetValue("Ours");
        var sheet = book.AddWorksheet("Results");
        var rows = Results.Split('\n');
        for (var row = 0; row < rows.Length; row++)
        {
            foreach (var (cell, column) in rows[row].Split(',').Select((cell, column) => (cell, column)))
                sheet.Cell(row + 3, column + 2).SetValue(cell);
        }

        using var stream = new MemoryStream();
        book.SaveAs(stream);
        var import = Import(stream.ToArray(), "list.xlsx", ResultsMapping.Replace("  same:", "  tab: Results\n  heading-row: 3\n  same:", StringComparison.Ordinal), Files);
        Assert.Equal(Written(Import(Results, ResultsMapping)), Written(import));
    }

    /// <summary>Sheet, mapping, what is replaced and by what, and the fault.</summary>
    [Theory]
    [InlineData("fine,\n", "fien,\n", "list.csv!C4: the mapping does not say what 'fien' means; did you mean 'fine'?; explain it under 'words', as 'unknown' if it says nothing")]
    [InlineData("Quay (GL),Ada", "Long Quay,Ada", "list.csv!A5: 'quay' has several renderers and this answer belongs to one (d3d, gl); give it in a column 'renderer', for this name or under 'same'")]
    [InlineData(",Who,", ",Whom,", "list.sheet(9,5): no heading 'Who' in row 1 of list.csv; did you mean 'Whom'?")]
    [InlineData(",Who,", ",Game,", "list.sheet(8,5): several columns are headed 'Game'; name one of them by its letter: 'column A' or 'column B'", "list.sheet(9,5): no heading 'Who' in row 1 of list.csv; there is Game, Heron 16, EGRET")]
    [InlineData("os: windows-98se}", "os: windows-98sf}", "list.sheet(5,14): unknown operating system 'windows-98sf'; did you mean 'windows-98se'?")]
    [InlineData("fog-table: no,", "fog-tabel: no,", "list.sheet(14,36): unknown feature 'fog-tabel'; did you mean 'fog-table'?")]
    [InlineData("{runs: no}", "{runs: perhaps}", "list.sheet(15,19): 'perhaps' is no value of 'runs': it is yes, no, true or false")]
    [InlineData("card: egret-8", "card: egret-9", "list.sheet(11,19): unknown card 'egret-9'; did you mean 'egret-8'?")]
    [InlineData("add-titles: {api: direct3d 7, os: [windows-98se]}", "add-title: 1", "list.sheet(18,3): unknown key 'add-title' in 'sheet' of a mapping; did you mean 'add-titles'?")]
    [InlineData("  add-titles: {api: direct3d 7, os: [windows-98se]}", "", "list.csv!A4: unknown title 'Mole Harbour'; there is bay, quay")]
    [InlineData("states: observations", "states: observation", "list.sheet(3,11): 'observation' is no value of 'states': it is observations, facts or needs; did you mean 'observations'?")]
    [InlineData("Who: by", "Who: bye", "list.sheet(9,10): 'bye' is no value of the column 'Who': it is title, renderer, card, specimen, driver, os, wrapper, mode, depth, rig, runs, date, by, note or nothing; did you mean 'by'?")]
    [InlineData("name: list", "name: My List", "list.sheet(2,9): 'My List' is no id; an id has small letters, digits, hyphens and points, for example 'nl-4'")]
    [InlineData("grade: hearsay", "grade: rumour", "list.sheet(4,45): 'rumour' is no value of 'grade': it is measured, documented, inferred or hearsay")]
    [InlineData("  name: list", "  name: list\n  heading-row: zero", "list.sheet(3,16): 'zero' is no value of 'heading-row'; it wants the number of a row, from 1")]
    [InlineData("Game: title\n", "Game: nothing\n", "list.csv!A2: this row states an answer and no title")]
    public void That_does_not_fit_its_mapping_is_told_by_place(string old, string now, params string[] faults)
    {
        var import = Import(Results.Replace(old, now, StringComparison.Ordinal), ResultsMapping.Replace(old, now, StringComparison.Ordinal));

        Assert.Null(import.Change);
        Assert.All(faults, fault => Assert.Contains(fault, import.Faults.Select(one => $"{one.Place}: {one.Message}")));
    }

    [Fact]
    public void That_is_no_workbook_is_told() => Assert.Equal(
        ["list.xlsx: is no workbook in Office Open XML (.xlsx), or it is damaged or protected by a password"],
        Import([1, 2, 3], "list.xlsx", ResultsMapping, Files).Faults.Select(fault => $"{fault.Place}: {fault.Message}"));

    [Fact]
    public void As_the_format_document_shows_it_joins_the_collection_of_the_document()
    {
        var document = File.ReadAllText(Repository.PathTo("data", "README.md"));
        var section = document[document.IndexOf("## A sheet of your own", StringComparison.Ordinal)..document.IndexOf("## The bench log", StringComparison.Ordinal)];
        var (csv, mapping) = ("Game" + Block(section, "```\nGame"), Block(section, "```\nsheet:"));
        var yaml = document.Split("```yaml\n").Skip(1).Select((block, i) => new SourceText($"part-{i}.yaml", block[..block.IndexOf("```", StringComparison.Ordinal)])).ToList();
        var vocabulary = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files.Select(file => new SourceText("vocabulary/" + file.Path, file.Text));
        List<SourceText> files = [.. vocabulary, .. yaml];

        var import = SheetImport.Of(files, CollectionLoader.Load(files).Catalog!, "ferry-list.csv", Encoding.UTF8.GetBytes(csv), new SourceText("ferry-list.sheet", "sheet:" + mapping));

        Assert.Empty(import.Faults);
        Assert.Equal(4, import.AnswerCount);
        Assert.Equal(["Mole Harbour"], import.NewTitles);
    }

    private static IReadOnlyList<SourceText> Files { get; } = [new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("world.yaml", World)];

    private static string Block(string section, string start)
    {
        var from = section.IndexOf(start, StringComparison.Ordinal) + start.Length;
        return section[from..section.IndexOf("```", from, StringComparison.Ordinal)];
    }

    private static string Written(SheetImport import) =>
        import.Change?.Files[0].After ?? string.Join('\n', import.Faults.Select(fault => $"{fault.Place}: {fault.Message}"));

    private static SheetImport Import(string sheet, string mapping, IReadOnlyList<SourceText>? files = null) =>
        Import(Encoding.UTF8.GetBytes(sheet), "list.csv", mapping, files ?? Files);

    private static SheetImport Import(byte[] sheet, string name, string mapping, IReadOnlyList<SourceText> files) =>
        SheetImport.Of(files, CollectionLoader.Load(files).Catalog!, name, sheet, new SourceText("list.sheet", mapping));
}
