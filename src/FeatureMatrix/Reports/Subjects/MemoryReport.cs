using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>One way of laying out a frame buffer at a mode, and whether the card's pool holds it.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Depth">Colour depth in bits.</param>
/// <param name="BackBuffers">1 for double buffering, 2 for triple.</param>
/// <param name="DepthBits">Depth-buffer bits; 0 for none.</param>
/// <param name="Samples">Samples a pixel.</param>
/// <param name="FrameBytes">The frame buffer in bytes, a lower bound.</param>
/// <param name="Fits">Whether the bound fits; null where the card's memory is not recorded.</param>
/// <param name="LeftForTextures">Bytes left for textures; null where it does not fit or memory is not recorded.</param>
public sealed record MemoryRow(
    Mode Mode, int Depth, int BackBuffers, int DepthBits, int Samples, long FrameBytes, bool? Fits, long? LeftForTextures);

/// <summary>Which frame buffers a card holds and what is left for textures (rules R10 and R11).</summary>
public sealed record MemoryReport(Card Card, IReadOnlyList<MemoryRow> Rows, IReadOnlyList<(Title Title, Renderer Renderer, TextureFit Fit, DrawMode Draw)> Titles)
{
    /// <summary>The caution that belongs to every table of high modes.</summary>
    public const string ModeCaution =
        "Before you set a high mode, check the monitor's documented limits: wrong timings can damage an old monitor.";

    private static readonly (int Colour, int Depth)[] Depths = [(16, 0), (16, 16), (32, 0), (32, 24), (32, 32)];
    private static readonly int[] BackBufferCounts = [1, 2];
    private static readonly int[] SampleCounts = [1, 2, 4];

    /// <summary>Every common mode at 16 and 32 bit, double and triple buffered, without and with depth, at 1, 2 and 4 samples.</summary>
    public static MemoryReport Of(Decisions decisions, Card card)
    {
        var rows = FrameBuffer.CommonModes
            .SelectMany(mode => Depths.SelectMany(depth => BackBufferCounts.SelectMany(back => SampleCounts
                .Select(samples => RowOf(card, mode, depth.Colour, back, depth.Depth, samples)))))
            .ToList();
        var titles = decisions.Titles
            .SelectMany(title => decisions.On(title, card).Headline.By.Take(1))
            .Where(finding => finding.Route.Renderer.Memory.Presets.Count > 0)
            .Select(finding => (finding.Route.Renderer.Title, finding.Route.Renderer, finding.Form.Textures, finding.Form.Draw)).ToList();
        return new MemoryReport(card, rows, titles);
    }

    /// <summary>The rows as a table.</summary>
    public Table ToTable() => new(
        $"Memory of {Card.Name}",
        $"{MemoryText(Card.Memory)}. Frame buffers are lower bounds: a board may need more, so only \"does not fit\" is certain. {ModeCaution}",
        [new("Mode"), new("Colour", true), new("Buffers"), new("Depth", true), new("Samples", true), new("Frame buffer"), new("Fits"), new("Left for textures")],
        Rows.Select(row => (IReadOnlyList<TableCell>)
        [
            new TableCell(row.Mode.ToString()), Number(row.Depth), new TableCell(row.BackBuffers == 1 ? "double" : "triple"),
            Number(row.DepthBits), Number(row.Samples), new TableCell(Names.Mebibytes(row.FrameBytes), row.FrameBytes),
            new TableCell(row.Fits switch { true => "fits", false => "does not fit", null => "not known" }),
            row.LeftForTextures is { } left ? new TableCell(Names.Mebibytes(left), left) : TableCell.Empty,
        ]).ToList());

    /// <summary>The highest common mode that each card's frame buffer holds, by layout.</summary>
    public static Table HighestModes(IReadOnlyList<MemoryReport> cards) => new(
        "Memory", $"The highest common mode whose frame buffer fits, by layout. A lower bound: a board may need more. {ModeCaution}",
        [new("Layout"), .. cards.Select(card => new TableColumn(card.Card.Name))],
        [
            (IReadOnlyList<TableCell>)[new TableCell("Memory"), .. cards.Select(card => new TableCell(MemoryText(card.Card.Memory)))],
            .. Layouts.Select(layout => (IReadOnlyList<TableCell>)
            [
                new TableCell(LayoutText(layout)),
                .. cards.Select(card => new TableCell(HighestText(card.Rows.Where(row => (row.Depth, row.DepthBits, row.BackBuffers, row.Samples) == layout).ToList()))),
            ]),
        ]);

    private static IEnumerable<(int Colour, int Depth, int Back, int Samples)> Layouts =>
        from depth in Depths from back in BackBufferCounts from samples in SampleCounts select (depth.Colour, depth.Depth, back, samples);

    private static string LayoutText((int Colour, int Depth, int Back, int Samples) layout)
    {
        var depth = layout.Depth == 0 ? "no depth buffer" : $"{layout.Depth}-bit depth";
        var samples = layout.Samples == 1 ? "" : $", {layout.Samples} samples";
        return string.Create(CultureInfo.InvariantCulture, $"{layout.Colour} bit, {(layout.Back == 1 ? "double" : "triple")} buffered, {depth}{samples}");
    }

    private static string HighestText(List<MemoryRow> rows)
    {
        if (rows.TrueForAll(row => row.Fits is null))
            return "not known";
        return rows.Where(row => row.Fits == true).OrderBy(row => row.Mode.Pixels).Select(row => row.Mode.ToString()).LastOrDefault("none");
    }

    /// <summary>The titles' texture presets as a table.</summary>
    public Table PresetTable() => new(
        $"Texture presets on {Card.Name}", "The largest preset that fits at the mode each title is judged at; estimated unless measured.",
        [new("Title"), new("Path"), new("Mode"), new("Largest preset"), new("Left for textures")],
        Titles.Select(row => (IReadOnlyList<TableCell>)
        [
            new TableCell(row.Title.Name), new TableCell(Names.Of(row.Renderer)), new TableCell($"{row.Draw.Mode}, {row.Draw.Depth} bit"),
            new TableCell(PresetText(row.Fit)), new TableCell(row.Fit.BytesLeft is { } left ? Names.Mebibytes(left) : "not known"),
        ]).ToList());

    /// <summary>A card's memory in words.</summary>
    public static string MemoryText(VideoMemory? memory) => memory switch
    {
        null => "Memory not recorded",
        VideoMemory.Unified unified => $"{Names.Mebibytes(unified.Bytes)} shared by frame buffer and textures{Bus(memory)}",
        VideoMemory.Split split => $"{Names.Mebibytes(split.FrameBytes)} for the frame buffer, {Names.Mebibytes(split.TextureBytes)} for textures{Bus(memory)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Memory in a few words: <c>16.00 MiB</c>, <c>4.00 MiB and 8.00 MiB for textures</c>.</summary>
    public static string SizeText(VideoMemory? memory) => memory switch
    {
        null => "memory not recorded",
        VideoMemory.Unified unified => Names.Mebibytes(unified.Bytes),
        VideoMemory.Split split => $"{Names.Mebibytes(split.FrameBytes)} and {Names.Mebibytes(split.TextureBytes)} for textures",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Bus(VideoMemory memory) => memory.TexturesFromSystemMemory switch
    {
        true => "; textures may also lie in main memory",
        false => "; textures must fit on the board",
        null => "; whether textures may lie in main memory is not recorded",
    };

    private static string PresetText(TextureFit fit)
    {
        if (fit.NothingFits)
            return "none fits";
        if (fit.Highest is not { } preset)
            return "not known";
        return $"{preset.Name}{(fit.Spills ? ", partly in main memory" : "")}{(fit.IsEstimated ? " (estimated)" : "")}";
    }

    private static MemoryRow RowOf(Card card, Mode mode, int colour, int back, int depth, int samples)
    {
        var bytes = FrameBuffer.Bytes(mode, colour, back, depth, samples);
        bool? fits = card.Memory is { } memory ? bytes <= memory.FramePool : null;
        long? left = fits == true
            ? card.Memory switch
            {
                VideoMemory.Unified unified => unified.Bytes - bytes,
                VideoMemory.Split split => split.TextureBytes,
                _ => null,
            }
            : null;
        return new MemoryRow(mode, colour, back, depth, samples, bytes, fits, left);
    }

    private static TableCell Number(int number) => new(number.ToString(CultureInfo.InvariantCulture), number);
}
