using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>How a renderer's textures end up being stored on a route; it changes their size (rule R11).</summary>
/// <param name="KeepsPalettes">True where palettes stay palettes; false where they are expanded.</param>
/// <param name="KeepsCompression">True where compressed textures stay compressed.</param>
/// <param name="Depth">Colour depth in bits, to which expanded textures go.</param>
public sealed record TextureStorage(bool KeepsPalettes, bool KeepsCompression, int Depth)
{
    /// <summary>
    /// Bytes the preset takes on this route. An 8-bit palette expanded to 16 bits doubles, to 32 quadruples; a block of 16
    /// texels of 4 bits (8 bytes, OpenGL EXT_texture_compression_s3tc) becomes 32 bytes at 16 bits or 64 at 32.
    /// </summary>
    public long Bytes(TexturePreset preset)
    {
        var deep = Depth > 16 ? 2 : 1;
        return preset.Format switch
        {
            TextureFormat.Bits16 or TextureFormat.Bits32 => preset.Bytes,
            TextureFormat.Paletted8 => KeepsPalettes ? preset.Bytes : preset.Bytes * 2 * deep,
            TextureFormat.Compressed4 => KeepsCompression ? preset.Bytes : preset.Bytes * 4 * deep,
            TextureFormat.Compressed8 => KeepsCompression ? preset.Bytes : preset.Bytes * 2 * deep,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}

/// <summary>Which texture preset a card can hold beside the frame buffer (rule R11).</summary>
public sealed record TextureFit
{
    /// <summary>Bytes left for textures; null where the card's memory is not recorded.</summary>
    public long? BytesLeft { get; init; }

    /// <summary>The highest preset that fits or may spill over the bus; null where none does or nobody knows.</summary>
    public TexturePreset? Highest { get; init; }

    /// <summary>True where even the smallest preset is too large and the card cannot spill.</summary>
    public bool NothingFits { get; init; }

    /// <summary>True where the preset fits only by lying in main memory.</summary>
    public bool Spills { get; init; }

    /// <summary>True where the figures are estimates, which make nothing certain.</summary>
    public bool IsEstimated { get; init; }

    /// <summary>True where a higher preset exists that does not fit.</summary>
    public bool IsReduced { get; init; }

    /// <summary>True where not even the smallest preset fits, whatever is open; estimates never make it so.</summary>
    public bool IsCertainlyTooLarge { get; init; }

    /// <summary>Works it out for one renderer on one card.</summary>
    /// <param name="use">The renderer's presets.</param>
    /// <param name="memory">The card's memory; null where not recorded.</param>
    /// <param name="draw">The mode, which leaves the rest of the pool to textures.</param>
    /// <param name="storage">The formats that certainly stay as they are.</param>
    /// <param name="hoped">The formats that perhaps do.</param>
    /// <example>
    /// 4 MiB shared, 800 × 600 at 16 bits double-buffered with depth: 2,880,000 bytes gone, 1,314,304 left; a preset of 1 MiB
    /// fits, one of 3 MiB does not unless the card takes textures over the bus.
    /// </example>
    public static TextureFit Of(MemoryUse use, VideoMemory? memory, DrawMode draw, TextureStorage storage, TextureStorage hoped)
    {
        long? left = memory switch
        {
            null => null,
            VideoMemory.Unified unified => Math.Max(0, unified.Bytes - draw.FrameBytes),
            VideoMemory.Split split => split.TextureBytes,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (use.Presets.Count == 0 || left is null)
            return new TextureFit { BytesLeft = left, IsEstimated = true };

        var inPool = use.Presets.LastOrDefault(preset => storage.Bytes(preset) <= left);
        var atBest = use.Presets.LastOrDefault(preset => hoped.Bytes(preset) <= left);
        var maySpill = memory!.TexturesFromSystemMemory == true;
        var highest = maySpill ? use.Presets[^1] : inPool;
        // Not known whether the card can spill: the smaller preset is the sound answer, and nothing fails by it.
        var mightSpill = memory.TexturesFromSystemMemory is null;
        return new TextureFit
        {
            BytesLeft = left,
            Highest = highest,
            NothingFits = highest is null,
            Spills = maySpill && highest != inPool,
            IsEstimated = mightSpill || highest is null || !highest.IsMeasured,
            IsReduced = highest != use.Presets[^1],
            IsCertainlyTooLarge = memory.TexturesFromSystemMemory == false && atBest is null && use.Presets[0].IsMeasured,
        };
    }
}
