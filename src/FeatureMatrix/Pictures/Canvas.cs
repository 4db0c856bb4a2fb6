using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>A mesh with its one texture: what any implementation of the fixed pipeline can draw.</summary>
internal sealed record Part(Mesh Mesh, Sampler Texture, DrawState State);

/// <summary>
/// One pane of an illustration, <see cref="PaneWidth"/> × <see cref="PaneHeight"/>. A magnified canvas is drawn with fewer, larger
/// pixels, where single pixels are what is to be seen.
/// </summary>
internal sealed class Canvas
{
    public const int PaneWidth = 480;
    public const int PaneHeight = 300;

    private readonly int magnify;

    public Canvas(Camera camera, int magnify = 1, ColourFormat format = ColourFormat.TrueColour, DepthFormat? depth = null, int samples = 1)
    {
        this.magnify = magnify;
        Camera = camera;
        Target = new Framebuffer(PaneWidth / magnify, PaneHeight / magnify, format, depth, samples);
    }

    public Camera Camera { get; init; }

    public Framebuffer Target { get; }

    /// <summary>Sets every pixel from its place, 0..1 to the right and 0..1 downwards; depth stays untouched.</summary>
    public Canvas Backdrop(Func<double, double, Vector4> colour)
    {
        for (var y = 0; y < Target.Height; y++)
        {
            for (var x = 0; x < Target.Width; x++)
                Target[x, y] = colour((x + 0.5) / Target.Width, (y + 0.5) / Target.Height);
        }

        return this;
    }

    /// <summary>A sky that changes from a colour overhead to one at the given height, and keeps that below.</summary>
    public Canvas Sky(Vector4 overhead, Vector4 horizon, double horizonAt = 0.5) =>
        Backdrop((_, v) => Tint.Mix(overhead, horizon, Math.Min(1, v / horizonAt)));

    public Canvas Draw(Mesh mesh, DrawState state)
    {
        Rasterizer.Draw(Target, Camera, mesh, state);
        return this;
    }

    /// <summary>Draws with one texture times the vertex colours, whatever the state would have shaded.</summary>
    public Canvas Draw(Mesh mesh, Sampler texture, DrawState? state = null) =>
        Draw(mesh, (state ?? new DrawState()) with { Shade = Shaders.Textured(texture) });

    public Canvas Draw(IEnumerable<Part> parts)
    {
        foreach (var part in parts)
            Draw(part.Mesh, part.Texture, part.State);
        return this;
    }

    /// <summary>
    /// Lays a flat image over a rectangle of the pane (in pane pixels); the image is asked for 0..1 × 0..1 and its alpha blends.
    /// </summary>
    public Canvas Overlay(double left, double top, double width, double height, Func<double, double, Vector4> image, Blend? blend = null)
    {
        var mix = blend ?? Blend.Alpha;
        for (var y = 0; y < Target.Height; y++)
        {
            for (var x = 0; x < Target.Width; x++)
            {
                double u = (((x + 0.5) * magnify) - left) / width, v = (((y + 0.5) * magnify) - top) / height;
                if (u is >= 0 and < 1 && v is >= 0 and < 1)
                    Target[x, y] = mix.Mix(image(u, v), Target[x, y]);
            }
        }

        return this;
    }

    /// <summary>Writes capitals with dots of <paramref name="dot"/> pixels, from the top left corner in pane pixels.</summary>
    public Canvas Write(int left, int top, string text, int dot, Vector4 colour)
    {
        double width = Glyphs.WidthOf(text), height = Glyphs.Height;
        return Overlay(left, top, width * dot, height * dot, (u, v) =>
            Glyphs.Ink(text, (int)(u * width), (int)(v * height)) ? colour : Vector4.Zero);
    }

    public Picture Finish() => Target.Resolve().Magnified(magnify);
}
