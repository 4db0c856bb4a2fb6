using System.CommandLine;
using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Another amount of memory on a board: <c>32MiB</c> in one pool, <c>4MiB+8MiB</c> for frame buffer and textures.</summary>
internal static class MemoryOption
{
    private static readonly (string Unit, long Bytes)[] Units = [("KiB", 1 << 10), ("MiB", 1 << 20), ("GiB", 1 << 30)];

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
        var sizes = text.Split('+').Select(Bytes).ToList();
        var overBus = card.Memory?.TexturesFromSystemMemory;
        return sizes switch
        {
            [{ } all] => new VideoMemory.Unified(all) { TexturesFromSystemMemory = overBus },
            [{ } frame, { } textures] => new VideoMemory.Split(frame, textures) { TexturesFromSystemMemory = overBus },
            _ => throw new UsageException($"{option.Name} {text}: write a size with its unit (KiB, MiB, GiB), for example 32MiB, or two as 4MiB+8MiB."),
        };
    }

    private static long? Bytes(string text)
    {
        foreach (var (unit, bytes) in Units)
        {
            if (text.EndsWith(unit, StringComparison.Ordinal)
                && decimal.TryParse(text[..^unit.Length].Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= 1024)
                return (long)(number * bytes);
        }

        return null;
    }
}
