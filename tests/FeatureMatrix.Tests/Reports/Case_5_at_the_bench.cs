using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Reports;

/// <summary>DESIGN section 4, case 5, with its speeds: 62 fps natively, 41 through the wrapper, the floor below and above the latter.</summary>
public sealed class Case_5_at_the_bench
{
    private const string Log =
        """
        title,renderer,wrapper,card,driver,os,width,height,depth,run,fps
        reed-bay,d3d,none,heron-16,heron-9x 1.0,windows-98se,640,480,16,1,61.8
        reed-bay,d3d,none,heron-16,heron-9x 1.0,windows-98se,640,480,16,2,62.2
        reed-bay,d3d,none,heron-16,heron-9x 1.0,windows-98se,640,480,16,3,62.0
        reed-bay,d3d,veil@1.0,heron-16,heron-9x 1.0,windows-98se,640,480,16,1,40.9
        reed-bay,d3d,veil@1.0,heron-16,heron-9x 1.0,windows-98se,640,480,16,2,41.1
        reed-bay,d3d,veil@1.0,heron-16,heron-9x 1.0,windows-98se,640,480,16,3,41.0
        """;

    [Fact]
    public void Over_a_floor_of_30_the_wrapper_is_recommended()
    {
        var cell = CellAt(30);

        Assert.Equal("loses table fog (severe), natively", cell.Label);
        Assert.Equal("62 fps (n = 3, 61.5 to 62.5), over the floor of 30", SpeedWording.Text(cell.Speed!));
        Assert.Equal(
            """
            Works by Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE, 41 fps
            speed at 640x480: 41 fps (n = 3, 40.8 to 41.2), over the floor of 30
            Use Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE: works. It removes a loss that is severe or not graded.
            """,
            AboutTheWrapper(cell));
    }

    [Fact]
    public void Under_a_floor_of_45_the_native_route_stays_and_the_wrapper_is_still_shown()
    {
        var cell = CellAt(45);

        Assert.Equal("loses table fog (severe), natively", cell.Label);
        Assert.Equal(
            """
            Works by Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE, 41 fps
            speed at 640x480: 41 fps (n = 3, 40.8 to 41.2), under the floor of 45
            Use Direct3D 6 with Heron 9x 1.0 on Windows 98 SE.
            What you see: Distant things stand out.
            Direct3D 6 through Veil 1.0 with Heron 9x 1.0 on Windows 98 SE loses less but is measured under the speed floor.
            """,
            AboutTheWrapper(cell));
    }

    [Fact]
    public void Runs_at_another_mode_say_nothing_about_the_floor() =>
        Assert.Equal("not measured", SpeedWording.Text(CellAt(30, Log.Replace("640,480", "800,600", StringComparison.Ordinal)).Speed!));

    private static string AboutTheWrapper(Cell cell)
    {
        var lines = cell.Explain().Flatten().Select(pair => pair.Line.Text).ToList();
        return string.Join('\n', [
            lines.Single(line => line.StartsWith("Works by", StringComparison.Ordinal)),
            lines.Last(line => line.StartsWith("speed at", StringComparison.Ordinal)),
            .. cell.Explain().Because.Where(line => line.Kind == LineKind.Answer).Select(line => line.Text),
        ]);
    }

    private static Cell CellAt(int floor, string log = Log)
    {
        var catalog = BenchWorlds.Load(
            """
            chips: {heron: {name: Heron, source: manual, supply: {fog-table: no}}}
            cards: {heron-16: {name: Heron 16, chip: heron, memory: {unified: 16 MiB}, source: manual, drivers-complete: [dos, windows-95, windows-98se, windows-2000, windows-xp]}}
            drivers: {heron-9x: {name: Heron 9x, os: [windows-98se], lists: [heron-16], offers: {direct3d: "7", opengl: "1.1"}, source: readme, versions: [{version: "1.0"}]}}
            wrappers: {veil: {name: Veil, versions: [{version: "1.0", offers: {direct3d: "6"}, on: opengl 1.1, supplies: {fog-table: emulated}, os: {windows-98se: yes}, source: readme}]}}
            titles: {reed-bay: {name: Reed Bay, os: [windows-98se], source: bench, renderers: {d3d: {api: direct3d 6, needs: {severe: [fog-table]}}}}}
            libraries: {shelf: {name: Shelf, titles: [reed-bay], policy: {fps-floor: 30}}}
            """.Replace("floor: 30", $"floor: {floor}", StringComparison.Ordinal),
            log);
        var decisions = new Decisions(catalog, catalog.Libraries.Single());
        var (title, card) = (catalog.Titles.Single(), catalog.Cards.Single());
        return Cell.Of(decisions.On(title, card), card, null, decisions.Speeds);
    }
}
