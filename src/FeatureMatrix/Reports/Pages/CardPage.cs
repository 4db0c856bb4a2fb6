using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>A title that loses a feature, as a card's page shows it.</summary>
public sealed record LostIn(string TitleId, string TitleName, string Strength, string StrengthText, string Effect, string WhatToDo);

/// <summary>A feature that a card loses, as its page shows it.</summary>
public sealed record LostFeature(string FeatureId, string Name, IReadOnlyList<LostIn> Titles, IReadOnlyList<NamedText> Costs);

/// <summary>A title that does not run on a card, as its page shows it.</summary>
public sealed record StoppedTitle(Tile Tile, string Why, string WhatToDo);

/// <summary>A setup of a card with its titles by tone.</summary>
public sealed record CardSetup(string SetupId, string SystemId, string SystemName, string DriverId, string BranchId, string DriverName, bool IsForced, Bar Bar);

/// <summary>Everything about one card.</summary>
public sealed record CardPage
{
    /// <summary>The card.</summary>
    public required string Id { get; init; }

    /// <summary>The board's name.</summary>
    public required string Name { get; init; }

    /// <summary>The report in one sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>The policy in words.</summary>
    public required string PolicyText { get; init; }

    /// <summary>What the board is, line by line.</summary>
    public required IReadOnlyList<NamedText> Facts { get; init; }

    /// <summary>Remarks, Markdown.</summary>
    public required string Notes { get; init; }

    /// <summary>Its titles by tone.</summary>
    public required Bar Bar { get; init; }

    /// <summary>What it loses, the feature that hurts most first.</summary>
    public required IReadOnlyList<LostFeature> Losses { get; init; }

    /// <summary>The titles that do not run on it.</summary>
    public required IReadOnlyList<StoppedTitle> Stopped { get; init; }

    /// <summary>Its cells, in the order of the titles.</summary>
    public required IReadOnlyList<Tile> Tiles { get; init; }

    /// <summary>Its setups.</summary>
    public required IReadOnlyList<CardSetup> Setups { get; init; }

    /// <summary>What is not known, and what would settle it.</summary>
    public required IReadOnlyList<NamedText> Questions { get; init; }

    /// <summary>Cautions to print beside the advice.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The losses as a table, for every format.</summary>
    public required Table LossTable { get; init; }

    /// <summary>Which frame buffers it holds.</summary>
    public required Table MemoryTable { get; init; }

    /// <summary>The titles' texture presets on it.</summary>
    public required Table PresetTable { get; init; }

    /// <summary>Who describes it.</summary>
    public required string EvidenceText { get; init; }

    /// <summary>The page of a card.</summary>
    public static CardPage Of(Decisions decisions, CardReport report, MemoryReport memory)
    {
        var card = report.Card;
        var setups = CoverageReport.BySetup(decisions, [card]);
        return new CardPage
        {
            Id = card.Id,
            Name = card.Name,
            Headline = report.Headline,
            PolicyText = report.PolicyText,
            Facts = FactsOf(card),
            Notes = card.Notes,
            Bar = Bar.Of(CoverageReport.ByCard(decisions, [card]).Columns[0]),
            Losses = report.Losses.Select(LossOf).ToList(),
            Stopped = report.DoesNotRun.Select(title => new StoppedTitle(title.Cell.Tile, title.Why, Names.Sentence(Remedies.Line(title.Remedies)))).ToList(),
            Tiles = report.Cells.Select(cell => cell.Tile).ToList(),
            Setups = setups.Columns.Select(column => SetupOf(column)).ToList(),
            Questions = report.Questions.Select(question => new NamedText(
                question.Question, $"{question.HowToSettle} Touches {Names.List(question.Titles.Select(title => title.Name).ToList())}.")).ToList(),
            Cautions = report.Cautions,
            LossTable = report.ToTable(),
            MemoryTable = memory.ToTable(),
            PresetTable = memory.PresetTable(),
            EvidenceText = Names.Sentence(FactWording.Evidence(card.Evidence)),
        };
    }

    private static LostFeature LossOf(FeatureLoss loss) => new(
        loss.Feature.Id, loss.Name,
        loss.Titles.Select(title => new LostIn(
            title.Cell.Title.Id, title.Cell.Title.Name, Tile.MarkOf(title.Loss.Strength), Names.Of(title.Loss.Strength), title.Effect,
            Names.Sentence(Remedies.Line(title.Remedies)))).ToList(),
        loss.Costs.Select(cost => new NamedText(cost.What, cost.Price)).ToList());

    private static CardSetup SetupOf(CoverageColumn column) => new(
        Tile.IdOf(column.Setup!), column.Setup!.Os.Id, column.Setup.Os.Name, Tile.IdOf(column.Setup.Driver),
        column.Setup.Driver.Kind == DriverKind.Package ? column.Setup.Driver.Branch.Id : "", Names.Of(column.Setup.Driver), column.Setup.Install == Install.Forced, Bar.Of(column));

    /// <summary>What is on record of a board itself.</summary>
    internal static IReadOnlyList<NamedText> FactsOf(Card card)
    {
        var facts = new List<NamedText>();
        Add("Maker", card.Maker);
        Add("Year", card.Year is { } year ? year.ToString(CultureInfo.InvariantCulture) : "");
        Add("Chip", $"{card.Chip.Name}{(card.Chip.Maker.Length > 0 ? $", made by {card.Chip.Maker}" : "")}{(card.Chip.Generation.Length > 0 ? $"; generation: {card.Chip.Generation}" : "")}");
        Add("Memory", MemoryReport.MemoryText(card.Memory));
        Add("Clocks", Clocks(card));
        Add("Kind", card.IsAddIn ? $"3D-only add-in{(card.Companion is { } companion ? $", paired with {companion.Name}" : "")}" : "");
        if (card.Connector is { } connector)
        {
            Add("Bus", connector.Bus.Name + (connector.Speed is { } speed ? $", up to {speed}x" : ""));
            Add("Documented signalling", connector.DocumentedVolts.Count > 0 ? Volts(connector.DocumentedVolts) : "no document seen");
            Add("Key notches", connector.Notches.Count > 0 ? Volts(connector.Notches) : "nobody looked");
            Add("Power plug", connector.PowerPlug switch { null => "not recorded", "" => "none", var plug => plug });
            Add("Outputs", string.Join(", ", connector.Outputs));
        }
        else
        {
            Add("Bus", "not recorded");
        }

        Add("Hardware IDs", string.Join(", ", card.HardwareIds));
        Add("Prices", string.Join("; ", card.Prices.Select(PriceText)));
        return facts;

        void Add(string name, string text)
        {
            if (text.Length > 0)
                facts.Add(new NamedText(name, text));
        }
    }

    private static string Clocks(Card card)
    {
        var parts = new List<string>();
        if (card.CoreMegahertz is { } core)
            parts.Add($"chip {Number(core)} MHz");
        if (card.MemoryMegahertz is { } memory)
            parts.Add($"memory {Number(memory)} MHz");
        return string.Join(", ", parts);
    }

    private static string Volts(IReadOnlyList<double> volts) => Names.List(volts.Select(volt => $"{Number(volt)} V").ToList());

    private static string PriceText(Price price)
    {
        var amount = price.Low == price.High ? Amount(price.Low) : $"{Amount(price.Low)} to {Amount(price.High)}";
        var date = price.Date is { } day ? $", {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : "";
        var condition = price.Condition.Length > 0 ? $", {price.Condition}" : "";
        return $"{(price.Sold ? "sold" : "asked")} {amount} {price.Currency}{condition}{date}";
    }

    private static string Amount(decimal amount) => amount.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
