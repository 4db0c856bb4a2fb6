using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Deciding;

/// <summary>One meaning everywhere: a title is as playable as its worst scene. The floor is 30 frames a second at 640x480.</summary>
public sealed class The_speed_of_a_route
{
    [Fact]
    public void Is_that_of_its_slowest_scene() =>
        Is("45 fps (n = 2, 44 to 46), over the floor of 30", FloorAnswer.Reaches, Scene("harbour", 640, 62, 63), Scene("market", 640, 44.92, 45.08));

    [Fact]
    public void Is_under_the_floor_as_soon_as_one_scene_is() =>
        Is("20 fps (n = 2, 18.7 to 21.3), under the floor of 30", FloorAnswer.Misses, Scene("harbour", 640, 62, 63), Scene("market", 640, 19.9, 20.1));

    /// <summary>One run proves nothing, however slow; the scene that certainly fails speaks although it is not the slowest.</summary>
    [Fact]
    public void Is_under_the_floor_also_where_a_slower_scene_ran_only_once() =>
        Is("20 fps (n = 2, 18.7 to 21.3), under the floor of 30", FloorAnswer.Misses, Scene("harbour", 640, 12), Scene("market", 640, 19.9, 20.1));

    [Fact]
    public void Is_not_known_to_keep_the_floor_before_every_scene_does() =>
        Is("31 fps, one run only: not known how it stands to the floor", FloorAnswer.NotKnown, Scene("harbour", 640, 62, 63), Scene("market", 640, 31));

    [Fact]
    public void Is_not_known_where_nobody_ran_the_wanted_mode() =>
        Is("not measured", FloorAnswer.NotKnown, Scene("harbour", 800, 62, 63));

    /// <summary>The speed is what it is; but where the processor sets the pace no other card would do better, so it is not held against this one.</summary>
    [Fact]
    public void Is_not_held_against_the_card_where_the_processor_sets_it() =>
        Is("20 fps (n = 3, 19.8 to 20.3), under the floor of 30", FloorAnswer.Reaches,
            Scene("harbour", 640, 19.9, 20.1, 20.05), Scene("harbour", 800, 20, 20.1, 19.95), Scene("harbour", 1024, 20.05, 19.95, 20));

    private static void Is(string text, FloorAnswer floor, params string[] scenes)
    {
        var catalog = BenchWorlds.Load(
            """
            chips: {heron: {name: Heron, source: manual}}
            cards: {heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, source: manual}}
            drivers: {heron-9x: {name: Heron 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7"}, source: readme, versions: [{version: "1.0"}]}}
            titles: {reed-bay: {name: Reed Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6}}}}
            libraries: {shelf: {name: Shelf, titles: [reed-bay], policy: {fps-floor: 30}}}
            """,
            "title,scene,renderer,wrapper,card,driver,os,width,height,run,fps\n" + string.Concat(scenes));
        var decisions = new Decisions(catalog, catalog.Libraries.Single());
        var route = decisions.On(catalog.Titles.Single(), catalog.Cards.Single()).Routes.Single(finding => finding.Route.Setup.Install == Install.Listed).Route;

        Assert.Equal(text, SpeedWording.Text(decisions.Speeds.Of(route)));
        Assert.Equal(floor, decisions.Speeds.AgainstFloor(route));
    }

    private static string Scene(string name, int width, params double[] fps) => string.Concat(fps.Select((speed, i) => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"reed-bay,{name},d3d,none,heron-16,heron-9x 1.0,windows-98se,{width},{width * 3 / 4},{i + 1},{speed}\n")));
}
