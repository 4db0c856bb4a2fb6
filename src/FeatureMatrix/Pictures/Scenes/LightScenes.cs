using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Layers of light on surfaces: several textures at once, bumps, lamps.</summary>
internal static class LightScenes
{
    private static readonly Vec3[] Lamps = [new(-3.6, 3, 4), new(3.6, 3, 8), new(-3.6, 3, 12), new(3.6, 3, 16), new(0, 4.2, 21)];

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("mt-units", "mt-units", with => Passage(with ? (surface, light) => surface * light : (surface, _) => surface)),
        new("mt-stages", "mt-stages", Hull),
        new("mt-combine", "mt-combine", with => Passage((surface, light) => surface * light * (with ? 2.2f : 0.9f))),
        new("bump-embm", "bump-embm", with => Pond(with ? 1 : 0, luminance: false)),
        new("bump-embm-lum", "bump-embm-lum", with => Pond(1, luminance: with)),
        new("bump-dot3", "bump-dot3", Wall),
        new("tnl-lights", "tnl-lights", with => Hall(with ? 8 : 2)),
    ];

    /// <summary>The light that reaches a point of the passage from its lamps, as a light map would keep it.</summary>
    private static Vector4 LightMap(Vec3 point)
    {
        var sum = Tint.Hex(0x1C2034);
        foreach (var lamp in Lamps)
        {
            var distance = (point - lamp).Length;
            sum += Tint.Hex(0xFFC884) * (float)(1.1 / (1 + (0.28 * distance * distance)));
        }

        return Vector4.Clamp(sum, Vector4.Zero, Vector4.One).WithAlpha(1);
    }

    private static Picture Passage(Func<Vector4, Vector4, Vector4> combine)
    {
        var camera = new Camera { Eye = new(0.5, 1.7, 0), Target = new(-0.2, 1.6, 8), Near = 0.2, Far = 60, FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage();
        DrawState Lit(Texture texture) => new()
        {
            Shade = (in Fragment f) => combine(new Sampler(texture).First(f) * f.Colour, LightMap(f.Position)).WithAlpha(1),
        };
        var canvas = new Canvas(camera).Draw(floor, Lit(Patterns.Flags)).Draw(walls, Lit(Patterns.Bricks)).Draw(ceiling, Lit(Patterns.Planks))
            .Draw(new Mesh().Box(new(1.9, 0, 6), 1.1, 1.1, 1.1, 25).Box(new(-2.2, 0, 9), 1.2, 1.2, 1.2, -20), Lit(Patterns.Crate));
        var bulbs = new Mesh();
        foreach (var lamp in Lamps)
            bulbs.Sphere(lamp, 0.18, 10, Tint.Hex(0xFFF4D8));
        return canvas.Draw(bulbs, new DrawState()).Finish();
    }

    private static Picture Hull(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.8, -3), Target = new(0, 1.3, 3), FieldOfView = 46 };
        Shader Painted(int paint) => (in Fragment f) =>
        {
            var normal = f.Normal;
            var plates = Math.Abs((f.Tex.X * 16) - Math.Round(f.Tex.X * 16)) < 0.03 || Math.Abs((f.Tex.Y * 8) - Math.Round(f.Tex.Y * 8)) < 0.03;
            var band = Math.Abs(f.Tex.Y - 0.5) < 0.07;
            var colour = (band ? Tint.Hex(0xF0E8D8) : Tint.Hex(paint)).Times(plates ? 0.4 : 1);
            if (!with)
                return colour.Times(0.8);
            var light = 0.3 + (0.75 * Math.Max(0, Vec3.Dot(normal, new Vec3(-0.5, 0.75, -0.45).Unit)));
            var rust = Tint.Step(0.5, 0.68, Noise.Layers(f.Tex.X * 2, f.Tex.Y, 8, 4, 181));
            var mirror = Props.Surroundings(Vec3.Reflect((f.Position - camera.Eye).Unit, normal));
            return Tint.Mix(Tint.Mix(colour, Tint.Hex(0x7A4420), rust * 0.8).Times(light), mirror, (1 - rust) * 0.32).WithAlpha(1);
        };
        return new Canvas(camera).Backdrop((u, v) => Tint.Mix(Tint.Hex(0x5080B0), Tint.Hex(0xE8D8B8), v * 1.4))
            .Draw(new Mesh().Panel(new(-30, 0, 40), new(60, 0, 0), new(0, 0, -46), 20, 15), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Sphere(new(-1.1, 1.35, 3), 1.35, 40), new DrawState { Shade = Painted(0xB83828) })
            .Draw(new Mesh().Sphere(new(1.9, 0.9, 2.5), 0.9, 36), new DrawState { Shade = Painted(0x2858A0) }).Finish();
    }

    private static Picture Pond(double bumps, bool luminance)
    {
        var camera = new Camera { Eye = new(0, 2, -4), Target = new(-0.8, 1.3, 8), Near = 0.2, Far = 200, FieldOfView = 50 };
        var canvas = new Canvas(camera);
        canvas.Backdrop((u, v) => Props.Surroundings(camera.Forward + (camera.Right * ((u - 0.5) * 2 * camera.HalfHeight * 1.6)) + (camera.Top * ((0.5 - v) * 2 * camera.HalfHeight))));
        return canvas.Draw(new Mesh().Panel(new(-60, 0, 90), new(120, 0, 0), new(0, 0, -96)), new DrawState
        {
            Shade = (in Fragment f) =>
            {
                // The bump texture holds the slope of the waves in two directions; it shifts where the mirror picture is read.
                var calm = bumps / (1 + (f.EyeDepth * 0.04));
                double slopeX = Slope(f.World.X, f.World.Z, 0.06, 0) * calm, slopeZ = Slope(f.World.X, f.World.Z, 0, 0.06) * calm;
                var mirrored = Vec3.Reflect((f.Position - camera.Eye).Unit, new Vec3(-slopeX, 1, -slopeZ).Unit);
                var seen = Props.Surroundings(mirrored with { Y = Math.Abs(mirrored.Y) + 0.01 });
                var tone = luminance ? Math.Clamp(0.8 + (2.4 * slopeZ) + (1.2 * slopeX), 0.3, 1.3) : 0.8;
                return (seen * Tint.Hex(0xD8E8F0)).Times(tone).WithAlpha(1);
            },
        }).Finish();
    }

    private static double Slope(double x, double z, double dx, double dz)
    {
        return (Wave(x + dx, z + dz) - Wave(x - dx, z - dz)) * 1.9;

        static double Wave(double x, double z)
        {
            var fromDrop = Math.Sqrt(((x + 1.2) * (x + 1.2)) + ((z - 3.4) * (z - 3.4)));
            return (0.16 * Math.Sin(fromDrop * 4.6) / (1 + (fromDrop * 0.3))) + (0.35 * Noise.Layers((x * 0.02) + 3, (z * 0.02) + 3, 40, 2, 191));
        }
    }

    private static Picture Wall(bool with)
    {
        var camera = new Camera { Eye = new(-0.3, 1.7, -0.6), Target = new(0.2, 1.5, 4), FieldOfView = 52 };
        var lamp = new Vec3(-2.1, 2.5, 3.3);
        var heights = new Sampler(Texture.Paint(256, 256, (u, v) => Tint.Grey(Relief(u, v))));
        DrawState Lit(Texture texture, Vec3 normal, Vec3 along, Vec3 down) => new()
        {
            Shade = (in Fragment f) =>
            {
                const double step = 1.5 / 256;
                var bent = normal;
                if (with)
                {
                    var across = heights.At(f.Tex.X + step, f.Tex.Y).X - heights.At(f.Tex.X - step, f.Tex.Y).X;
                    var below = heights.At(f.Tex.X, f.Tex.Y + step).X - heights.At(f.Tex.X, f.Tex.Y - step).X;
                    bent = (normal - (along * (across * 1.2)) - (down * (below * 1.2))).Unit;
                }

                var toLamp = lamp - f.Position;
                var light = Math.Max(0, Vec3.Dot(bent, toLamp.Unit)) / (1 + (0.1 * toLamp.Length * toLamp.Length)) * 1.9;
                return new Sampler(texture).First(f) * (Tint.Hex(0x303448) + (Tint.Hex(0xFFE0B0) * (float)light));
            },
        };
        Vec3 x = new(1, 0, 0), y = new(0, -1, 0), z = new(0, 0, -1);
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-5, 4, 4), new(10, 0, 0), new(0, -4, 0), 3, 1.2), Lit(Stone.Value, z, x, y))
            .Draw(new Mesh().Panel(new(-5, 0, 4), new(10, 0, 0), new(0, 0, -5), 3, 1.5), Lit(Stone.Value, Vec3.Up, x, z))
            .Draw(new Mesh().Sphere(lamp, 0.13, 12, Tint.Hex(0xFFF6D8)), new DrawState()).Finish();
    }

    private static readonly Lazy<Texture> Stone = new(() => Texture.Paint(256, 256, (u, v) =>
        Tint.Mix(Tint.Hex(0x8C8478), Tint.Hex(0xB8AE9C), Noise.Layers(u, v, 6, 3, 195))));

    private static double Relief(double u, double v)
    {
        const int rows = 6, columns = 4;
        var row = (int)(v * rows);
        var x = (u * columns) + (row % 2 * 0.5);
        double fx = x - Math.Floor(x), fy = (v * rows) - row;
        var edge = Math.Min(Math.Min(fx, 1 - fx) * 1.5, Math.Min(fy, 1 - fy));
        return (Tint.Step(0, 0.22, edge) * 0.8) + (0.2 * Noise.Layers(u, v, 24, 3, 197));
    }

    private static Picture Hall(int lights)
    {
        var camera = new Camera { Eye = new(0, 1.8, 0), Target = new(0, 1.5, 8), Near = 0.2, Far = 60, FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage(24, cuts: 12);
        int[] tints = [0xFF8040, 0x60A0FF, 0x70FF80, 0xFF60C0, 0xFFE060, 0x60FFF0, 0xC080FF, 0xFFFFFF];
        var lamps = Enumerable.Range(0, 8).Select(i => (At: new Vec3(i % 2 == 0 ? -3.4 : 3.4, 2.6, 3 + (i * 2.6)), Colour: Tint.Hex(tints[i]))).ToList();
        Vertex Lit(Vertex v)
        {
            var sum = Tint.Hex(0x202430);
            foreach (var (at, colour) in lamps.Take(lights))
                sum += colour * (float)(1.2 / (1 + (0.3 * (v.Position - at).Length * (v.Position - at).Length)));
            return v with { Colour = Vector4.Clamp(sum, Vector4.Zero, Vector4.One).WithAlpha(1) };
        }

        var bulbs = new Mesh();
        foreach (var (at, colour) in lamps)
            bulbs.Sphere(at, 0.2, 10, colour);
        return new Canvas(camera).Draw(floor.Select(Lit), new Sampler(Patterns.Plaster)).Draw(walls.Select(Lit), new Sampler(Patterns.Plaster))
            .Draw(ceiling.Select(Lit), new Sampler(Patterns.Plaster)).Draw(bulbs, new DrawState()).Finish();
    }
}
