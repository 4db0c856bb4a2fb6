using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>The collection's own name, sources, and the words of the trade.</summary>
internal static class VocabularyShapes
{
    public static readonly Shape.Map Collection = new(
    [
        new Key("name", Shapes.Text, "For headings.").Required,
        new("note", Shapes.Text, "What its owner says of it, in Markdown."),
        new("currency", Shapes.Text, "The currency its owner counts in: three letters as in ISO 4217."),
        new("builds-on", Shapes.ListOf(Shapes.Text), "Folders of other collections whose entities and facts this one takes over, relative to this one."),
    ]);

    public static readonly Shape.Map Source = new(
    [
        new Key("text", Shapes.Text, "What to print.").Required,
        new("link", Shapes.Link, "An http or https address."),
        new("by", Shapes.Text, "Whose word it is: an id of 'people', or a pseudonym."),
        new("grade", Shapes.Grade, "The grade of statements that name this source. If absent: documented."),
    ]);

    public static readonly Shape.Map Person = new(
    [
        new("name", Shapes.Text, "The name."),
        new("name-may-be-shown", Shapes.YesNo, "Yes: the person agreed to be named in print. If absent: no, and the id is printed."),
    ]);

    private static readonly Shape.Map OpenGl = new(
    [
        new("extensions", Shapes.ListOf(Shapes.Text), "Each is enough by itself."),
        new("core", Shapes.Text, "The first version that contains it."),
        new("limit", Shapes.Text, "The limit whose value is the level."),
    ]);

    private static readonly Shape.Map Direct3D = new(
    [
        new Key("generation", Shapes.Whole(7, 9), "7 (also older), 8 or 9.").Required,
        new Key("field", Shapes.Text, "A member of the capability structure.").Required,
        new("constant", Shapes.Text, "The name of the bits."),
        new("value", Shapes.Bits, "Their value, such as 0x100."),
        new("inverted", Shapes.YesNo, "Yes: set means missing."),
        new("level", Shapes.Text, "The level that it shows. If absent: the feature as a whole."),
        new("channels", new Shape.List(Shapes.Whole(0, 32)), "Direct3D 7: bits of red, green, blue and alpha of a texture format."),
    ]);

    private static readonly IReadOnlyList<Key> AboutAFeature =
    [
        new("levels", Shapes.ListOf(Shapes.Text), "Its levels, lowest first. If absent: a flag."),
        new("unit", Shapes.Text, "What a level counts."),
        new("meaning", Shapes.Text, "What it is."),
        new("missing", Shapes.Text, "What a viewer sees without it."),
        new("implies", Shapes.ListOf(Shapes.Capability), "Features that come with it."),
        new("opengl", OpenGl, "How OpenGL reports it."),
        new("direct3d", new Shape.List(Direct3D), "How Direct3D reports it; each sign is enough by itself."),
        .. Shapes.Evidence,
    ];

    public static readonly Shape.Map Feature = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new Key("family", Shapes.Text, "Groups features.").Required,
        .. AboutAFeature,
    ]);

    public static readonly Shape.Map Api = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("runtime", Shapes.YesNo, "Yes where the operating system must be able to have it."),
        .. AboutAFeature,
    ]);

    private static readonly Shape RuntimeLimit = new Shape.Either(
    [
        Shapes.Text,
        new Shape.Map([new Key("highest", Shapes.Text, "The highest level, or none.").Required, .. Shapes.Evidence]),
    ]);

    private static readonly Shape.Map Limit = new(
    [
        new Key("kind", Shapes.Word(Words.LimitKinds), "memory in MiB, processors, or disk in decimal gigabytes.").Required,
        new Key("text", Shapes.Text, "The limit in words.").Required,
        new("amount", Shapes.Whole(1, int.MaxValue), "The limit as a number."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Os = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("dos", Shapes.YesNo, "Yes where BIOS and VBE extension take the driver's place."),
        new("runtimes", new Shape.Entries(Shapes.ListOf(RuntimeLimit), NamesAreIds: false, MayBeEmpty: true, Known: "known-apis"), "API to its highest level, or none."),
        new("limits", new Shape.List(Limit), "What it cannot go beyond."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Bus = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("meaning", Shapes.Text, "What it is."),
        new("peak", Shapes.Rate, "Peak rate, such as 533 MB/s of 10^6 bytes."),
        .. Shapes.Evidence,
    ]);
}
