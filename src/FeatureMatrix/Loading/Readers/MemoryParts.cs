using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>How a renderer uses video memory, as far as it was stated: what is missing comes from its engine or is usual.</summary>
internal sealed record MemoryParts(
    Mode? Lowest, IReadOnlyList<int>? Depths, int? BackBuffers, DepthBuffer? Depth, IReadOnlyList<TexturePreset>? Presets)
{
    public static MemoryParts Nothing { get; } = new(null, null, null, null, null);

    public static MemoryParts Read(Fields? fields)
    {
        if (fields is null)
            return Nothing;
        var result = new MemoryParts(
            fields.Value("lowest", Quantities.Mode),
            fields.Has("depths") ? ReadDepths(fields) : null,
            fields.Value("back-buffers", Quantities.Whole(0, 4)),
            fields.Choice("depth-buffer", DepthBuffers),
            fields.Has("presets") ? [.. ReadPresets(fields)] : null);
        fields.Done();
        return result;
    }

    /// <summary>What this one does not state is taken from the other.</summary>
    public MemoryParts Over(MemoryParts other) => new(
        Lowest ?? other.Lowest,
        Depths ?? other.Depths,
        BackBuffers ?? other.BackBuffers,
        Depth ?? other.Depth,
        Presets ?? other.Presets);

    public MemoryUse Build()
    {
        var usual = MemoryUse.Usual;
        return new MemoryUse
        {
            LowestMode = Lowest ?? usual.LowestMode,
            Depths = Depths is { Count: > 0 } ? Depths : usual.Depths,
            BackBuffers = BackBuffers ?? usual.BackBuffers,
            DepthBits = Depth is { } depth ? depth.Bits : usual.DepthBits,
            Presets = Presets ?? usual.Presets,
        };
    }

    private static readonly IReadOnlyList<(string, DepthBuffer)> DepthBuffers =
    [
        ("none", new DepthBuffer(0)), ("16", new DepthBuffer(16)), ("24", new DepthBuffer(24)), ("32", new DepthBuffer(32)),
        ("as-colour", new DepthBuffer(null)),
    ];

    private static IReadOnlyList<int> ReadDepths(Fields fields)
    {
        var depths = fields.List("depths").Select(word => Quantities.Depth(word, "'depths'", fields.Faults));
        return [.. depths.OfType<int>().Distinct().Order()];
    }

    private static IEnumerable<TexturePreset> ReadPresets(Fields fields)
    {
        var names = new HashSet<string>();
        foreach (var node in fields.Items("presets"))
        {
            if (Fields.Of(node, "'presets'", fields.Faults) is not { } preset)
                continue;
            var name = preset.RequiredText("name");
            preset.RequiredWord("textures");
            var bytes = preset.Value("textures", Quantities.Bytes);
            var format = preset.Choice("format", Words.TextureFormats) ?? TextureFormat.Bits16;
            var measured = preset.YesNo("measured") ?? false;
            preset.Done();
            if (!names.Add(name))
                fields.Faults.Add(FaultTexts.Twice(preset.Origin, "preset", name, fields.Label));
            if (bytes is { } size)
                yield return new TexturePreset(name, size, format, measured);
        }
    }
}

/// <summary>A stated depth buffer; null bits for one as deep as the colours.</summary>
internal readonly record struct DepthBuffer(int? Bits);
