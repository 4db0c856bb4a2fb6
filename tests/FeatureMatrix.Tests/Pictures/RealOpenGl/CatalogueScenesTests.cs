using FeatureMatrix.Pictures;
using FeatureMatrix.Pictures.Scenes;

namespace FeatureMatrix.Tests.Pictures.RealOpenGl;

/// <summary>The catalogue's own fog, filtering, depth and blending scenes, without their skies, drawn by a real OpenGL implementation too.</summary>
public sealed class CatalogueScenesTests
{
    [Theory]
    [InlineData(FogModeName.Linear, false)]
    [InlineData(FogModeName.Linear, true)]
    [InlineData(FogModeName.Exponential, false)]
    [InlineData(FogModeName.Exponential, true)]
    [InlineData(FogModeName.Squared, false)]
    [InlineData(FogModeName.Squared, true)]
    public void The_fogged_road_comes_out_alike(FogModeName mode, bool atCorners)
    {
        var haze = Tint.Hex(0xC9D3DA);
        var fog = mode switch
        {
            FogModeName.Linear => new Fog(FogMode.Linear, haze) { Start = 6, End = 55 },
            FogModeName.Exponential => new Fog(FogMode.Exponential, haze) { Density = 0.045 },
            _ => new Fog(FogMode.ExponentialSquared, haze) { Density = 0.035 },
        };
        Compare($"road, {mode}{(atCorners ? " at corners" : "")}", FogScenes.RoadCamera, FogScenes.RoadParts(fog with { PerVertex = atCorners }));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_hall_is_filtered_alike(bool mipmaps) =>
        Compare($"hall, {(mipmaps ? "trilinear" : "no mipmaps")}", FilteringScenes.HallCamera,
            FilteringScenes.HallParts(texture => new Sampler(texture) { Mip = mipmaps ? MipFilter.Linear : MipFilter.None }));

    [Fact]
    public void The_airfield_has_the_same_surfaces_in_front() =>
        Compare("airfield, 24-bit depth", DepthScenes.AirfieldCamera, DepthScenes.AirfieldParts());

    /// <summary>
    /// Where the stripes lie depends on how a depth is rounded, so they need not agree pixel by pixel: their extent must, to a tenth.
    /// </summary>
    [Fact]
    public void The_airfield_breaks_up_as_much_in_sixteen_bits()
    {
        var (theirs24, ours24) = Pixels(24);
        var (theirs16, ours16) = Pixels(16);
        double theirs = Differing(theirs24, theirs16), own = Differing(ours24, ours16);

        Agreement.Report($"airfield, 16-bit depth: {theirs} pixels show another surface than with 24 bits, ours {own}");
        Assert.InRange(own, 1000, 480 * 300);
        Assert.InRange(own / theirs, 0.9, 1.1);
    }

    [Fact]
    public void Smoke_and_glass_are_blended_alike() =>
        Compare("smoke and glass", BlendingScenes.GlassCamera,
            BlendingScenes.GlassParts(new DrawState { Blend = Blend.Alpha, WriteDepth = false }));

    private static void Compare(string what, Camera camera, IReadOnlyList<Part> parts)
    {
        var (real, ours) = Drawn(camera, parts, 24);
        using (real)
            Agreement.Check(what, real, ours);
    }

    private static (RealPicture Real, Framebuffer Ours) Drawn(Camera camera, IReadOnlyList<Part> parts, int depthBits)
    {
        var real = new RealPicture(Canvas.PaneWidth, Canvas.PaneHeight, camera, depthBits);
        var ours = new Framebuffer(Canvas.PaneWidth, Canvas.PaneHeight, depthFormat: new DepthFormat(depthBits, false));
        foreach (var part in parts)
        {
            // Both read textures of eight bits a channel.
            var texture = part.Texture with { Texture = part.Texture.Texture.As(TexelFormat.Rgba8888) };
            if (part.State.Fog is { } fog)
                real.Fog(fog);
            real.Texture(0, texture);
            Assert.True(part.State.Blend == Blend.Replace || part.State.Blend == Blend.Alpha);
            if (part.State.Blend == Blend.Alpha)
                real.Gl.Enable(0x0BE2);
            real.Gl.BlendFunction(0x0302, 0x0303);
            real.Gl.DepthMask(part.State.WriteDepth);
            real.Draw(part.Mesh, part.State.Fog);
            Rasterizer.Draw(ours, camera, part.Mesh, part.State with { Shade = Shaders.Textured(texture) });
        }

        return (real, ours);
    }

    // Read before the next context becomes current on this thread.
    private static (byte[] Theirs, byte[] Ours) Pixels(int depthBits)
    {
        var (real, ours) = Drawn(DepthScenes.AirfieldCamera, DepthScenes.AirfieldParts(), depthBits);
        using (real)
            return (real.Gl.ReadRgb(), ours.Resolve().Rgb.ToArray());
    }

    private static int Differing(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        var count = 0;
        for (var at = 0; at < one.Length; at += 3)
            count += one.Slice(at, 3).SequenceEqual(other.Slice(at, 3)) ? 0 : 1;
        return count;
    }

    public enum FogModeName
    {
        Linear,
        Exponential,
        Squared,
    }
}
