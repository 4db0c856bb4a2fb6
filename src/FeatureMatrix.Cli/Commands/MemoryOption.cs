using System.CommandLine;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Another amount of memory on a board: <c>32MiB</c> in one pool, <c>4MiB+8MiB</c> for frame buffer and textures.</summary>
internal static class MemoryOption
{
    /// <summary>The option <c>--memory</c>.</summary>
    public static Option<string?> Create() => new("--memory")
    {
        Description = "With this memory on the board: 32MiB for all, or 4MiB+8MiB for frame buffer and textures apart.",
        HelpName = "size",
    };

    /// <summary>The memory that was asked for; textures go over the bus where they do on the card as recorded. Null where none was asked for.</summary>
    /// <exception cref="UsageException">It is no size.</exception>
    public static VideoMemory? Memory(this ParseResult parsed, Option<string?> option, Card card)
    {
        if (parsed.GetValue(option) is not { } text)
            return null;
        var sizes = text.Split('+').Select(SizeText.Bytes).ToList();
        var overBus = card.Memory?.TexturesFromSystemMemory;
        return sizes switch
        {
            [{ } all] => new VideoMemory.Unified(all) { TexturesFromSystemMemory = overBus },
            [{ } frame, { } textures] => new VideoMemory.Split(frame, textures) { TexturesFromSystemMemory = overBus },
            _ => throw new UsageException($"{option.Name} {text}: write a size with its unit (KiB, MiB, GiB), for example 32MiB, or two as 4MiB+8MiB."),
        };
    }
}
