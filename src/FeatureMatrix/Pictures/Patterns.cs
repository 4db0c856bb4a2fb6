using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>Invented surfaces. Each is painted once, when first asked for, and repeats without a seam unless it is a picture.</summary>
internal static class Patterns
{
    private static readonly Lazy<Texture> LazyBricks = new(() => Texture.Paint(256, 256, Brick));
    private static readonly Lazy<Texture> LazyCrate = new(() => Texture.Paint(128, 128, CrateSide));
    private static readonly Lazy<Texture> LazyGrass = new(() => Texture.Paint(256, 256, (u, v) =>
        Tint.Mix(Tint.Hex(0x3E6B2A), Tint.Hex(0x86A850), (Noise.Layers(u, v, 8, 5, 3) * 1.8) - 0.4)));
    private static readonly Lazy<Texture> LazyFlags = new(() => Texture.Paint(256, 256, Flagstone));
    private static readonly Lazy<Texture> LazyPlanks = new(() => Texture.Paint(256, 256, Plank));
    private static readonly Lazy<Texture> LazyPlaster = new(() => Texture.Paint(256, 256, (u, v) =>
        Tint.Mix(Tint.Hex(0xB9AA8C), Tint.Hex(0xD9CDB2), Noise.Layers(u, v, 6, 5, 9))));
    private static readonly Lazy<Texture> LazyTiles = new(() => Texture.Paint(128, 128, Tile));
    private static readonly Lazy<Texture> LazyTree = new(() => Texture.Paint(128, 128, TreeCut));
    private static readonly Lazy<Texture> LazyFence = new(() => Texture.Paint(128, 128, FenceCut));
    private static readonly Lazy<Texture> LazySmoke = new(() => Texture.Paint(128, 128, Puff));

    public static Texture Bricks => LazyBricks.Value;

    public static Texture Crate => LazyCrate.Value;

    public static Texture Grass => LazyGrass.Value;

    public static Texture Flags => LazyFlags.Value;

    public static Texture Planks => LazyPlanks.Value;

    public static Texture Plaster => LazyPlaster.Value;

    /// <summary>Light and dark floor tiles, two by two.</summary>
    public static Texture Tiles => LazyTiles.Value;

    /// <summary>A leafy tree on a clear ground; alpha is 0 or 1.</summary>
    public static Texture Tree => LazyTree.Value;

    /// <summary>Wire netting in a frame; alpha is 0 or 1.</summary>
    public static Texture Fence => LazyFence.Value;

    /// <summary>A soft grey puff; alpha falls smoothly to 0 at the rim.</summary>
    public static Texture Smoke => LazySmoke.Value;

    private static Vector4 Brick(double u, double v)
    {
        const int rows = 8, columns = 4;
        var row = (int)(v * rows);
        var x = (u * columns) + (row % 2 * 0.5);
        var column = (int)x % columns;
        double fx = x - Math.Floor(x), fy = (v * rows) - row;
        var edge = Math.Min(Math.Min(fx, 1 - fx) * 2, Math.Min(fy, 1 - fy));
        var grain = Noise.Layers(u, v, 32, 3, 5);
        var mortar = Tint.Hex(0xA79C8C).Times(0.75 + (grain * 0.4));
        var body = Tint.Mix(Tint.Hex(0x7E3A28), Tint.Hex(0xB5613F), Noise.Hash(column, row, 1)).Times(0.7 + (grain * 0.6));
        return Tint.Mix(mortar, body, Tint.Step(0.05, 0.12, edge)).WithAlpha(1);
    }

    private static Vector4 CrateSide(double u, double v)
    {
        double rim = Math.Min(Math.Min(u, 1 - u), Math.Min(v, 1 - v));
        var brace = Math.Abs(u - v) < 0.07;
        var framed = rim < 0.11;
        var along = framed ? ((u < 0.11 || u > 0.89) ? v : u) : brace ? u + v : v;
        var across = framed || brace ? u - v : u * 5;
        var grain = Noise.Layers(across * 0.5 % 1, along % 1, 16, 4, 7);
        var wood = Tint.Mix(Tint.Hex(0x7A5126), Tint.Hex(0xC08D4D), grain).Times(framed || brace ? 1.12 : 0.86);
        var gap = !framed && !brace && Math.Abs((u * 5) - Math.Round(u * 5)) < 0.06;
        var line = Math.Abs(rim - 0.11) < 0.012 || (!framed && Math.Abs(Math.Abs(u - v) - 0.07) < 0.012);
        return wood.Times(gap || line ? 0.35 : 1).WithAlpha(1);
    }

    private static Vector4 Flagstone(double u, double v)
    {
        const int count = 4;
        int column = (int)(u * count), row = (int)(v * count);
        double fx = (u * count) - column, fy = (v * count) - row;
        var edge = Math.Min(Math.Min(fx, 1 - fx), Math.Min(fy, 1 - fy));
        var grain = Noise.Layers(u, v, 24, 4, 11);
        var stone = Tint.Grey(0.42 + (0.16 * Noise.Hash(column, row, 2))).Times(0.75 + (grain * 0.5));
        return Tint.Mix(Tint.Hex(0x2B2A28), stone * Tint.Hex(0xFFF4E2), Tint.Step(0.02, 0.07, edge)).WithAlpha(1);
    }

    private static Vector4 Plank(double u, double v)
    {
        const int count = 4;
        var plank = (int)(u * count);
        var f = (u * count) - plank;
        var joint = Math.Abs(v - (0.2 + (0.6 * Noise.Hash(plank, 0, 4)))) < 0.006;
        var grain = Noise.Layers(u * 4 % 1, v * 0.5, 16, 4, 13 + plank);
        var wood = Tint.Mix(Tint.Hex(0x5C3A1E), Tint.Hex(0xA8753F), (grain * 0.8) + (0.2 * Noise.Hash(plank, 1, 4)));
        return wood.Times(Math.Min(f, 1 - f) < 0.025 || joint ? 0.4 : 1).WithAlpha(1);
    }

    private static Vector4 Tile(double u, double v)
    {
        var light = (u < 0.5) == (v < 0.5);
        var grain = Noise.Layers(u, v, 8, 4, 17);
        return (light ? Tint.Hex(0xEFE8D6) : Tint.Hex(0x6E2B2B)).Times(0.85 + (grain * 0.2)).WithAlpha(1);
    }

    private static Vector4 TreeCut(double u, double v)
    {
        var trunk = Math.Abs(u - 0.5) < 0.035 + (Math.Max(0, v - 0.9) * 0.4) && v > 0.6;
        double dx = (u - 0.5) / 0.46, dy = (v - 0.4) / 0.4;
        var ragged = Noise.Layers(u, v, 10, 3, 21);
        var leaf = (dx * dx) + (dy * dy) < 0.45 + (ragged * 0.9) && Noise.Layers(u, v, 20, 2, 23) > 0.36 && v < 0.82;
        if (leaf)
            return Tint.Mix(Tint.Hex(0x1F4A1B), Tint.Hex(0x6FA03C), (Noise.Layers(u, v, 24, 2, 25) * 1.3) - (v * 0.5) + 0.1).WithAlpha(1);
        return trunk ? Tint.Hex(0x553A22) : Tint.Hex(0x2E5A22, 0);
    }

    private static Vector4 FenceCut(double u, double v)
    {
        var frame = Math.Min(Math.Min(u, 1 - u), Math.Min(v, 1 - v)) < 0.05;
        double a = (u + v) * 6, b = (u - v) * 6;
        var wire = Math.Abs(a - Math.Round(a)) < 0.11 || Math.Abs(b - Math.Round(b)) < 0.11;
        var metal = Tint.Hex(frame ? 0x6D7880 : 0xB4BEC6);
        return metal.WithAlpha(frame || wire ? 1 : 0);
    }

    private static Vector4 Puff(double u, double v)
    {
        double dx = (u - 0.5) * 2, dy = (v - 0.5) * 2;
        var distance = Math.Sqrt((dx * dx) + (dy * dy)) + ((Noise.Layers(u, v, 5, 4, 31) - 0.5) * 0.7);
        var body = Tint.Mix(Tint.Hex(0x8C8C90), Tint.Hex(0xE4E4E8), 0.65 - (dy * 0.5));
        return body.WithAlpha((1 - Tint.Step(0.25, 0.85, distance)) * 0.85);
    }
}
