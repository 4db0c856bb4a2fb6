using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>Puts a pair of panes, magnified to exactly twice their size, with their words on a frame of 1920 × 1080.</summary>
internal static class VideoFrame
{
    private const int Width = 1920;
    private const int Height = 1080;
    private const int PaneTop = 250;
    private static readonly Vector4 Ground = Tint.Hex(0x14181D);
    private static readonly Vector4 Bright = Tint.Hex(0xF4F6F8);
    private static readonly Vector4 Quiet = Tint.Hex(0xAEB8C2);

    public static Picture Compose(IllustrationPair pair, Picture with, Picture without)
    {
        var rgb = new byte[Width * Height * 3];
        Fill(rgb, 0, 0, Width, Height, Ground);
        Write(rgb, 48, 60, pair.Title, 6, Bright);
        Write(rgb, 48, PaneTop - 56, pair.With.Heading, 4, Bright);
        Write(rgb, 1008, PaneTop - 56, pair.Without.Heading, 4, Bright);
        Paste(rgb, 0, PaneTop, with.Magnified(2));
        Paste(rgb, Width / 2, PaneTop, without.Magnified(2));
        Fill(rgb, (Width / 2) - 3, PaneTop, 6, Canvas.PaneHeight * 2, Ground);
        var top = PaneTop + (Canvas.PaneHeight * 2) + 36;
        foreach (var line in Lines(pair.LookFor, 100).Take(2))
        {
            Write(rgb, 48, top, line, 3, Bright);
            top += 36;
        }

        Write(rgb, 48, Height - 60, IllustrationPair.Label, 3, Quiet);
        return new Picture(Width, Height, rgb);
    }

    /// <summary>Breaks text at spaces into lines of at most this many letters.</summary>
    internal static IReadOnlyList<string> Lines(string text, int most)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' '))
        {
            if (lines.Count > 0 && lines[^1].Length + 1 + word.Length <= most)
                lines[^1] += " " + word;
            else
                lines.Add(word);
        }

        return lines;
    }

    private static void Paste(byte[] rgb, int left, int top, Picture picture)
    {
        var row = picture.Width * 3;
        for (var y = 0; y < picture.Height; y++)
            picture.Rgb.Slice(y * row, row).CopyTo(rgb.AsSpan((((top + y) * Width) + left) * 3));
    }

    private static void Write(byte[] rgb, int left, int top, string text, int dot, Vector4 colour)
    {
        for (var row = 0; row < Glyphs.Height; row++)
        {
            for (var column = 0; column < Glyphs.WidthOf(text); column++)
            {
                if (Glyphs.Ink(text, column, row))
                    Fill(rgb, left + (column * dot), top + (row * dot), dot, dot, colour);
            }
        }
    }

    private static void Fill(byte[] rgb, int left, int top, int width, int height, Vector4 colour)
    {
        byte red = (byte)Dither.Nearest(colour.X, 255), green = (byte)Dither.Nearest(colour.Y, 255), blue = (byte)Dither.Nearest(colour.Z, 255);
        for (var y = top; y < Math.Min(Height, top + height); y++)
        {
            for (var x = left; x < Math.Min(Width, left + width); x++)
            {
                var at = ((y * Width) + x) * 3;
                (rgb[at], rgb[at + 1], rgb[at + 2]) = (red, green, blue);
            }
        }
    }
}
