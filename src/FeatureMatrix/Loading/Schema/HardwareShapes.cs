using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading.Schema;

/// <summary>Chips, cards, specimens, drivers and wrappers.</summary>
internal static class HardwareShapes
{
    public static readonly Shape.Map Chip = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new("maker", Shapes.Text, "Who made it."),
        new("generation", Shapes.Text, "For grouping, in a word."),
        new("year", Shapes.Year, "Year of the first board."),
        new("like", Shapes.Text, "Another chip whose statements this one shares, except about features of which it says something itself."),
        new("supply", SupplyShapes.Of("chip"), "What the chip has. A feature that nobody mentions is not known, never missing."),
        new("notes", Shapes.Text, "Remarks, in Markdown."),
        .. Shapes.Evidence,
    ]);

    private static readonly Shape OsAnswer = new Shape.Either(
    [
        Shapes.YesNoUnknown,
        new Shape.Map([new Key("is", Shapes.YesNoUnknown, "Whether it works there.").Required, .. Shapes.Evidence]),
    ]);

    public static readonly Shape OsAnswers = new Shape.Entries(OsAnswer, NamesAreIds: false, Known: "known-systems");

    private static readonly Shape.Map Memory = new(
    [
        new("unified", Shapes.Size, "One pool for frame and textures, such as 16 MiB."),
        new("frame", Shapes.Size, "The frame pool where there are two."),
        new("texture", Shapes.Size, "The texture pool where there are two; where several units keep their own copy, one unit's."),
        new("textures-from-system", Shapes.YesNo, "Whether textures may also lie in main memory over the bus. If absent: not known."),
    ])
    { OneGroup = [["unified"], ["frame", "texture"]] };

    private static readonly Shape.Map Connector = new(
    [
        new Key("bus", new Shape.Named("bus"), "Id of the bus.").Required,
        new("volts", Shapes.ListOf(Shapes.Volts), "Signalling voltages that the board's documents state. Voltage can do harm: write what was read, leave out what was not."),
        new("notches", Shapes.ListOf(Shapes.Volts), "The key notches in the card's edge, by the voltage each stands for. If absent: nobody looked."),
        new("speed", Shapes.Speed, "Highest transfer mode."),
        new("power", Shapes.Text, "The power plug it needs, such as drive-power; or none."),
        new("outputs", Shapes.ListOf(Shapes.Text), "Monitor outputs, such as vga."),
    ]);

    private static readonly Shape.Map Bios = new(
    [
        new Key("version", Shapes.Text, "As the board prints it.").Required,
        new("supply", SupplyShapes.Of("bios"), "What the BIOS supplies in DOS."),
        new("released", Shapes.Date, "When."),
        new("notes", Shapes.Text, "Remarks."),
        .. Shapes.Evidence,
    ]);

    private static readonly Shape.Map Price = new(
    [
        new("sold", Shapes.Money, "A sale that was seen: 18..25 EUR or 20 EUR."),
        new("asked", Shapes.Money, "A price that was asked."),
        new("date", Shapes.Date, "When."),
        new("condition", Shapes.Text, "Of the board."),
    ])
    { OneGroup = [["sold"], ["asked"]] };

    public static readonly Shape.Map Card = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new Key("chip", Shapes.Text, "Id of its chip.").Required,
        new("maker", Shapes.Text, "Who sold it."),
        new("year", Shapes.Year, "First sold."),
        new("memory", Memory, "Video memory. If absent: every memory question is unknown."),
        new("clocks", new Shape.Map([new("core", Shapes.Clock, "Such as 90 MHz."), new("memory", Shapes.Clock, "Such as 100 MHz.")]), "Clocks."),
        new("connector", Connector, "What the card's edge and its documents show."),
        new("hardware-ids", Shapes.ListOf(Shapes.HardwareId), "Windows hardware IDs, in single quotes."),
        new("add-in", Shapes.YesNo, "Yes for a 3D-only board that needs a 2D card beside it."),
        new("companion", Shapes.Text, "Id of the 2D card that an add-in is paired with."),
        new("os", OsAnswers, "Support beyond driver lists: system to yes, no or unknown."),
        new("drivers-complete", Shapes.ListOf(Shapes.Os), "Systems for which all drivers of this card are in the collection. If absent: an unrecorded driver may exist."),
        new("bios", new Shape.Either([Bios, new Shape.List(new Shape.Either([Bios]))]), "One BIOS version or several, oldest first. It takes the driver's place in DOS."),
        new("prices", new Shape.List(Price), "What it costs."),
        new("cautions", Shapes.ListOf(Shapes.Text), "This board's own cautions, for people."),
        new("supply", SupplyShapes.Of("card"), "What holds for this card and not for others with its chip."),
        new("notes", Shapes.Text, "Remarks, in Markdown."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Specimen = new(
    [
        new Key("card", Shapes.Text, "Id of the card that this board is.").Required,
        new("bios", Shapes.Text, "Version of the BIOS it carries."),
        new("condition", Shapes.Text, "Condition and repairs."),
        new("owned", Shapes.YesNo, "Whether the collection's owner has it."),
    ]);

    private static readonly Shape.Map Forced = new(
    [
        new Key("card", Shapes.Text, "Id of the card it was forced onto.").Required,
        new Key("works", Shapes.YesNoUnknown, "Whether that worked.").Required,
        .. Shapes.Evidence,
    ]);

    private static readonly Shape.Map Version = new(
    [
        new Key("version", Shapes.Text, "As its publisher wrote it.").Required,
        new("released", Shapes.Date, "When."),
        new("os", Shapes.ListOf(Shapes.Os), "Systems it installs on. If absent: the branch's."),
        new("lists", Shapes.ListOf(Shapes.Text), "Cards that the package lists; a sibling that is not among them can only be forced. If absent: the branch's."),
        new("offers", SupplyShapes.Offers("version"), "API to level; adds to the branch's and replaces the same APIs."),
        new("supply", SupplyShapes.Of("version"), "Statements about this version."),
        new("forced", new Shape.List(Forced), "What is known of forcing it onto other cards."),
        new("software", Shapes.YesNo, "Whether the processor draws and not the card."),
        new("sha256", Shapes.Sha256, "Checksum of the package."),
        new("notes", Shapes.Text, "Remarks."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Driver = new(
    [
        new Key("name", Shapes.Text, "Name of the branch.").Required,
        new Key("versions", new Shape.List(new Shape.Either([Shapes.Text, Version])), "Its versions, oldest first: texts, or maps.").Required,
        new("maker", Shapes.Text, "Who published it."),
        new("kind", Shapes.Word(Words.DriverKinds), "package, or vbe-extension for one that is loaded in DOS."),
        new("os", Shapes.ListOf(Shapes.Os), "Systems of versions that say nothing of their own."),
        new("lists", Shapes.ListOf(Shapes.Text), "Cards that the packages list."),
        new("offers", SupplyShapes.Offers("version"), "API to level."),
        new("supply", SupplyShapes.Of("driver"), "Statements about all versions, or with from and to about some."),
        .. Shapes.Evidence,
    ]);

    private static readonly Shape WrapperNeed = new Shape.Either(
    [
        Shapes.Capability,
        new Shape.Map([new Key("need", Shapes.Capability, "The feature.").Required, .. Shapes.Evidence]),
    ]);

    private static readonly Shape.Map WrapperVersion = new(
    [
        new Key("version", Shapes.Text, "As its author wrote it.").Required,
        new Key("offers", SupplyShapes.Offers("anything"), "APIs for titles, each at the highest level it understands.").Required,
        new Key("on", Shapes.Api, "The API and level that it asks of the card's driver, such as direct3d 7.").Required,
        new("runtime", Shapes.Api, "The runtime that it needs on the system. If absent: as on."),
        new("supplies", SupplyShapes.Of("anything"), "What it supplies by itself."),
        new("passes", Shapes.ListOf(Shapes.Capability), "What it hands through from card and driver."),
        new("complete", Shapes.YesNo, "Yes: what is neither supplied nor passed is missing. If absent: it is not known."),
        new("needs", new Shape.List(WrapperNeed), "What it cannot do without."),
        new("os", OsAnswers, "System to yes, no or unknown."),
        new("memory", Shapes.Size, "Video memory it needs at least."),
        new("costs", Shapes.Text, "What it costs, for people."),
        new("sha256", Shapes.Sha256, "Checksum."),
        .. Shapes.Evidence,
    ]);

    public static readonly Shape.Map Wrapper = new(
    [
        new Key("name", Shapes.Text, "Name for people.").Required,
        new Key("versions", new Shape.List(WrapperVersion), "Its versions, oldest first.").Required,
        new("notes", Shapes.Text, "Remarks, in Markdown."),
        .. Shapes.Evidence,
    ]);
}
