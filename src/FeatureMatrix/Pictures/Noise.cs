namespace FeatureMatrix.Pictures;

/// <summary>Repeatable roughness for invented surfaces: whole-number hashing only, so every machine gets the same.</summary>
internal static class Noise
{
    /// <summary>An even value of 0..1 for a lattice point.</summary>
    public static double Hash(int x, int y, int seed = 0)
    {
        unchecked
        {
            var h = ((uint)x * 0x9E3779B1u) ^ ((uint)y * 0x85EBCA77u) ^ ((uint)seed * 0xC2B2AE3Du);
            h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
            h = (h ^ (h >> 12)) * 0x297A2D39u;
            return (h ^ (h >> 15)) / (double)uint.MaxValue;
        }
    }

    /// <summary>Smooth values of 0..1 with lattice spacing one, repeating every <paramref name="period"/> in both directions.</summary>
    public static double Smooth(double x, double y, int period, int seed = 0)
    {
        int x0 = (int)Math.Floor(x), y0 = (int)Math.Floor(y);
        double fx = Ease(x - x0), fy = Ease(y - y0);
        double At(int i, int j) => Hash(Modulo(x0 + i, period), Modulo(y0 + j, period), seed);
        var top = At(0, 0) + ((At(1, 0) - At(0, 0)) * fx);
        var bottom = At(0, 1) + ((At(1, 1) - At(0, 1)) * fx);
        return top + ((bottom - top) * fy);
    }

    /// <summary>
    /// A sum of ever finer and weaker layers, 0..1 with mean one half; (u, v) of 0..1 make one period that repeats without seam.
    /// </summary>
    public static double Layers(double u, double v, int cells, int layers = 4, int seed = 0)
    {
        double sum = 0, weight = 0, share = 1;
        for (var layer = 0; layer < layers; layer++)
        {
            sum += Smooth(u * cells, v * cells, cells, seed + layer) * share;
            weight += share;
            share *= 0.5;
            cells *= 2;
        }

        return sum / weight;
    }

    private static double Ease(double t) => t * t * (3 - (2 * t));

    private static int Modulo(int value, int period) => ((value % period) + period) % period;
}
