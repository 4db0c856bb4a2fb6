using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Tests.Resolving.Oracles;

using Support = FeatureMatrix.Model.Support;

/// <summary>R10 and R11, written from DESIGN: modes, frame buffers, and textures by what is known of their formats.</summary>
internal sealed class MemoryOracle(Catalog catalog, World world, Terms terms, Func<Capability, Route, Question> supplied)
{
    /// <summary>The library's mode where the renderer offers it, else its lowest (R10).</summary>
    public Mode ModeOf(Renderer renderer) =>
        terms.Policy.Mode is { } wanted && wanted.Width >= renderer.Memory.LowestMode.Width ? wanted : renderer.Memory.LowestMode;

    /// <summary>The library's colour depth in bits where the renderer has it, else its first.</summary>
    public int DepthOf(Renderer renderer) =>
        terms.Policy.Depth is { } wanted && renderer.Memory.Depths.Contains(wanted) ? wanted : renderer.Memory.Depths[0];

    /// <summary>Bytes of front buffer, back buffers and depth buffer (R10).</summary>
    public long FrameBytes(Renderer renderer)
    {
        var mode = ModeOf(renderer);
        long colour = DepthOf(renderer) / 8;
        long depth = (renderer.Memory.DepthBits is { } bits ? bits : DepthOf(renderer)) / 8;
        return (long)mode.Width * mode.Height * (colour + terms.Policy.Samples * (renderer.Memory.BackBuffers * colour + depth));
    }

    /// <summary>The gate that textures make where the smallest preset may not fit (R11); none otherwise.</summary>
    public IEnumerable<Question> SmallestTextures(Route route)
    {
        var presets = route.Renderer.Memory.Presets;
        var card = route.Setup.Card;
        if (presets.Count == 0 || card.Memory is not { } memory || memory.TexturesFromSystemMemory == true)
            yield break;
        var pool = TexturePool(memory, route.Renderer);
        if (TextureBytes(presets[0], route).All(bytes => bytes <= pool))
            yield break;
        var certain = memory.TexturesFromSystemMemory == false && presets[0].IsMeasured && TextureBytes(presets[0], route).All(bytes => bytes > pool);
        yield return certain ? Question.Answered(false) : Question.YesOrNo(new UnknownFact.Textures(card, route.Renderer));
    }

    private long TexturePool(VideoMemory memory, Renderer renderer) => memory switch
    {
        VideoMemory.Unified unified => unified.Bytes - FrameBytes(renderer),
        VideoMemory.Split split => split.TextureBytes,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The sizes a preset may have, by what is known of the formats that the route keeps (R11).</summary>
    private IEnumerable<long> TextureBytes(TexturePreset preset, Route route)
    {
        var growth = preset.Format switch
        {
            TextureFormat.Compressed4 => DepthOf(route.Renderer) / 4,
            TextureFormat.Paletted8 or TextureFormat.Compressed8 => DepthOf(route.Renderer) / 8,
            _ => 1,
        };
        return Stored(preset) is { } format
            ? supplied(format, route).States.Select(state => state == Support.Yes ? preset.Bytes : preset.Bytes * growth).Distinct() : [preset.Bytes];
    }

    /// <summary>The capability that keeps a preset as small as it comes; null where it needs none.</summary>
    private Capability? Stored(TexturePreset preset) => preset.Format switch
    {
        TextureFormat.Paletted8 => catalog.Features.Single(feature => feature.Id == "tex-pal8").At(1),
        TextureFormat.Compressed4 or TextureFormat.Compressed8 => catalog.Features.Single(feature => feature.Id == "tex-dxt1").At(1),
        _ => null,
    };

    /// <summary>True where the highest preset is not certain to fit (R11); it breaks ties.</summary>
    public bool IsReduced(Route route)
    {
        var presets = route.Renderer.Memory.Presets;
        return presets.Count > 0 && route.Setup.Card.Memory is { } memory && memory.TexturesFromSystemMemory != true
            && !TextureBytes(presets[^1], route).All(bytes => bytes <= TexturePool(memory, route.Renderer));
    }

    /// <summary>Whether the answer is yes in a completion.</summary>
    public Func<int[], bool> IsYes(Question question)
    {
        var read = world.Reader(question);
        return completion => read(completion) == Support.Yes;
    }

    /// <summary>
    /// The preset the title is judged at where none is wanted (R11): the highest that fits, and the smallest where none does, for
    /// then it runs at that one or not at all. A card of which nobody knows whether it takes textures over the bus may reach the last.
    /// </summary>
    public Func<int[], string> JudgedPreset(IReadOnlyList<TexturePreset> presets, VideoMemory memory, Route route)
    {
        if (memory.TexturesFromSystemMemory == true)
            return _ => presets[^1].Name;
        var pool = TexturePool(memory, route.Renderer);
        var fits = presets.Select(preset => Fits(preset, pool, route)).ToList();
        var reachesLast = memory.TexturesFromSystemMemory is null
            ? IsYes(Question.YesOrNo(new UnknownFact.Preset(route.Setup.Card, route.Renderer, presets[^1].Name))) : _ => false;
        return completion => reachesLast(completion) ? presets[^1].Name : presets.Where((_, i) => fits[i](completion)).LastOrDefault(presets[0]).Name;
    }

    private Func<int[], bool> Fits(TexturePreset preset, long pool, Route route)
    {
        var sizes = TextureBytes(preset, route).ToList();
        if (sizes.TrueForAll(bytes => bytes <= pool))
            return _ => true;
        return sizes.TrueForAll(bytes => bytes > pool) ? _ => false : IsYes(supplied(Stored(preset)!.Value, route));
    }
}
