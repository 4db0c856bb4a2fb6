using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>An invented lake between wooded hills, used wherever the open air is needed.</summary>
internal static class Landscape
{
    private const double Cell = 4;
    private const double Block = 16;

    /// <summary>Height of the ground; below 0 lies the lake.</summary>
    public static double Height(double x, double z)
    {
        double u = (x + 512) / 1024, v = (z + 512) / 1024;
        var rough = (Noise.Layers(u, v, 16, 5, 41) - 0.5) * 46;
        var bowl = Tint.Step(18, 80, Math.Abs(x)) * 26;
        var headland = Tint.Step(60, 110, z) * Math.Max(0, 1 - (Math.Abs(x - 34) / 26)) * 24;
        return (rough * 0.55) + bowl + headland - 7;
    }

    /// <summary>Draws land, lake and trees.</summary>
    /// <param name="canvas">Where to.</param>
    /// <param name="fog">The haze; null for none.</param>
    /// <param name="reach">The title draws no block of ground farther off than this; by default all that there is.</param>
    public static Canvas Draw(Canvas canvas, Fog? fog, double reach = double.PositiveInfinity)
    {
        var (land, lake) = (new Mesh(), new Mesh());
        foreach (var (x, z) in Blocks(reach))
        {
            land.Terrain(x, z, Cell, (int)(Block / Cell), (int)(Block / Cell), Ground);
            lake.Terrain(x, z, Block, 1, 1, (left, near) => new Vertex(new(left, 0, near), left / 40, near / 40));
        }

        canvas.Draw(land, new DrawState { Fog = fog, Shade = Shaders.Textured(new Sampler(Patterns.Grass)) });
        canvas.Draw(lake, new DrawState { Fog = fog, Shade = Water });
        canvas.Draw(Trees(reach), new Sampler(Patterns.Tree), new DrawState { Fog = fog, AlphaReference = 0.5 });
        return canvas;
    }

    /// <summary>The near left corners of the blocks of ground within reach, from the farthest to the nearest.</summary>
    public static IEnumerable<(double X, double Z)> Blocks(double reach)
    {
        for (var z = 216.0; z >= -40; z -= Block)
        {
            for (var x = -208.0; x < 208; x += Block)
            {
                if (IsWithin(x, z, reach))
                    yield return (x, z);
            }
        }
    }

    private static bool IsWithin(double x, double z, double reach)
    {
        double left = Math.Floor(x / Block) * Block, near = (Math.Floor((z + 40) / Block) * Block) - 40;
        // Blocks come and go one by one, so the edge is uneven.
        var uneven = (Noise.Hash((int)(left / Block) + 40, (int)((near + 40) / Block), 57) - 0.5) * 30;
        double acrossX = left + (Block / 2), acrossZ = near + (Block / 2) + 30;
        return Math.Sqrt((acrossX * acrossX) + (acrossZ * acrossZ)) + uneven <= reach;
    }

    /// <summary>Trees from the farthest to the nearest.</summary>
    public static Mesh Trees(double reach = double.PositiveInfinity)
    {
        var trees = new Mesh();
        for (var row = 44; row >= 0; row--)
        {
            for (var column = -40; column <= 40; column++)
            {
                var chance = Noise.Hash(column + 100, row, 51);
                double x = (column * 5) + (Noise.Hash(column + 100, row, 52) * 4), z = (row * 5) - 18 + (Noise.Hash(column + 100, row, 53) * 4);
                var height = Height(x, z);
                if (chance < 0.55 || height < 1 || height > 20 || (Math.Abs(x) < 8 && z < 10) || !IsWithin(x, z, reach))
                    continue;
                var size = 4 + (chance * 4);
                trees.Standee(new(x, height - 0.3, z), size, size * 1.2, Tint.Grey(0.75 + (0.25 * Noise.Hash(column + 100, row, 54))));
            }
        }

        return trees;
    }

    private static Vertex Ground(double x, double z)
    {
        var height = Height(x, z);
        double dx = Height(x + 1, z) - Height(x - 1, z), dz = Height(x, z + 1) - Height(x, z - 1);
        var normal = new Vec3(-dx, 2, -dz).Unit;
        var light = 0.45 + (0.75 * Math.Max(0, Vec3.Dot(normal, new Vec3(-0.5, 0.75, -0.3).Unit)));
        var rock = Tint.Step(16, 26, height + (Noise.Hash((int)x, (int)z, 43) * 6));
        var sand = 1 - Tint.Step(0.2, 1.6, height);
        var colour = Tint.Mix(Tint.Mix(Tint.White, Tint.Hex(0xE8D2C4).Times(1.25), rock), Tint.Hex(0xF0DCA8).Times(1.3), sand);
        return new Vertex(new(x, height, z), x / 20, z / 20) { Colour = colour.Times(light).WithAlpha(1), Normal = normal };
    }

    private static Vector4 Water(in Fragment f)
    {
        var ripple = Noise.Layers(f.Tex.X % 1 + 1, f.Tex.Y * 3 % 1 + 1, 12, 3, 61);
        return Tint.Mix(Tint.Hex(0x3E6E8E), Tint.Hex(0x8FB4C8), ((ripple - 0.35) * 1.4) + (f.EyeDepth / 400)).WithAlpha(1);
    }
}
