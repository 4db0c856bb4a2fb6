using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>Brings a picture of brightnesses above one to the screen.</summary>
internal static class Exposure
{
    private const int Reach = 28;

    /// <summary>
    /// With glare: brightness beyond one spreads around its source and the whole is compressed by 1 − e^(−1.4·c).
    /// Without: everything beyond one is cut off, as an eight-bit target does.
    /// </summary>
    public static Picture Develop(Framebuffer bright, bool glare)
    {
        var screen = new Framebuffer(bright.Width, bright.Height);
        var spread = glare ? Blurred(Blurred(Excess(bright), bright.Width, bright.Height, 1), bright.Width, bright.Height, bright.Width) : [];
        for (var y = 0; y < bright.Height; y++)
        {
            for (var x = 0; x < bright.Width; x++)
            {
                var colour = bright[x, y];
                if (glare)
                {
                    var sum = colour + (spread[(y * bright.Width) + x] * 0.35f);
                    colour = new Vector4(Compressed(sum.X), Compressed(sum.Y), Compressed(sum.Z), 1);
                }

                screen[x, y] = colour;
            }
        }

        return screen.Resolve();
    }

    private static float Compressed(float value) => (float)(1 - Math.Exp(-1.4 * value));

    private static Vector4[] Excess(Framebuffer bright)
    {
        var excess = new Vector4[bright.Width * bright.Height];
        for (var i = 0; i < excess.Length; i++)
            excess[i] = Vector4.Max(bright.ColourOf(i) - Vector4.One, Vector4.Zero);
        return excess;
    }

    // A running mean along rows (stride 1) or columns (stride = width), taken twice for a rounder fall-off.
    private static Vector4[] Blurred(Vector4[] image, int width, int height, int stride)
    {
        for (var pass = 0; pass < 2; pass++)
        {
            var result = new Vector4[image.Length];
            int lines = stride == 1 ? height : width, length = stride == 1 ? width : height;
            for (var line = 0; line < lines; line++)
            {
                var start = stride == 1 ? line * width : line;
                var sum = Vector4.Zero;
                for (var i = -Reach; i < length; i++)
                {
                    if (i + Reach < length)
                        sum += image[start + ((i + Reach) * stride)];
                    if (i - Reach - 1 >= 0)
                        sum -= image[start + ((i - Reach - 1) * stride)];
                    if (i >= 0)
                        result[start + (i * stride)] = sum / ((2 * Reach) + 1);
                }
            }

            image = result;
        }

        return image;
    }
}
