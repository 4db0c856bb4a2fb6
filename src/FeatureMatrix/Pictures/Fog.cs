using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>How the clear share of a colour falls with distance.</summary>
internal enum FogMode
{
    /// <summary>(end − c) / (end − start).</summary>
    Linear,

    /// <summary>exp(−density · c).</summary>
    Exponential,

    /// <summary>exp(−(density · c)²).</summary>
    ExponentialSquared,
}

/// <summary>What is taken as the distance c of the fog equations.</summary>
internal enum FogDistance
{
    /// <summary>Eye distance along the line of sight, in world units ("W fog"; what OpenGL may use).</summary>
    EyeDepth,

    /// <summary>The Z-buffer's 0..1 depth ("Z fog"): most of its range is spent right before the viewer.</summary>
    WindowDepth,

    /// <summary>True distance from the eye ("range fog"), the same in every direction.</summary>
    Range,

    /// <summary>A number the program gives with each vertex.</summary>
    Coordinate,
}

/// <summary>
/// Distance fog. The equations are those of the OpenGL 2.1 specification, section 3.10, (3.31) to (3.33); Direct3D uses the
/// same three. Units of <see cref="Start"/>, <see cref="End"/> and 1/<see cref="Density"/> are those of <see cref="Distance"/>.
/// </summary>
internal sealed record Fog(FogMode Mode, Vector4 Colour)
{
    public FogDistance Distance { get; init; }

    /// <summary>Worked out at the corners of each triangle and blended across it, instead of at every pixel.</summary>
    public bool PerVertex { get; init; }

    public double Start { get; init; }

    public double End { get; init; } = 1;

    public double Density { get; init; } = 1;

    /// <summary>The share of its own colour that something at this distance keeps: 1 clear, 0 wholly fog.</summary>
    public double Factor(double distance)
    {
        var factor = Mode switch
        {
            FogMode.Linear => (End - distance) / (End - Start),
            FogMode.Exponential => Math.Exp(-Density * distance),
            FogMode.ExponentialSquared => Math.Exp(-(Density * distance) * (Density * distance)),
            _ => throw new InvalidOperationException($"fog mode {Mode}"),
        };
        return Math.Clamp(factor, 0, 1);
    }

    /// <summary>C = f·Cr + (1−f)·Cf; alpha is left as it is.</summary>
    public Vector4 Blend(Vector4 colour, double factor)
    {
        var f = (float)factor;
        var mixed = (colour * f) + (Colour * (1 - f));
        mixed.W = colour.W;
        return mixed;
    }
}
