namespace FeatureMatrix.Pictures.Scenes;

/// <summary>How textures are read near, far and at a slant.</summary>
internal static class FilteringScenes
{
    private static readonly Lazy<Texture> Lettered = new(() => Texture.Paint(256, 256, (u, v) =>
    {
        var stone = Patterns.Flags.Base[(int)(u * 256), (int)(v * 256)].Times(0.8);
        return Glyphs.Ink("SLOW", (int)((u * 29) - 3), (int)((v * 13) - 3)) ? Tint.Hex(0xF6F2E0) : stone;
    }));

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("filter-bilinear", "filter-bilinear", CloseUp),
        new("filter-mipmap", "filter-mipmap", with => Hall(with ? MipFilter.Linear : MipFilter.None, Filter.Linear)),
        new("filter-trilinear", "filter-trilinear", with => Bands(with ? MipFilter.Linear : MipFilter.Nearest)),
        new("filter-anisotropic", "filter-anisotropic", with => Street(with ? 16 : 1, 0)),
        new("filter-lod-bias", "filter-lod-bias", with => Posters(with ? -1.5 : 0)),
    ];

    internal static Camera HallCamera { get; } =
        new() { Eye = new(0, 1.7, 0), Target = new(0, 1.2, 10), Near = 0.2, Far = 300, FieldOfView = 58 };

    internal static IReadOnlyList<Part> HallParts(Func<Texture, Sampler> sampler)
    {
        var state = new DrawState();
        return
        [
            new(new Mesh().Panel(new(-4, 0, 200), new(8, 0, 0), new(0, 0, -199.8), 8, 200), sampler(Patterns.Tiles), state),
            new(new Mesh().Panel(new(-4, 4.5, 200), new(0, 0, -199.8), new(0, -4.5, 0), 130, 3)
                .Panel(new(4, 4.5, 0.2), new(0, 0, 199.8), new(0, -4.5, 0), 130, 3), sampler(Patterns.Bricks), state),
            new(new Mesh().Panel(new(4, 4.5, 200), new(-8, 0, 0), new(0, 0, -199.8), 4, 100), sampler(Patterns.Planks), state),
        ];
    }

    private static Picture CloseUp(bool with)
    {
        var filter = with ? Filter.Linear : Filter.Nearest;
        Sampler Small(Texture texture, int edge) => new(texture.Limited(edge)) { Magnify = filter, Minify = filter, Mip = MipFilter.None };
        var camera = new Camera { Eye = new(0, 1.1, -0.4), Target = new(0.1, 0.62, 1.6), FieldOfView = 52 };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-4, 3, 2.6), new(8, 0, 0), new(0, -3, 0), 4, 1.5), Small(Patterns.Bricks, 64))
            .Draw(new Mesh().Panel(new(-4, 0, 2.6), new(8, 0, 0), new(0, 0, -3), 4, 1.5), Small(Patterns.Flags, 64))
            .Draw(new Mesh().Box(new(-0.45, 0, 1.6), 0.9, 0.9, 0.9, 28).Box(new(0.75, 0, 1.9), 0.8, 0.8, 0.8, -15), Small(Patterns.Crate, 32))
            .Finish();
    }

    private static Picture Hall(MipFilter mip, Filter minify) => new Canvas(HallCamera, magnify: 2)
        .Backdrop((_, _) => Tint.Hex(0x9A6E5A)).Draw(HallParts(texture => new Sampler(texture) { Mip = mip, Minify = minify })).Finish();

    private static Picture Bands(MipFilter mip)
    {
        var camera = new Camera { Eye = new(0, 1.5, 0), Target = new(0, 0.95, 5), Near = 0.2, Far = 300, FieldOfView = 50 };
        return new Canvas(camera, magnify: 2).Sky(Tint.Hex(0x5D7FA8), Tint.Hex(0xCCD8E0), 0.4)
            .Draw(new Mesh().Panel(new(-200, 0, 290), new(400, 0, 0), new(0, 0, -289.8), 100, 72), new Sampler(Gravel.Value) { Mip = mip }).Finish();
    }

    // Grains of single texels: each halved copy visibly loses contrast.
    private static readonly Lazy<Texture> Gravel = new(() => Texture.Paint(256, 256, (u, v) =>
        Tint.Mix(Tint.Hex(0x20242C), Tint.Hex(0xF2E4C8), Noise.Hash((int)(u * 256), (int)(v * 256), 5) > 0.5 ? 1 : 0)));

    private static Picture Street(int anisotropy, double bias)
    {
        var camera = new Camera { Eye = new(0, 0.9, 0), Target = new(0, 0.72, 10), Near = 0.1, Far = 300, FieldOfView = 40 };
        Sampler Read(Texture texture) => new(texture) { MaxAnisotropy = anisotropy, LodBias = bias };
        return new Canvas(camera).Sky(Tint.Hex(0x5D7FA8), Tint.Hex(0xD8E0E4), 0.45)
            .Draw(new Mesh().Panel(new(-40, -0.02, 200), new(38, 0, 0), new(0, 0, -200), 10, 50).Panel(new(2, -0.02, 200), new(38, 0, 0), new(0, 0, -200), 10, 50), Read(Patterns.Grass))
            .Draw(new Mesh().Panel(new(-2, 0, 202), new(4, 0, 0), new(0, 0, -202), 1, 50), Read(Lettered.Value))
            .Draw(new Mesh().Panel(new(3, 2.2, 0), new(0, 0, 200), new(0, -2.2, 0), 70, 1), Read(Patterns.Bricks)).Finish();
    }

    private static Picture Posters(double bias)
    {
        var camera = new Camera { Eye = new(-3.4, 1.7, 0.2), Target = new(0.1, 1.65, 3), Near = 0.1, Far = 100, FieldOfView = 44 };
        Sampler Read(Texture texture) => new(texture) { LodBias = bias };
        return new Canvas(camera)
            .Draw(new Mesh().Panel(new(-8, 4, 3), new(32, 0, 0), new(0, -4, 0), 28, 3.5), Read(Patterns.Bricks))
            .Draw(new Mesh().Panel(new(-8, 0, 3), new(32, 0, 0), new(0, 0, -6), 18, 4), Read(Patterns.Flags))
            .Draw(new Mesh().Panel(new(-1.7, 2.6, 2.98), new(1.5, 0, 0), new(0, -1.9, 0)).Panel(new(0.1, 2.6, 2.98), new(1.5, 0, 0), new(0, -1.9, 0)).Panel(new(1.9, 2.6, 2.98), new(1.5, 0, 0), new(0, -1.9, 0)), Read(Poster.Value)).Finish();
    }

    private static readonly Lazy<Texture> Poster = new(() => Texture.Paint(512, 512, (u, v) =>
    {
        string[] lines = ["TONIGHT", "ORB PARADE", "DOORS 8", "PIER HALL", "ALL WELCOME", "BRING LAMPS"];
        var line = (int)(v * 8) - 1;
        var paper = Tint.Hex(0xF3E8C8).Times(0.95 + (0.05 * Noise.Hash((int)(u * 512), (int)(v * 512), 6)));
        if (line < 0 || line >= lines.Length)
            return Math.Abs(v - 0.06) < 0.01 || Math.Abs(v - 0.94) < 0.01 ? Tint.Hex(0x9A2020) : paper;
        var text = lines[line];
        var column = (int)Math.Floor((u * 72) - ((72 - Glyphs.WidthOf(text)) / 2.0));
        return Glyphs.Ink(text, column, (int)(((v * 8) - 1 - line) * 10) - 1) ? Tint.Hex(line == 1 ? 0x9A2020 : 0x202028) : paper;
    }));
}
