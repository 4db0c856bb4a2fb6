using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Sizes, edges and coordinates of textures.</summary>
internal static class TextureShapeScenes
{
    private static readonly Lazy<Texture> Mural = new(() => Texture.Paint(1024, 1024, MuralAt));
    private static readonly Lazy<Texture> Sign = new(() => Texture.Paint(512, 64, (u, v) => Board("LANTERNS AND ROPES", u, v, 512 / 4.6, 64 / 4.6)));
    private static readonly Lazy<Texture> Frieze = new(() => Texture.Paint(1024, 32, (u, v) => Board("NORTH GATE - EAST GATE - BOATS", u, v, 1024 / 5.3, 32 / 3.2)));

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("tex-npot", "tex-npot", with => Console(with ? Screen(160, 100) : Screen(160, 100).Resized(128, 64))),
        new("tex-nonsquare", "tex-nonsquare", with => Shop(with ? Sign.Value : Sign.Value.Resized(64, 64))),
        new("tex-max-size", "tex-max-size", with => Chapel(with ? 1024 : 64)),
        new("tex-max-aspect", "tex-max-aspect", with => Gatehouse(with ? Frieze.Value : Frieze.Value.Resized(128, 32))),
        new("tex-clamp", "tex-clamp", SkyBox),
        new("tex-mirror", "tex-mirror", with => Carpet(with ? Wrap.Mirror : Wrap.Repeat)),
        new("tex-perspective", "tex-perspective", Chequers),
        new("tex-projected", "tex-projected", Lantern),
        new("tex-cube", "tex-cube", Chrome),
        new("tex-volume", "tex-volume", Orb),
    ];

    private static Vector4 Board(string text, double u, double v, double columns, double rows)
    {
        var column = (int)Math.Floor((u * columns) - ((columns - Glyphs.WidthOf(text)) / 2));
        var row = (int)Math.Floor((v * rows) - ((rows - Glyphs.Height) / 2));
        var paint = Tint.Hex(0x1E3A5C).Times(0.85 + (0.3 * Noise.Layers(u, v, 8, 3, 121)));
        return v is < 0.08 or > 0.92 ? Tint.Hex(0xD8B050) : Glyphs.Ink(text, column, row) ? Tint.Hex(0xF8E8B8) : paint;
    }

    private static Vector4 MuralAt(double u, double v)
    {
        var tile = Patterns.Tiles.Base;
        double x = u * 6, y = v * 6;
        double fx = x - Math.Floor(x) - 0.5, fy = y - Math.Floor(y) - 0.5;
        var ring = Math.Sqrt((fx * fx) + (fy * fy));
        var petals = ring < 0.30 + (0.12 * Math.Cos(Math.Atan2(fy, fx) * 8));
        var colour = ring < 0.1 ? Tint.Hex(0xF8D860) : petals ? Tint.Hex(((int)x + (int)y) % 2 == 0 ? 0x2C6CA8 : 0xA83048) : Tint.Hex(0xF0E6D0);
        var lead = Math.Abs(Math.Abs(fx) - 0.48) < 0.012 || Math.Abs(Math.Abs(fy) - 0.48) < 0.012 || Math.Abs(ring - 0.1) < 0.012
            || Math.Abs(ring - (0.30 + (0.12 * Math.Cos(Math.Atan2(fy, fx) * 8)))) < 0.012;
        return lead ? Tint.Hex(0x20242C) : colour.Times(0.9 + (0.1 * tile[(int)(u * 1024) % 128, (int)(v * 1024) % 128].X));
    }

    private static Texture Screen(int width, int height) => Texture.Paint(width, height, (u, v) =>
    {
        string[] lines = ["CARGO LIST", "12 BARRELS", "40 ROPES", "7 LAMPS", "3 BELLS"];
        var line = (int)(v * 6.2) - 1;
        if (line >= 0 && line < lines.Length && Glyphs.Ink(lines[line], (int)Math.Floor((u * 80) - 8), (int)Math.Floor(((v * 6.2) - 1 - line) * 10) - 1))
            return line == 0 ? Tint.Hex(0xFFD860) : Tint.Hex(0x90F0A0);
        return Math.Min(Math.Min(u, 1 - u) * 1.6, Math.Min(v, 1 - v)) < 0.04 ? Tint.Hex(0x3C7850) : Tint.Hex(0x0C2018).Times(1 - (0.3 * Math.Abs(Math.Sin(v * 314))));
    });

    private static Picture Console(Texture screen)
    {
        var camera = new Camera { Eye = new(-0.5, 1.5, -0.4), Target = new(0, 1.35, 3), FieldOfView = 46 };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-5, 4, 3.4), new(10, 0, 0), new(0, -4, 0), 4, 1.6), new Sampler(Patterns.Bricks))
            .Draw(new Mesh().Panel(new(-5, 0, 3.4), new(10, 0, 0), new(0, 0, -5), 5, 2.5), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Box(new(0, 0.35, 3), 3, 2, 0.4, 0, Tint.Hex(0x586068)), new DrawState())
            .Draw(new Mesh().Panel(new(-1.36, 2.25, 2.78), new(2.72, 0, 0), new(0, -1.7, 0)), new Sampler(screen) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp, Mip = MipFilter.None }).Finish();
    }

    private static Picture Shop(Texture sign)
    {
        var camera = new Camera { Eye = new(-0.8, 1.7, -1), Target = new(0, 1.9, 4), FieldOfView = 46 };
        return new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.5)
            .Draw(new Mesh().Panel(new(-6, 4.2, 4), new(12, 0, 0), new(0, -4.2, 0), 5, 2), new Sampler(Patterns.Bricks))
            .Draw(new Mesh().Panel(new(-6, 0, 4), new(12, 0, 0), new(0, 0, -6), 5, 2.5), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Panel(new(-1.9, 1.9, 3.96), new(1.1, 0, 0), new(0, -1.9, 0)).Panel(new(-0.3, 1.8, 3.96), new(2.2, 0, 0), new(0, -1.2, 0), 2, 1), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Panel(new(-2.1, 2.75, 3.9), new(4.4, 0, 0), new(0, -0.62, 0)), new Sampler(sign) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp })
            .Draw(new Mesh().Box(new(2.5, 0, 3.2), 0.7, 0.7, 0.7, 24), new Sampler(Patterns.Crate)).Finish();
    }

    private static Picture Chapel(int edge)
    {
        var camera = new Camera { Eye = new(-0.6, 1.7, -0.2), Target = new(0, 1.75, 4), FieldOfView = 46 };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 4.5, 4), new(12, 0, 0), new(0, -4.5, 0), 4, 1.5), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-6, 0, 4), new(12, 0, 0), new(0, 0, -6), 5, 2.5), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Panel(new(-1.6, 3.3, 3.95), new(3.2, 0, 0), new(0, -3, 0)), new Sampler(Mural.Value.Limited(edge)) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp }).Finish();
    }

    private static Picture Gatehouse(Texture frieze)
    {
        var camera = new Camera { Eye = new(0.3, 1.7, 0.2), Target = new(0, 2.2, 5), FieldOfView = 54 };
        return new Canvas(camera).Sky(Tint.Hex(0x4878B8), Tint.Hex(0xDCE8F0), 0.5)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -122), 24, 24), new Sampler(Patterns.Grass))
            .Draw(new Mesh().Panel(new(-7, 4, 5), new(14, 0, 0), new(0, -4, 0), 5, 1.6), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-1.1, 2.2, 4.96), new(2.2, 0, 0), new(0, -2.2, 0), 2, 1), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Panel(new(-3.5, 3.2, 4.9), new(7, 0, 0), new(0, -0.56, 0)), new Sampler(frieze) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp, MaxAnisotropy = 4 }).Finish();
    }

    private static Picture SkyBox(bool with)
    {
        var camera = new Camera { Eye = new(0, 0, 0), Target = new(0.75, 0.52, 1), FieldOfView = 64, Near = 0.05, Far = 50 };
        var canvas = new Canvas(camera, magnify: 2);
        // Five faces of a box around the viewer, 32 texels each, so that half a texel at the seams is seen.
        Face(new(-1, 1, 1), new(2, 0, 0), new(0, -2, 0));
        Face(new(1, 1, 1), new(0, 0, -2), new(0, -2, 0));
        Face(new(-1, 1, -1), new(0, 0, 2), new(0, -2, 0));
        Face(new(-1, 1, -1), new(2, 0, 0), new(0, 0, 2));
        return canvas.Finish();

        void Face(Vec3 corner, Vec3 across, Vec3 down)
        {
            var image = Texture.Paint(32, 32, (u, v) => Props.Surroundings(corner + (across * u) + (down * v)));
            var wrap = with ? Wrap.Clamp : Wrap.Repeat;
            canvas.Draw(new Mesh().Panel(corner, across, down), new Sampler(image) { WrapU = wrap, WrapV = wrap, Mip = MipFilter.None });
        }
    }

    private static Picture Carpet(Wrap wrap)
    {
        var quarter = Texture.Paint(128, 128, (u, v) =>
        {
            var ring = Math.Sqrt((u * u) + (v * v));
            var petal = ring < 0.62 + (0.16 * Math.Cos(Math.Atan2(v, u) * 8));
            var edge = Math.Max(u, v);
            if (edge > 0.9)
                return Tint.Hex(edge > 0.96 ? 0x18304C : 0xD0A040);
            return ring < 0.2 ? Tint.Hex(0xF0D070) : Math.Abs(ring - 0.42) < 0.04 ? Tint.Hex(0xE8DCC0) : petal ? Tint.Hex(0xB02838) : Tint.Hex(0x204060);
        });
        var camera = new Camera { Eye = new(0, 2.6, -0.6), Target = new(0, 0, 3.1), FieldOfView = 50 };
        return new Canvas(camera).Backdrop((_, _) => Tint.Hex(0xB9AA8C))
            .Draw(new Mesh().Panel(new(-8, 0, 10), new(16, 0, 0), new(0, 0, -12), 8, 6), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Quad(
                new(new(-2.4, 0.02, 5.2), -1, 1), new(new(2.4, 0.02, 5.2), 1, 1), new(new(2.4, 0.02, 1.1), 1, -1), new(new(-2.4, 0.02, 1.1), -1, -1)),
                new Sampler(quarter) { WrapU = wrap, WrapV = wrap }).Finish();
    }

    private static Picture Chequers(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.6, 0), Target = new(0.9, 1.15, 8), Near = 0.2, Far = 100, FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage(22, cuts: 3);
        var state = new DrawState { PerspectiveCorrect = with };
        return new Canvas(camera)
            .Draw(floor.Select(v => v with { U = v.U * 2, V = v.V * 2 }), new Sampler(Patterns.Tiles), state)
            .Draw(walls, new Sampler(Patterns.Bricks), state).Draw(ceiling, new Sampler(Patterns.Planks), state)
            .Draw(new Mesh().Box(new(1.4, 0, 5), 1.1, 1.1, 1.1, 30), new Sampler(Patterns.Crate), state).Finish();
    }

    private static Picture Lantern(bool with)
    {
        var camera = new Camera { Eye = new(-0.4, 1.7, -0.6), Target = new(0.3, 1.2, 5), FieldOfView = 56 };
        var slide = new Sampler(Texture.Paint(128, 128, (u, v) =>
        {
            var pane = Math.Abs(u - 0.5) > 0.03 && Math.Abs(v - 0.5) > 0.03 && Math.Abs(v - 0.25) > 0.012;
            var inside = Math.Max(Math.Abs(u - 0.5), Math.Abs(v - 0.5)) < 0.42 && (v > 0.42 || Props.Radius(u, 0.42 + ((v - 0.42) * 1.0)) < 0.44);
            return inside && pane ? Tint.Hex(0xFFE8A0) : Tint.Black;
        }))
        { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        var beam = new Camera { Eye = new(-3.4, 3.8, -1), Target = new(0.9, 0.9, 5.4), FieldOfView = 44, Aspect = 1 };
        Vector4 Light(Vec3 point, Vec3 normal)
        {
            var seen = point - beam.Eye;
            var depth = Vec3.Dot(seen, beam.Forward);
            if (!with || depth <= 0)
                return Tint.Black;
            double u = 0.5 + (Vec3.Dot(seen, beam.Right) / depth / beam.HalfHeight * 0.5), v = 0.5 - (Vec3.Dot(seen, beam.Top) / depth / beam.HalfHeight * 0.5);
            return slide.At(u, v).Times(Math.Max(0, -Vec3.Dot(normal, seen.Unit)) * 1.4);
        }

        DrawState Lit(Texture texture) => new()
        {
            Shade = (in Fragment f) => new Sampler(texture).First(f) * (Tint.Hex(0x404860) + (Light(f.Position, f.Normal) * 1.3f)) * f.Colour,
        };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-5, 5.5, 6), new(10, 0, 0), new(0, -5.5, 0), 4, 2), Lit(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(5, 5.5, 6), new(0, 0, -8), new(0, -5.5, 0), 4, 2), Lit(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-5, 0, 6), new(10, 0, 0), new(0, 0, -8), 4, 3), Lit(Patterns.Flags))
            .Draw(new Mesh().Box(new(1, 0, 4.6), 1.1, 1.1, 1.1, 20), Lit(Patterns.Crate)).Finish();
    }

    private static Picture Chrome(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.6, -3.4), Target = new(0, 1.25, 0), Near = 0.2, Far = 100, FieldOfView = 44 };
        var canvas = new Canvas(camera);
        canvas.Backdrop((u, v) => Props.Surroundings(camera.Forward + (camera.Right * ((u - 0.5) * 2 * camera.HalfHeight * 1.6)) + (camera.Top * ((0.5 - v) * 2 * camera.HalfHeight))));
        canvas.Draw(new Mesh().Panel(new(-30, 0, 60), new(60, 0, 0), new(0, 0, -64), 30, 30), new Sampler(Patterns.Tiles));
        canvas.Draw(new Mesh().Sphere(new(0, 1.25, 0), 1.2, 40), new DrawState
        {
            Shade = (in Fragment f) =>
            {
                var normal = f.Normal;
                var lit = 0.4 + (0.6 * Math.Max(0, Vec3.Dot(normal, new Vec3(-0.5, 0.7, -0.5).Unit)));
                if (!with)
                    return Tint.Grey(0.62).Times(lit);
                var mirrored = Vec3.Reflect((f.Position - camera.Eye).Unit, normal);
                if (mirrored.Y >= -0.01)
                    return Props.Surroundings(mirrored).Times(0.95);
                var hit = f.Position + (mirrored * (f.Position.Y / -mirrored.Y));
                var tile = new Sampler(Patterns.Tiles).At((hit.X + 30) / 2, (60 - hit.Z) / 2.13);
                return Tint.Mix(tile, Tint.Hex(0x58703A), Math.Min(1, Math.Abs(hit.Z) / 40)).Times(0.95);
            },
        });
        return canvas.Finish();
    }

    private static Picture Orb(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.7, -0.5), Target = new(0, 1.4, 6), Near = 0.2, Far = 60, FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage(16);
        var lamp = new Vec3(0.9, 1.5, 6.2);
        DrawState Lit(Texture texture) => new()
        {
            Shade = (in Fragment f) =>
            {
                var distance = (f.Position - lamp).Length;
                var glow = with ? Math.Max(0, 1 - (distance * distance / 26)) : 0.16;
                return new Sampler(texture).First(f) * (Tint.Hex(0x242838) + (Tint.Hex(0xFFC070) * (float)(glow * 1.6))) * f.Colour;
            },
        };
        return new Canvas(camera).Draw(floor, Lit(Patterns.Flags)).Draw(walls, Lit(Patterns.Bricks)).Draw(ceiling, Lit(Patterns.Planks))
            .Draw(new Mesh().Box(new(-1.5, 0, 6), 1.1, 1.1, 1.1, 25), Lit(Patterns.Crate))
            .Draw(new Mesh().Sphere(lamp, 0.16, 12, Tint.Hex(0xFFF4D0)), new DrawState()).Finish();
    }
}
