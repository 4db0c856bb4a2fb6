using FeatureMatrix.Loading.Schema;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>The sheets of a collection's workbook, records before what belongs to them; writer and reader agree here.</summary>
internal static class BookLayout
{
    /// <summary>The first column: <c>yes</c> takes the row's record out.</summary>
    public const string TakeOut = "take out";

    /// <summary>The column with the file that the record stands in, or is to stand in.</summary>
    public const string File = "file";

    /// <summary>The hidden column with the record's place in its file as the workbook was written; empty for a new row.</summary>
    public const string Place = "place";

    /// <summary>The hidden column with a sign for each cell as it was written, by which changed cells are told.</summary>
    public const string Written = "as written";

    /// <summary>The column that tells chips, cards, drivers and wrappers apart, or titles and engines.</summary>
    public const string Kind = "kind";

    /// <summary>The column with the version that a row belongs to.</summary>
    public const string Version = "version";

    /// <summary>The most characters of a cell; what is longer is shown cut and can be changed in its file only.</summary>
    public const int LongestCell = 32_000;

    private static readonly IReadOnlyList<string> Strengths = [.. Words.Strengths.Select(one => one.Item1), "none"];

    /// <summary>All sheets.</summary>
    public static IReadOnlyList<BookSheet> Sheets { get; } =
    [
        new("Collection", "What the collection is called. One row.", [BookPlace.Of("collection")], ShapeColumns.Of(VocabularyShapes.Collection)),
        Records("People", "people", "Those whose word it takes, by pseudonym.", ShapeColumns.Of(VocabularyShapes.Person)),
        Records("Sources", "sources", "Documents and people that statements name.", ShapeColumns.Of(VocabularyShapes.Source)),
        Records("Features", "features", "Rendering features of this collection's own, beside the vocabulary.", ShapeColumns.Of(VocabularyShapes.Feature)),
        Records("Interfaces", "apis", "APIs of this collection's own.", ShapeColumns.Of(VocabularyShapes.Api)),
        Records("Systems", "operating-systems", "Operating systems of this collection's own.", ShapeColumns.Of(VocabularyShapes.Os)),
        Records("Buses", "buses", "Buses of this collection's own.", ShapeColumns.Of(VocabularyShapes.Bus)),
        Records("Chips", "chips", "Chips; what they have stands on the sheet Supply.", ShapeColumns.Of(HardwareShapes.Chip, "supply")),
        Records("Cards", "cards", "Boards.", ShapeColumns.Of(HardwareShapes.Card, "supply", "bios", "prices")),
        Within("BIOS versions", "cards/{card}/bios/[]", "BIOS versions of cards, oldest first.", "card", ShapeColumns.Of(ShapeColumns.Inner(HardwareShapes.Card, "bios"), "supply")),
        Within("Prices", "cards/{card}/prices/[]", "What cards were sold for, or offered at.", "card", ShapeColumns.Of(ShapeColumns.Inner(HardwareShapes.Card, "prices"))),
        Records("Specimens", "specimens", "Single physical boards.", ShapeColumns.Of(HardwareShapes.Specimen)),
        Records("Drivers", "drivers", "Driver branches.", ShapeColumns.Of(HardwareShapes.Driver, "supply", "versions")),
        Within("Driver versions", "drivers/{branch}/versions/[]", "Versions of driver branches, oldest first.", "branch",
            ShapeColumns.Of(ShapeColumns.Inner(HardwareShapes.Driver, "versions"), "supply", "forced")) with { Bare = "version" },
        new("Forced drivers", "What is known of forcing a driver version onto cards that it does not list.", [BookPlace.Of("drivers/{branch}/versions/[version]/forced/[]")],
        [
            BookColumn.Place("branch", "Id of the driver branch.", "branch"), BookColumn.Place(Version, "Its version."),
            .. ShapeColumns.Of(ShapeColumns.Inner(HardwareShapes.Driver, "versions", "forced")),
        ]),
        Records("Wrappers", "wrappers", "Wrappers; everything that matters is said of their versions.", ShapeColumns.Of(HardwareShapes.Wrapper, "versions")),
        Within("Wrapper versions", "wrappers/{wrapper}/versions/[]", "Versions of wrappers, oldest first.", "wrapper",
            ShapeColumns.Of(ShapeColumns.Inner(HardwareShapes.Wrapper, "versions"), "supplies")),
        Supply(),
        Records("Engines", "engines", "Engines that titles build on.", ShapeColumns.Of(TitleShapes.Engine, "renderers")),
        Records("Titles", "titles", "Games and programs, each at one version.", ShapeColumns.Of(TitleShapes.Title, "renderers", "hazards")),
        OfRenderers("Renderers", "", "Graphics paths of titles and engines. Closed: a path that is not written does not count.",
            ShapeColumns.Of(ShapeColumns.Inner(TitleShapes.Title, "renderers"), "needs", "defects", "presets")) with { Bare = "like-engine" },
        Needs(),
        OfRenderers("Defects", "/defects/[]", "What stops a renderer even if all needs are met.", ShapeColumns.Of(ShapeColumns.Named("defect"))),
        OfRenderers("Texture presets", "/memory/presets/[]", "Texture settings of renderers, smallest first.", ShapeColumns.Of(ShapeColumns.Inner(ShapeColumns.Named("memory-use"), "presets"))),
        Within("Hazards", "titles/{title}/hazards/[]", "What a fast machine does to titles.", "title", ShapeColumns.Of(ShapeColumns.Inner(TitleShapes.Title, "hazards"), "seen")),
        new("Hazards seen", "Where a hazard was seen, or seen not to happen.", [BookPlace.Of("titles/{title}/hazards/[kind]/seen/[]")],
        [
            BookColumn.Place("title", "Id of the title.", "title"), BookColumn.Place(Kind, "Kind of the hazard.", legal: [.. Words.HazardKinds.Select(one => one.Item1)]),
            .. ShapeColumns.Of(ShapeColumns.Inner(TitleShapes.Title, "hazards", "seen")),
        ]),
        Records("Rigs", "rigs", "PCs.", ShapeColumns.Of(BenchShapes.Rig, "slots")),
        Within("Slots", "rigs/{rig}/slots/[]", "Slots of PCs, as their boards' documents state them.", "rig", ShapeColumns.Of(ShapeColumns.Inner(BenchShapes.Rig, "slots"))),
        Records("Libraries", "libraries", "What somebody cares about, and what is allowed for it.", ShapeColumns.Of(BenchShapes.Library, "titles")),
        new("Library titles", "The titles of a library, with their weights.", [BookPlace.Of("libraries/{library}/titles/{title*}")],
        [
            BookColumn.Place("library", "Id of the library.", "library"), BookColumn.Place("title", "Id of the title.", "title"),
            .. ShapeColumns.Of(ShapeColumns.Inner(BenchShapes.Library, "titles")),
        ]) { Bare = "weight" },
        new("Observations", "What was seen with one exact route.", [BookPlace.Of("observations/[]")], ShapeColumns.Of(BenchShapes.Observation)),
        Records("Captures", "captures", "Pictures of titles on cards, in pairs of one scene.", ShapeColumns.Of(BenchShapes.Capture)),
        new("Facts", "Statements that stand with no record.", [BookPlace.Of("facts/[]")],
        [
            .. ShapeColumns.Of(BenchShapes.Fact),
            new BookColumn("says", [], CellForm.Pairs, "Features with what is said of them: fog-table: broken, mt-units: 2.") { IsRest = true, IsRequired = true },
        ]),
    ];

    private static BookSheet Records(string name, string section, string meaning, IReadOnlyList<BookColumn> columns) => new(
        name, meaning, [BookPlace.Of(section + "/{id}")],
        [BookColumn.Place("id", "Small letters, digits, hyphens and points. Other rows use it, so it stays as it is."), .. columns]);

    private static BookSheet Within(string name, string way, string meaning, string parent, IReadOnlyList<BookColumn> columns) => new(
        name, meaning, [BookPlace.Of(way)], [BookColumn.Place(parent, $"Id of the {parent} that it belongs to.", parent), .. columns]);

    private static BookSheet Supply() => new(
        "Supply", "What chips, cards, drivers and wrappers have. A feature that nobody mentions is not known, never missing.",
        [
            BookPlace.Of("chips/{id}/supply/{feature+}/[]", "chip"),
            BookPlace.Of("cards/{id}/supply/{feature+}/[]", "card"),
            BookPlace.Of("cards/{id}/bios/[version]/supply/{feature+}/[]", "card", hasVersion: true),
            BookPlace.Of("drivers/{id}/supply/{feature+}/[]", "driver"),
            BookPlace.Of("drivers/{id}/versions/[version]/supply/{feature+}/[]", "driver", hasVersion: true),
            BookPlace.Of("wrappers/{id}/versions/[version]/supplies/{feature+}/[]", "wrapper", hasVersion: true),
        ],
        [
            BookColumn.Place(Kind, "What has it.", legal: ["chip", "card", "driver", "wrapper"]),
            BookColumn.Place("id", "Id of the chip, card, driver branch or wrapper."),
            BookColumn.Place(Version, "The BIOS, driver or wrapper version that has it. If empty: all.") with { IsRequired = false },
            BookColumn.Place("feature", "The feature.", "feature"),
            .. ShapeColumns.Of(ShapeColumns.Named("long-statement-in-anything")).Select(column =>
                column.Heading == "is" ? column with { Legal = [.. column.Legal, RowContent.None], Meaning = column.Meaning + " Of a feature with levels: none for no level at all." } : column),
        ])
    { Kind = RowKind.Supply };

    private static BookSheet OfRenderers(string name, string way, string meaning, IReadOnlyList<BookColumn> columns) => new(
        name, meaning, [BookPlace.Of("titles/{id}/renderers/{renderer}" + way, "title"), BookPlace.Of("engines/{id}/renderers/{renderer}" + way, "engine")],
        [
            BookColumn.Place(Kind, "What has the renderer.", legal: ["title", "engine"]), BookColumn.Place("id", "Id of the title or engine.", "title"),
            BookColumn.Place("renderer", "Id of the renderer.", "renderer"), .. columns,
        ]);

    private static BookSheet Needs()
    {
        var renderers = OfRenderers("Needs", "/needs/{strength+}/?", "What renderers ask of card and driver. Closed: what is not written is not needed.",
            ShapeColumns.Of(ShapeColumns.Inner(ShapeColumns.Named("needs"), "must")));
        var strength = BookColumn.Place("strength", "How bad it is without. none: the title does not need it although its engine does.", legal: Strengths);
        return renderers with { Columns = [.. renderers.Columns.Take(3), strength, .. renderers.Columns.Skip(3)], Kind = RowKind.Need, Bare = "need" };
    }
}
