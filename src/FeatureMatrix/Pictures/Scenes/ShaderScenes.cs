using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Work done for every corner, every pixel, or into pictures that are not the screen.</summary>
internal static class ShaderScenes
{
    public static IReadOnlyList<Scene> All { get; } =
    [
        new("vs-version", "vs-version", Sea),
        new("ps-version", "ps-version", Bay),
        new("vtx-blend", "vtx-blend", Arm),
        new("point-sprite", "point-sprite", Sparks),
        new("npatch", "npatch", Vase),
        new("float-target", "float-target", Glare),
        new("render-to-texture", "render-to-texture", Monitors),
        new("occlusion-query", "occlusion-query", Flare),
    ];

    private static Picture Sea(bool with)
    {
        var camera = new Camera { Eye = new(0, 3.4, -6), Target = new(0, 1.2, 12), Near = 0.3, Far = 200, FieldOfView = 48 };
        double Wave(double x, double z) => with ? (0.55 * Math.Sin((x * 0.5) + (z * 0.8))) + (0.3 * Math.Sin((x * 1.1) - (z * 0.6) + 1)) + (0.14 * Math.Sin((x * 2.3) + (z * 1.9))) : 0;
        Vertex At(double x, double z)
        {
            double slopeX = Wave(x + 0.1, z) - Wave(x - 0.1, z), slopeZ = Wave(x, z + 0.1) - Wave(x, z - 0.1);
            var light = 0.55 + (0.5 * Vec3.Dot(new Vec3(-slopeX, 0.2, -slopeZ).Unit, new Vec3(-0.6, 0.6, -0.5).Unit));
            var colour = Tint.Mix(Tint.Hex(0x0C3850), Tint.Hex(0x58B0C8), light);
            return new Vertex(new(x, Wave(x, z), z), x / 8, z / 8) { Colour = Tint.Mix(colour, Tint.White, Tint.Step(0.62, 1, Wave(x, z)) * 0.6).WithAlpha(1) };
        }

        var boat = new Mesh();
        var rock = with ? 9 : 0;
        boat.Box(new(1.4, Wave(1.4, 7) - 0.2, 7), 2.6, 0.8, 1.1, 24, Tint.Hex(0x9A3828)).Box(new(1.2, Wave(1.4, 7) + 0.6, 7), 1.1, 0.7, 0.8, 24, Tint.Hex(0xF0E8D8))
            .Box(new(1.7, Wave(1.4, 7) + 0.6, 7), 0.1, 2.4, 0.1, 24, Tint.Hex(0x604828));
        var tilt = Math.Sin(rock * Math.PI / 180);
        return new Canvas(camera).Sky(Tint.Hex(0x4878B0), Tint.Hex(0xE0E8EC), 0.4)
            .Draw(new Mesh().Terrain(-40, -4, 0.5, 160, 160, At), new DrawState { Fog = new Fog(FogMode.Linear, Tint.Hex(0xD0DCE0)) { Start = 30, End = 84 } })
            .Draw(boat.Select(v => v with { Position = v.Position + new Vec3(v.Position.Y * tilt, 0, 0) }), new DrawState()).Finish();
    }

    private static Picture Bay(bool with)
    {
        var camera = new Camera { Eye = new(0, 2, -4), Target = new(-0.4, 1.4, 8), Near = 0.2, Far = 200, FieldOfView = 50 };
        var canvas = new Canvas(camera);
        canvas.Backdrop((u, v) => Props.Surroundings(camera.Forward + (camera.Right * ((u - 0.5) * 2 * camera.HalfHeight * 1.6)) + (camera.Top * ((0.5 - v) * 2 * camera.HalfHeight))));
        canvas.Draw(new Mesh().Panel(new(-30, -0.8, 40), new(60, 0, 0), new(0, 0, -44), 20, 14), new Sampler(Patterns.Flags));
        var still = new Sampler(Texture.Paint(128, 128, (u, v) => Tint.Mix(Tint.Hex(0x1E5078), Tint.Hex(0x5C98B8), Noise.Layers(u, v, 8, 4, 201))));
        return canvas.Draw(new Mesh().Panel(new(-60, 0, 90), new(120, 0, 0), new(0, 0, -96), 30, 24), new DrawState
        {
            Blend = Blend.Alpha,
            Shade = (in Fragment f) =>
            {
                if (!with)
                    return still.First(f);
                var ray = (f.Position - camera.Eye).Unit;
                double x = f.World.X, z = f.World.Z, calm = 0.3 / (1 + (f.EyeDepth * 0.05));
                double Height(double px, double pz) => Noise.Layers((px * 0.03) + 5, (pz * 0.03) + 5, 40, 3, 203) * 1.6;
                var normal = new Vec3((Height(x - 0.05, z) - Height(x + 0.05, z)) * calm * 4, 1, (Height(x, z - 0.05) - Height(x, z + 0.05)) * calm * 4).Unit;
                var mirrored = Vec3.Reflect(ray, normal);
                var seen = Props.Surroundings(mirrored with { Y = Math.Abs(mirrored.Y) + 0.01 });
                var grazing = Math.Pow(1 - Math.Max(0, -Vec3.Dot(ray, normal)), 3);
                var sparkle = Math.Pow(Math.Max(0, Vec3.Dot(mirrored, new Vec3(-0.35, 0.42, 0.84).Unit)), 220);
                return (Tint.Mix(Tint.Hex(0x0E4A50), seen, 0.2 + (0.75 * grazing)) + (Tint.Hex(0xFFF0C0) * (float)sparkle)).WithAlpha(0.62 + (0.38 * grazing));
            },
        }).Finish();
    }

    private static Picture Arm(bool with)
    {
        var camera = new Camera { Eye = new(0.1, 1.35, -0.9), Target = new(0.1, 1.3, 2), FieldOfView = 44 };
        var arm = new Mesh();
        // The forearm turns by 95 degrees about the elbow; near the joint each corner belongs partly to both bones.
        Vertex At(double along, double around)
        {
            var (sin, cos) = Math.SinCos(around);
            var radius = 0.34 - (0.05 * Math.Cos(along * 2.4)) - (0.05 * Math.Abs(along));
            Vec3 straight = new(along, cos * radius, sin * radius), normal = new(0, cos, sin);
            var share = with ? Tint.Step(-0.42, 0.42, along) : along > 0 ? 1 : 0;
            var (ts, tc) = Math.SinCos(95 * Math.PI / 180);
            Vec3 Turned(Vec3 p) => new((p.X * tc) - (p.Y * ts), (p.X * ts) + (p.Y * tc), p.Z);
            var position = (straight * (1 - share)) + (Turned(straight) * share);
            return new Vertex(position + new Vec3(0.35, 1, 2), 0, 0) { Normal = ((normal * (1 - share)) + (Turned(normal) * share)).Unit, Colour = Tint.Hex(along < -1 ? 0x3858A0 : 0xE0A878) };
        }

        const int rings = 40, sides = 28;
        for (var i = 0; i < rings; i++)
        {
            // Without blending the two bones are separate stiff pieces: no facet may span the joint.
            if (!with && i == rings / 2)
                continue;
            double a0 = -1.6 + (i * 3.1 / rings), a1 = -1.6 + ((i + 1) * 3.1 / rings);
            for (var k = 0; k < sides; k++)
                arm.Quad(At(a0, k * 2 * Math.PI / sides), At(a1, k * 2 * Math.PI / sides), At(a1, (k + 1) * 2 * Math.PI / sides), At(a0, (k + 1) * 2 * Math.PI / sides));
        }

        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 5, 5), new(12, 0, 0), new(0, -5, 0), 4, 2, Tint.Grey(0.75)), new Sampler(Patterns.Plaster))
            .Draw(new Mesh().Panel(new(-6, 0, 5), new(12, 0, 0), new(0, 0, -8), 5, 3, Tint.Grey(0.7)), new Sampler(Patterns.Planks))
            .Draw(arm, Props.Lit).Draw(new Mesh().Sphere(new(0.28, 2.62, 2), 0.3, 16, Tint.Hex(0xE0A878)), Props.Lit).Finish();
    }

    private static Picture Sparks(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.7, -2.6), Target = new(0, 1.7, 4), FieldOfView = 50 };
        var canvas = new Canvas(camera).Backdrop((_, _) => Tint.Hex(0x0C0E16))
            .Draw(new Mesh().Panel(new(-8, 5, 6), new(16, 0, 0), new(0, -5, 0), 6, 2, Tint.Hex(0x6A5A54)), new Sampler(Patterns.Bricks))
            .Draw(new Mesh().Panel(new(-8, 0, 6), new(16, 0, 0), new(0, 0, -9), 6, 3, Tint.Hex(0x5A5048)), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Box(new(0, 0, 3.6), 1.2, 0.8, 1, 20, Tint.Hex(0x807060)), new Sampler(Patterns.Bricks));
        var sparks = new Mesh();
        for (var i = 0; i < 150; i++)
        {
            double t = Noise.Hash(i, 1, 211), angle = Noise.Hash(i, 2, 211) * 6.283, speed = 0.5 + Noise.Hash(i, 3, 211);
            var (sin, cos) = Math.SinCos(angle);
            var at = new Vec3(cos * speed * t * 2.2, 0.9 + (speed * 3.6 * t) - (3.4 * t * t), 3.4 + (sin * speed * t));
            var size = 0.26 - (0.16 * t);
            sparks.Standee(at, size, size, Tint.Mix(Tint.Hex(0xFFF4B0), Tint.Hex(0xFF5010), t));
        }

        var sprite = new Sampler(with ? Props.Glow : Texture.Paint(1, 1, (_, _) => Tint.White)) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        return canvas.Draw(sparks, sprite, new DrawState { Blend = with ? Blend.AddAlpha : Blend.Replace, WriteDepth = false }).Finish();
    }

    private static Picture Vase(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.7, -2.6), Target = new(0, 1.5, 2), FieldOfView = 46 };
        var glaze = Tint.Hex(0xD8A878);
        // Both carry the same smooth normals: only the outline and the surface between corners differ.
        return new Canvas(camera).Backdrop((_, v) => Tint.Mix(Tint.Hex(0x28323E), Tint.Hex(0x70808C), v))
            .Draw(new Mesh().Panel(new(-6, 0, 6), new(12, 0, 0), new(0, 0, -9), 5, 3), new Sampler(Patterns.Planks))
            .Draw(new Mesh().Turned(new(0, 0.55, 2), with ? 60 : 6, with ? 48 : 6, 2.3, Profile, glaze), Props.Lit)
            .Draw(new Mesh().Box(new(0, 0, 2), 1.9, 0.55, 1.9, 12), new Sampler(Patterns.Flags)).Finish();

        // Foot, belly, neck and lip of the vase: its radius at a height of 0 to 1.
        static double Profile(double height) =>
            0.34 + (0.62 * Math.Exp(-Math.Pow((height - 0.42) / 0.24, 2))) + (0.2 * Tint.Step(0.84, 1, height)) - (0.06 * Tint.Step(0.6, 0.84, height));
    }

    private static Picture Glare(bool with)
    {
        var camera = new Camera { Eye = new(0.6, 1.7, 0), Target = new(-0.1, 1.7, 8), Near = 0.2, Far = 60, FieldOfView = 56 };
        var (floor, walls, ceiling) = Props.Passage(14);
        var canvas = new Canvas(camera, format: ColourFormat.FloatingPoint);
        Vec3 window = new(0, 2.4, 13.9);
        DrawState Lit(Texture texture) => new()
        {
            Shade = (in Fragment f) =>
            {
                var away = f.Position - window;
                var light = 0.10 + (9 / (1 + (0.9 * Vec3.Dot(away, away))));
                return (new Sampler(texture).First(f) * f.Colour * Tint.Hex(0xFFF0D8)).Times(light);
            },
        };
        canvas.Draw(floor, Lit(Patterns.Flags)).Draw(walls, Lit(Patterns.Bricks)).Draw(ceiling, Lit(Patterns.Planks))
            .Draw(new Mesh().Box(new(1.8, 0, 6), 1.1, 1.1, 1.1, 25).Box(new(-2, 0, 8), 1.2, 1.2, 1.2, -20), Lit(Patterns.Crate));
        canvas.Draw(new Mesh().Panel(new(-1.3, 3.7, 13.8), new(2.6, 0, 0), new(0, -2.4, 0), 1, 1, new Vector4(14, 13, 11, 1)), new DrawState());
        return Exposure.Develop(canvas.Target, with);
    }

    private static Picture Monitors(bool with)
    {
        var yardCamera = new Camera { Eye = new(0, 4, -2), Target = new(0, 1, 9), Near = 0.3, Far = 100, FieldOfView = 52 };
        var yard = new Canvas(yardCamera).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xDCE8F0), 0.4)
            .Draw(new Mesh().Panel(new(-60, 0, 90), new(120, 0, 0), new(0, 0, -92), 24, 18), new Sampler(Patterns.Grass))
            .Draw(new Mesh().Box(new(-3, 0, 9), 3, 3, 3, 30).Box(new(3.4, 0, 12), 4, 4, 3, -15), new Sampler(Patterns.Bricks))
            .Draw(Props.Figure(new(0.6, 0, 6), 1.3), Props.Lit).Finish();
        var image = Texture.Paint(256, 256, (u, v) =>
        {
            var at = (((int)(v * yard.Height) * yard.Width) + (int)(u * yard.Width)) * 3;
            return new Vector4(yard.Rgb[at] / 255f, yard.Rgb[at + 1] / 255f, yard.Rgb[at + 2] / 255f, 1);
        });
        var camera = new Camera { Eye = new(-0.4, 1.7, -0.2), Target = new(0.1, 1.65, 4), FieldOfView = 50 };
        var canvas = new Canvas(camera)
            .Draw(new Mesh().Panel(new(-6, 4.5, 4), new(12, 0, 0), new(0, -4.5, 0), 5, 2, Tint.Grey(0.6)), new Sampler(Patterns.Bricks))
            .Draw(new Mesh().Panel(new(-6, 0, 4), new(12, 0, 0), new(0, 0, -6), 5, 3, Tint.Grey(0.6)), new Sampler(Patterns.Flags))
            .Draw(new Mesh().Box(new(0, 0.85, 3.9), 3.2, 2.1, 0.3, 0, Tint.Hex(0x3A4048)).Box(new(0, 0, 3.6), 3.6, 0.8, 0.9, 0, Tint.Hex(0x505860)), new DrawState());
        var glass = new Mesh().Panel(new(-1.45, 2.85, 3.74), new(2.9, 0, 0), new(0, -1.85, 0), 1, 1, with ? Tint.White : Tint.Hex(0x101214));
        return canvas.Draw(glass, new Sampler(with ? image : Texture.Paint(1, 1, (_, _) => Tint.White)) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp }).Finish();
    }

    private static Picture Flare(bool with)
    {
        var camera = new Camera { Eye = new(0, 1.8, -4), Target = new(0, 2.6, 8), Near = 0.2, Far = 200, FieldOfView = 52 };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x4068A8), Tint.Hex(0xF0D8B0), 0.72)
            .Draw(new Mesh().Panel(new(-60, 0, 120), new(120, 0, 0), new(0, 0, -124), 24, 24), new Sampler(Patterns.Grass))
            .Draw(new Mesh().Box(new(-2.2, 0, 8), 4.6, 6.6, 3, 12).Box(new(5, 0, 11), 4, 3, 3, -18), new Sampler(Patterns.Bricks));
        // The sun stands behind the tall tower: the query counts none of its pixels, so no flare may be drawn.
        if (!with)
        {
            canvas.Overlay(40, -10, 220, 220, (u, v) => Tint.Hex(0xFFF6D0).WithAlpha(Math.Pow(Math.Max(0, 1 - (2 * Props.Radius(u, v))), 2)), Blend.AddAlpha);
            foreach (var (x, y, size, tint) in new[] { (196, 118, 40, 0xFF9040), (236, 138, 70, 0x60C0FF), (300, 172, 34, 0xA0FF80), (336, 186, 90, 0xFF70B0) })
                canvas.Overlay(x, y, size, size, (u, v) => Tint.Hex(tint).WithAlpha(Props.Radius(u, v) < 0.5 ? 0.2 + (0.5 * Props.Radius(u, v)) : 0), Blend.AddAlpha);
        }

        return canvas.Finish();
    }
}
