using System.Numerics;
using System.Runtime.InteropServices;

namespace FeatureMatrix.Pictures;

/// <summary>The values at one pixel of a triangle, interpolated with perspective unless the state says otherwise.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Fragment
{
    public required int X { get; init; }

    public required int Y { get; init; }

    /// <summary>Eye distance along the line of sight, world units.</summary>
    public required double EyeDepth { get; init; }

    /// <summary>(U, V, S, T).</summary>
    public required Vector4 Tex { get; init; }

    /// <summary>Change of <see cref="Tex"/> from this pixel to the one on its right.</summary>
    public required Vector4 TexDx { get; init; }

    /// <summary>Change of <see cref="Tex"/> from this pixel to the one below.</summary>
    public required Vector4 TexDy { get; init; }

    public required Vector4 Colour { get; init; }

    /// <summary>Normal in X, Y, Z (not of length one); W is the fog value of the vertices.</summary>
    public required Vector4 NormalFog { get; init; }

    public required Vector4 World { get; init; }

    public Vec3 Position => new(World.X, World.Y, World.Z);

    public Vec3 Normal => new Vec3(NormalFog.X, NormalFog.Y, NormalFog.Z).Unit;
}

/// <summary>The colour of a pixel before fog and blending.</summary>
internal delegate Vector4 Shader(in Fragment fragment);

internal enum Facing
{
    Both,

    /// <summary>Triangles whose corners run clockwise on the screen.</summary>
    Clockwise,
    CounterClockwise,
}

internal enum StencilChange
{
    Keep,

    /// <summary>Counts up and stops at 255.</summary>
    IncreaseClamped,

    /// <summary>Counts down and stops at 0.</summary>
    DecreaseClamped,
    IncreaseWrapping,
    DecreaseWrapping,
    Replace,
}

/// <summary>A test of the stencil value and what becomes of it when the depth test then fails or passes.</summary>
internal sealed record Stencil(Comparison Test, byte Reference)
{
    public StencilChange WhenDepthFails { get; init; }

    public StencilChange WhenDepthPasses { get; init; }

    public byte Changed(StencilChange change, byte value) => change switch
    {
        StencilChange.Keep => value,
        StencilChange.IncreaseClamped => value == byte.MaxValue ? value : (byte)(value + 1),
        StencilChange.DecreaseClamped => value == 0 ? value : (byte)(value - 1),
        StencilChange.IncreaseWrapping => unchecked((byte)(value + 1)),
        StencilChange.DecreaseWrapping => unchecked((byte)(value - 1)),
        StencilChange.Replace => Reference,
        _ => throw new InvalidOperationException($"stencil change {change}"),
    };
}

/// <summary>Everything that decides how triangles become pixels. The defaults draw opaque, depth-tested vertex colours.</summary>
internal sealed record DrawState
{
    public Shader Shade { get; init; } = static (in Fragment f) => f.Colour;

    public Fog? Fog { get; init; }

    public Blend Blend { get; init; } = Blend.Replace;

    /// <summary>Pixels whose alpha is not greater than this are thrown away; null draws all.</summary>
    public double? AlphaReference { get; init; }

    /// <summary>Instead of blending, draws a share of the pixels that follows alpha, in a fixed 4 × 4 pattern.</summary>
    public bool ScreenDoor { get; init; }

    public Comparison Depth { get; init; } = Comparison.LessOrEqual;

    public bool WriteDepth { get; init; } = true;

    public bool WriteColour { get; init; } = true;

    /// <summary>Added to the 0..1 depth before it is stored; negative brings a surface nearer.</summary>
    public double DepthBias { get; init; }

    public Stencil? Stencil { get; init; }

    public Facing Facing { get; init; }

    /// <summary>False interpolates straight across the screen, as the earliest cards did.</summary>
    public bool PerspectiveCorrect { get; init; } = true;
}
