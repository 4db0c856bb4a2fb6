using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures.RealOpenGl;

/// <summary>
/// The same meshes drawn by us and by a real OpenGL implementation, feature by feature.
/// </summary>
public sealed class RealOpenGlTests
{
    private const int Width = 480;
    private const int Height = 300;

    private static readonly Camera View = new() { Eye = new(0.3, 2.1, -1), Target = new(1.4, 1.2, 12), Near = 0.5, Far = 120, FieldOfView = 55 };
    private static readonly Texture Surface = Exact(Patterns.Flags);
    private static readonly Texture Lamps = Exact(Texture.Paint(32, 32, (u, v) =>
        Tint.Grey(0.2 + (0.8 * Math.Max(0, 1 - (6 * (((u - 0.5) * (u - 0.5)) + ((v - 0.5) * (v - 0.5)))))))));

    // No corner lies behind the viewer: there the real implementation takes the distance of a corner without its sign, which OpenGL allows.
    private static Mesh Floor => new Mesh().Panel(new(-9, 0, 110), new(18, 0, 0), new(0, 0, -109.5), 9, 54.75, null, 1, 8);

    private static Mesh Hall => new Mesh()
        .Panel(new(-4, 5, 60), new(0, 0, -60), new(0, -5, 0), 30, 2.5, Tint.Hex(0xC0D0FF), 4, 1)
        .Panel(new(4, 5, 0), new(0, 0, 60), new(0, -5, 0), 30, 2.5, Tint.Hex(0xFFD0A0), 4, 1)
        .Box(new(-1.2, 0, 7), 1.5, 1.5, 1.5, 25).Box(new(2.2, 0, 10), 1.8, 1.8, 1.8, -35);

    [Fact]
    public void The_implementation_is_the_one_expected()
    {
        using var gl = new OffscreenGl(8, 8, 24);

        Assert.Contains("Mesa", gl.Text(0x1F02), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("linear", false)]
    [InlineData("linear", true)]
    [InlineData("exp", false)]
    [InlineData("exp", true)]
    [InlineData("exp2", false)]
    [InlineData("exp2", true)]
    [InlineData("coordinate", false)]
    public void Fog(string kind, bool perVertex)
    {
        var fog = kind switch
        {
            "linear" => new Fog(FogMode.Linear, Tint.Hex(0xC9D3DA)) { Start = 4, End = 40 },
            "exp" => new Fog(FogMode.Exponential, Tint.Hex(0xC9D3DA)) { Density = 0.06 },
            "exp2" => new Fog(FogMode.ExponentialSquared, Tint.Hex(0xC9D3DA)) { Density = 0.05 },
            _ => new Fog(FogMode.Linear, Tint.Hex(0xE0E8E0)) { Start = 0, End = 3, Distance = FogDistance.Coordinate },
        };
        fog = fog with { PerVertex = perVertex };
        var scene = new Mesh();
        foreach (var v in Floor.Vertices.Concat(Hall.Vertices).Chunk(3))
            scene.Triangle(Misty(v[0]), Misty(v[1]), Misty(v[2]));
        using var real = new RealPicture(Width, Height, View);
        real.Fog(fog);
        real.Draw(scene, fog);

        var ours = new Framebuffer(Width, Height);
        Rasterizer.Draw(ours, View, scene, new DrawState { Fog = fog });
        Agree($"fog {kind}{(perVertex ? " at corners" : "")}", real, ours);

        static Vertex Misty(Vertex v) => v with { FogCoordinate = Math.Max(0, 2.5 - v.Position.Y) };
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 1, 1)]
    [InlineData(0, 0, 1)]
    [InlineData(1, 0, 2)]
    [InlineData(1, 1, 2)]
    public void Filtering(int magnify, int minify, int mip)
    {
        var sampler = new Sampler(Surface) { Magnify = (Filter)magnify, Minify = (Filter)minify, Mip = (MipFilter)mip };
        using var real = new RealPicture(Width, Height, View);
        real.Texture(0, sampler);
        real.Draw(Floor);
        real.Draw(Hall);

        var ours = new Framebuffer(Width, Height);
        var state = new DrawState { Shade = Shaders.Textured(sampler) };
        Rasterizer.Draw(ours, View, Floor, state);
        Rasterizer.Draw(ours, View, Hall, state);
        Agree($"filtering {sampler.Magnify} {sampler.Minify} mip {sampler.Mip}", real, ours);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Addressing_outside_the_texture(int wrap)
    {
        var sampler = new Sampler(Exact(Patterns.Crate)) { WrapU = (Wrap)wrap, WrapV = (Wrap)wrap };
        var wall = new Mesh().Quad(
            new Vertex(new(-5, 5, 8), -1.3, -0.8), new Vertex(new(6, 5, 9), 2.4, -0.8), new Vertex(new(6, -2, 9), 2.4, 1.9), new Vertex(new(-5, -2, 8), -1.3, 1.9));
        using var real = new RealPicture(Width, Height, View);
        real.Texture(0, sampler);
        real.Draw(wall);

        var ours = new Framebuffer(Width, Height);
        Rasterizer.Draw(ours, View, wall, new DrawState { Shade = Shaders.Textured(sampler) });
        Agree($"addressing {sampler.WrapU}", real, ours);
    }

    [Theory]
    [InlineData("alpha", 0x0302u, 0x0303u)]
    [InlineData("add", 1u, 1u)]
    [InlineData("add by alpha", 0x0302u, 1u)]
    [InlineData("modulate", 0x0306u, 0u)]
    [InlineData("modulate twice", 0x0306u, 0x0300u)]
    [InlineData("subtract", 0x0302u, 1u)]
    public void Blending(string kind, uint source, uint destination)
    {
        var blend = kind switch
        {
            "alpha" => Blend.Alpha,
            "add" => Blend.Add,
            "add by alpha" => Blend.AddAlpha,
            "modulate" => Blend.Modulate,
            "modulate twice" => new Blend(BlendFactor.DestinationColour, BlendFactor.SourceColour),
            _ => Blend.SubtractAlpha,
        };
        var smoke = new Sampler(Exact(Patterns.Smoke));
        var puffs = new Mesh().Standee(new(0, 0.2, 9), 4, 4, Tint.Hex(0xFFC080)).Standee(new(1.5, 0.5, 8), 3, 3).Standee(new(2, 0, 6), 2, 3, Tint.Hex(0x8090FF, 0.7));
        using var real = new RealPicture(Width, Height, View);
        real.Draw(Hall);
        real.Texture(0, smoke);
        real.Gl.Enable(0x0BE2);
        real.Gl.BlendFunction(source, destination);
        real.Gl.BlendEquation(blend.Subtract ? 0x800Bu : 0x8006u);
        real.Gl.DepthMask(write: false);
        real.Draw(puffs);

        var ours = new Framebuffer(Width, Height);
        Rasterizer.Draw(ours, View, Hall, new DrawState());
        Rasterizer.Draw(ours, View, puffs, new DrawState { Shade = Shaders.Textured(smoke), Blend = blend, WriteDepth = false });
        Agree($"blending {kind}", real, ours);
    }

    [Fact]
    public void Alpha_test_cuts_the_same_holes()
    {
        var fence = new Sampler(Exact(Patterns.Fence));
        var panels = new Mesh().Standee(new(0, 0, 9), 4, 4).Standee(new(1.5, 0, 5), 3, 2);
        using var real = new RealPicture(Width, Height, View);
        real.Draw(Hall);
        real.Texture(0, fence);
        real.Gl.Enable(0x0BC0);
        real.Gl.AlphaAbove(0.5);
        real.Draw(panels);

        var ours = new Framebuffer(Width, Height);
        Rasterizer.Draw(ours, View, Hall, new DrawState());
        Rasterizer.Draw(ours, View, panels, new DrawState { Shade = Shaders.Textured(fence), AlphaReference = 0.5 });
        Agree("alpha test", real, ours);
    }

    [Fact]
    public void Two_textures_multiply_in_one_pass()
    {
        Sampler surface = new(Surface), light = new(Lamps) { WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        using var real = new RealPicture(Width, Height, View);
        real.Texture(0, surface);
        real.Texture(1, light);
        real.Draw(Hall);

        var ours = new Framebuffer(Width, Height);
        Rasterizer.Draw(ours, View, Hall, new DrawState { Shade = Shaders.LightMapped(surface, light) });
        Agree("two textures", real, ours);
    }

    [Theory]
    [InlineData(16)]
    [InlineData(24)]
    public void Depth(int bits)
    {
        var scene = new Mesh().Box(new(1, 0, 8), 3, 3, 3, 20, Tint.Hex(0xD04040)).Box(new(2, 0.5, 8), 3, 2, 3, 65, Tint.Hex(0x40A0D0))
            .Sphere(new(-0.5, 1, 7), 1.4, 16, Tint.Hex(0x60C060));
        using var real = new RealPicture(Width, Height, View, bits);
        real.Draw(scene);
        real.Draw(Floor);

        var ours = new Framebuffer(Width, Height, depthFormat: new DepthFormat(bits, false));
        Rasterizer.Draw(ours, View, scene, new DrawState());
        Rasterizer.Draw(ours, View, Floor, new DrawState());
        Agree($"depth, {bits} bits", real, ours);

        // The stored numbers themselves: at most one step of the buffer apart, save at edges.
        var stored = real.Gl.ReadDepth();
        var apart = Enumerable.Range(0, stored.Length).Select(i => Math.Abs(((long)stored[i] >> (32 - bits)) - ours.DepthOf(i))).ToList();
        var tolerance = bits == 16 ? 1 : 8; // a 24-bit step is near the last bit of the single-precision depth of a real card
        Report($"depth, {bits} bits: {apart.Count(d => d > tolerance)} of {apart.Count} stored values more than {tolerance} apart");
        Assert.InRange(apart.Count(d => d > tolerance), 0, apart.Count / 100);
    }

    [Theory]
    [InlineData(0, 0x83F1u)]
    [InlineData(1, 0x83F2u)]
    [InlineData(2, 0x83F3u)]
    public void Compressed_textures_decode_alike(int kind, uint format)
    {
        // 48 × 32 blocks of noise: every order of the ends and every code occurs.
        const int blocksWide = 48, blocksHigh = 32;
        var bytes = Enumerable.Range(0, blocksWide * blocksHigh * S3tc.BlockBytes((S3tcKind)kind)).Select(i => (byte)(Noise.Hash(i, kind, 71) * 256)).ToArray();
        const int width = blocksWide * 4, height = blocksHigh * 4;
        var flat = new Camera { Eye = new(0, 0, -1), Target = new(0, 0, 0), Near = 0.5, Far = 2, FieldOfView = 90, Aspect = (double)width / height };
        using var real = new RealPicture(width, height, flat);
        real.Gl.ActiveTexture(0);
        real.Gl.NewTexture();
        real.Gl.CompressedImage(format, width, height, bytes);
        real.Gl.TextureParameter(0x2800, 0x2600);
        real.Gl.TextureParameter(0x2801, 0x2600);
        real.Gl.Enable(0x0DE1);
        real.Gl.Enable(0x0BE2);
        real.Gl.BlendFunction(0x0302, 0); // colour times alpha, so that alpha shows too
        real.Draw(new Mesh().Panel(new(-1.5, 1, 0), new(3, 0, 0), new(0, -2, 0)));
        var seen = real.Gl.ReadRgb();

        var largest = 0;
        for (var block = 0; block < blocksWide * blocksHigh; block++)
        {
            var texels = S3tc.DecodeBlock((S3tcKind)kind, bytes.AsSpan(block * S3tc.BlockBytes((S3tcKind)kind)));
            for (var i = 0; i < 16; i++)
            {
                int x = (block % blocksWide * 4) + (i % 4), y = (block / blocksWide * 4) + (i / 4);
                var ours = texels[i] * texels[i].W;
                largest = Math.Max(largest, Math.Abs(seen[((y * width) + x) * 3] - Dither.Nearest(ours.X, 255)));
                largest = Math.Max(largest, Math.Abs(seen[(((y * width) + x) * 3) + 1] - Dither.Nearest(ours.Y, 255)));
                largest = Math.Max(largest, Math.Abs(seen[(((y * width) + x) * 3) + 2] - Dither.Nearest(ours.Z, 255)));
            }
        }

        Report($"S3TC {(S3tcKind)kind}: largest difference {largest} of 255");
        Assert.InRange(largest, 0, 2);
    }

    private static Texture Exact(Texture texture) => texture.As(TexelFormat.Rgba8888);

    private static void Report(string line) => Agreement.Report(line);

    private static void Agree(string what, RealPicture real, Framebuffer ours) => Agreement.Check(what, real, ours);
}
