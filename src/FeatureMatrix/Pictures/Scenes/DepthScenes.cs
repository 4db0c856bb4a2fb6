using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>What lies before what, and what shadow counting does with it.</summary>
internal static class DepthScenes
{
    private static readonly Vec3 Lamp = new(-3.2, 4.6, 1.2);
    private static readonly Vector4 Shade = Tint.Grey(0.42);

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("depth-bits", "depth-bits", with => Airfield(with ? DepthFormat.Z24 : DepthFormat.Z16)),
        new("depth-wbuffer", "depth-wbuffer", with => Harbour(with ? DepthFormat.W16 : DepthFormat.Z16)),
        new("depth-bias", "depth-bias", Decals),
        new("stencil-bits", "stencil-bits", with => Volumes(with, wrapping: true, backFirst: false)),
        new("stencil-bits-overlap", "stencil-bits", Overlapping),
        new("stencil-wrap", "stencil-wrap", with => Volumes(drawn: true, wrapping: with, backFirst: true)),
        new("shadow-map", "shadow-map", Walkers),
    ];

    internal static Camera AirfieldCamera { get; } =
        new() { Eye = new(-60, 75, -40), Target = new(20, 0, 330), Near = 0.5, Far = 1400, FieldOfView = 34 };

    /// <summary>Sheds, stripes, runway and ground, drawn from the top; each layer lies 0.4 units above the one below.</summary>
    internal static IReadOnlyList<Part> AirfieldParts()
    {
        var state = new DrawState();
        var plain = new Sampler(Texture.Paint(1, 1, (_, _) => Tint.White));
        var stripes = new Mesh();
        for (var i = 0; i < 14; i++)
            stripes.Panel(new(20, 0.8, 105 + (i * 60)), new(6, 0, 0), new(0, 0, -34), 1, 1, Tint.Hex(0xFFFFFF));
        for (var i = 0; i < 6; i++)
            stripes.Panel(new(-12 + (i * 12), 0.8, 90), new(6, 0, 0), new(0, 0, -40), 1, 1, Tint.Hex(0xFFFFFF));
        var sheds = new Mesh();
        for (var i = 0; i < 5; i++)
        {
            var tint = Tint.Hex(i % 2 == 0 ? 0xC8402C : 0x3C68B0);
            sheds.Panel(new(74, 16.4, 214 + (i * 90)), new(42, 0, 0), new(0, 0, -48), 1, 1, tint).Box(new(95, 0, 190 + (i * 90)), 40, 16, 46, 0, Tint.Hex(0xD8D0C0));
        }

        return
        [
            new(sheds, plain, state), new(stripes, plain, state),
            new(new Mesh().Panel(new(-16, 0.4, 1000), new(78, 0, 0), new(0, 0, -970), 1, 1, Tint.Hex(0x484C54)), plain, state),
            new(new Mesh().Panel(new(-900, 0, 1360), new(1800, 0, 0), new(0, 0, -1360), 60, 46), new Sampler(Patterns.Grass), state),
        ];
    }

    private static Picture Airfield(DepthFormat depth) =>
        new Canvas(AirfieldCamera, depth: depth).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.3).Draw(AirfieldParts()).Finish();

    private static Picture Harbour(DepthFormat depth)
    {
        var camera = new Camera { Eye = new(0, 30, 0), Target = new(0, 14, 300), Near = 1, Far = 900, FieldOfView = 17 };
        var canvas = new Canvas(camera, depth: depth).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.45);
        canvas.Draw(new Mesh().Panel(new(-600, 0, 880), new(1200, 0, 0), new(0, 0, -860), 1, 1, Tint.Hex(0x2E6890)), new DrawState());
        canvas.Draw(new Mesh().Panel(new(-260, 0.6, 640), new(520, 0, 0), new(0, 0, -300), 1, 1, Tint.Hex(0xB8A888)), new DrawState());
        var houses = new Mesh();
        var fronts = new Mesh();
        for (var i = 0; i < 9; i++)
        {
            double x = -144 + (i * 36), z = 380 + (Noise.Hash(i, 1, 131) * 40), high = 22 + (Noise.Hash(i, 2, 131) * 22);
            var wall = Tint.Hex(new[] { 0xE8C898, 0xC86850, 0xE0E0D8, 0x88A8C0 }[i % 4]);
            var turn = (Noise.Hash(i, 3, 131) - 0.5) * 50;
            var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
            Vec3 along = new(cos, 0, sin), front = new Vec3(x, 0, z) + (new Vec3(sin, 0, -cos) * 13.5);
            houses.Box(new(x, 0.6, z), 30, high, 26, turn, wall);
            for (var window = 0; window < 6; window++)
                fronts.Panel(front + (along * (-11 + (window % 3 * 8.4))) + (Vec3.Up * (high - 4 - (window / 3 * 9))), along * 5, new(0, -6, 0), 1, 1, Tint.Hex(0x182838));
            fronts.Panel(front + (along * -2.5) + (Vec3.Up * 7.5), along * 5, new(0, -7, 0), 1, 1, Tint.Hex(0x5A2818));
        }

        return canvas.Draw(fronts, new DrawState()).Draw(houses, new DrawState()).Finish();
    }

    private static Picture Decals(bool with)
    {
        var camera = new Camera { Eye = new(-1.2, 1.7, -1.2), Target = new(0.2, 1.1, 4), FieldOfView = 52 };
        var canvas = new Canvas(camera, depth: DepthFormat.Z16);
        canvas.Draw(new Mesh().Panel(new(-6, 5, 5), new(16, 0, 0), new(0, -5, 0), 6.6, 2), new Sampler(Patterns.Bricks));
        canvas.Draw(new Mesh().Panel(new(-6, 0, 5), new(16, 0, 0), new(0, 0, -7), 5.3, 2.4), new Sampler(Patterns.Flags));
        // The corners of the marks are off the surface by up to a hundredth, as stored corners are; the bias outweighs that.
        var state = new DrawState { DepthBias = with ? -0.0006 : 0 };
        canvas.Draw(Rounded(new Mesh().Panel(new(-0.35, 0, 5), new(0.5, 0, 0.0), new(-0.35, 0, -6.6), 1, 1, Tint.Hex(0xF8D030), 1, 7)), state);
        canvas.Draw(Rounded(new Mesh().Panel(new(1.1, 0, 5), new(0.35, 0, 0), new(0.6, 0, -6.6), 1, 1, Tint.Hex(0xF8D030), 1, 7)), state);
        canvas.Draw(Rounded(Disc(new(2, 1.9, 5), 0.8, Tint.Hex(0x186038))), state);
        return canvas.Draw(Rounded(Disc(new(-1.4, 2, 5), 0.6, Tint.Hex(0x201810))), state).Finish();

        static Mesh Rounded(Mesh exact) => exact.Select(v => v with { Position = v.Position + new Vec3(0, Off(v, 1), Off(v, 2)) });

        static double Off(Vertex v, int way) => (Noise.Hash((int)(v.Position.X * 100), (int)((v.Position.Y * 100) + (v.Position.Z * 37)), 140 + way) - 0.5) * 0.02;
    }

    private static Mesh Disc(Vec3 centre, double radius, Vector4 colour)
    {
        var disc = new Mesh();
        Vertex At(int i)
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 12);
            return new Vertex(centre + (new Vec3(cos, sin, 0) * radius), 0, 0) { Colour = colour };
        }

        for (var i = 0; i < 24; i++)
            disc.Triangle(new Vertex(centre, 0, 0) { Colour = colour }, At(i), At(i + 1));
        return disc;
    }

    private static Picture Volumes(bool drawn, bool wrapping, bool backFirst)
    {
        var camera = new Camera { Eye = new(0.4, 2.3, -2.6), Target = new(0.4, 0.9, 4), Near = 0.2, Far = 60, FieldOfView = 52 };
        var canvas = new Canvas(camera);
        var crates = new Mesh().Box(new(-0.9, 0, 3.4), 1, 1, 1, 24).Box(new(1.6, 0, 4.2), 1, 1.9, 1, -20).Box(new(0.2, 0, 1.7), 0.6, 0.6, 0.6, 50);
        var figure = Props.Figure(new(0.5, 0, 3.1));
        canvas.Draw(new Mesh().Panel(new(-9, 4.5, 6), new(18, 0, 0), new(0, -4.5, 0), 6.4, 2), new Sampler(Patterns.Plaster));
        canvas.Draw(new Mesh().Panel(new(-9, 0, 6), new(18, 0, 0), new(0, 0, -10), 6.4, 3.6), new Sampler(Patterns.Flags));
        canvas.Draw(crates, new Sampler(Patterns.Crate));
        if (drawn)
        {
            var volume = ShadowVolume(crates);
            foreach (var v in ShadowVolume(Props.Figure(new(0.5, 0, 3.1), detail: 4)).Vertices.Chunk(3))
                volume.Triangle(v[0], v[1], v[2]);
            var (up, down) = wrapping
                ? (StencilChange.IncreaseWrapping, StencilChange.DecreaseWrapping) : (StencilChange.IncreaseClamped, StencilChange.DecreaseClamped);
            var count = new DrawState { WriteColour = false, WriteDepth = false, Depth = Comparison.Less };
            var front = count with { Facing = Facing.Clockwise, Stencil = new Stencil(Comparison.Always, 0) { WhenDepthPasses = up } };
            var back = count with { Facing = Facing.CounterClockwise, Stencil = new Stencil(Comparison.Always, 0) { WhenDepthPasses = down } };
            canvas.Draw(volume, backFirst ? back : front).Draw(volume, backFirst ? front : back);
            var veil = new Mesh().Panel(camera.Eye + (camera.Forward * 0.5) - (camera.Right * 2) + (camera.Top * 2), camera.Right * 4, camera.Top * -4, 1, 1, Shade);
            canvas.Draw(veil, new DrawState { Depth = Comparison.Always, WriteDepth = false, Blend = Blend.Modulate, Stencil = new Stencil(Comparison.NotEqual, 0) });
        }

        return canvas.Draw(figure, Props.Lit).Finish();
    }

    // Every triangle of a closed caster that faces the lamp is drawn out to a closed wedge away from it, all sides facing outwards.
    private static Mesh ShadowVolume(Mesh caster)
    {
        var volume = new Mesh();
        foreach (var corners in caster.Vertices.Chunk(3))
        {
            Vec3 a = corners[0].Position, b = corners[1].Position, c = corners[2].Position;
            var normal = Vec3.Cross(b - a, c - a);
            if (normal.Length < 1e-9 || Vec3.Dot(corners[0].Normal + corners[1].Normal + corners[2].Normal, Lamp - a) <= 0)
                continue;
            if (Vec3.Dot(normal, Lamp - a) < 0)
                (b, c) = (c, b);
            Vec3[] near = [Pushed(a, 0.002), Pushed(b, 0.002), Pushed(c, 0.002)];
            Vec3[] far = [Pushed(a, 14), Pushed(b, 14), Pushed(c, 14)];
            volume.Triangle(Bare(near[0]), Bare(near[1]), Bare(near[2])).Triangle(Bare(far[0]), Bare(far[2]), Bare(far[1]));
            for (var k = 0; k < 3; k++)
            {
                var next = (k + 1) % 3;
                volume.Quad(Bare(near[next]), Bare(near[k]), Bare(far[k]), Bare(far[next]));
            }
        }

        return volume;

        static Vertex Bare(Vec3 position) => new(position, 0, 0);

        static Vec3 Pushed(Vec3 point, double distance) => point + ((point - Lamp).Unit * distance);
    }

    private static Picture Overlapping(bool with)
    {
        var camera = new Camera { Eye = new(0, 3, -4), Target = new(0, 0.9, 4), Near = 0.2, Far = 80, FieldOfView = 46 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xE8E0D0), 0.36)
            .Draw(new Mesh().Panel(new(-40, 0, 60), new(80, 0, 0), new(0, 0, -66), 26, 22), new Sampler(Patterns.Flags));
        var pillars = new Mesh();
        for (var i = 0; i < 5; i++)
            pillars.Box(new(-3 + (i * 1.5), 0, 5 - (i * 0.35)), 0.5, 2.6, 0.5, i * 18);
        pillars.Box(new(0, 2.6, 4.3), 7.2, 0.4, 0.6, 13);
        // Flattened onto the floor away from a low sun.
        var flat = pillars.Select(v => v with { Position = new(v.Position.X + (v.Position.Y * 0.55), 0.004, v.Position.Z - (v.Position.Y * 1.15)), Colour = Tint.Grey(0, 0.45) });
        canvas.Draw(flat, new DrawState
        {
            Blend = Blend.Alpha,
            WriteDepth = false,
            Depth = Comparison.Always,
            Stencil = with ? new Stencil(Comparison.Equal, 0) { WhenDepthPasses = StencilChange.IncreaseClamped } : null,
        });
        return canvas.Draw(pillars, new Sampler(Patterns.Plaster)).Finish();
    }

    private static Picture Walkers(bool with)
    {
        var camera = new Camera { Eye = new(0, 2.6, -3), Target = new(0.2, 0.6, 3.4), Near = 0.2, Far = 80, FieldOfView = 46 };
        var sun = new Camera { Eye = new(-5.5, 6.5, -1.5), Target = new(0.4, 0.4, 3.2), Near = 2, Far = 30, FieldOfView = 40, Aspect = 1 };
        var cast = new Mesh().Box(new(2.1, 0, 4.2), 0.9, 0.9, 0.9, 20);
        foreach (var (x, z) in new[] { (-1.5, 3.6), (0.3, 2.6) })
        {
            foreach (var v in Props.Figure(new(x, 0, z)).Vertices.Chunk(3))
                cast.Triangle(v[0], v[1], v[2]);
        }

        var map = new Framebuffer(384, 384);
        Rasterizer.Draw(map, sun, cast, new DrawState { WriteColour = false });
        DrawState Lit(Texture? texture, bool blobs) => new()
        {
            Shade = (in Fragment f) =>
            {
                var light = with ? Visible(map, sun, f.Position) : 1;
                if (!with && blobs)
                {
                    foreach (var (x, z) in new[] { (-1.5, 3.6), (0.3, 2.6), (2.1, 4.2) })
                        light *= 0.25 + (0.75 * Tint.Step(0.2, 0.8, Math.Sqrt(Math.Pow(f.Position.X - x, 2) + Math.Pow(f.Position.Z - z, 2))));
                }

                var facing = 0.35 + (0.65 * light * Math.Max(texture is null ? 0 : 0.75, Vec3.Dot(f.Normal, (sun.Eye - sun.Target).Unit)));
                return (texture is null ? Tint.White : new Sampler(texture).First(f)) * f.Colour.Times(facing);
            },
        };
        return new Canvas(camera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xE8E0D0), 0.36)
            .Draw(new Mesh().Panel(new(-40, 0, 60), new(80, 0, 0), new(0, 0, -66), 26, 22), Lit(Patterns.Flags, true))
            .Draw(new Mesh().Box(new(2.1, 0, 4.2), 0.9, 0.9, 0.9, 20), new Sampler(Patterns.Crate))
            .Draw(Props.Figure(new(-1.5, 0, 3.6)), Lit(null, false)).Draw(Props.Figure(new(0.3, 0, 2.6)), Lit(null, false)).Finish();
    }

    // The share of nine readings around a point that the sun reaches.
    private static double Visible(Framebuffer map, Camera sun, Vec3 point)
    {
        var seen = point - sun.Eye;
        var depth = Vec3.Dot(seen, sun.Forward);
        var x = (0.5 + (Vec3.Dot(seen, sun.Right) / depth / sun.HalfHeight * 0.5)) * map.Width;
        var y = (0.5 - (Vec3.Dot(seen, sun.Top) / depth / sun.HalfHeight * 0.5)) * map.Height;
        if (x < 1 || y < 1 || x >= map.Width - 1 || y >= map.Height - 1)
            return 1;
        var own = map.DepthFormat.Store(sun.WindowDepth(depth - 0.05));
        var lit = 0;
        for (var i = 0; i < 9; i++)
            lit += own <= map.DepthOf(map.Slot((int)x + (i % 3) - 1, (int)y + (i / 3) - 1)) ? 1 : 0;
        return lit / 9.0;
    }
}
