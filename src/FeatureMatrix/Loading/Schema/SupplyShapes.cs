using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>Statements about supply. Which scope keys are legal depends on what the statement stands in.</summary>
internal static class SupplyShapes
{
    private static readonly Key Chip = new("chip", Shapes.Text, "Counts for this chip only.");
    private static readonly Key Card = new("card", Shapes.Text, "Counts for this card only.");
    private static readonly Key Driver = new("driver", Shapes.Text, "Counts with this branch or version only: ox-9x, or ox-9x 2.10.");

    private static readonly IReadOnlyList<Key> Range =
    [
        new("from", Shapes.Text, "The first version of the branch for which it counts."),
        new("to", Shapes.Text, "The last version of the branch for which it counts."),
    ];

    private static readonly IReadOnlyList<Key> Everywhere =
    [
        new("os", Shapes.Os, "Counts on this operating system only."),
        new("api", new Shape.Named("api-name"), "Counts under this API only."),
    ];

    /// <summary>The scope keys where nothing around the statement narrows it.</summary>
    public static IReadOnlyList<Key> Scope => [.. Everywhere, Chip, Card, Driver, .. Range];

    /// <summary>What statements look like, for each place where they stand.</summary>
    public static IEnumerable<(string Name, Shape Shape)> Definitions => Places.SelectMany(place => new (string, Shape)[]
    {
        ($"statement-in-{place.Name}", Shapes.ListOf(new Shape.Either([Shapes.Text, new Shape.Named($"long-statement-in-{place.Name}")]))),
        ($"long-statement-in-{place.Name}", Long(place.Scope)),
    });

    private static IReadOnlyList<(string Name, IReadOnlyList<Key> Scope)> Places =>
    [
        ("chip", [.. Everywhere, Driver, .. Range]),
        ("card", [.. Everywhere, Driver, .. Range]),
        ("bios", Everywhere),
        ("driver", [.. Everywhere, Chip, Card, .. Range]),
        ("version", [.. Everywhere, Chip, Card]),
        ("anything", Scope),
    ];

    /// <summary>A map from features to statements.</summary>
    public static Shape Of(string place) =>
        new Shape.Entries(new Shape.Named($"statement-in-{place}"), NamesAreIds: false, MayBeEmpty: true, Known: "known-supply");

    /// <summary>A map from APIs to levels.</summary>
    public static Shape Offers(string place) =>
        new Shape.Entries(new Shape.Named($"statement-in-{place}"), NamesAreIds: false, MayBeEmpty: true, Known: "known-apis");

    private static Shape.Map Long(IReadOnlyList<Key> scope) => new(
    [
        new("is", Shapes.Word(Words.Supports), "yes (in hardware), emulated (computed by the driver), broken (claimed, wrong picture), no or unknown."),
        new("level", Shapes.Text, "The level it speaks of; only for features with levels."),
        new("reach", Shapes.Word(Words.Reaches), "up-to: none above; at-least: silent about those above; at: this level only."),
        .. scope,
        new("note", Shapes.Text, "A remark for people."),
        .. Shapes.Evidence,
    ])
    { AtLeastOne = ["is", "level"] };
}
