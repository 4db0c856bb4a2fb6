using System.Text.RegularExpressions;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Cards and specimens.</summary>
internal sealed partial class CardReader(Draft draft, SystemReader systems)
{
    private FaultList Faults => draft.Faults;

    /// <summary>One card, without companion, BIOS and supply; null where its chip is missing.</summary>
    public Card? Build(Shelf<Card>.Item item)
    {
        var fields = item.Fields;
        fields.Expect("companion", "bios", "supply");
        var provenance = Provenance.Of(item, draft);
        var clocks = fields.Inner("clocks");
        var chip = fields.RequiredWord("chip") is { } word ? draft.Chips.Find(word, Faults) : null;
        var card = new Card
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            Maker = fields.Text("maker"),
            Year = fields.Value("year", Quantities.Year),
            Chip = chip!,
            Memory = Memory(fields.Inner("memory")),
            CoreMegahertz = clocks?.Value("core", Quantities.Megahertz),
            MemoryMegahertz = clocks?.Value("memory", Quantities.Megahertz),
            Connector = Connector(fields.Inner("connector")),
            HardwareIds = [.. fields.List("hardware-ids").Select(HardwareId).OfType<string>()],
            IsAddIn = fields.YesNo("add-in") ?? false,
            OsSupport = systems.Support(fields.Entries("os"), provenance),
            DriversCompleteFor = draft.References.All(draft.Oses, fields.List("drivers-complete")).ToHashSet(),
            Prices = [.. fields.Items("prices").Select(Price).OfType<Price>()],
            Cautions = [.. fields.List("cautions").Select(caution => caution.Text.Trim())],
            Notes = fields.Text("notes"),
            Evidence = provenance.At(item.Origin),
        };
        clocks?.Done();
        return chip is null ? null : card;
    }

    /// <summary>The companion of an add-in, once all cards exist.</summary>
    public void Link(Shelf<Card>.Item item, Card card)
    {
        var word = item.Fields.Word("companion");
        if (word is not null && draft.Cards.Find(word, Faults) is { } companion)
        {
            if (!card.IsAddIn)
                Faults.Add(FaultTexts.CompanionOfNoAddIn(word.Origin));
            else if (companion == card || companion.IsAddIn)
                Faults.Add(FaultTexts.CompanionIsAddIn(word.Origin, companion));
            card.Link(companion);
        }

        if (card.IsAddIn && word is null)
            Faults.Add(FaultTexts.AddInAlone(item.Origin, item.Fields.Label));
    }

    /// <summary>The statements about one card.</summary>
    public IReadOnlyList<SupplyFact> Supply(Shelf<Card>.Item item, Card card) => draft.Supply.Read(
        item.Fields.Entries("supply"), new Scope { Card = card }, null, Provenance.Of(item, draft));

    /// <summary>One physical board; null where its card is missing.</summary>
    public Specimen? Specimen(Shelf<Specimen>.Item item)
    {
        var fields = item.Fields;
        var card = fields.RequiredWord("card") is { } word ? draft.Cards.Find(word, Faults) : null;
        var specimen = new Specimen
        {
            Id = item.Id,
            Card = card!,
            Bios = fields.Text("bios"),
            Condition = fields.Text("condition"),
            Owned = fields.YesNo("owned") ?? false,
        };
        return card is null ? null : specimen;
    }

    private VideoMemory? Memory(Fields? fields)
    {
        if (fields is null)
            return null;
        var unified = fields.Value("unified", Quantities.Bytes);
        var frame = fields.Value("frame", Quantities.Bytes);
        var texture = fields.Value("texture", Quantities.Bytes);
        var fromSystem = fields.YesNo("textures-from-system");
        fields.Done();
        var isUnified = fields.Has("unified");
        var isSplit = fields.Has("frame") || fields.Has("texture");
        if (isUnified == isSplit)
        {
            Faults.Add(FaultTexts.NeitherOnePoolNorTwo(fields.Origin));
        }
        else if (isSplit && !fields.Has("frame"))
        {
            Faults.Add(FaultTexts.MissingKey(fields.Origin, "frame", fields.Label));
        }
        else if (isSplit && !fields.Has("texture"))
        {
            Faults.Add(FaultTexts.MissingKey(fields.Origin, "texture", fields.Label));
        }

        return (unified, frame, texture) switch
        {
            ({ } bytes, null, null) => new VideoMemory.Unified(bytes) { TexturesFromSystemMemory = fromSystem },
            (null, { } f, { } t) => new VideoMemory.Split(f, t) { TexturesFromSystemMemory = fromSystem },
            _ => null,
        };
    }

    private CardConnector? Connector(Fields? fields)
    {
        if (fields is null)
            return null;
        var bus = fields.RequiredWord("bus") is { } word ? draft.Buses.Find(word, Faults) : null;
        var connector = new CardConnector
        {
            Bus = bus!,
            DocumentedVolts = Volts(fields, "volts", Faults),
            Notches = Volts(fields, "notches", Faults),
            Speed = fields.Value("speed", Speed),
            PowerPlug = fields.Word("power")?.Text.Trim() switch
            {
                null => null,
                "none" => "",
                var plug => plug,
            },
            Outputs = [.. fields.List("outputs").Select(output => output.Text.Trim())],
        };
        fields.Done();
        return bus is null ? null : connector;
    }

    /// <summary>A transfer mode of AGP.</summary>
    public static int? Speed(Scalar word, string label, FaultList faults) =>
        Words.Read(word, label, [("1", 1), ("2", 2), ("4", 4), ("8", 8), ("16", 16)], faults);

    /// <summary>A list of voltages.</summary>
    public static IReadOnlyList<double> Volts(Fields fields, string key, FaultList faults) =>
        [.. fields.List(key).Select(word => Quantities.Volts(word, $"'{key}'", faults)).OfType<double>()];

    private string? HardwareId(Scalar word)
    {
        var text = word.Text.Trim();
        if (HardwareIdForm().IsMatch(text))
            return text;
        Faults.Add(FaultTexts.WrongForm(word.Origin, "'hardware-ids'", text, Forms.HardwareId));
        return null;
    }

    private Price? Price(Node node)
    {
        if (Fields.Of(node, "'prices'", Faults) is not { } fields)
            return null;
        var sold = fields.Value("sold", Quantities.Money);
        var asked = fields.Value("asked", Quantities.Money);
        var date = fields.Value("date", Quantities.Date);
        var condition = fields.Text("condition");
        if (fields.Has("sold") == fields.Has("asked"))
            Faults.Add(FaultTexts.NeitherSoldNorAsked(fields.Origin));
        fields.Done();
        return (sold ?? asked) is var (low, high, currency)
            ? new Price(low, high, currency, sold is not null, date, condition)
            : null;
    }

    [GeneratedRegex(
        @"^PCI\\VEN_[0-9A-F]{4}&DEV_[0-9A-F]{4}(&SUBSYS_[0-9A-F]{8})?(&REV_[0-9A-F]{2})?$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: 1000)]
    private static partial Regex HardwareIdForm();
}
