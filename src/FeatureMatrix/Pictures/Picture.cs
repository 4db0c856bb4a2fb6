namespace FeatureMatrix.Pictures;

/// <summary>A finished picture: rows from the top, three bytes (red, green, blue) a pixel.</summary>
public sealed class Picture
{
    private readonly byte[] rgb;
    private byte[]? png;

    internal Picture(int width, int height, byte[] rgb)
    {
        Width = width;
        Height = height;
        this.rgb = rgb;
    }

    /// <summary>Pixels in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>Width × height × 3 bytes: red, green, blue, row by row from the top left.</summary>
    public ReadOnlySpan<byte> Rgb => rgb;

    /// <summary>The picture as a PNG file; the same picture always gives the same bytes.</summary>
    public byte[] ToPng() => png ??= PngWriter.Write(Width, Height, rgb);

    /// <summary>The picture with every pixel drawn as a square of <paramref name="times"/> × <paramref name="times"/>.</summary>
    internal Picture Magnified(int times)
    {
        if (times == 1)
            return this;
        var large = new byte[rgb.Length * times * times];
        var row = Width * times * 3;
        for (var y = 0; y < Height * times; y++)
        {
            for (var x = 0; x < Width * times; x++)
                rgb.AsSpan((((y / times) * Width) + (x / times)) * 3, 3).CopyTo(large.AsSpan((y * row) + (x * 3)));
        }

        return new Picture(Width * times, Height * times, large);
    }
}
