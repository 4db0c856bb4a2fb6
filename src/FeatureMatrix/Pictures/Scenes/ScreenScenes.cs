using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Edges, and what happens to the finished picture on its way to the screen.</summary>
internal static class ScreenScenes
{
    public static IReadOnlyList<Scene> All { get; } =
    [
        new("aa-multisample", "aa-multisample", with => Ship(with ? 4 : 1)),
        new("aa-sort-independent", "aa-sort-independent", with => Bridge(with ? 2 : 1)),
        new("aa-edge", "aa-edge", Wireframe),
        new("gamma-ramp", "gamma-ramp", Cellar),
        new("overlay-yuv", "overlay-yuv", Film),
    ];

    private static Picture Ship(int samples)
    {
        var camera = new Camera { Eye = new(0, 2.4, -9), Target = new(0, 3.2, 6), Near = 0.5, Far = 200, FieldOfView = 46 };
        var canvas = new Canvas(camera, magnify: 2, samples: samples).Sky(Tint.Hex(0x5D8FC8), Tint.Hex(0xF0E8D8), 0.62);
        canvas.Draw(new Mesh().Panel(new(-80, 0, 150), new(160, 0, 0), new(0, 0, -158), 1, 1, Tint.Hex(0x2C6488)), new DrawState());
        var wood = Tint.Hex(0x4A2E18);
        var ship = new Mesh();
        ship.Quad(Plain(-5.2, 1.7, wood), Plain(5.4, 2, wood), Plain(4, 0.1, wood), Plain(-4, 0.1, wood));
        foreach (var (x, high) in new[] { (-2.8, 6.4), (0.2, 7.6), (3.0, 6.0) })
        {
            Bar(ship, x, 1.6, x + 0.15, high, 0.13, wood);
            for (var i = 0; i < 2; i++)
            {
                double top = high - 0.5 - (i * (high - 2.2) * 0.5), bottom = top - ((high - 2.6) * 0.44);
                var sail = Tint.Hex(i == 0 ? 0xF4EEDC : 0xE8DCC0);
                ship.Quad(Plain(x - 1.0, top, sail), Plain(x + 1.1, top, sail), Plain(x + 1.35, bottom, sail), Plain(x - 1.2, bottom, sail));
            }

            Bar(ship, x + 0.15, high, x - 2.2, 1.8, 0.05, Tint.Hex(0x201810));
            Bar(ship, x + 0.15, high, x + 2.4, 1.9, 0.05, Tint.Hex(0x201810));
        }

        Bar(ship, 5.2, 2, 7.4, 3.1, 0.12, wood);
        Bar(ship, 3.1, 6, 7.4, 3.1, 0.05, Tint.Hex(0x201810));
        return canvas.Draw(ship, new DrawState()).Finish();
    }

    private static Picture Bridge(int samples)
    {
        var camera = new Camera { Eye = new(-2, 2, -10), Target = new(0.5, 4.2, 8), Near = 0.5, Far = 300, FieldOfView = 48 };
        var canvas = new Canvas(camera, magnify: 2, samples: samples).Sky(Tint.Hex(0x8098B8), Tint.Hex(0xF4DCC0), 0.7);
        canvas.Draw(new Mesh().Panel(new(-120, -1, 200), new(240, 0, 0), new(0, 0, -210), 40, 40), new Sampler(Patterns.Grass));
        var steel = Tint.Hex(0x7A2018);
        var truss = new Mesh();
        for (var i = -6; i < 6; i++)
        {
            double x0 = i * 2, x1 = x0 + 2;
            Bar(truss, x0, 3, x1, 3, 0.3, steel);
            Bar(truss, x0, 6.4 - (0.05 * x0 * x0 * 0.4), x1, 6.4 - (0.05 * x1 * x1 * 0.4), 0.2, steel);
            Bar(truss, x0, 3, x0, 6.4 - (0.05 * x0 * x0 * 0.4), 0.14, steel);
            Bar(truss, x0, 3, x1, 6.4 - (0.05 * x1 * x1 * 0.4), 0.1, steel);
            Bar(truss, x1, 3, x0, 6.4 - (0.05 * x0 * x0 * 0.4), 0.1, steel);
        }

        return canvas.Draw(truss, new DrawState()).Draw(new Mesh().Box(new(-6, -1, 6), 1.2, 4, 2, 8).Box(new(6, -1, 6), 1.2, 4, 2, 8), new Sampler(Patterns.Flags)).Finish();
    }

    private static Vertex Plain(double x, double y, Vector4 colour) => new(new(x, y, 6), 0, 0) { Colour = colour };

    // A straight bar of the given thickness in the plane of the picture.
    private static void Bar(Mesh mesh, double x0, double y0, double x1, double y1, double thick, Vector4 colour)
    {
        var along = new Vec3(x1 - x0, y1 - y0, 0).Unit;
        double nx = -along.Y * thick / 2, ny = along.X * thick / 2;
        mesh.Quad(Plain(x0 + nx, y0 + ny, colour), Plain(x1 + nx, y1 + ny, colour), Plain(x1 - nx, y1 - ny, colour), Plain(x0 - nx, y0 - ny, colour));
    }

    private static Picture Wireframe(bool with)
    {
        var lines = new List<(double X0, double Y0, double X1, double Y1)>();
        (double X, double Y) Globe(double longitude, double latitude)
        {
            double x = Math.Cos(latitude) * Math.Sin(longitude), y = Math.Sin(latitude), z = Math.Cos(latitude) * Math.Cos(longitude);
            return (80 + (62 * x), 76 - (62 * ((y * 0.94) + (z * 0.34))));
        }

        for (var i = 0; i < 12; i++)
        {
            for (var k = 0; k < 16; k++)
            {
                double longitude = i * Math.PI / 6, latitude = ((k - 8) * Math.PI / 16) + 0.0001;
                Add(Globe(longitude, latitude), Globe(longitude, latitude + (Math.PI / 16)));
                if (k % 3 == 2)
                    Add(Globe(longitude, latitude), Globe(longitude + (Math.PI / 6), latitude));
            }
        }

        for (var i = 0; i < 7; i++)
            lines.Add((168, 20 + (i * 17), 234, 6 + (i * 21.5)));
        for (var i = 0; i < 5; i++)
            lines.Add((170 + (i * 15), 20 - (i * 3.3), 172 + (i * 15), 122 + (i * 3.2)));
        var canvas = new Canvas(new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1) }, magnify: 2);
        return canvas.Backdrop((u, v) =>
        {
            double x = u * 240, y = v * 150, ink = 0;
            foreach (var (x0, y0, x1, y1) in lines)
            {
                if (x < Math.Min(x0, x1) - 2 || x > Math.Max(x0, x1) + 2 || y < Math.Min(y0, y1) - 2 || y > Math.Max(y0, y1) + 2)
                    continue;
                ink = Math.Max(ink, with ? 1 - Math.Clamp(Distance(x, y, x0, y0, x1, y1) - 0.1, 0, 1) : Stepped(x, y, x0, y0, x1, y1) ? 1 : 0);
            }

            return Tint.Mix(Tint.Hex(0x06140C), Tint.Hex(0x50FF90), ink);
        }).Finish();

        void Add((double X, double Y) from, (double X, double Y) to) => lines.Add((from.X, from.Y, to.X, to.Y));
    }

    private static double Distance(double x, double y, double x0, double y0, double x1, double y1)
    {
        double dx = x1 - x0, dy = y1 - y0, t = Math.Clamp((((x - x0) * dx) + ((y - y0) * dy)) / Math.Max(1e-9, (dx * dx) + (dy * dy)), 0, 1);
        double ax = x - x0 - (t * dx), ay = y - y0 - (t * dy);
        return Math.Sqrt((ax * ax) + (ay * ay));
    }

    // One pixel per column or row of the longer direction: the usual rule for lines without antialiasing.
    private static bool Stepped(double x, double y, double x0, double y0, double x1, double y1)
    {
        double dx = x1 - x0, dy = y1 - y0;
        if (Math.Abs(dx) >= Math.Abs(dy))
            return x >= Math.Min(x0, x1) && x <= Math.Max(x0, x1) && Math.Abs(y0 + ((x - x0) * dy / dx) - y) <= 0.5;
        return y >= Math.Min(y0, y1) && y <= Math.Max(y0, y1) && Math.Abs(x0 + ((y - y0) * dx / dy) - x) <= 0.5;
    }

    private static Picture Cellar(bool with)
    {
        var camera = new Camera { Eye = new(0.5, 1.7, 0), Target = new(-0.2, 1.5, 8), Near = 0.2, Far = 60, FieldOfView = 58 };
        var (floor, walls, ceiling) = Props.Passage(18);
        DrawState Dim(Texture texture) => new()
        {
            Shade = (in Fragment f) => (new Sampler(texture).First(f) * f.Colour).Times(0.05 + (0.3 * Math.Exp(-Math.Pow(f.EyeDepth - 6, 2) / 30))).WithAlpha(1),
        };
        var canvas = new Canvas(camera).Draw(floor, Dim(Patterns.Flags)).Draw(walls, Dim(Patterns.Bricks)).Draw(ceiling, Dim(Patterns.Planks))
            .Draw(new Mesh().Box(new(1.9, 0, 6), 1.1, 1.1, 1.1, 25).Box(new(-2.2, 0, 9), 1.2, 1.2, 1.2, -20), Dim(Patterns.Crate));
        var picture = canvas.Finish();
        if (!with)
            return picture;
        // The ramp of a gamma of 2: output = input^(1/2), the same for all three channels.
        var ramp = Enumerable.Range(0, 256).Select(i => (byte)Dither.Nearest(Math.Sqrt(i / 255.0), 255)).ToArray();
        var rgb = picture.Rgb.ToArray();
        for (var i = 0; i < rgb.Length; i++)
            rgb[i] = ramp[rgb[i]];
        return new Picture(picture.Width, picture.Height, rgb);
    }

    private static Picture Film(bool with)
    {
        var still = Landscape.Draw(new Canvas(new Camera { Eye = new(0, 9, -30), Target = new(0, 4, 60), Near = 1, Far = 300, FieldOfView = 42 }).Sky(Tint.Hex(0x4878B0), Tint.Hex(0xF0D0A0), 0.42), null).Finish();
        // The film is stored at 80 × 50 with brightness for every pixel and colour for every second one each way.
        var film = Texture.Paint(80, 50, (u, v) =>
        {
            var sum = Vector4.Zero;
            for (var i = 0; i < 36; i++)
            {
                var at = (((((int)(v * 50) * 6) + (i / 6)) * still.Width) + ((int)(u * 80) * 6) + (i % 6)) * 3;
                sum += new Vector4(still.Rgb[at], still.Rgb[at + 1], still.Rgb[at + 2], 255) / 255f / 36;
            }

            return sum;
        });
        var canvas = new Canvas(new Camera { Eye = new(0, 0, 0), Target = new(0, 0, 1) }).Backdrop((_, _) => Tint.Black);
        var read = new Sampler(film) { Minify = with ? Filter.Linear : Filter.Nearest, Mip = MipFilter.None, WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        var format = with ? TexelFormat.Rgba8888 : TexelFormat.Rgb565;
        canvas.Overlay(0, 24, 480, 252, (u, v) => format.Stored(read.At(u, v)));
        return canvas.Finish();
    }
}
