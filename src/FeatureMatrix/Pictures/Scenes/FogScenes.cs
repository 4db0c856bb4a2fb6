using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Haze over an invented lake, road, court and moor.</summary>
internal static class FogScenes
{
    private static readonly Vector4 Haze = Tint.Hex(0xC9D3DA);
    private static readonly Vector4 Zenith = Tint.Hex(0x6F93B8);
    private static readonly Fog Linear = new(FogMode.Linear, Haze) { Start = 6, End = 55 };
    private static readonly Fog Exponential = new(FogMode.Exponential, Haze) { Density = 0.045 };
    private static readonly Fog Squared = new(FogMode.ExponentialSquared, Haze) { Density = 0.035 };

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("fog-table", "fog-table", with => Lake(with ? new Fog(FogMode.Linear, Haze) { Start = 18, End = 96 } : null)),
        new("fog-table-exp", "fog-table", with => Lake(with ? new Fog(FogMode.Exponential, Haze) { Density = 0.024 } : null)),
        new("fog-table-exp2", "fog-table", with => Lake(with ? new Fog(FogMode.ExponentialSquared, Haze) { Density = 0.0175 } : null)),
        new("fog-table-vertex", "fog-table", with => Road(Linear with { PerVertex = !with })),
        new("fog-table-vertex-exp", "fog-table", with => Road(Exponential with { PerVertex = !with })),
        new("fog-table-vertex-exp2", "fog-table", with => Road(Squared with { PerVertex = !with })),
        new("fog-vertex", "fog-vertex", Towers),
        new("fog-w", "fog-w", with => Road(with ? Linear with { Start = 5, End = 90 } : AsWindowDepth(5, 90))),
        new("fog-z", "fog-z", with => Road(with
            ? new Fog(FogMode.Linear, Haze) { Distance = FogDistance.WindowDepth, Start = 0.93, End = 1 }
            : new Fog(FogMode.Linear, Haze) { Start = 0.93, End = 1 })),
        new("fog-range", "fog-range", Court),
        new("fog-coord", "fog-coord", Moor),
    ];

    internal static Camera RoadCamera { get; } =
        new() { Eye = new(0, 2.6, 0), Target = new(0, 2.2, 20), Near = 0.5, Far = 400, FieldOfView = 50 };

    /// <summary>A road between walls, all of few and very long polygons.</summary>
    internal static IReadOnlyList<Part> RoadParts(Fog fog)
    {
        var state = new DrawState { Fog = fog };
        return
        [
            new(new Mesh().Panel(new(-160, 0, 320), new(320, 0, 0), new(0, 0, -319.5), 60, 60), new Sampler(Patterns.Grass), state),
            new(new Mesh().Panel(new(-3, 0.02, 320), new(6, 0, 0), new(0, 0, -319.5), 1, 50), new Sampler(Patterns.Flags), state),
            new(new Mesh().Panel(new(6, 6, 0.5), new(0, 0, 320), new(0, -6, 0), 70, 1.5)
                .Panel(new(-8, 3.6, 320), new(0, 0, -319.5), new(0, -3.6, 0), 70, 1), new Sampler(Patterns.Bricks), state),
        ];
    }

    private static Picture Road(Fog fog) => new Canvas(RoadCamera).Sky(Zenith, Haze, 0.48).Draw(RoadParts(fog)).Finish();

    // Both ends are brought to the 0..1 depth, so they lie where they should; between them the fog bunches near the viewer.
    private static Fog AsWindowDepth(double start, double end) => new(FogMode.Linear, Haze)
    {
        Distance = FogDistance.WindowDepth,
        Start = RoadCamera.WindowDepth(start),
        End = RoadCamera.WindowDepth(end),
    };

    private static Picture Lake(Fog? fog)
    {
        // From a height, so that the ragged edge at which the title stops drawing blocks of ground lies well below the horizon.
        var camera = new Camera { Eye = new(0, 31, -30), Target = new(0, 3, 34), Near = 1, Far = 200, FieldOfView = 52 };
        return Landscape.Draw(new Canvas(camera).Sky(Zenith, Haze, 0.3), fog, 112).Finish();
    }

    private static Picture Towers(bool with)
    {
        var camera = new Camera { Eye = new(0, 20, -2), Target = new(0, 8, 50), Near = 1, Far = 140, FieldOfView = 50 };
        var state = new DrawState { Fog = with ? new Fog(FogMode.Linear, Haze) { PerVertex = true, Start = 20, End = 84 } : null };
        var towers = new Mesh();
        for (var row = 6; row >= 1; row--)
        {
            for (var column = -6; column <= 6; column++)
            {
                if (column == 0)
                    continue;
                var tall = 8 + (Noise.Hash(column + 20, row, 81) * 14);
                for (var storey = 0; storey < 4; storey++)
                    towers.Box(new(column * 13, storey * tall / 4, (row * 13) + 6), 6, tall / 4, 6, 0, Tint.Grey(0.8 + (0.2 * Noise.Hash(column, row, 82))));
            }
        }

        // Only towers and blocks of ground within reach are drawn.
        var ground = new Mesh();
        foreach (var (left, near) in Landscape.Blocks(124).Where(block => block.Z >= -20))
            ground.Terrain(left, near, 4, 4, 4, (x, z) => new Vertex(new(x, 0, z), x / 8, z / 8));
        return new Canvas(camera).Sky(Zenith, Haze, 0.34)
            .Draw(ground, new Sampler(Patterns.Grass), state)
            .Draw(towers, new Sampler(Patterns.Bricks), state).Finish();
    }

    private static Picture Court(bool with)
    {
        var camera = new Camera { Eye = new(0, 3, 0), Target = new(0, 4, 20), Near = 0.5, Far = 200, FieldOfView = 62 };
        var state = new DrawState
        {
            Fog = new Fog(FogMode.Linear, Haze) { Distance = with ? FogDistance.Range : FogDistance.EyeDepth, Start = 12, End = 34 },
        };
        var pillars = new Mesh();
        for (var degrees = -50; degrees <= 50; degrees += 10)
        {
            var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
            pillars.Box(new(sin * 28, 0, cos * 28), 2.4, 11, 2.4, -degrees, Tint.Hex(0xC86038));
        }

        var floor = new Mesh().Terrain(-60, 0.5, 2, 60, 30, (x, z) => new Vertex(new(x, 0, z), x / 6, z / 6));
        return new Canvas(camera).Sky(Zenith, Haze, 0.5).Draw(floor, new Sampler(Patterns.Flags), state)
            .Draw(pillars, new Sampler(Patterns.Plaster), state).Finish();
    }

    private static Picture Moor(bool with)
    {
        var camera = new Camera { Eye = new(0, 5.5, -4), Target = new(0, 2.6, 30), Near = 0.5, Far = 200, FieldOfView = 46 };
        var state = new DrawState
        {
            Fog = with ? new Fog(FogMode.Linear, Tint.Hex(0xE6ECEE)) { Distance = FogDistance.Coordinate, Start = 0, End = 1 } : null,
        };
        var canvas = new Canvas(camera).Sky(Tint.Hex(0x28405E), Tint.Hex(0xD8A070), 0.42);
        var ground = new Mesh().Terrain(-70, 1, 2, 70, 60, (x, z) => Misty(new Vertex(new(x, Hill(x, z), z), x / 9, z / 9) { Colour = Tint.Grey(0.8) }));
        var stones = new Mesh();
        for (var i = 0; i < 16; i++)
        {
            double x = (Noise.Hash(i, 0, 91) - 0.5) * 36, z = 9 + (i * 3.4), y = Hill(x, z) - 0.4;
            for (var cut = 0; cut < 6; cut++)
                stones.Box(new(x, y + (cut * 0.7), z), 1.5 - (cut * 0.1), 0.7, 1.1, i * 37);
        }

        return canvas.Draw(ground, new Sampler(Patterns.Grass), state).Draw(stones.Select(Misty), new Sampler(Patterns.Plaster), state).Finish();

        static double Hill(double x, double z) => (Noise.Layers((x + 200) / 400, z / 400, 14, 2, 93) - 0.5) * 9;

        static Vertex Misty(Vertex v) => v with { FogCoordinate = 1 - Tint.Step(-0.5, 3, v.Position.Y) };
    }
}
