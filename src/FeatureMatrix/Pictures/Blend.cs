using System.Numerics;

namespace FeatureMatrix.Pictures;

/// <summary>What each side of a blend is multiplied by.</summary>
internal enum BlendFactor
{
    Zero,
    One,
    SourceAlpha,
    OneMinusSourceAlpha,
    SourceColour,
    DestinationColour,
    DestinationAlpha,
    OneMinusDestinationAlpha,
}

/// <summary>
/// How a new colour meets the one in the frame buffer: source · s + destination · d, or destination · d − source · s;
/// results are clamped to 0..1 when they are stored.
/// </summary>
internal sealed record Blend(BlendFactor Source, BlendFactor Destination, bool Subtract = false)
{
    public static readonly Blend Replace = new(BlendFactor.One, BlendFactor.Zero);
    public static readonly Blend Alpha = new(BlendFactor.SourceAlpha, BlendFactor.OneMinusSourceAlpha);
    public static readonly Blend Add = new(BlendFactor.One, BlendFactor.One);
    public static readonly Blend AddAlpha = new(BlendFactor.SourceAlpha, BlendFactor.One);
    public static readonly Blend Modulate = new(BlendFactor.DestinationColour, BlendFactor.Zero);
    public static readonly Blend DestinationAlpha = new(BlendFactor.DestinationAlpha, BlendFactor.OneMinusDestinationAlpha);
    public static readonly Blend SubtractAlpha = new(BlendFactor.SourceAlpha, BlendFactor.One, Subtract: true);

    public Vector4 Mix(Vector4 source, Vector4 destination)
    {
        var added = source * Factor(Source, source, destination);
        var kept = destination * Factor(Destination, source, destination);
        return Subtract ? kept - added : kept + added;
    }

    private static Vector4 Factor(BlendFactor factor, Vector4 source, Vector4 destination) => factor switch
    {
        BlendFactor.Zero => Vector4.Zero,
        BlendFactor.One => Vector4.One,
        BlendFactor.SourceAlpha => new Vector4(source.W),
        BlendFactor.OneMinusSourceAlpha => new Vector4(1 - source.W),
        BlendFactor.SourceColour => source,
        BlendFactor.DestinationColour => destination,
        BlendFactor.DestinationAlpha => new Vector4(destination.W),
        BlendFactor.OneMinusDestinationAlpha => new Vector4(1 - destination.W),
        _ => throw new InvalidOperationException($"blend factor {factor}"),
    };
}
