using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>Rigs, libraries, observations and facts on their own.</summary>
internal static class BenchShapes
{
    private static readonly Shape.Map Slot = new(
    [
        new Key("bus", new Shape.Named("bus"), "Id of the bus.").Required,
        new("volts", Shapes.ListOf(Shapes.Volts), "Voltages that the main board's documents state."),
        new("speed", Shapes.Speed, "Highest transfer mode."),
        new("key", Shapes.Volts, "The voltage its key stands for. If absent: open, or nobody looked."),
    ]);

    public static readonly Shape.Map Rig = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("processor", new Shape.Map(
        [
            new("family", Shapes.Text, "For timing thresholds."),
            new("clock", Shapes.Clock, "Such as 450 MHz."),
            new("cores", Shapes.Whole(1, 64), "How many."),
        ]), "The processor."),
        new("memory", Shapes.Size, "Main memory."),
        new("chipset", Shapes.Text, "In words."),
        new("sound", Shapes.Text, "In words."),
        new("slots", new Shape.List(Slot), "Slots for cards, as the main board's documents state them."),
        new("monitor", new Shape.Map(
        [
            new Key("name", Shapes.Text, "Name for people.").Required,
            new("highest", Shapes.Mode, "Highest mode that its documents allow."),
            new("refresh", Shapes.Refresh, "Rate in use."),
            new("inputs", Shapes.ListOf(Shapes.Text), "Such as vga."),
        ]), "The monitor. If absent: its limits are not known."),
        new("power", Shapes.ListOf(Shapes.Text), "Plugs that are free."),
        new("os", Shapes.ListOf(Shapes.Os), "Systems installed."),
        new("notes", Shapes.Text, "Remarks, in Markdown."),
    ]);

    private static readonly Shape.Map Entry = new(
    [
        new("weight", Shapes.Number(0, 1000), "How much the title counts. If absent: 1."),
        new("must", Shapes.YesNo, "Yes: a certain failure eliminates a card."),
        new("tolerance", Shapes.Word(Words.Tolerances), "The worst loss a must-have may show. If absent: cosmetic."),
        new("preset", Shapes.Text, "The texture preset that is wanted. If absent: the highest that fits."),
    ]);

    private static readonly Shape.Map Policy = new(
    [
        new("os", new Shape.Either([new Shape.Word(["any"]), Shapes.Os, new Shape.List(Shapes.Os)]), "any, or a list of systems that may be used. If absent: any."),
        new("wrappers", Shapes.ListOf(Shapes.Text), "any, none, or a list of wrappers."),
        new("forced", Shapes.YesNo, "Whether drivers may be forced onto cards they do not list."),
        new("software", Shapes.YesNo, "Whether software rendering satisfies a must-have."),
        new("one-driver", Shapes.YesNo, "Whether one driver for each system has to do. If absent: yes."),
        new("mode", new Shape.Either([new Shape.Word(["lowest"]), Shapes.Mode]), "Wanted mode. If absent: lowest, each renderer's."),
        new("depth", new Shape.Either([new Shape.Word(["lowest"]), Shapes.Depth]), "Wanted colour depth. If absent: lowest, each renderer's."),
        new("samples", Shapes.Whole(1, 16), "Samples a pixel."),
        new("fps-floor", new Shape.Either([new Shape.Word(["none"]), Shapes.Number(1, 1000)]), "none, or frames a second below which it counts as too slow."),
        new("worth", new Shape.Map(
        [
            new("severe", Shapes.Number(0, 1), "What is left after one severe loss. If absent: 0.5."),
            new("cosmetic", Shapes.Number(0, 1), "What is left after one cosmetic loss. If absent: 0.8."),
        ]), "What a loss leaves of a title's worth."),
    ]);

    public static readonly Shape.Map Library = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new Key("titles", new Shape.Either(
        [
            new Shape.List(Shapes.Text),
            new Shape.Entries(new Shape.Either([Shapes.Number(0, 1000), Entry]), NamesAreIds: false, MayBeEmpty: true),
        ]), "Titles to weights or long forms, or a list of titles that weigh alike.").Required,
        new("policy", Policy, "What is allowed and wanted."),
        new("notes", Shapes.Text, "Remarks, in Markdown."),
    ]);

    /// <summary>What was watched, and with what.</summary>
    private static readonly IReadOnlyList<Key> Route =
    [
        new Key("title", Shapes.Text, "Id of the title.").Required,
        new("renderer", Shapes.Text, "Id of its renderer; may be left out where the title has one only."),
        new("card", Shapes.Text, "Id of the card."),
        new("specimen", Shapes.Text, "Id of the board; it brings its card."),
        new("driver", Shapes.Text, "A version: ox-9x 1.02."),
        new("os", Shapes.Os, "The operating system."),
        new("mode", Shapes.Mode, "Such as 800x600."),
        new("depth", Shapes.Depth, "Bits a pixel."),
        new("rig", Shapes.Text, "Id of the rig."),
        new("wrapper", Shapes.Text, "none, or a version such as duskglass@1.4. If absent: counts for both."),
    ];

    private static readonly IReadOnlyList<Key> ByWhom =
    [
        new("note", Shapes.Text, "A remark."),
        new("by", Shapes.Text, "Who saw it; a pseudonym does."),
        .. Shapes.Evidence,
    ];

    public static readonly Shape.Map Observation = new(
    [
        .. Route,
        new("runs", Shapes.YesNo, "Whether it ran."),
        new("seen", new Shape.Entries(Shapes.Word(Words.SupportsSeen), NamesAreIds: false, Known: "known-features"), "Feature to yes, emulated, broken or no."),
        new("date", Shapes.Date, "When."),
        .. ByWhom,
    ])
    { AtLeastOne = ["runs", "seen"] };

    public static readonly Shape.Map Capture = new(
    [
        .. Route.Select(key => key.Name switch
        {
            "driver" or "os" => key.Required,
            "wrapper" => key with { Meaning = "none, or a version such as duskglass@1.4. If absent: not stated." },
            _ => key,
        }),
        new Key("scene", Shapes.Text, "The place in the title, in words that are the same for both pictures of a pair.").Required,
        new Key("picture", Shapes.Text, "A PNG or JPEG file beside this file or in a folder below it: captures/ferry.png.").Required,
        new Key("kind", Shapes.Word(Words.CaptureKinds), "How it was taken: a frame grab of a program, a capture device at the card's output, or a camera at the screen.").Required,
        new Key("alt", Shapes.Text, "What it shows, for those who do not see it.").Required,
        new("loses", Shapes.ListOf(Shapes.Capability), "What is seen to be missing. If absent: it is a baseline."),
        new("baseline", Shapes.Text, "Id of the capture that shows the same scene without the loss."),
        new Key("date", Shapes.Date, "When it was taken.").Required,
        .. ByWhom,
    ])
    { AtLeastOne = ["card", "specimen"] };

    public static readonly Shape.Map Fact = new(
    [
        .. SupplyShapes.Scope,
        new("note", Shapes.Text, "A remark for people."),
        .. Shapes.Evidence,
    ])
    { Others = new Shape.Named("statement-in-anything"), KnownOthers = "known-supply" };
}
