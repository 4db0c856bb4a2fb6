using System.Xml.Linq;
using FeatureMatrix.Rendering.Charts;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Rendering.Charts;

/// <summary>Two cards on one scene, the names with every character that XML reserves; one bends, the other falls from the start.</summary>
public sealed class Bench_charts
{
    private const string World =
        """
        chips: {c: {name: C, source: manual}}
        cards: {fast: {name: 'Fast <& "new">', chip: c, source: manual}, slow: {name: "Slow's", chip: c, source: manual}}
        titles: {t: {name: 'Tow & <Path>', source: manual, renderers: {}}}
        libraries: {shelf: {name: Shelf, titles: [t], policy: {fps-floor: 30}}}
        """;

    private static readonly BenchReport Report = Load();

    public static TheoryData<string> Names() => ["ladder", "against", "before-after", "bars"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Are_drawn_as_recorded(string name) => Golden.Matches($"charts/{name}.svg", Draw(name, Report));

    [Theory]
    [MemberData(nameof(Names))]
    public void Are_well_formed_and_say_in_words_what_they_show(string name)
    {
        var svg = XElement.Parse(Draw(name, Report));
        var names = svg.Attribute("aria-labelledby")!.Value.Split(' ').Select(id => svg.Elements().Single(e => e.Attribute("id")?.Value == id)).ToList();

        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal(["title", "desc"], names.Select(e => e.Name.LocalName));
        Assert.Contains("Tow & <Path>", names[0].Value, StringComparison.Ordinal);
        Assert.Contains("Fast <& \"new\">", names[1].Value, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Are_the_same_bytes_twice(string name) => Assert.Equal(Draw(name, Report), Draw(name, Load()));

    [Theory]
    [MemberData(nameof(Names))]
    public void Keep_every_word_and_shape_inside_the_drawing(string name)
    {
        var svg = XElement.Parse(Draw(name, Report));
        var (width, height) = ((double)svg.Attribute("width")!, (double)svg.Attribute("height")!);

        Assert.All(
            svg.Descendants().Where(e => e.Attribute("x") is not null),
            e => Assert.True((double)e.Attribute("x")! >= 0 && (double)e.Attribute("x")! <= width && (double)e.Attribute("y")! <= height, e.ToString()));
    }

    private static string Draw(string name, BenchReport report) => name switch
    {
        "ladder" => ChartSvg.Ladder(report.Scenes.Single()),
        "against" => ChartSvg.Against(report.Comparisons.Single(), "a"),
        "before-after" => ChartSvg.BeforeAfter(report.Comparisons.Single(), "b"),
        "bars" => ChartSvg.Bars(report.Bars[0], "c"),
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    private static BenchReport Load()
    {
        // Frame times of 10 ms, then 2 + 20 a megapixel; and of 4 + 30 a megapixel, with one per cent of noise.
        (int Width, int Height)[] modes = [(512, 384), (640, 480), (800, 600), (1024, 768), (1280, 1024)];
        var rows = from card in new[] { "slow", "fast" }
                   from mode in modes
                   from run in new[] { 1, 2, 3 }
                   let pixels = mode.Width * mode.Height / 1e6
                   let time = card == "fast" ? Math.Max(10, 2 + 20 * pixels) : 4 + 30 * pixels
                   select FormattableString.Invariant($"t,{card},{mode.Width},{mode.Height},{run},{1000 / time * (1 + 0.01 * (run - 2)):0.0}");
        var catalog = BenchWorlds.Load(World, "title,card,width,height,run,fps\n" + string.Join('\n', rows));
        return BenchReport.Of(new Decisions(catalog, catalog.Libraries.Single()));
    }
}
