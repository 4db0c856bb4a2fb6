using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Invented things that several scenes share.</summary>
internal static class Props
{
    private static readonly Lazy<Texture> LazyEmblem = new(() => Texture.Paint(256, 256, EmblemAt));
    private static readonly Lazy<Texture> LazyGlow = new(() => Texture.Paint(64, 64, (u, v) =>
        Tint.White.WithAlpha(Math.Pow(Math.Max(0, 1 - (2 * Radius(u, v))), 1.6))));

    /// <summary>A painted shield of many colours: a sun over waves.</summary>
    public static Texture Emblem => LazyEmblem.Value;

    /// <summary>A white spot whose alpha falls softly from its middle to its rim.</summary>
    public static Texture Glow => LazyGlow.Value;

    /// <summary>Vertex colours under a lamp from the upper left.</summary>
    public static DrawState Lit { get; } = new()
    {
        Shade = static (in Fragment f) => f.Colour.Times(0.45 + (0.6 * Math.Max(0, Vec3.Dot(f.Normal, new Vec3(-0.4, 0.8, -0.5).Unit)))),
    };

    /// <summary>Distance from the middle of the unit square.</summary>
    public static double Radius(double u, double v) => Math.Sqrt(((u - 0.5) * (u - 0.5)) + ((v - 0.5) * (v - 0.5)));

    /// <summary>A passage of 8 × 4.5 units that runs away from the viewer: floor, walls, ceiling and end wall.</summary>
    public static (Mesh Floor, Mesh Walls, Mesh Ceiling) Passage(double length = 24, int cuts = 1) => (
        new Mesh().Panel(new(-4, 0, length), new(8, 0, 0), new(0, 0, -length), 4, length / 2, null, cuts, cuts * 3),
        new Mesh().Panel(new(-4, 4.5, 0), new(0, 0, length), new(0, -4.5, 0), length / 2.5, 2, null, cuts * 3, cuts)
            .Panel(new(4, 4.5, length), new(0, 0, -length), new(0, -4.5, 0), length / 2.5, 2, null, cuts * 3, cuts)
            .Panel(new(-4, 4.5, length), new(8, 0, 0), new(0, -4.5, 0), 3.2, 2, null, cuts, cuts),
        new Mesh().Panel(new(-4, 4.5, 0), new(8, 0, 0), new(0, 0, length), 4, length / 2, null, cuts, cuts * 3));

    /// <summary>A jointed wooden figure on a spot of the floor, about 1.8 units high, striding; its balls have that many rings of facets.</summary>
    public static Mesh Figure(Vec3 foot, double scale = 1, int detail = 6)
    {
        var wood = Tint.Hex(0xE0B070);
        Vec3 At(double x, double y) => foot + (new Vec3(x, y, 0) * scale);
        var figure = new Mesh().Sphere(At(0, 1.62), 0.16 * scale, detail + 4, wood).Sphere(At(0, 1.2), 0.25 * scale, detail + 4, wood)
            .Sphere(At(0, 0.88), 0.2 * scale, detail + 4, wood);
        Limb(At(-0.1, 0.82), At(-0.34, 0.05));
        Limb(At(0.1, 0.82), At(0.3, 0.45));
        Limb(At(0.3, 0.45), At(0.28, 0.05));
        Limb(At(-0.2, 1.32), At(-0.62, 1.02));
        Limb(At(0.2, 1.32), At(0.5, 1.1));
        Limb(At(0.5, 1.1), At(0.72, 1.48));
        return figure;

        void Limb(Vec3 from, Vec3 to)
        {
            for (var i = 0; i <= 6; i++)
                figure.Sphere(from + ((to - from) * (i / 6.0)), 0.085 * scale, detail, wood);
        }
    }

    /// <summary>An environment all around, as seen along a direction: sky with a low sun, hills, and ground.</summary>
    public static Vector4 Surroundings(Vec3 direction)
    {
        var d = direction.Unit;
        var around = Math.Atan2(d.X, d.Z) / (2 * Math.PI);
        var hills = (Noise.Layers(around + 1, 0.3, 12, 4, 101) * 0.5) - 0.1;
        if (d.Y < -0.02)
            return Tint.Mix(Tint.Hex(0x58703A), Tint.Hex(0x2A3A20), -d.Y * 1.4);
        if (d.Y < hills)
            return Tint.Mix(Tint.Hex(0x2E4A32), Tint.Hex(0x4A6A58), d.Y / Math.Max(0.05, hills));
        var sky = Tint.Mix(Tint.Hex(0xF4D0A0), Tint.Hex(0x3C6CB0), Math.Sqrt(Math.Clamp(d.Y, 0, 1)) * 1.1);
        var cloud = Tint.Step(0.52, 0.72, Noise.Layers((d.X / (d.Y + 0.35) * 0.12) + 5, (d.Z / (d.Y + 0.35) * 0.12) + 5, 10, 4, 103));
        var sun = Math.Pow(Math.Max(0, Vec3.Dot(d, new Vec3(-0.35, 0.42, 0.84).Unit)), 180);
        return Tint.Mix(Tint.Mix(sky, Tint.White, cloud * 0.8), Tint.Hex(0xFFF8E0), sun * 1.5);
    }

    private static Vector4 EmblemAt(double u, double v)
    {
        double x = (u - 0.5) * 2, y = (v - 0.5) * 2;
        var side = Math.Pow(Math.Max(0, 1 - Math.Max(0, (y + 0.2) / 1.1)), 0.55) * 0.86;
        if (Math.Abs(x) > side || y < -0.92 || y > 0.9)
            return Tint.Mix(Tint.Hex(0x6E7B8C), Tint.Hex(0x9AA8B8), Noise.Layers(u, v, 6, 3, 111));
        if (Math.Abs(x) > side - 0.08 || y < -0.84)
            return Tint.Mix(Tint.Hex(0x8A6A20), Tint.Hex(0xF0D070), 0.5 + (0.5 * x));
        var fromSun = Math.Sqrt((x * x) + ((y + 0.3) * (y + 0.3)));
        var ray = Math.Cos(Math.Atan2(y + 0.3, x) * 12) > 0.2 && fromSun < 0.52;
        if (y > 0.12 + (0.05 * Math.Sin(x * 14)))
            return Tint.Mix(Tint.Hex(0x58B8D8), Tint.Hex(0x0C3A78), (y * 1.1) + (0.12 * Math.Sin((x * 14) + (y * 24))));
        if (fromSun < 0.3)
            return Tint.Mix(Tint.Hex(0xFFF4B0), Tint.Hex(0xF0A020), fromSun * 3);
        return ray ? Tint.Hex(0xF8C840) : Tint.Mix(Tint.Hex(0xC82848), Tint.Hex(0x601040), (y + 0.9) * 0.9);
    }
}
