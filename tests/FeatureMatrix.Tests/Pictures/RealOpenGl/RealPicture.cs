using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures.RealOpenGl;

/// <summary>Draws our meshes with a real OpenGL implementation, state by state as our renderer would.</summary>
internal sealed class RealPicture : IDisposable
{
    private readonly Camera camera;

    public RealPicture(int width, int height, Camera camera, int depthBits = 24)
    {
        this.camera = camera;
        Gl = new OffscreenGl(width, height, depthBits);
        Gl.Matrix(0x1700, ModelView());
        Gl.Matrix(0x1701, Projection());
        Gl.Enable(0x0B71); // depth test
        Gl.DepthFunction(0x0203); // less or equal
        Gl.Clear(0, 0, 0);
    }

    public OffscreenGl Gl { get; }

    /// <summary>Fog as our renderer means it; fog at corners is handed over as explicit coordinates of a linear fog.</summary>
    public void Fog(Fog fog)
    {
        Gl.Enable(0x0B60);
        Gl.FogColour(fog.Colour.X, fog.Colour.Y, fog.Colour.Z);
        Gl.FogSource(fog.PerVertex || fog.Distance == FogDistance.Coordinate ? 0x8451 : 0x8452);
        Gl.FogModeIs(fog.PerVertex ? 0x2601 : fog.Mode switch
        {
            FogMode.Linear => 0x2601,
            FogMode.Exponential => 0x0800,
            FogMode.ExponentialSquared => 0x0801,
            _ => throw new InvalidOperationException($"fog mode {fog.Mode}"),
        });
        Gl.Fog(0x0B63, fog.PerVertex ? 0 : fog.Start);
        Gl.Fog(0x0B64, fog.PerVertex ? 1 : fog.End);
        Gl.Fog(0x0B62, fog.Density);
    }

    public void Texture(int unit, Sampler sampler)
    {
        Gl.ActiveTexture(unit);
        Gl.NewTexture();
        for (var level = 0; level < sampler.Texture.Levels.Length; level++)
        {
            var image = sampler.Texture.Levels[level];
            Gl.TextureImage(level, image.Width, image.Height, [.. image.Texels.SelectMany(t => new[]
            {
                (byte)Dither.Nearest(t.X, 255), (byte)Dither.Nearest(t.Y, 255), (byte)Dither.Nearest(t.Z, 255), (byte)Dither.Nearest(t.W, 255),
            })]);
        }

        Parameters(sampler);
        Gl.Enable(0x0DE1);
    }

    public void Parameters(Sampler sampler)
    {
        Gl.TextureParameter(0x2800, sampler.Magnify == Filter.Linear ? 0x2601 : 0x2600);
        Gl.TextureParameter(0x2801, (sampler.Minify, sampler.Mip) switch
        {
            (Filter.Nearest, MipFilter.None) => 0x2600,
            (Filter.Linear, MipFilter.None) => 0x2601,
            (Filter.Nearest, MipFilter.Nearest) => 0x2700,
            (Filter.Linear, MipFilter.Nearest) => 0x2701,
            (Filter.Nearest, MipFilter.Linear) => 0x2702,
            _ => 0x2703,
        });
        Gl.TextureParameter(0x2802, WrapMode(sampler.WrapU));
        Gl.TextureParameter(0x2803, WrapMode(sampler.WrapV));
    }

    /// <summary>Both samplers of one draw call multiply each other and the colour: OpenGL's default environment.</summary>
    public void Draw(Mesh mesh, Fog? fog = null)
    {
        Gl.BeginTriangles();
        foreach (var vertex in mesh.Vertices)
        {
            Gl.Coordinates(0, vertex.U, vertex.V);
            Gl.Coordinates(1, vertex.S, vertex.T);
            Gl.Colour(vertex.Colour.X, vertex.Colour.Y, vertex.Colour.Z, vertex.Colour.W);
            if (fog is { PerVertex: true })
                Gl.FogCoordinate(1 - fog.Factor(Vec3.Dot(vertex.Position - camera.Eye, camera.Forward)));
            else if (fog is { Distance: FogDistance.Coordinate })
                Gl.FogCoordinate(vertex.FogCoordinate);
            Gl.Vertex(vertex.Position.X, vertex.Position.Y, vertex.Position.Z);
        }

        Gl.End();
    }

    public void Dispose() => Gl.Dispose();

    private static int WrapMode(Wrap wrap) => wrap switch
    {
        Wrap.Repeat => 0x2901,
        Wrap.Clamp => 0x812F,
        Wrap.Mirror => 0x8370,
        _ => throw new InvalidOperationException($"wrap {wrap}"),
    };

    private double[] ModelView()
    {
        Vec3 r = camera.Right, t = camera.Top, f = camera.Forward, e = camera.Eye;
        return
        [
            r.X, t.X, -f.X, 0, r.Y, t.Y, -f.Y, 0, r.Z, t.Z, -f.Z, 0,
            -Vec3.Dot(r, e), -Vec3.Dot(t, e), Vec3.Dot(f, e), 1,
        ];
    }

    private double[] Projection()
    {
        double n = camera.Near, f = camera.Far, h = camera.HalfHeight;
        return
        [
            1 / (h * camera.Aspect), 0, 0, 0, 0, 1 / h, 0, 0, 0, 0, -(f + n) / (f - n), -1, 0, 0, -2 * f * n / (f - n), 0,
        ];
    }
}
