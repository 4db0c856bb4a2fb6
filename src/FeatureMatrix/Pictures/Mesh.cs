using System.Numerics;
using System.Runtime.InteropServices;

namespace FeatureMatrix.Pictures;

/// <summary>
/// One corner of a triangle. (U, V) are the coordinates in the first texture, (S, T) in the second; colours are
/// 0..1 as stored in the frame buffer, not linear light.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Vertex(Vec3 Position, double U, double V)
{
    public double S { get; init; }

    public double T { get; init; }

    public Vector4 Colour { get; init; } = Vector4.One;

    public Vec3 Normal { get; init; } = Vec3.Up;

    /// <summary>What the program itself states as distance for fog; used only where the fog asks for it.</summary>
    public double FogCoordinate { get; init; }
}

/// <summary>A list of triangles, three vertices each. Drawn in order; both faces are visible unless a state culls.</summary>
internal sealed class Mesh
{
    private readonly List<Vertex> vertices = [];

    public IReadOnlyList<Vertex> Vertices => vertices;

    public Mesh Triangle(Vertex a, Vertex b, Vertex c)
    {
        vertices.Add(a);
        vertices.Add(b);
        vertices.Add(c);
        return this;
    }

    /// <summary>A quadrilateral with its corners in order around it.</summary>
    public Mesh Quad(Vertex a, Vertex b, Vertex c, Vertex d) => Triangle(a, b, c).Triangle(a, c, d);

    /// <summary>
    /// A parallelogram from a corner and two edges, with texture coordinates 0..<paramref name="tilesU"/> along the
    /// first and 0..<paramref name="tilesV"/> along the second, cut into a grid of quadrilaterals; (S, T) always run 0..1.
    /// The normal points to whoever sees the first edge run to the right and the second one down.
    /// </summary>
    public Mesh Panel(Vec3 corner, Vec3 edgeU, Vec3 edgeV, double tilesU = 1, double tilesV = 1, Vector4? colour = null,
        int cutsU = 1, int cutsV = 1)
    {
        var normal = Vec3.Cross(edgeU, edgeV).Unit;
        Vertex At(double u, double v) => new(corner + (edgeU * u) + (edgeV * v), u * tilesU, v * tilesV)
        {
            S = u,
            T = v,
            Colour = colour ?? Vector4.One,
            Normal = normal,
        };

        for (var j = 0; j < cutsV; j++)
        {
            for (var i = 0; i < cutsU; i++)
            {
                double u0 = (double)i / cutsU, u1 = (i + 1.0) / cutsU, v0 = (double)j / cutsV, v1 = (j + 1.0) / cutsV;
                Quad(At(u0, v0), At(u1, v0), At(u1, v1), At(u0, v1));
            }
        }

        return this;
    }

    /// <summary>A box standing on its base centre, turned about the vertical axis; each side shows the whole texture once.</summary>
    public Mesh Box(Vec3 baseCentre, double width, double height, double depth, double turnDegrees = 0, Vector4? colour = null)
    {
        var tint = colour ?? Vector4.One;
        var (sin, cos) = Math.SinCos(turnDegrees * Math.PI / 180);
        var x = new Vec3(cos, 0, sin) * width;
        var z = new Vec3(-sin, 0, cos) * depth;
        var y = Vec3.Up * height;
        var origin = baseCentre - (x * 0.5) - (z * 0.5);
        // Texture V runs downwards, so that pictures on the sides stand upright.
        Panel(origin + y, x, y * -1, 1, 1, tint);
        Panel(origin + x + y, z, y * -1, 1, 1, Shade(tint, 0.82f));
        Panel(origin + x + z + y, x * -1, y * -1, 1, 1, Shade(tint, 0.7f));
        Panel(origin + z + y, z * -1, y * -1, 1, 1, Shade(tint, 0.62f));
        return Panel(origin + y + z, x, z * -1, 1, 1, tint);
    }

    /// <summary>A sphere of <paramref name="rings"/> × twice as many facets, with outward normals.</summary>
    public Mesh Sphere(Vec3 centre, double radius, int rings = 24, Vector4? colour = null)
    {
        Vertex At(int ring, int segment)
        {
            var (sinRing, cosRing) = Math.SinCos(Math.PI * ring / rings);
            var (sin, cos) = Math.SinCos(Math.PI * segment / rings);
            var normal = new Vec3(sinRing * cos, cosRing, sinRing * sin);
            return new Vertex(centre + (normal * radius), (double)segment / rings, (double)ring / rings)
            {
                Normal = normal,
                Colour = colour ?? Vector4.One,
            };
        }

        for (var ring = 0; ring < rings; ring++)
        {
            for (var segment = 0; segment < 2 * rings; segment++)
                Quad(At(ring, segment), At(ring, segment + 1), At(ring + 1, segment + 1), At(ring + 1, segment));
        }

        return this;
    }

    /// <summary>A thing turned on a lathe: <paramref name="radius"/> at a height of 0 to 1, with outward normals, open at both ends.</summary>
    public Mesh Turned(Vec3 foot, int segments, int rings, double height, Func<double, double> radius, Vector4 colour)
    {
        const double step = 0.001;

        Vertex At(int ring, int segment)
        {
            var share = (double)ring / rings;
            var (sin, cos) = Math.SinCos(2 * Math.PI * segment / segments);
            var slope = (radius(share + step) - radius(share - step)) / (2 * step * height);
            return new Vertex(foot + new Vec3(cos * radius(share), share * height, sin * radius(share)), (double)segment / segments, 1 - share)
            {
                Normal = new Vec3(cos, -slope, sin).Unit,
                Colour = colour,
            };
        }

        for (var ring = 0; ring < rings; ring++)
        {
            for (var segment = 0; segment < segments; segment++)
                Quad(At(ring + 1, segment), At(ring + 1, segment + 1), At(ring, segment + 1), At(ring, segment));
        }

        return this;
    }

    /// <summary>A surface given as height over a rectangle of the ground, in square cells.</summary>
    public Mesh Terrain(double left, double near, double cell, int columns, int rows, Func<double, double, Vertex> at)
    {
        for (var j = rows - 1; j >= 0; j--)
        {
            for (var i = 0; i < columns; i++)
            {
                double x0 = left + (i * cell), x1 = x0 + cell, z0 = near + (j * cell), z1 = z0 + cell;
                Quad(at(x0, z0), at(x1, z0), at(x1, z1), at(x0, z1));
            }
        }

        return this;
    }

    /// <summary>An upright picture that faces along the Z axis, standing on its foot.</summary>
    public Mesh Standee(Vec3 foot, double width, double height, Vector4? colour = null) =>
        Panel(foot + new Vec3(-width / 2, height, 0), new Vec3(width, 0, 0), new Vec3(0, -height, 0), 1, 1, colour);

    /// <summary>The same triangles, every vertex changed.</summary>
    public Mesh Select(Func<Vertex, Vertex> change)
    {
        var changed = new Mesh();
        changed.vertices.AddRange(vertices.Select(change));
        return changed;
    }

    private static Vector4 Shade(Vector4 colour, float by) => new(colour.X * by, colour.Y * by, colour.Z * by, colour.W);
}
