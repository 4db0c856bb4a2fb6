using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Reports.Imports;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Writing;

/// <summary>Records put into a file that a person wrote: the whole text afterwards.</summary>
public sealed class RecordEdits
{
    private const string ByHand =
        """
        # The bench of the Brackwater club
        chips:
          ox-4:   {name: 'OX-4'}   # second batch

        cards:
          # the good one
          ox4-retail:
            name: "Ostrel 4"     # as on the box
            chip: ox-4
            hardware-ids: ['PCI\VEN_1A2B&DEV_0004']  # read by Ada

          # spares below

        drivers:
          ox-9x:
            name: Ostrel driver
            os: windows-98se
            lists: ox4-retail
            versions:
            - "1.02"          # oldest
            # - "1.50" was withdrawn
            - {version: "2.10", released: 1999-03-01 }

        facts:
        - {card: ox4-retail, driver: ox-9x 2.10, api: opengl, source: bench, mt-units: "2", fog-table: {is: yes, note: seen by Ada}}
        # the end
        """;

    private static readonly Step[] Facts =
    [
        new Step.Key("facts"),
        new Step.Item([("card", "ox4-retail"), ("driver", "ox-9x 2.10"), ("api", "opengl"), ("source", "bench")], ["os"]),
    ];

    [Fact]
    public void A_new_version_follows_the_last_and_nothing_else_moves() => Check(
        [Version("3.00", new KeyChange("os", YamlValue.Words(["windows-98se", "windows-2000"]), KeyRule.Join), KeyChange.Keep("notes", "Found: at a fair"))],
        """
            - {version: "2.10", released: 1999-03-01 }
        """,
        """
            - {version: "2.10", released: 1999-03-01 }
            - version: "3.00"
              os: [windows-98se, windows-2000]
              notes: "Found: at a fair"
        """);

    [Fact]
    public void A_bare_version_becomes_a_map_and_keeps_its_quotes_and_comment() => Check(
        [Version("1.02", KeyChange.Keep("software", "yes"))],
        """- "1.02"          # oldest""",
        """- {version: "1.02", software: yes}          # oldest""");

    [Fact]
    public void A_key_joins_a_map_in_one_line_before_its_closing_brace() => Check(
        [Version("2.10", KeyChange.Keep("notes", "rare"))],
        """{version: "2.10", released: 1999-03-01 }""",
        """{version: "2.10", released: 1999-03-01, notes: rare }""");

    [Fact]
    public void A_key_joins_a_map_of_lines_behind_the_last_comment_of_its_line() => Check(
        [Card(KeyChange.Keep("maker", "Ostrel"))],
        """    hardware-ids: ['PCI\VEN_1A2B&DEV_0004']  # read by Ada""" + "\n",
        """    hardware-ids: ['PCI\VEN_1A2B&DEV_0004']  # read by Ada""" + "\n    maker: Ostrel\n");

    [Fact]
    public void A_list_in_one_line_gets_what_it_lacks() => Check(
        [Card(new KeyChange("hardware-ids", YamlValue.Words([@"PCI\VEN_1A2B&DEV_0004", @"PCI\VEN_1A2B&DEV_0004&REV_02"]), KeyRule.Join))],
        """['PCI\VEN_1A2B&DEV_0004']  # read""",
        """['PCI\VEN_1A2B&DEV_0004', 'PCI\VEN_1A2B&DEV_0004&REV_02']  # read""");

    [Fact]
    public void A_text_in_the_place_of_a_list_becomes_one() => Check(
        [new RecordChange([new Step.Key("drivers"), new Step.Key("ox-9x")], "x.yaml", [new KeyChange("os", YamlValue.Words(["windows-2000"]), KeyRule.Join)])],
        "    os: windows-98se\n",
        "    os: [windows-98se, windows-2000]\n");

    [Fact]
    public void A_value_that_a_person_wrote_is_kept_and_reported()
    {
        var change = Check([Card(KeyChange.Keep("name", "Ostrel Four"))], "", "");
        var kept = Assert.Single(change.Kept);
        Assert.Equal(new KeptValue("world.yaml", 8, "name", "Ostrel 4", "Ostrel Four"), kept);
    }

    [Fact]
    public void What_two_records_of_one_import_say_differently_is_as_the_first_has_it_and_reported()
    {
        var change = Change(ByHand, [Card(KeyChange.Keep("maker", "Ostrel")), Card(KeyChange.Keep("maker", "Ostrel Works"))]);
        Assert.Contains("\n    maker: Ostrel\n", Assert.Single(change.Files).After, StringComparison.Ordinal);
        var kept = Assert.Single(change.Kept);
        Assert.Equal(new KeptValue("world.yaml", null, "maker", "Ostrel", "Ostrel Works"), kept);
        Assert.Equal("Kept world.yaml: maker: Ostrel, as this import has it first. It also has Ostrel Works there.", ImportReport.Kept(kept));
    }

    [Theory]
    [InlineData("late \u2028 found", "notes: \"late \\u2028 found\"")]
    [InlineData("late \u2029 'found'", "notes: \"late \\u2029 'found'\"")]
    public void A_separator_of_lines_reads_back_as_it_is(string note, string written)
    {
        var change = Change(ByHand, [Card(KeyChange.Keep("notes", note))]);
        Assert.Contains(written, Assert.Single(change.Files).After, StringComparison.Ordinal);
        Assert.Equal(note, change.Result.Catalog!.Cards.Single().Notes);
    }

    [Fact]
    public void An_imported_value_is_replaced_and_one_with_a_note_is_kept()
    {
        var change = Check(
            [
                new RecordChange(Facts, "x.yaml",
                [
                    new KeyChange("mt-units", new YamlValue.Text("4"), KeyRule.Replace),
                    new KeyChange("fog-table", new YamlValue.Text("no"), KeyRule.Replace),
                ]),
            ],
            """mt-units: "2",""", """mt-units: "4",""");
        Assert.Equal([new KeptValue("world.yaml", 25, "fog-table", "{is: yes, note: seen by Ada}", "no")], change.Kept);
    }

    [Fact]
    public void An_imported_value_that_is_no_longer_said_goes() => Check(
        [new RecordChange(Facts, "x.yaml", [new KeyChange("mt-units", new YamlValue.Text(""), KeyRule.Remove)])],
        """source: bench, mt-units: "2", fog""", "source: bench, fog");

    [Fact]
    public void A_statement_with_another_scope_is_another_entry() => Check(
        [
            new RecordChange(
                [new Step.Key("facts"), new Step.Item([("card", "ox4-retail"), ("driver", "ox-9x 1.02"), ("api", "opengl"), ("source", "bench")], ["os"])],
                "world.yaml", [new KeyChange("tex-pal8", new YamlValue.Text("no"), KeyRule.Replace)]),
        ],
        "note: seen by Ada}}\n",
        "note: seen by Ada}}\n- {card: ox4-retail, driver: ox-9x 1.02, api: opengl, source: bench, tex-pal8: no}\n");

    [Theory]
    [InlineData("\r\n", "")]
    [InlineData("\n", "\uFEFF")]
    public void Line_ends_and_a_byte_order_mark_survive(string lineEnd, string mark)
    {
        var text = mark + ByHand.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("\n", lineEnd, StringComparison.Ordinal) + lineEnd;
        var change = Change(text, [Version("3.00", KeyChange.Keep("notes", "late")), Card(KeyChange.Keep("maker", "Ostrel"))]);
        var after = Assert.Single(change.Files).After;
        var expected = text
            .Replace("1999-03-01 }" + lineEnd, "1999-03-01 }" + lineEnd + "    - {version: \"3.00\", notes: late}" + lineEnd, StringComparison.Ordinal)
            .Replace("# read by Ada" + lineEnd, "# read by Ada" + lineEnd + "    maker: Ostrel" + lineEnd, StringComparison.Ordinal);
        Assert.Equal(expected, after);
        Assert.NotNull(change.Result.Catalog);
    }

    [Fact]
    public void A_record_that_no_file_has_makes_a_file()
    {
        var change = Change(ByHand, [new RecordChange([new Step.Key("sources"), new Step.Key("dump-1")], "sources.yaml", [KeyChange.Keep("text", "A dump, 3 May")])]);
        Assert.Equal([new FileChange("sources.yaml", null, "sources:\n  dump-1: {text: \"A dump, 3 May\"}\n")], change.Files);
    }

    [Fact]
    public void An_empty_section_is_filled_where_it_stands()
    {
        var change = Change("sources: # ours\nchips: {ox-4: {name: OX-4}}\n",
            [new RecordChange([new Step.Key("sources"), new Step.Key("dump-1")], "world.yaml", [KeyChange.Keep("text", "A dump")])]);
        Assert.Equal("sources: {dump-1: {text: A dump}} # ours\nchips: {ox-4: {name: OX-4}}\n", Assert.Single(change.Files).After);
    }

    [Fact]
    public void A_change_that_would_not_load_has_no_catalog_and_names_the_place()
    {
        var change = Change(ByHand, [Card(KeyChange.Keep("year", "soon"))]);
        Assert.Null(change.Result.Catalog);
        Assert.Equal(
            "world.yaml(11,11): error FM109: 'soon' is no value of 'year'; it wants a whole number from 1970 to 2100",
            Assert.Single(change.Result.Faults, fault => fault.Severity == Severity.Error).ToString());
    }

    private static RecordChange Card(KeyChange key) => new([new Step.Key("cards"), new Step.Key("ox4-retail")], "x.yaml", [key]);

    private static RecordChange Version(string version, params KeyChange[] keys) =>
        new([new Step.Key("drivers"), new Step.Key("ox-9x"), new Step.Key("versions"), new Step.Item([("version", version)], [])], "x.yaml", keys);

    /// <summary>The text differs in this piece only, loads, and the same change again changes nothing.</summary>
    private static CollectionChange Check(RecordChange[] records, string piece, string becomes)
    {
        var change = Change(ByHand, records);
        var expected = piece.Length == 0 ? ByHand : ByHand.Replace(piece, becomes, StringComparison.Ordinal);
        Assert.Equal(piece.Length > 0, expected != ByHand);
        var after = piece.Length == 0 ? ByHand : Assert.Single(change.Files).After;
        Assert.Equal(expected, after);
        Assert.NotNull(change.Result.Catalog);
        Assert.Empty(Change(after, records).Files);
        return change;
    }

    private static CollectionChange Change(string text, IReadOnlyList<RecordChange> records) => CollectionEditor.Change(
        [new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("world.yaml", text)], records);
}
