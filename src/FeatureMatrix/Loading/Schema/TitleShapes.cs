using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>Engines and titles.</summary>
internal static class TitleShapes
{
    private static readonly Shape.Map When = new(
    [
        new("depth", Shapes.Depth, "Only at this colour depth."),
        new("preset", Shapes.Text, "Only at this texture preset."),
    ])
    { OneGroup = [["depth"], ["preset"]] };

    private static readonly IReadOnlyList<Key> AboutANeed =
    [
        new("hardware", Shapes.YesNo, "Yes where an emulated supply does not do."),
        new("broken", Shapes.Word(Words.Strengths), "The strength if the feature is there but broken."),
        new("when", When, "Applies only then."),
        new("effect", Shapes.Text, "What this title looks like without it."),
        .. Shapes.Evidence,
    ];

    private static readonly Shape.Map ListedNeed = new(
    [
        new("need", Shapes.Capability, "The feature, with its level if it has levels."),
        new("any-of", Shapes.ListOf(Shapes.Capability), "Several, in the order in which the title tries them."),
        .. AboutANeed,
    ])
    { OneGroup = [["need"], ["any-of"]] };

    private static readonly Shape NeedsOfOneStrength = new Shape.Named("needs-of-one-strength");
    private static readonly Shape NeedsOfOneStrengthDefined = new Shape.Either(
    [
        Shapes.Capability,
        new Shape.List(new Shape.Either([Shapes.Capability, ListedNeed])),
        new Shape.Entries(new Shape.Either([Shapes.Text, new Shape.Map(AboutANeed)]), NamesAreIds: false, MayBeEmpty: true, Known: "known-features"),
    ]);

    private static readonly Shape.Map Needs = new(
    [
        new("must", NeedsOfOneStrength, "Refuses, crashes or is unusable without it."),
        new("severe", NeedsOfOneStrength, "A severe loss without it."),
        new("cosmetic", NeedsOfOneStrength, "A cosmetic loss without it."),
        new("ungraded", NeedsOfOneStrength, "Runs without it; nobody graded how badly it shows."),
        new("bonus", NeedsOfOneStrength, "Nice to have, no loss without it."),
        new("unknown", NeedsOfOneStrength, "Nobody knows what happens without it."),
        new("none", Shapes.ListOf(Shapes.Capability), "Features that the title does not need although its engine does."),
    ]);

    private static readonly Shape.Map Defect = new(
    [
        new Key("effect", Shapes.Text, "What happens.").Required,
        new("if-present", Shapes.Capability, "The feature whose presence breaks it."),
        .. SupplyShapes.Scope,
        new("wrapper", Shapes.Text, "The wrapper version it happens with: duskglass@1.4. If absent: native routes only."),
        .. Shapes.Evidence,
    ]);

    private static readonly Shape.Map Preset = new(
    [
        new Key("name", Shapes.Text, "What the title calls it.").Required,
        new Key("textures", Shapes.Size, "Size of the textures.").Required,
        new("format", Shapes.Word(Words.TextureFormats), "Their format. If absent: 16-bit."),
        new("measured", Shapes.YesNo, "Whether the size was measured; else it is an estimate."),
    ]);

    private static readonly Shape.Map Memory = new(
    [
        new("lowest", Shapes.Mode, "The lowest mode. If absent: 640x480."),
        new("depths", Shapes.ListOf(Shapes.Depth), "Colour depths. If absent: 16."),
        new("back-buffers", Shapes.Whole(0, 4), "1 for double buffering, 2 for triple. If absent: 1."),
        new("depth-buffer", new Shape.Word(["none", "16", "24", "32", "as-colour"]), "Bits of the depth buffer. If absent: as-colour."),
        new("presets", new Shape.List(Preset), "Texture settings, smallest first."),
    ]);

    private static readonly IReadOnlyList<Key> AboutARenderer =
    [
        new("api", Shapes.Api, "API and level asked of the driver, such as direct3d 6."),
        new("software", Shapes.YesNo, "Yes where the processor draws."),
        new("runtime", Shapes.Api, "The runtime it needs on the system. If absent: as api."),
        new("os", Shapes.ListOf(Shapes.Os), "Systems on which this path exists. If absent: the title's."),
        new("name", Shapes.Text, "What the title calls it."),
        new("needs", new Shape.Named("needs"), "What it asks of card and driver, by strength. Closed: what is not written is not needed."),
        new("defects", new Shape.List(new Shape.Named("defect")), "What stops it even if all needs are met."),
        new("memory", new Shape.Named("memory-use"), "How it uses video memory."),
        .. Shapes.Evidence,
    ];

    private static readonly Shape.Map EngineRenderer = new(AboutARenderer);

    private static readonly Shape TitleRenderer = new Shape.Either(
    [
        new Shape.Word(["like-engine"]),
        new Shape.Map([new("like-engine", Shapes.Text, "The engine's renderer it builds on."), .. AboutARenderer]),
    ]);

    /// <summary>What several of them share.</summary>
    public static IEnumerable<(string Name, Shape Shape)> Definitions =>
        [("needs-of-one-strength", NeedsOfOneStrengthDefined), ("needs", Needs), ("defect", Defect), ("memory-use", Memory)];

    private static readonly Shape.Map Sighting = new(
    [
        new Key("processor", Shapes.Text, "The processor's family.").Required,
        new Key("mhz", Shapes.Number(1, 10_000), "Its clock in MHz.").Required,
        new Key("works", Shapes.YesNo, "Whether the title worked.").Required,
        .. Shapes.Evidence,
    ]);

    private static readonly Shape.Map Hazard = new(
    [
        new Key("kind", Shapes.Word(Words.HazardKinds), "What goes wrong.").Required,
        new Key("effect", Shapes.Text, "What happens.").Required,
        new("follows", Shapes.Word(Words.HazardCauses), "What it follows. If absent: processor."),
        new("highest-fps", Shapes.Number(1, 1000), "The frame rate it bears, with follows: frame-rate."),
        new("remedy", Shapes.Text, "A limiter or patch."),
        new("seen", new Shape.List(Sighting), "Where it was seen to work or fail."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Engine = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("renderers", new Shape.Entries(EngineRenderer, NamesAreIds: true), "Its graphics paths."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Title = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("version", Shapes.Text, "The version that the statements are about."),
        new("year", Shapes.Year, "Of release."),
        new("genre", Shapes.Text, "In a word."),
        new("engine", Shapes.Text, "Id of an engine whose needs it shares."),
        new("os", Shapes.ListOf(Shapes.Os), "Systems of renderers that name none."),
        new("renderers", new Shape.Entries(TitleRenderer, NamesAreIds: true), "Its graphics paths. Closed: paths that are not written do not count. If absent: all of the engine's."),
        new("hazards", new Shape.List(Hazard), "What a fast machine does to it."),
        new("notes", Shapes.Text, "Remarks, in Markdown."),
        .. Shapes.Evidence,
    ])
    { AtLeastOne = ["renderers", "engine"] };
}
