using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>How a new pixel meets the one that is there already, and in how many bits.</summary>
internal static class BlendingScenes
{
    public static IReadOnlyList<Scene> All { get; } =
    [
        new("blend-alpha", "blend-alpha", Glass),
        new("blend-modulate", "blend-modulate", WindowLight),
        new("blend-dest-alpha", "blend-dest-alpha", Puddles),
        new("blend-op", "blend-op", Chimneys),
        new("alpha-test", "alpha-test", Wood),
        new("dither-16bpp", "dither-16bpp", with => Dusk(with ? ColourFormat.HighColourDithered : ColourFormat.HighColour)),
        new("render-32bpp", "render-32bpp", with => Steam(with ? ColourFormat.TrueColour : ColourFormat.HighColour)),
        new("specular-separate", "specular-separate", Vases),
    ];

    /// <summary>A passage with smoke before it and a green pane: what the blending comparison draws.</summary>
    internal static IReadOnlyList<Part> GlassParts(DrawState layered)
    {
        var (floor, walls, ceiling) = Props.Passage(18);
        var puffs = new Mesh();
        for (var i = 7; i >= 0; i--)
            puffs.Standee(new(-1.7 + (Math.Sin(i * 1.9) * 0.35), 0.2 + (i * 0.4), 5.2 - (i * 0.02)), 1.2 + (i * 0.16), 1.2 + (i * 0.16));
        return
        [
            new(Ahead(floor), new Sampler(Patterns.Flags), new DrawState()), new(Ahead(walls), new Sampler(Patterns.Bricks), new DrawState()),
            new(Ahead(ceiling), new Sampler(Patterns.Planks), new DrawState()),
            new(new Mesh().Box(new(1.6, 0, 6), 1.1, 1.1, 1.1, 25).Box(new(-2.2, 0, 7), 1, 1, 1, -20), new Sampler(Patterns.Crate), new DrawState()),
            new(puffs, new Sampler(Patterns.Smoke) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp }, layered),
            new(new Mesh().Panel(new(0.3, 2.7, 4.4), new(2.6, 0, 0.5), new(0, -2.7, 0), 1, 1, Tint.Hex(0x40D080, 0.45)), new Sampler(Texture.Paint(1, 1, (_, _) => Tint.White)), layered),
        ];

        // Nothing may lie behind the viewer, so that real implementations clip nothing away.
        static Mesh Ahead(Mesh mesh) => mesh.Select(v => v with { Position = v.Position + new Vec3(0, 0, 0.3) });
    }

    internal static Camera GlassCamera { get; } = new() { Eye = new(0, 1.6, 0), Target = new(0, 1.4, 8), Near = 0.2, Far = 80, FieldOfView = 54 };

    private static Picture Glass(bool with) => new Canvas(GlassCamera, magnify: 2).Draw(GlassParts(with
        ? new DrawState { Blend = Blend.Alpha, WriteDepth = false } : new DrawState { ScreenDoor = true, WriteDepth = false })).Finish();

    private static Picture WindowLight(bool with)
    {
        var camera = new Camera { Eye = new(-0.6, 1.9, -2.2), Target = new(0, 1.1, 4), FieldOfView = 50 };
        var canvas = new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 5, 6), new(14, 0, 0), new(0, -5, 0), 5, 2), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-6, 0, 6), new(14, 0, 0), new(0, 0, -9), 5, 3.2), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Box(new(2.4, 0, 4.6), 1.1, 1.1, 1.1, 24), new Sampler(Patterns.Crate));
        if (!with)
            return canvas.Finish();
        var colours = Texture.Paint(256, 256, (u, v) =>
        {
            var dark = Tint.Hex(0x50506A);
            double x = (u - 0.5) * 3, y = (v - 0.5) * 3;
            if (Math.Max(Math.Abs(x), Math.Abs(y)) > 1)
                return dark;
            var bar = Math.Min(Math.Abs((x * 3) - Math.Round(x * 3)), Math.Abs((y * 3) - Math.Round(y * 3))) < 0.12;
            int[] glass = [0xFF7058, 0xFFD860, 0x70B8FF, 0x80F090, 0xF090E0];
            return bar ? dark : Tint.Hex(glass[(((int)((x + 1) * 3) * 3) + ((int)((y + 1) * 3) * 2)) % 5]);
        });
        var light = new Sampler(colours) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        var state = new DrawState { Blend = Blend.Modulate, Depth = Comparison.Equal, WriteDepth = false };
        Vertex Lit(Vertex v) => v with { U = 0.5 + ((v.Position.X + 0.3) / 9), V = 0.5 + ((2.8 - v.Position.Z) / 9) };
        canvas.Draw(new Mesh().Panel(new(-6, 0, 6), new(14, 0, 0), new(0, 0, -9)).Select(Lit), light, state);
        var veil = new Sampler(Texture.Paint(1, 64, (_, v) => Tint.Mix(Tint.Hex(0x50506A), Tint.Hex(0x9090A0), v * v)));
        canvas.Draw(new Mesh().Panel(new(-6, 5, 6), new(14, 0, 0), new(0, -5, 0)), veil with { WrapV = Wrap.Clamp }, state);
        return canvas.Draw(new Mesh().Box(new(2.4, 0, 4.6), 1.1, 1.1, 1.1, 24, Tint.Hex(0x707084)), new DrawState { Blend = Blend.Modulate, WriteDepth = false }).Finish();
    }

    private static Picture Puddles(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.8, -3), Target = new(0, 1.1, 6), Near = 0.2, Far = 100, FieldOfView = 52 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x304878), Tint.Hex(0xE8A070), 0.5);
        var houses = new Mesh();
        for (var i = -3; i <= 3; i++)
            houses.Box(new(i * 3.4, 0, 11), 3.3, 3.6 + (2 * Noise.Hash(i + 9, 0, 151)), 3, 0, Tint.Hex(new[] { 0xFFFFFF, 0xFFD0A0, 0xC0D0FF }[(i + 3) % 3]));
        var lamps = new Mesh().Sphere(new(-2.6, 2.7, 6), 0.26, 12, Tint.Hex(0xFFF0B0)).Sphere(new(2.6, 2.7, 6), 0.26, 12, Tint.Hex(0xFFF0B0));
        var posts = new Mesh().Box(new(-2.6, 0, 6), 0.14, 2.5, 0.14, 0, Tint.Hex(0x202428)).Box(new(2.6, 0, 6), 0.14, 2.5, 0.14, 0, Tint.Hex(0x202428));
        // The street keeps in its alpha how wet each spot is; the mirrored houses are then let through by that alpha.
        var street = new Mesh().Panel(new(-20, 0, 9.5), new(40, 0, 0), new(0, 0, -12), 12, 4);
        canvas.Draw(street, new DrawState
        {
            Shade = static (in Fragment f) =>
            {
                var wet = Tint.Step(0.56, 0.62, Noise.Layers(f.Tex.Z * 2, f.Tex.W, 7, 2, 153));
                return new Sampler(Patterns.Flags).First(f).Times(0.75 - (0.3 * wet)).WithAlpha(wet * 0.85);
            },
        });
        canvas.Target.ClearDepth();
        var mirrored = new DrawState { Blend = with ? Blend.DestinationAlpha : Blend.Replace };
        static Vertex Flip(Vertex v) => v with { Position = new(v.Position.X, -v.Position.Y, v.Position.Z) };
        var sky = new Mesh().Panel(new(-80, 0, 40), new(160, 0, 0), new(0, -60, 0), 1, 1, Tint.Hex(0xB08888));
        canvas.Draw(sky, mirrored).Draw(houses.Select(Flip), new Sampler(Patterns.Bricks), mirrored)
            .Draw(posts.Select(Flip), mirrored).Draw(lamps.Select(Flip), mirrored);
        canvas.Target.ClearDepth();
        return canvas.Draw(houses, new Sampler(Patterns.Bricks)).Draw(posts, new DrawState()).Draw(lamps, new DrawState()).Finish();
    }

    private static Picture Chimneys(bool with)
    {
        var camera = new Camera { Eye = new(0, 5, -6), Target = new(0, 6, 10), Near = 0.5, Far = 300, FieldOfView = 50 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x6890B8), Tint.Hex(0xE8D8B8), 0.7)
            .Draw(new Mesh().Panel(new(-80, 0, 160), new(160, 0, 0), new(0, 0, -165), 30, 30), new Sampler(Patterns.Grass));
        var works = new Mesh().Box(new(-3, 0, 13), 9, 3.6, 5, 10).Box(new(6, 0, 15), 6, 5, 5, -14);
        var smoke = new Mesh();
        foreach (var (x, z) in new[] { (-5.0, 12.0), (-1.4, 12.6), (6.0, 14.0) })
        {
            works.Box(new(x, 0, z), 0.9, 6.4, 0.9);
            for (var i = 8; i >= 0; i--)
                smoke.Standee(new(x + (i * i * 0.06), 6 + (i * 0.75), z - 1), 1.2 + (i * 0.4), 1.2 + (i * 0.4), Tint.Grey(0.75, 0.62));
        }

        return canvas.Draw(works, new Sampler(Patterns.Bricks))
            .Draw(smoke, new Sampler(Patterns.Smoke) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp }, new DrawState { Blend = with ? Blend.SubtractAlpha : Blend.AddAlpha, WriteDepth = false }).Finish();
    }

    private static Picture Wood(bool with)
    {
        var camera = new Camera { Eye = new(0, 2.2, -3), Target = new(0, 2.1, 8), Near = 0.5, Far = 200, FieldOfView = 50 };
        var trees = new Mesh();
        for (var i = 0; i < 16; i++)
        {
            var size = 3 + (Noise.Hash(i, 1, 161) * 1.8);
            trees.Standee(new((Noise.Hash(i, 2, 161) - 0.5) * 17, 0, 5 + i), size, size * 1.2);
        }

        // Nearest first: without the test the clear corners of a near tree have already filled the depth buffer.
        return new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.55)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -123), 24, 24), new Sampler(Patterns.Grass))
            .Draw(new Mesh().Box(new(-3, 0, 18), 5, 5, 4, 20).Box(new(6, 0, 22), 6, 7, 4, -10), new Sampler(Patterns.Bricks))
            .Draw(trees, new Sampler(Patterns.Tree) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp, Mip = MipFilter.None },
                new DrawState { AlphaReference = with ? 0.5 : null, Blend = Blend.Alpha }).Finish();
    }

    private static Picture Dusk(ColourFormat format)
    {
        var canvas = new Canvas(new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1) }, magnify: 3, format);
        return canvas.Backdrop((u, v) =>
        {
            double hill = 0.74 - (0.2 * Noise.Layers(u * 0.5, 0.2, 6, 4, 163)), near = 0.92 - (0.16 * Noise.Layers((u * 0.5) + 0.4, 0.7, 8, 4, 165));
            var moon = Props.Radius(((u - 0.74) * 1.6) + 0.5, v + 0.22);
            if (v > near)
                return Tint.Hex(0x080A10);
            if (v > hill)
                return Tint.Mix(Tint.Hex(0x141A2A), Tint.Hex(0x2A2C40), (v - hill) * 5);
            if (moon < 0.055)
                return Tint.Hex(0xF4F0DC);
            return Tint.Mix(Tint.Hex(0x04060E), Tint.Hex(0x8CA0D0), 0.8 * Math.Exp(-moon * 2.6));
        }).Finish();
    }

    private static Picture Steam(ColourFormat format)
    {
        var camera = new Camera { Eye = new(0, 1.6, 0), Target = new(0, 1.5, 8), Near = 0.2, Far = 80, FieldOfView = 54 };
        var canvas = new Canvas(camera, magnify: 2, format).Backdrop((u, v) =>
            Tint.Mix(Tint.Hex(0x0A1020), Tint.Hex(0x5A6E90), Math.Exp(-6 * (((u - 0.5) * (u - 0.5)) + ((v - 0.45) * (v - 0.45))))));
        canvas.Draw(new Mesh().Panel(new(-20, 0, 30), new(40, 0, 0), new(0, 0, -30), 12, 9, Tint.Grey(0.4)), new Sampler(Patterns.Flags));
        canvas.Draw(new Mesh().Box(new(-2, 0, 7), 1.6, 1.6, 1.6, 25, Tint.Grey(0.7)).Box(new(2.2, 0, 8), 1.6, 2.4, 1.6, -20, Tint.Grey(0.7)), new Sampler(Patterns.Crate));
        // Many thin layers: each is rounded to the format before the next comes.
        var veils = new Mesh();
        for (var i = 0; i < 36; i++)
            veils.Standee(new((Noise.Hash(i, 1, 171) - 0.5) * 3, -1.2 + (Noise.Hash(i, 2, 171) * 1.6), 6 - (i * 0.08)), 6, 4.4, Tint.Hex(0xB8C8E0, 0.045));
        return canvas.Draw(veils, new Sampler(Props.Glow) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp, Mip = MipFilter.None },
            new DrawState { Blend = Blend.Alpha, WriteDepth = false, Depth = Comparison.Always }).Finish();
    }

    private static Picture Vases(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.9, -2.4), Target = new(0, 0.95, 3), FieldOfView = 44 };
        var sun = new Vec3(-0.5, 0.75, -0.55).Unit;
        DrawState Glazed(int colour) => new()
        {
            Shade = (in Fragment f) =>
            {
                var normal = f.Normal;
                var stripes = (Math.Abs(Math.Sin(f.Position.Y * 9)) > 0.9 ? Tint.Hex(0x1A1410) : Tint.Hex(colour)).Times(0.9);
                var diffuse = 0.25 + (0.6 * Math.Max(0, Vec3.Dot(normal, sun)));
                var half = (sun + (camera.Eye - f.Position).Unit).Unit;
                var shine = (float)Math.Pow(Math.Max(0, Vec3.Dot(normal, half)), 50);
                var highlight = new Vector4(shine, shine, shine, 0);
                return with ? stripes.Times(diffuse) + highlight : stripes * (Tint.Grey(diffuse) + highlight);
            },
        };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 5, 6), new(12, 0, 0), new(0, -5, 0), 5, 2, Tint.Grey(0.6)), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-6, 0, 6), new(12, 0, 0), new(0, 0, -9), 5, 3.2, Tint.Grey(0.7)), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Sphere(new(-1.5, 0.75, 3.2), 0.75, 32).Sphere(new(-1.5, 1.55, 3.2), 0.26, 20), Glazed(0x2C4A8C))
            .Draw(new Mesh().Sphere(new(0.2, 0.9, 3.6), 0.9, 32), Glazed(0x7A1E28))
            .Draw(new Mesh().Sphere(new(1.8, 0.65, 2.9), 0.65, 32).Sphere(new(1.8, 1.35, 2.9), 0.22, 20), Glazed(0x1E5A38)).Finish();
    }
}
