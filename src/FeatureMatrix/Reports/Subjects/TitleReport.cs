using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>A need as a title's page shows it.</summary>
/// <param name="FeatureId">The feature of the first choice.</param>
/// <param name="Name">What is needed, with alternatives.</param>
/// <param name="Strength">The strength in words.</param>
/// <param name="Effect">What it looks like without.</param>
/// <param name="EvidenceText">Grade and source.</param>
public sealed record NeedRow(string FeatureId, string Name, string Strength, string Effect, string EvidenceText);

/// <summary>A graphics path as a title's page shows it.</summary>
public sealed record RendererReport(string Name, string ApiText, string Systems, string MemoryText, IReadOnlyList<NeedRow> Needs, IReadOnlyList<NamedText> Defects);

/// <summary>Everything about one title.</summary>
public sealed record TitleReport
{
    /// <summary>The title.</summary>
    public required string Id { get; init; }

    /// <summary>The title's name.</summary>
    public required string Name { get; init; }

    /// <summary>Version, year, engine and genre in one line.</summary>
    public required string Line { get; init; }

    /// <summary>How it goes over all cards, in one sentence.</summary>
    public required string Headline { get; init; }

    /// <summary>Remarks, Markdown.</summary>
    public required string Notes { get; init; }

    /// <summary>Its cells, one for each card.</summary>
    public required IReadOnlyList<Tile> Tiles { get; init; }

    /// <summary>Its graphics paths.</summary>
    public required IReadOnlyList<RendererReport> Renderers { get; init; }

    /// <summary>What a fast machine does to it: rig and sentence.</summary>
    public required IReadOnlyList<NamedText> Timing { get; init; }

    /// <summary>What was seen of it, with grade, source and date.</summary>
    public required IReadOnlyList<string> Observations { get; init; }

    /// <summary>Cards against label, for every format.</summary>
    public required Table Table { get; init; }

    /// <summary>Who describes it.</summary>
    public required string EvidenceText { get; init; }

    /// <summary>The report of a title.</summary>
    public static TitleReport Of(Decisions decisions, Title title)
    {
        var cells = decisions.Catalog.Cards.Select(card => decisions.CellOn(title, card)).ToList();
        return new TitleReport
        {
            Id = title.Id,
            Name = title.Name,
            Line = LineOf(title),
            Headline = HeadlineOf(cells),
            Notes = title.Notes,
            Tiles = cells.Select(cell => cell.Tile).ToList(),
            Renderers = title.Renderers.Select(RendererOf).ToList(),
            Timing = decisions.Catalog.Rigs.SelectMany(rig => Resolving.TimingRule.On(title, rig)
                .Select(finding => new NamedText(rig.Name, Names.Sentence(TimingWording.Text(finding, CardSpeed.BeyondBearable(finding, decisions.Log)))))).ToList(),
            Observations = decisions.Catalog.Observations.Where(seen => seen.Renderer.Title == title)
                .Select(seen => Names.Sentence($"{Names.Of(seen.Renderer)}: {FactWording.Observation(seen)}{(seen.Note.Length > 0 ? $". {seen.Note}" : "")}")).ToList(),
            Table = new Table(
                title.Name, PolicyWording.Text(decisions.Policy), [new("Card"), new("Verdict"), new("Evidence")],
                cells.Select(cell => (IReadOnlyList<TableCell>)
                    [new TableCell(cell.Card.Name), new TableCell(cell.Label, null, cell.Tone), new TableCell(CellWording.Of(cell.Evidence))]).ToList()),
            EvidenceText = Names.Sentence(FactWording.Evidence(title.Evidence)),
        };
    }

    private static string LineOf(Title title) => string.Join(" · ", new[]
    {
        title.Version.Length > 0 ? $"version {title.Version}" : "",
        title.Year is { } year ? year.ToString(CultureInfo.InvariantCulture) : "",
        title.Genre,
        title.Engine.Length > 0 ? $"engine {title.Engine}" : "",
    }.Where(part => part.Length > 0));

    private static string HeadlineOf(List<Cell> cells) =>
        $"On {Names.Count(cells.Count, "card")}: " + string.Join("; ", Enum.GetValues<CellTone>()
            .Select(tone => (tone, count: cells.Count(cell => cell.Tone == tone))).Where(pair => pair.count > 0)
            .Select(pair => CellWording.Count(pair.tone, pair.count))) + ".";

    private static RendererReport RendererOf(Renderer renderer) => new(
        Names.Sentence(Names.Of(renderer)),
        renderer.Api is { } api ? Names.Api(api) : "software rendering, whatever the card",
        Names.List(renderer.Oses.Select(os => os.Name).ToList()),
        MemoryText(renderer.Memory),
        renderer.Needs.OrderByDescending(need => need.Strength == Strength.Unknown ? Strength.Ungraded : need.Strength).Select(NeedOf).ToList(),
        renderer.Defects.Select(defect => new NamedText(
            defect.Effect.Length > 0 ? Names.Sentence(defect.Effect) : "Known defect",
            $"{(defect.Scope == Scope.Everything ? "everywhere" : FactWording.Scope(defect.Scope))}{(defect.Wrapper is { } wrapper ? $", through {Names.Of(wrapper)}" : "")} ({FactWording.Evidence(defect.Evidence)})")).ToList());

    private static NeedRow NeedOf(Need need) => new(
        need.Choices[0].Feature.Id,
        Names.Sentence(Names.Of(need.Choices)) + (need.HardwareOnly ? ", in hardware" : "") + need.Condition switch
        {
            null => "",
            NeedCondition.AtDepth depth => $", at {depth.Bits.ToString(CultureInfo.InvariantCulture)} bit",
            NeedCondition.AtPreset preset => $", at preset {preset.Preset}",
            _ => throw new System.Diagnostics.UnreachableException(),
        },
        Names.Of(need.Strength),
        need.Effect.Length > 0 ? need.Effect : need.Choices[0].Feature.SeenWhenMissing,
        FactWording.Evidence(need.Evidence));

    private static string MemoryText(MemoryUse memory)
    {
        var presets = memory.Presets.Count == 0 ? "" : "; texture presets " + string.Join(", ", memory.Presets
            .Select(preset => $"{preset.Name} {Names.Mebibytes(preset.Bytes)}{(preset.IsMeasured ? "" : " (estimated)")}"));
        return $"from {memory.LowestMode} at {string.Join(" or ", memory.Depths)} bit{presets}";
    }
}
