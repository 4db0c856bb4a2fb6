using System.Numerics;

namespace FeatureMatrix.Pictures.Scenes;

/// <summary>Haze over an invented lake, road and court.</summary>
internal static class FogScenes
{
    private static readonly Vector4 Haze = Tint.Hex(0xC9D3DA);
    private static readonly Vector4 Zenith = Tint.Hex(0x6F93B8);

    public static IReadOnlyList<Scene> All { get; } =
    [
        new("fog-table-none", "fog-table", with => Lake(with ? new Fog(FogMode.Linear, Haze) { Start = 30, End = 170 } : null)),
        new("fog-table-vertex", "fog-table", with =>
            Road(new Fog(FogMode.Linear, Haze) { Start = 15, End = 90, PerVertex = !with })),
    ];

    private static Picture Lake(Fog? fog)
    {
        var camera = new Camera { Eye = new(0, 9, -30), Target = new(0, 4, 60), Near = 1, Far = 190, FieldOfView = 42 };
        var canvas = new Canvas(camera).Sky(Zenith, Haze, 0.42);
        return Landscape.Draw(canvas, fog).Finish();
    }

    private static Picture Road(Fog fog)
    {
        var camera = new Camera { Eye = new(0, 2.6, 0), Target = new(0.6, 2.2, 20), Near = 0.5, Far = 400, FieldOfView = 50 };
        var canvas = new Canvas(camera).Sky(Zenith, Haze, 0.48);
        var ground = new Mesh().Panel(new(-160, 0, 320), new(320, 0, 0), new(0, 0, -330), 60, 60);
        var road = new Mesh().Panel(new(-3, 0.02, 320), new(6, 0, 0), new(0, 0, -330), 1, 50);
        var wall = new Mesh().Panel(new(7, 6, -2), new(0, 0, 320), new(0, -6, 0), 70, 1.5).Panel(new(-9, 3, 310), new(0, 0, -312), new(0, -3, 0), 70, 1);
        canvas.Draw(ground, new DrawState { Shade = Shaders.Textured(new Sampler(Patterns.Grass)), Fog = fog });
        canvas.Draw(road, new DrawState { Shade = Shaders.Textured(new Sampler(Patterns.Flags)), Fog = fog });
        canvas.Draw(wall, new DrawState { Shade = Shaders.Textured(new Sampler(Patterns.Bricks)), Fog = fog });
        return canvas.Finish();
    }
}
