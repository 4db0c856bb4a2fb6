using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>Whatever is wrong is told by sheet and cell, and nothing is written.</summary>
public sealed class Wrong_cells
{
    private const string World =
        """
        collection: {name: Reed bench}
        chips:
          sand: {name: Sand, source: bench, supply: {fog-table: yes, mt-units: "2"}}
        cards:
          dune: {name: Dune, chip: sand, source: manual, prices: [{sold: 10 EUR}]}
        drivers:
          sand-9x: {name: Sand drivers, os: [windows-98se], lists: [dune], offers: {direct3d: "7"}, source: readme, versions: ["1.0"]}
        titles:
          low-mist: {name: Low Mist, os: [windows-98se], source: notes, renderers: {direct3d: {api: direct3d 6, needs: {severe: {fog-table: Hills}, must: [mt-units 2]}}}}
        rigs: {attic: {name: Attic}}
        libraries: {evening: {name: Evening, titles: [low-mist]}}
        observations:
          - {title: low-mist, renderer: direct3d, card: dune, driver: sand-9x 1.0, os: windows-98se, wrapper: none, runs: yes, seen: {fog-table: yes}, by: Ada}
        """;

    private static readonly SourceText[] Files = [new("vocabulary/v.yaml", Worlds.Vocabulary), new("world.yaml", World)];

    public static TheoryData<string, string, string, string, string, string> Changes => new()
    {
        { "Chips", "sand", "year", "199", "Chips!F2", "a whole number from 1970 to 2100" },
        { "Chips", "sand", "source", "bnech", "Chips!I2", "did you mean 'bench'" },
        { "Chips", "sand", "grade", "sure", "Chips!J2", "measured, documented, inferred or hearsay" },
        { "Chips", "sand", "like", "snad", "Chips!G2", "'snad'" },
        { "Chips", "sand", "name", "", "Chips!C2", "needs the key 'name'" },
        { "Chips", "sand", "id", "Sand!", "Chips!B2", "small letters" },
        { "Chips", "sand", "source", "{text: unfinished", "Chips!I2", "small record in braces" },
        { "Chips", "sand", "take out", "perhaps", "Chips!A2", "only 'yes'" },
        { "Chips", "sand", "file", "other.yaml", "Chips!K2", "cannot go to another file" },
        { "Cards", "dune", "chip", "sond", "Cards!D2", "did you mean 'sand'" },
        { "Cards", "dune", "memory unified", "16 MB", "Cards!G2", "KiB, MiB or GiB" },
        { "Cards", "dune", "os", "windows-98se yes", "Cards!V2", "did you mean 'windows-98se'" },
        { "Cards", "dune", "connector bus", "agp-9", "Cards!M2", "agp-2.0" },
        { "Cards", "dune", "add-in", "maybe", "Cards!T2", "yes" },
        { "Cards", "dune", "hardware-ids", "PCI", "Cards!S2", "" },
        { "Cards", "dune", "drivers-complete", "windows-98", "Cards!W2", "did you mean 'windows-95'" },
        { "Prices", "dune", "sold", "cheap", "Prices!C2", "" },
        { "Supply", "sand", "is", "perhaps", "Supply!F2", "yes, no, broken, emulated or unknown" },
        { "Supply", "sand", "os", "windows", "Supply!I2", "windows-95" },
        { "Supply", "sand", "from", "1.0", "Supply!N2", "" },
        { "Supply", "sand", "feature", "fog-tabel", "Supply!E2", "did you mean 'fog-table'" },
        { "Drivers", "sand-9x", "lists", "dune, dnue", "Drivers!G2", "did you mean 'dune'" },
        { "Drivers", "sand-9x", "offers", "direct3d: 77", "Drivers!H2", "'77'" },
        { "Driver versions", "sand-9x", "released", "1.2.1999", "Driver versions!D2", "a date such as 2026-02-11" },
        { "Renderers", "low-mist", "api", "direct3d 66", "Renderers!F2", "'66'" },
        { "Renderers", "low-mist", "memory depths", "17", "Renderers!L2", "8, 15, 16, 24 or 32" },
        { "Needs", "low-mist", "strength", "sever", "Needs!E2", "must, severe" },
        { "Needs", "low-mist", "broken", "bad", "Needs!I2", "must, severe" },
        { "Titles", "low-mist", "engine", "linnet", "Titles!G2", "'linnet'" },
        { "Library titles", "evening", "weight", "heavy", "Library titles!D2", "a number from 0 to 1000" },
        { "Library titles", "evening", "title", "low-mits", "Library titles!C2", "did you mean 'low-mist'" },
        { "Libraries", "evening", "policy depth", "17", "Libraries!J2", "8, 15, 16, 24 or 32" },
        { "Observations", "low-mist", "driver", "sand-9x 1.1", "Observations!F2", "1.0" },
        { "Observations", "low-mist", "seen", "fog-table: perhaps", "Observations!M2", "yes, no, broken or emulated" },
        { "Observations", "low-mist", "runs", "often", "Observations!L2", "yes" },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void Are_named_by_sheet_and_cell_with_what_may_stand_there(string sheet, string row, string heading, string text, string place, string says)
    {
        var import = new EditedBook(Files).Type(sheet, (sheet switch
        {
            "Prices" => "card",
            "Driver versions" => "branch",
            "Library titles" => "library",
            "Observations" => "title",
            _ => "id",
        }, row), heading, text).Import();

        Assert.Null(import.Change);
        Assert.Contains(import.Faults, fault => fault.Place == place && fault.Message.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void Are_rows_that_belong_to_nothing()
    {
        Fault("Supply!C4: there is no chip 'snad' for this row to belong to; did you mean 'sand'?", Book.Add("Supply", ("kind", "chip"), ("id", "snad"), ("feature", "fog-table"), ("is", "yes")));
        Fault("Supply!D4: there is no version '1.1' for this row to belong to; did you mean '1.0'?",
            Book.Add("Supply", ("kind", "driver"), ("id", "sand-9x"), ("version", "1.1"), ("feature", "fog-table"), ("is", "yes")));
        Fault("Supply!D4: a row of kind 'wrapper' cannot stand here: a wrapper's supply belongs to one of its versions",
            Book.Add("Supply", ("kind", "wrapper"), ("id", "x"), ("feature", "fog-table"), ("is", "yes")));
        Fault("Supply!B4: 'chps' is none of: chip, card, driver, wrapper", Book.Add("Supply", ("kind", "chps"), ("id", "sand"), ("feature", "fog-table"), ("is", "yes")));
        Fault("Needs!D4: there is no renderer 'dirct3d' for this row to belong to; did you mean 'direct3d'?",
            Book.Add("Needs", ("kind", "title"), ("id", "low-mist"), ("renderer", "dirct3d"), ("strength", "must"), ("need", "tex-pal8")));
        Fault("Needs!E4: a new row needs its strength", Book.Add("Needs", ("kind", "title"), ("id", "low-mist"), ("renderer", "direct3d"), ("need", "tex-pal8")));
        Fault("Chips!B4: 'silt' is there already; change its row, or give this one another id", Book.Add("Chips", ("id", "silt"), ("name", "Silt")).Add("Chips", ("id", "silt"), ("name", "Silt 2")));
        Fault("Chips!K3: '../x.yaml' names no file of this collection: small letters, digits and hyphens, folders with '/', and '.yaml' at the end; not in vocabulary/ or runs/",
            Book.Add("Chips", ("id", "silt"), ("name", "Silt"), ("file", "../x.yaml")));
    }

    [Fact]
    public void Are_headings_that_were_renamed()
    {
        Fault("Chips!C1: unknown column 'nmae'; did you mean 'name'?", Book.Rename("Chips", "name", "nmae"));
        Assert.Contains(Book.Rename("Needs", "strength", "how bad").Import().Faults, fault => fault is { Place: "Needs!A1", Message: "the column 'strength' is missing" });
    }

    private static EditedBook Book => new(Files);

    private static void Fault(string expected, EditedBook book)
    {
        var import = book.Import();
        Assert.Null(import.Change);
        Assert.Equal([expected], import.Faults.Select(fault => $"{fault.Place}: {fault.Message}"));
    }
}
