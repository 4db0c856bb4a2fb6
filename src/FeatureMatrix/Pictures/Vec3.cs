using System.Runtime.InteropServices;

namespace FeatureMatrix.Pictures;

/// <summary>
/// A point or direction in world units: X to the right, Y up, Z away from the viewer (left-handed). Plain double
/// arithmetic, because the vector types of the runtime may fuse operations and then differ between processors.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Vec3(double X, double Y, double Z)
{
    public static readonly Vec3 Up = new(0, 1, 0);

    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    /// <summary>The same direction with length one; the zero vector stays zero.</summary>
    public Vec3 Unit => Length is var length && length > 0 ? this * (1 / length) : this;

    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vec3 operator *(Vec3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);

    public static double Dot(Vec3 a, Vec3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    public static Vec3 Cross(Vec3 a, Vec3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    /// <summary>The mirror image of a ray that arrives along <paramref name="ray"/> at a surface with this unit normal.</summary>
    public static Vec3 Reflect(Vec3 ray, Vec3 normal) => ray - (normal * (2 * Dot(ray, normal)));
}
