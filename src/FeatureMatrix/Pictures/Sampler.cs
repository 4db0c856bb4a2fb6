using System.Numerics;

namespace FeatureMatrix.Pictures;

internal enum Filter
{
    /// <summary>The texel under the point.</summary>
    Nearest,

    /// <summary>The mean of four, weighted by nearness (bilinear).</summary>
    Linear,
}

internal enum MipFilter
{
    /// <summary>Full size only.</summary>
    None,

    /// <summary>The one copy whose texels come nearest to the size of a pixel.</summary>
    Nearest,

    /// <summary>A mean of the two copies around it (trilinear).</summary>
    Linear,
}

internal enum Wrap
{
    Repeat,

    /// <summary>The edge texel goes on.</summary>
    Clamp,

    /// <summary>Every second copy is reversed.</summary>
    Mirror,
}

/// <summary>
/// How a texture is read. Level of detail and weights follow the OpenGL 2.1 specification, section 3.8.8; anisotropic reading
/// follows the example of EXT_texture_filter_anisotropic.
/// </summary>
internal sealed record Sampler(Texture Texture)
{
    public Filter Magnify { get; init; } = Filter.Linear;

    public Filter Minify { get; init; } = Filter.Linear;

    public MipFilter Mip { get; init; } = MipFilter.Linear;

    public Wrap WrapU { get; init; }

    public Wrap WrapV { get; init; }

    /// <summary>Added to the level of detail: positive is softer, negative sharper.</summary>
    public double LodBias { get; init; }

    /// <summary>Most readings along the longer axis of a pixel's footprint; 1 is none of it.</summary>
    public int MaxAnisotropy { get; init; } = 1;

    /// <summary>The colour at a point of the full-size image, without regard to the size of a pixel.</summary>
    public Vector4 At(double u, double v) => Read(Texture.Base, Minify, u, v);

    /// <summary>The colour for a pixel with the first texture coordinates.</summary>
    public Vector4 First(in Fragment f) => Sample(f.Tex.X, f.Tex.Y, f.TexDx.X, f.TexDx.Y, f.TexDy.X, f.TexDy.Y);

    /// <summary>The colour for a pixel with the second texture coordinates.</summary>
    public Vector4 Second(in Fragment f) => Sample(f.Tex.Z, f.Tex.W, f.TexDx.Z, f.TexDx.W, f.TexDy.Z, f.TexDy.W);

    /// <summary>The colour at a point whose footprint is given by the change of the coordinates to the next pixel right and below.</summary>
    public Vector4 Sample(double u, double v, double dudx, double dvdx, double dudy, double dvdy)
    {
        double w = Texture.Base.Width, h = Texture.Base.Height;
        var across = Math.Sqrt((dudx * dudx * w * w) + (dvdx * dvdx * h * h));
        var down = Math.Sqrt((dudy * dudy * w * w) + (dvdy * dvdy * h * h));
        var longer = Math.Max(across, down);
        if (MaxAnisotropy == 1)
            return AtDetail(u, v, Lambda(longer));

        var shorter = Math.Max(Math.Min(across, down), 1e-6);
        var readings = (int)Math.Clamp(Math.Ceiling(longer / shorter), 1, MaxAnisotropy);
        var lambda = Lambda(longer / readings);
        var (du, dv) = across > down ? (dudx, dvdx) : (dudy, dvdy);
        var sum = Vector4.Zero;
        for (var i = 1; i <= readings; i++)
        {
            var along = (i / (readings + 1.0)) - 0.5;
            sum += AtDetail(u + (du * along), v + (dv * along), lambda);
        }

        return sum / readings;
    }

    private double Lambda(double texelsPerPixel) => Math.Log2(Math.Max(texelsPerPixel, 1e-9)) + LodBias;

    private Vector4 AtDetail(double u, double v, double lambda)
    {
        // Where a linear magnifier meets a nearest minifier that has copies, the change-over lies at 0.5, so that there is no jump.
        var changeOver = Magnify == Filter.Linear && Minify == Filter.Nearest && Mip != MipFilter.None ? 0.5 : 0;
        if (lambda <= changeOver)
            return Read(Texture.Base, Magnify, u, v);
        var last = Texture.Levels.Length - 1;
        switch (Mip)
        {
            case MipFilter.None:
                return Read(Texture.Base, Minify, u, v);
            case MipFilter.Nearest:
                return Read(Texture.Levels[Math.Clamp((int)Math.Ceiling(lambda + 0.5) - 1, 0, last)], Minify, u, v);
            case MipFilter.Linear:
                var level = Math.Min((int)Math.Floor(lambda), last);
                var coarser = Math.Min(level + 1, last);
                var share = (float)(lambda - Math.Floor(lambda));
                return level == coarser
                    ? Read(Texture.Levels[last], Minify, u, v)
                    : (Read(Texture.Levels[level], Minify, u, v) * (1 - share)) + (Read(Texture.Levels[coarser], Minify, u, v) * share);
            default:
                throw new InvalidOperationException($"mip filter {Mip}");
        }
    }

    private Vector4 Read(TextureLevel level, Filter filter, double u, double v)
    {
        double x = u * level.Width, y = v * level.Height;
        if (filter == Filter.Nearest)
            return level[Wrapped(WrapU, (int)Math.Floor(x), level.Width), Wrapped(WrapV, (int)Math.Floor(y), level.Height)];
        double left = Math.Floor(x - 0.5), top = Math.Floor(y - 0.5);
        float fx = (float)(x - 0.5 - left), fy = (float)(y - 0.5 - top);
        int x0 = Wrapped(WrapU, (int)left, level.Width), x1 = Wrapped(WrapU, (int)left + 1, level.Width);
        int y0 = Wrapped(WrapV, (int)top, level.Height), y1 = Wrapped(WrapV, (int)top + 1, level.Height);
        return (((level[x0, y0] * (1 - fx)) + (level[x1, y0] * fx)) * (1 - fy)) + (((level[x0, y1] * (1 - fx)) + (level[x1, y1] * fx)) * fy);
    }

    private static int Wrapped(Wrap wrap, int at, int size)
    {
        switch (wrap)
        {
            case Wrap.Repeat when (size & (size - 1)) == 0:
                return at & (size - 1);
            case Wrap.Repeat:
                var repeated = at % size;
                return repeated < 0 ? repeated + size : repeated;
            case Wrap.Clamp:
                return Math.Clamp(at, 0, size - 1);
            case Wrap.Mirror:
                var period = at % (2 * size);
                if (period < 0)
                    period += 2 * size;
                return period < size ? period : (2 * size) - 1 - period;
            default:
                throw new InvalidOperationException($"wrap {wrap}");
        }
    }
}
