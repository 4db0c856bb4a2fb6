using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>What becomes of a texture when the card cannot keep it in the form the title brings.</summary>
internal static class TextureFormatScenes
{
    public static IReadOnlyList<Scene> All { get; } =
    [
        new("tex-pal8", "tex-pal8", with => Gallery(with ? Paletted256 : IndicesAsGrey(Paletted256))),
        new("tex-pal8-memory", "tex-pal8", Memory),
        new("tex-pal4", "tex-pal4", Gauges),
        new("tex-pal-alpha", "tex-pal-alpha", with => Bonfire(with ? Smoke16 : Smoke16.Select(t => t.WithAlpha(1)))),
        new("tex-pal-shared", "tex-pal-shared", Underwater),
        new("tex-dxt1", "tex-dxt1", with => Gallery(with ? S3tc.RoundTrip(S3tcKind.Dxt1, Props.Emblem) : Props.Emblem.Limited(32))),
        new("tex-dxt1-artefacts", "tex-dxt1", Artefacts),
        new("tex-dxt3-5", "tex-dxt3-5", with => Bonfire(S3tc.RoundTrip(with ? S3tcKind.Dxt5 : S3tcKind.Dxt1, Patterns.Smoke))),
        new("tex-8888", "tex-8888", with => LampWall(with ? TexelFormat.Rgba8888 : TexelFormat.Rgba4444)),
        new("tex-4444", "tex-4444", with => Bonfire(Patterns.Smoke.As(with ? TexelFormat.Rgba4444 : TexelFormat.Rgba5551))),
        new("tex-1555", "tex-1555", with => Yard(with ? Patterns.Fence.As(TexelFormat.Rgba5551) : Patterns.Fence.As(TexelFormat.Rgb565))),
        new("tex-lum", "tex-lum", SoftShadows),
        new("tex-colorkey", "tex-colorkey", ColourKey),
    ];

    /// <summary>The emblem in 256 colours: three bits each of red and green, two of blue.</summary>
    private static Texture Paletted256 => Props.Emblem.As(new TexelFormat(3, 3, 2, 0));

    private static Texture Smoke16 => Patterns.Smoke.Select(t => Tint.Grey(Math.Round(t.X * 15) / 15, Math.Round(t.W * 15) / 15));

    // The driver takes index bytes for brightness. A palette has no order that the eye would know, so ours is shuffled.
    private static Texture IndicesAsGrey(Texture texture) => texture.Select(t =>
    {
        var index = ((int)(t.X * 7 + 0.5f) << 5) | ((int)(t.Y * 7 + 0.5f) << 2) | (int)(t.Z * 3 + 0.5f);
        return Tint.Grey(index * 167 % 256 / 255.0);
    });

    private static Picture Gallery(Texture painting)
    {
        var camera = new Camera { Eye = new(0.4, 1.7, -0.9), Target = new(0.0, 1.6, 3), FieldOfView = 48 };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 4, 3), new(12, 0, 0), new(0, -4, 0), 4, 1.4), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-6, 0, 3), new(12, 0, 0), new(0, 0, -6), 5, 2.5), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Box(new(-0.2, 0.55, 2.98), 2.5, 2.5, 0.06, 0, Tint.Hex(0x5A4020)), new DrawState())
            .Draw(new Mesh().Panel(new(-1.35, 2.95, 2.9), new(2.3, 0, 0), new(0, -2.3, 0)), new Sampler(painting))
            .Draw(new Mesh().Box(new(2.1, 0, 2.2), 0.8, 0.8, 0.8, 20).Box(new(-2.6, 0, 2.3), 0.9, 0.9, 0.9, -25), new Sampler(Patterns.Crate)).Finish();
    }

    private static Picture Memory(bool with)
    {
        var camera = new Camera { Eye = new(0, 0, -2), Target = new(0, 0, 0) };
        var canvas = new Canvas(camera).Backdrop((_, _) => Tint.Hex(0x20262E));
        var texture = new Sampler(Paletted256) { Minify = Filter.Linear, Mip = MipFilter.None };
        canvas.Overlay(24, 16, 208, 208, texture.At);
        for (var colour = 0; with && colour < 256; colour++)
        {
            var stored = Tint.Hex(0) + new Vector4((colour >> 5) / 7f, ((colour >> 2) & 7) / 7f, (colour & 3) / 3f, 0);
            canvas.Overlay(264 + (colour % 16 * 12), 24 + (colour / 16 * 12), 11, 11, (_, _) => stored);
        }

        // A block stands for 16 KiB: 65,536 bytes of indices and 1,024 of palette against 262,144 bytes.
        const int block = 27;
        var blocks = with ? (65536 + 1024) / 16384.0 : 16;
        for (var i = 0; i < blocks; i++)
            canvas.Overlay(24 + (i * block), 238, (block - 3) * Math.Min(1, blocks - i), 22, (_, _) => Tint.Hex(with ? 0x58B070 : 0xE08040));

        return canvas.Write(24, 272, with ? "65 KIB: 8-BIT INDEX + PALETTE" : "256 KIB: 32-BIT COPY", 2, Tint.White).Finish();
    }

    private static Picture Gauges(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.6, 0), Target = new(0, 1.2, 10), FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage();
        var canvas = new Canvas(camera).Draw(floor, new Sampler(Patterns.Flags)).Draw(walls, new Sampler(Patterns.Bricks)).Draw(ceiling, new Sampler(Patterns.Planks));
        Vector4 Panel(double u, double v)
        {
            var x = (int)(u * 216);
            var y = (int)(v * 40);
            var index = Glyphs.Ink("FUEL 72  ORBS 14  KEYS 3", (x / 2) + 0 - 18 + 10, (y / 2) - 7 + 2) ? 15 : y is < 3 or >= 37 || x is < 3 or >= 213 ? 7 : 2 + (y / 14);
            if (with)
                return index switch { 15 => Tint.Hex(0xFFE060), 7 => Tint.Hex(0xB0B8C0), _ => Tint.Hex(0x203048).Times(index / 2.0) };
            // Two indices lie in a byte; read as one value each, neighbours mix and the order is lost.
            var scrambled = (index * 11) + (x * 5 % 16) + (((x * 3) + (y * 7)) % 5 * 3);
            return Tint.Hex((scrambled * 0x2B5F) & 0xFFFFFF);
        }

        return canvas.Overlay(24, 214, 432, 80, Panel).Finish();
    }

    private static Picture Bonfire(Texture smoke)
    {
        var camera = new Camera { Eye = new(0, 2.4, -3), Target = new(0, 3, 10), Near = 0.5, Far = 300, FieldOfView = 46 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x38588A), Tint.Hex(0xF0B888), 0.6)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -123), 24, 24), new Sampler(Patterns.Grass));
        canvas.Draw(new Mesh().Box(new(-4, 0, 13), 4, 3, 4, 20).Box(new(5, 0, 15), 5, 4, 4, -20), new Sampler(Patterns.Bricks));
        canvas.Draw(new Mesh().Box(new(0.3, 0, 9), 1.4, 0.5, 1, 35).Box(new(-0.2, 0.2, 8.8), 1.2, 0.4, 1, -30), new Sampler(Patterns.Planks));
        var puffs = new Mesh();
        for (var i = 9; i >= 0; i--)
            puffs.Standee(new(0.2 + (i * 0.22) + (Math.Sin(i * 2.1) * 0.5), 0.4 + (i * 0.55), 8.4 - (i * 0.02)), 1.4 + (i * 0.28), 1.4 + (i * 0.28), Tint.Grey(0.6 + (i * 0.04)));
        return canvas.Draw(puffs, new Sampler(smoke) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp, Mip = MipFilter.None },
            new DrawState { Blend = Blend.Alpha, AlphaReference = 0.004, WriteDepth = false }).Finish();
    }

    private static Picture Underwater(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.4, -1), Target = new(0, 1.1, 8), Near = 0.3, Far = 60, FieldOfView = 56 };
        Vector4 Shift(Vector4 t) => with ? new Vector4(t.X * 0.22f, (t.Y * 0.75f) + 0.08f, (t.Z * 0.8f) + 0.28f, t.W) : t;
        Sampler Read(Texture texture) => new(texture.Select(Shift));
        var canvas = new Canvas(camera).Backdrop((_, v) => Shift(Tint.Mix(Tint.Hex(0x98B8D0), Tint.Hex(0x607888), v)));
        var pillars = new Mesh();
        for (var i = 0; i < 5; i++)
            pillars.Box(new(-3.4, 0, 3 + (i * 4)), 1, 5, 1).Box(new(3.4, 0, 3 + (i * 4)), 1, 5, 1);
        return canvas.Draw(new Mesh().Panel(new(-20, 0, 50), new(40, 0, 0), new(0, 0, -50), 10, 12), Read(Patterns.Flags))
            .Draw(pillars, Read(Patterns.Bricks))
            .Draw(new Mesh().Box(new(0.8, 0, 4.6), 1, 1, 1, 30).Box(new(-1, 0, 6.5), 1, 1, 1, -12), Read(Patterns.Crate)).Finish();
    }

    private static Picture Artefacts(bool with)
    {
        // A target of rings one and a half texels wide on a white board: more hues in a block of 4 × 4 than its two end colours can hold.
        const int shown = 60;
        var target = Texture.Paint(64, 64, (u, v) =>
        {
            int[] inks = [0xE02020, 0xFFFFFF, 0x1030C0, 0xFFFFFF, 0x108030, 0xFFFFFF, 0xF0C010, 0xFFFFFF];
            double x = (u * 64) - (shown / 2.0), y = (v * 64) - (shown * 0.3125);
            var ring = Math.Sqrt((x * x) + (y * y)) / 1.5;
            return ring < 14 ? Tint.Hex(inks[(int)ring % inks.Length]) : Tint.White;
        });
        var read = new Sampler(with ? S3tc.RoundTrip(S3tcKind.Dxt1, target) : target) { Minify = Filter.Nearest };
        var camera = new Camera { Eye = new(0, 0, -2), Target = new(0, 0, 0) };
        // 60 × 37.5 texels fill the pane, eight pixels each.
        return new Canvas(camera).Backdrop((u, v) => read.At(u * shown / 64, v * shown * 0.625 / 64)).Finish();
    }

    private static Picture LampWall(TexelFormat format)
    {
        var wall = Texture.Paint(256, 256, (u, v) =>
        {
            var light = Math.Exp(-Props.Radius(u, v * 0.8) * Props.Radius(u, v * 0.8) * 7);
            return Tint.Mix(Tint.Hex(0x161C30), Tint.Hex(0xFFE2A8), light);
        });
        var camera = new Camera { Eye = new(0, 1.7, -1.4), Target = new(0, 1.75, 3), FieldOfView = 52 };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-3.6, 4, 3), new(7.2, 0, 0), new(0, -4, 0)), new Sampler(wall.As(format)))
            .Draw(new Mesh().Panel(new(-3.6, 0, 3), new(7.2, 0, 0), new(0, 0, -4.4), 3, 2, Tint.Grey(0.5)), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Box(new(0, 1.3, 2.8), 0.12, 1, 0.12, 0, Tint.Hex(0x302820)).Sphere(new(0, 2.4, 2.7), 0.22, 16, Tint.Hex(0xFFFBE8)), new DrawState()).Finish();
    }

    private static Picture Yard(Texture fence)
    {
        var camera = new Camera { Eye = new(0, 1.7, -1.6), Target = new(0.2, 1.5, 6), Near = 0.2, Far = 300, FieldOfView = 50 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.5)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -122), 24, 24), new Sampler(Patterns.Grass))
            .Draw(new Mesh().Box(new(-1.5, 0, 10), 3, 3, 3, 30).Box(new(4, 0, 12), 4, 4, 3, -15), new Sampler(Patterns.Bricks))
            .Draw(new Mesh().Box(new(0.9, 0, 6), 1, 1, 1, 20), new Sampler(Patterns.Crate));
        var panels = new Mesh();
        for (var i = -3; i <= 3; i++)
            panels.Standee(new(i * 2.1, 0, 3.4), 2.1, 2.2);
        return canvas.Draw(panels, new Sampler(fence) { Mip = MipFilter.None, WrapU = Wrap.Clamp, WrapV = Wrap.Clamp }, new DrawState { AlphaReference = 0.5 }).Finish();
    }

    private static Picture SoftShadows(bool with)
    {
        var camera = new Camera { Eye = new(0, 2.2, -2.4), Target = new(0, 0.7, 4), FieldOfView = 46 };
        var canvas = new Canvas(camera).Backdrop((_, v) => Tint.Mix(Tint.Hex(0x303848), Tint.Hex(0x606870), v))
            .Draw(new Mesh().Panel(new(-12, 0, 14), new(24, 0, 0), new(0, 0, -18), 8, 6), new Sampler(Patterns.Flags));
        (double X, double Z)[] spots = [(-1.7, 3.4), (0.2, 4.6), (1.9, 3.2)];
        if (with)
        {
            var blob = new Sampler(Texture.Paint(64, 64, (u, v) => Tint.Grey(0.25 + (0.75 * Tint.Step(0.12, 0.48, Props.Radius(u, v)))))) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
            foreach (var (x, z) in spots)
                canvas.Draw(new Mesh().Panel(new(x - 1.3, 0.005, z + 1.3), new(2.6, 0, 0), new(0, 0, -2.6)), blob, new DrawState { Blend = Blend.Modulate, WriteDepth = false });
        }

        canvas.Draw(Props.Figure(new(spots[1].X, 0, spots[1].Z)), Props.Lit);
        return canvas.Draw(new Mesh().Box(new(-1.7, 0, 3.4), 0.95, 0.95, 0.95, 24).Box(new(1.9, 0, 3.2), 0.85, 0.85, 0.85, -30), new Sampler(Patterns.Crate)).Finish();
    }

    private static Picture ColourKey(bool with)
    {
        var key = Tint.Hex(0xFF00FF);
        Vector4 Keyed(Vector4 t) => t.W >= 0.5f ? t : with ? t.WithAlpha(0) : key;
        var camera = new Camera { Eye = new(0, 2, -3), Target = new(0, 2, 8), Near = 0.5, Far = 200, FieldOfView = 50 };
        var trees = new Mesh().Standee(new(4.2, 0, 13), 4.4, 5).Standee(new(-3.4, 0, 11), 4.2, 5).Standee(new(1.2, 0, 8), 3, 3.6).Standee(new(-1.6, 0, 5), 1.8, 2.2);
        return new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.55)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -123), 24, 24), new Sampler(Patterns.Grass))
            .Draw(trees, new Sampler(Patterns.Tree.Select(Keyed)) { Magnify = Filter.Nearest, Minify = Filter.Nearest, Mip = MipFilter.None }, new DrawState { AlphaReference = 0.5 }).Finish();
    }
}
