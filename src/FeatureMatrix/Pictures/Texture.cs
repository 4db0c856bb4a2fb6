using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>One size of a texture; rows run downwards.</summary>
internal sealed record TextureLevel(int Width, int Height, Vector4[] Texels)
{
    public Vector4 this[int x, int y] => Texels[(y * Width) + x];

    /// <summary>Half the width and height; each texel is the mean of the four it replaces.</summary>
    public TextureLevel Halved()
    {
        int width = Math.Max(1, Width / 2), height = Math.Max(1, Height / 2);
        int stepX = Width / width, stepY = Height / height;
        var texels = new Vector4[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                int x0 = x * stepX, y0 = y * stepY, x1 = x0 + stepX - 1, y1 = y0 + stepY - 1;
                texels[(y * width) + x] = (this[x0, y0] + this[x1, y0] + this[x0, y1] + this[x1, y1]) * 0.25f;
            }
        }

        return new TextureLevel(width, height, texels);
    }
}

/// <summary>An image with its chain of halved copies (mipmaps). Never changed once made.</summary>
internal sealed class Texture
{
    private readonly TextureLevel[] levels;

    private Texture(TextureLevel[] levels) => this.levels = levels;

    /// <summary>From full size down to one texel.</summary>
    public ReadOnlySpan<TextureLevel> Levels => levels;

    public TextureLevel Base => levels[0];

    /// <summary>A texture from a picture given as colour over 0..1 × 0..1, asked at texel centres.</summary>
    public static Texture Paint(int width, int height, Func<double, double, Vector4> colour)
    {
        var texels = new Vector4[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
                texels[(y * width) + x] = Vector4.Clamp(colour((x + 0.5) / width, (y + 0.5) / height), Vector4.Zero, Vector4.One);
        }

        return Of(width, height, texels);
    }

    public static Texture Of(int width, int height, Vector4[] texels) => Chain(new TextureLevel(width, height, texels));

    /// <summary>The same image with every texel, also those of the halved copies, changed by a rule.</summary>
    public Texture Select(Func<Vector4, Vector4> change) => new(
        [.. levels.Select(level => level with { Texels = [.. level.Texels.Select(change)] })]);

    /// <summary>The texture as a card keeps it that has only this format.</summary>
    public Texture As(TexelFormat format) => Select(format.Stored);

    /// <summary>The texture as a card keeps it whose largest edge is this: halved until it fits.</summary>
    public Texture Limited(int edge) => new([.. levels.SkipWhile(l => l.Width > edge || l.Height > edge)]);

    /// <summary>The image brought to another size, blended from the nearest texels.</summary>
    public Texture Resized(int width, int height)
    {
        var source = new Sampler(this) { Minify = Filter.Linear, Mip = MipFilter.None, WrapU = Wrap.Clamp, WrapV = Wrap.Clamp };
        return Paint(width, height, (u, v) => source.At(u, v));
    }

    private static Texture Chain(TextureLevel level)
    {
        var chain = new List<TextureLevel> { level };
        while (level.Width > 1 || level.Height > 1)
        {
            level = level.Halved();
            chain.Add(level);
        }

        return new Texture([.. chain]);
    }
}
