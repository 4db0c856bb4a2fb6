using System.Numerics;
using System.Runtime.InteropServices;

namespace FeatureMatrix.Pictures;

/// <summary>
/// Turns triangles into pixels: clipping at the near plane, top-left fill rule, perspective-correct interpolation, then depth and
/// stencil tests, shading, fog, alpha test, blending, in the order of the OpenGL 2.1 specification (chapters 3 and 4).
/// </summary>
internal static class Rasterizer
{
    public static void Draw(Framebuffer target, Camera camera, Mesh mesh, DrawState state)
    {
        var corners = mesh.Vertices;
        var view = new View(camera);
        Span<Corner> triangle = stackalloc Corner[3];
        for (var i = 0; i + 2 < corners.Count; i += 3)
        {
            for (var k = 0; k < 3; k++)
                triangle[k] = Corner.Of(corners[i + k], view, state.Fog);
            Clip(target, view, triangle, state);
        }
    }

    private static void Clip(Framebuffer target, View view, ReadOnlySpan<Corner> triangle, DrawState state)
    {
        var near = view.Camera.Near;
        if (triangle[0].Depth >= near && triangle[1].Depth >= near && triangle[2].Depth >= near)
        {
            new Triangle(target, view, state).Fill(triangle[0], triangle[1], triangle[2]);
            return;
        }

        Span<Corner> kept = stackalloc Corner[4];
        var count = 0;
        for (var k = 0; k < 3; k++)
        {
            var a = triangle[k];
            var b = triangle[(k + 1) % 3];
            if (a.Depth >= near)
                kept[count++] = a;
            if (a.Depth >= near != b.Depth >= near)
                kept[count++] = Corner.Between(a, b, (near - a.Depth) / (b.Depth - a.Depth));
        }

        for (var k = 2; k < count; k++)
            new Triangle(target, view, state).Fill(kept[0], kept[k - 1], kept[k]);
    }

    /// <summary>A camera's axes and opening, worked out once for a mesh.</summary>
    private sealed class View(Camera camera)
    {
        public Camera Camera { get; } = camera;

        public Vec3 Eye { get; } = camera.Eye;

        public Vec3 Right { get; } = camera.Right;

        public Vec3 Top { get; } = camera.Top;

        public Vec3 Forward { get; } = camera.Forward;

        public double HalfHeight { get; } = camera.HalfHeight;

        public double HalfWidth { get; } = camera.HalfHeight * camera.Aspect;
    }

    /// <summary>A vertex in the viewer's axes (X right, Y up, depth along the line of sight) with all that is interpolated.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Corner(double X, double Y, double Depth, Vector4 Tex, Vector4 Colour, Vector4 NormalFog, Vector4 World)
    {
        public static Corner Of(Vertex vertex, View view, Fog? fog)
        {
            var seen = vertex.Position - view.Eye;
            var depth = Vec3.Dot(seen, view.Forward);
            var fogValue = vertex.FogCoordinate;
            if (fog is { PerVertex: true })
                fogValue = fog.Factor(FogDistanceOf(fog, view.Camera, depth, seen, vertex.FogCoordinate));
            return new Corner(
                Vec3.Dot(seen, view.Right), Vec3.Dot(seen, view.Top), depth,
                new Vector4((float)vertex.U, (float)vertex.V, (float)vertex.S, (float)vertex.T), vertex.Colour,
                new Vector4((float)vertex.Normal.X, (float)vertex.Normal.Y, (float)vertex.Normal.Z, (float)fogValue),
                new Vector4((float)vertex.Position.X, (float)vertex.Position.Y, (float)vertex.Position.Z, 1));
        }

        public static Corner Between(Corner a, Corner b, double t)
        {
            float u = (float)t, v = 1 - u;
            return new Corner(
                a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t), a.Depth + ((b.Depth - a.Depth) * t),
                (a.Tex * v) + (b.Tex * u), (a.Colour * v) + (b.Colour * u), (a.NormalFog * v) + (b.NormalFog * u),
                (a.World * v) + (b.World * u));
        }
    }

    private static double FogDistanceOf(Fog fog, Camera camera, double depth, Vec3 seen, double coordinate) => fog.Distance switch
    {
        FogDistance.EyeDepth => depth,
        FogDistance.WindowDepth => camera.WindowDepth(Math.Max(depth, camera.Near)),
        FogDistance.Range => seen.Length,
        FogDistance.Coordinate => coordinate,
        _ => throw new InvalidOperationException($"fog distance {fog.Distance}"),
    };

    /// <summary>An edge function a·x + b·y + c, positive inside; shared edges of neighbours are exact negatives of each other.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Edge(double A, double B, double C)
    {
        public static Edge Of((double X, double Y) from, (double X, double Y) to) =>
            new(from.Y - to.Y, to.X - from.X, (from.X * to.Y) - (to.X * from.Y));

        public double At(double x, double y) => (A * x) + (B * y) + C;

        /// <summary>Narrows a row's range of pixels to those of which some point may lie on the inner side.</summary>
        public void Narrow(int row, ref int first, ref int last)
        {
            var most = Math.Max(B * row, B * (row + 1)) + C;
            if (A > 0)
                first = Math.Max(first, (int)Math.Floor(Math.Max(-most / A, -1e9)) - 1);
            else if (A < 0)
                last = Math.Min(last, (int)Math.Ceiling(Math.Min(most / -A, 1e9)));
            else if (most < 0)
                last = first - 1;
        }

        /// <summary>Points on a top or left edge belong to the triangle, points on the others do not.</summary>
        public bool Covers(double value) => value > 0 || (value == 0 && (A > 0 || (A == 0 && B > 0)));
    }

    private readonly struct Triangle(Framebuffer target, View view, DrawState state)
    {
        public void Fill(Corner a, Corner b, Corner c)
        {
            var (pa, pb, pc) = (OnScreen(a), OnScreen(b), OnScreen(c));
            var area = Edge.Of(pa, pb).At(pc.X, pc.Y);
            if (area == 0 || (state.Facing == Facing.Clockwise && area < 0) || (state.Facing == Facing.CounterClockwise && area > 0))
                return;
            if (area < 0)
            {
                (b, c, pb, pc, area) = (c, b, pc, pb, -area);
            }

            Edge ea = Edge.Of(pb, pc), eb = Edge.Of(pc, pa), ec = Edge.Of(pa, pb);
            double wa = 1 / a.Depth, wb = 1 / b.Depth, wc = 1 / c.Depth;
            var left = Math.Max(0, (int)Math.Floor(Math.Min(pa.X, Math.Min(pb.X, pc.X))));
            var right = Math.Min(target.Width - 1, (int)Math.Floor(Math.Max(pa.X, Math.Max(pb.X, pc.X))));
            var top = Math.Max(0, (int)Math.Floor(Math.Min(pa.Y, Math.Min(pb.Y, pc.Y))));
            var bottom = Math.Min(target.Height - 1, (int)Math.Floor(Math.Max(pa.Y, Math.Max(pb.Y, pc.Y))));
            Span<uint> depths = stackalloc uint[target.Samples];
            for (var y = top; y <= bottom; y++)
            {
                int first = left, last = right;
                ea.Narrow(y, ref first, ref last);
                eb.Narrow(y, ref first, ref last);
                ec.Narrow(y, ref first, ref last);
                for (var x = first; x <= last; x++)
                {
                    var covered = 0;
                    for (var sample = 0; sample < target.Samples; sample++)
                    {
                        var (ox, oy) = target.Offsets[sample];
                        double sx = x + ox, sy = y + oy, va = ea.At(sx, sy), vb = eb.At(sx, sy), vc = ec.At(sx, sy);
                        if (!ea.Covers(va) || !eb.Covers(vb) || !ec.Covers(vc))
                            continue;
                        var eyeDepth = area / ((va * wa) + (vb * wb) + (vc * wc));
                        if (PassesDepthAndStencil(x, y, sample, eyeDepth, out depths[sample]))
                            covered |= 1 << sample;
                    }

                    if (covered == 0)
                        continue;
                    double px = x + 0.5, py = y + 0.5;
                    var fragment = Interpolate(x, y, a, b, c, ea, eb, ec, ea.At(px, py) / area, eb.At(px, py) / area, ec.At(px, py) / area,
                        wa, wb, wc, area);
                    Shade(fragment, covered, depths);
                }
            }
        }

        private (double X, double Y) OnScreen(Corner corner)
        {
            return ((0.5 + (corner.X / (view.HalfWidth * corner.Depth) * 0.5)) * target.Width,
                (0.5 - (corner.Y / (view.HalfHeight * corner.Depth) * 0.5)) * target.Height);
        }

        private bool PassesDepthAndStencil(int x, int y, int sample, double eyeDepth, out uint depth)
        {
            var format = target.DepthFormat;
            var exact = format.Linear ? view.Camera.LinearDepth(eyeDepth) : view.Camera.WindowDepth(eyeDepth);
            depth = format.Store(exact + state.DepthBias);
            if (exact > 1)
                return false;
            var slot = target.Slot(x, y) + sample;
            ref var stencil = ref target.StencilOf(slot);
            if (state.Stencil is { } use && !use.Test.Passes(use.Reference, stencil))
                return false;
            var passes = state.Depth.Passes(depth, target.DepthOf(slot));
            if (state.Stencil is { } change)
                stencil = change.Changed(passes ? change.WhenDepthPasses : change.WhenDepthFails, stencil);
            return passes;
        }

        private Fragment Interpolate(int x, int y, in Corner a, in Corner b, in Corner c, Edge ea, Edge eb, Edge ec,
            double ba, double bb, double bc, double wa, double wb, double wc, double area)
        {
            var inverseDepth = (ba * wa) + (bb * wb) + (bc * wc);
            if (!state.PerspectiveCorrect)
            {
                wa = wb = wc = 1;
            }

            var sum = (ba * wa) + (bb * wb) + (bc * wc);
            double fa = ba * wa / sum, fb = bb * wb / sum, fc = bc * wc / sum;
            // The shares change by (own slope − share · slope of the sum) / sum from pixel to pixel.
            double dx = ((ea.A * wa) + (eb.A * wb) + (ec.A * wc)) / area, dy = ((ea.B * wa) + (eb.B * wb) + (ec.B * wc)) / area;
            return new Fragment
            {
                X = x,
                Y = y,
                EyeDepth = 1 / inverseDepth,
                Tex = Mix(a.Tex, b.Tex, c.Tex, fa, fb, fc),
                TexDx = Mix(a.Tex, b.Tex, c.Tex, ((ea.A * wa / area) - (fa * dx)) / sum, ((eb.A * wb / area) - (fb * dx)) / sum,
                    ((ec.A * wc / area) - (fc * dx)) / sum),
                TexDy = Mix(a.Tex, b.Tex, c.Tex, ((ea.B * wa / area) - (fa * dy)) / sum, ((eb.B * wb / area) - (fb * dy)) / sum,
                    ((ec.B * wc / area) - (fc * dy)) / sum),
                Colour = Mix(a.Colour, b.Colour, c.Colour, fa, fb, fc),
                NormalFog = Mix(a.NormalFog, b.NormalFog, c.NormalFog, fa, fb, fc),
                World = Mix(a.World, b.World, c.World, fa, fb, fc),
            };
        }

        private void Shade(in Fragment fragment, int covered, ReadOnlySpan<uint> depths)
        {
            var colour = state.Shade(fragment);
            if (target.Format != ColourFormat.FloatingPoint)
                colour = Vector4.Clamp(colour, Vector4.Zero, Vector4.One);
            if (state.AlphaReference is { } reference && colour.W <= reference)
                return;
            if (state.ScreenDoor && colour.W <= Dither.Threshold(fragment.X, fragment.Y))
                return;
            if (state.Fog is { } fog)
            {
                var factor = fog.PerVertex
                    ? fragment.NormalFog.W
                    : fog.Factor(FogDistanceOf(fog, view.Camera, fragment.EyeDepth, fragment.Position - view.Eye, fragment.NormalFog.W));
                colour = fog.Blend(colour, factor);
            }

            for (var sample = 0; sample < target.Samples; sample++)
            {
                if ((covered & (1 << sample)) == 0)
                    continue;
                var slot = target.Slot(fragment.X, fragment.Y) + sample;
                if (state.WriteDepth)
                    target.DepthOf(slot) = depths[sample];
                if (state.WriteColour)
                    target.Write(slot, fragment.X, fragment.Y, state.Blend.Mix(colour, target.ColourOf(slot)));
            }
        }

        private static Vector4 Mix(Vector4 a, Vector4 b, Vector4 c, double fa, double fb, double fc) =>
            (a * (float)fa) + (b * (float)fb) + (c * (float)fc);
    }
}
