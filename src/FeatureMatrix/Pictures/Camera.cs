namespace FeatureMatrix.Pictures;

/// <summary>
/// A viewer and its perspective projection. Depths are eye distances along the line of sight, in world units;
/// what lies nearer than <see cref="Near"/> or farther than <see cref="Far"/> is not drawn.
/// </summary>
internal sealed record Camera
{
    public required Vec3 Eye { get; init; }

    public required Vec3 Target { get; init; }

    /// <summary>Vertical opening of the view in degrees, between 0 and 180.</summary>
    public double FieldOfView { get; init; } = 50;

    public double Near { get; init; } = 0.1;

    public double Far { get; init; } = 1000;

    /// <summary>Width divided by height of the picture.</summary>
    public double Aspect { get; init; } = 1.6;

    public Vec3 Forward => (Target - Eye).Unit;

    public Vec3 Right => Vec3.Cross(Vec3.Up, Forward).Unit;

    public Vec3 Top => Vec3.Cross(Forward, Right);

    /// <summary>Half the height of the picture at eye distance one.</summary>
    public double HalfHeight => Math.Tan(FieldOfView * Math.PI / 360);

    /// <summary>
    /// Depth 0..1 as a Z-buffer keeps it: f/(f−n)·(1−n/w). Half of the range is spent on the distance between n and
    /// about 2n (Direct3D's projection; OpenGL's window depth is the same value).
    /// </summary>
    public double WindowDepth(double eyeDepth) => Far / (Far - Near) * (1 - (Near / eyeDepth));

    /// <summary>Depth 0..1 as a W-buffer keeps it: (w−n)/(f−n), the same step everywhere.</summary>
    public double LinearDepth(double eyeDepth) => (eyeDepth - Near) / (Far - Near);
}
