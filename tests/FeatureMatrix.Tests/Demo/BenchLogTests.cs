using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Bench;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Demo;

/// <summary>
/// The bench log of the demo shows what its story needs. The files are split here by a pattern of the test's own, so that
/// these checks do not lean on the reader of the log.
/// </summary>
public sealed partial class The_bench_log_of_Loden_Sluice(LodenSluice bench) : IClassFixture<LodenSluice>
{
    private static readonly IReadOnlyList<Row> Log = Directory
        .GetFiles(Repository.PathTo("data", "demo", "runs"), "*.csv").Order(StringComparer.Ordinal).SelectMany(Read).ToList();

    [Fact]
    public void Names_only_routes_that_the_collection_holds()
    {
        Assert.Empty(Log.Where(row => !Exists(row)).Select(row => row.Text));

        bool Exists(Row row)
        {
            var renderer = bench.Catalog.Titles.SingleOrDefault(t => t.Id == row["title"])?.Renderers.SingleOrDefault(r => r.Id == row["renderer"]);
            var card = bench.Catalog.Cards.SingleOrDefault(c => c.Id == row["card"]);
            var driver = bench.Catalog.Drivers.SingleOrDefault(d => $"{d.Branch.Id} {d.Version}" == row["driver"]);
            var rig = bench.Catalog.Rigs.SingleOrDefault(r => r.Id == row["rig"]);
            return renderer is not null && card is not null && driver is not null && rig is not null
                && bench.Catalog.Specimens.Any(s => s.Id == row["specimen"] && s.Card == card)
                && driver.Lists.Contains(card)
                && driver.Oses.Concat(renderer.Oses).Count(os => os.Id == row["os"]) == 2
                && rig.Oses.Any(os => os.Id == row["os"])
                && (row["wrapper"] == "none" || bench.Catalog.WrapperVersions.Any(w => w.Id == row["wrapper"]));
        }
    }

    [Fact]
    public void Repeats_every_condition_three_times_or_more_and_gives_a_reason_for_what_it_discards()
    {
        var conditions = Log.GroupBy(row => row.Condition).ToList();

        Assert.All(conditions, runs => Assert.InRange(runs.Count(row => row["discarded"].Length == 0), 3, 5));
        Assert.All(conditions, runs => Assert.Equal(Enumerable.Range(1, runs.Count()).Select(n => $"{n}"), runs.Select(row => row["run"])));
        Assert.Equal(
            ["virus scanner woke up", "warm-up: textures still loading from disc"],
            Log.Select(row => row["discarded"]).Where(reason => reason.Length > 0).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("kite-2", LadderShape.Rising, Bound.Card, Bound.Card)]
    [InlineData("beacon-32", LadderShape.Bent, Bound.Processor, Bound.Card)]
    [InlineData("tiller-64", LadderShape.Flat, Bound.Processor, Bound.Processor)]
    public void Has_one_ladder_of_each_shape(string card, LadderShape shape, Bound lowest, Bound highest)
    {
        var runs = Log.Where(row => row["title"] == "hollow-regatta" && row["card"] == card && row["discarded"].Length == 0);

        var fit = Assert.IsType<LadderFit>(Ladder.Of(runs.Select(row => new LadderRun(row.Pixels, row.Fps)).ToList()));

        Assert.Equal(shape, fit.Shape);
        Assert.Equal(lowest, fit.Points[0].Bound);
        Assert.Equal(highest, fit.Points[^1].Bound);
    }

    [Theory]
    [InlineData("reedcutter", "kestrin-kite-9x 4.20", "kestrin-kite-9x 5.12", false)]
    [InlineData("peatfire", "kestrin-kite-9x 5.12", "kestrin-kite-9x 6.31", true)]
    public void Has_a_driver_change_with_effect_and_one_without(string title, string before, string after, bool shown)
    {
        var tested = Assert.IsType<Comparison.Tested>(Comparison.Of(SpeedsWith(after), SpeedsWith(before)));

        Assert.Equal(shown, tested.DifferenceShown);

        Sample SpeedsWith(string driver) => Sample.Of(Log
            .Where(row => row["title"] == title && row["card"] == "kite-2" && row["driver"] == driver && row["discarded"].Length == 0)
            .Select(row => row.Fps));
    }

    [Fact]
    public void Has_a_series_that_waits_for_the_monitor()
    {
        var refresh = bench.Catalog.Rigs.Single(rig => rig.Id == "sill-1000").Monitor!.RefreshHertz!.Value;
        var means = Log.Where(row => row["card"] == "bulrush-agp" && row["vsync"].Length == 0)
            .GroupBy(row => row.Pixels).OrderBy(mode => mode.Key).Select(mode => mode.Average(row => row.Fps));

        Assert.Equal([1, 1, 2], means.Select(fps => Math.Round(refresh / fps, 2)));
    }

    private static IEnumerable<Row> Read(string path)
    {
        var lines = File.ReadAllLines(path);
        var header = lines[0].Split(',');
        return lines.Skip(1).Select(line => new Row(line, header.Zip(Comma().Split(line)).ToDictionary(p => p.First, p => p.Second.Trim('"'))));
    }

    [GeneratedRegex("""
        ,(?=(?:[^"]*"[^"]*")*[^"]*$)
        """, RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Comma();

    private sealed record Row(string Text, IReadOnlyDictionary<string, string> Cells)
    {
        private static readonly string[] PerRun = ["run", "fps", "min-fps", "discarded", "note"];

        public string this[string column] => Cells[column];

        public double Fps => double.Parse(this["fps"], CultureInfo.InvariantCulture);

        public long Pixels => long.Parse(this["width"], CultureInfo.InvariantCulture) * long.Parse(this["height"], CultureInfo.InvariantCulture);

        public string Condition => string.Join(',', Cells.Where(cell => !PerRun.Contains(cell.Key)).Select(cell => cell.Value));
    }
}
