using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Tests.Loading.Captures;
using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.Captures.CaptureWorld;

namespace FeatureMatrix.Tests.Reports;

/// <summary>
/// NL 9x 1.0 has table fog on the Heron 16, 2.0 has none; the Heron 32 takes it by force; a Coot is not known to have any.
/// </summary>
public sealed class Captures_on_pages
{
    private const string Forced = "title: gravel-tide, scene: ferry, card: heron-32, os: windows-98se, kind: camera, date: 2026-03-02, by: ferryman, grade: hearsay, alt: A ferry";

    private static readonly (string, byte[])[] Pictures =
        [("seen/with.png", PictureMaker.Png(320, 6)), ("seen/shots/without.png", PictureMaker.Png(320, 6, 2)), ("seen/third.jpg", PictureMaker.Jpeg(320, 6))];

    [Fact]
    public void Say_what_where_how_when_and_who()
    {
        var pair = Assert.Single(Report(Pair(without: Usual + ", mode: 640x480, depth: 16, note: Twice")).All);
        Assert.Equal(
            ("gravel-tide", "Gravel Tide", "ferry", 320, 6, true), (pair.TitleId, pair.TitleName, pair.Scene, pair.Width, pair.Height, pair.IsSmall));
        Assert.Equal(
            ["with-fog.png", "With table fog: Heron 16, NL 9x 1.0", "NL 9x 1.0 on Windows 98 SE, Direct3D 6, no wrapper", "Frame grab, 2026-03-01, by lantern", "", "", "A ferry", "Full size: 320 × 6"], Lines(pair.With));
        Assert.Equal(
            ["without-fog.png", "Without table fog: Heron 16, NL 9x 2.0", "NL 9x 2.0 on Windows 98 SE, Direct3D 6, no wrapper, 640x480, 16 bit", "Frame grab, 2026-03-01, by lantern", "Twice", "", "A ferry",
                "Full size: 320 × 6"],
            Lines(pair.Without));
    }

    [Fact]
    public void Say_what_is_forced_not_stated_or_only_hearsay() => Assert.Equal(
        ["z.jpg", "Without table fog or paletted textures: Heron 32", "NL 9x 2.0 (forced) on Windows 98 SE, Direct3D 6, wrapper not stated", "Photographed from the screen, 2026-03-02, by Tam Brody (hearsay)",
            "", "", "A ferry", "Full size: 320 × 6"],
        Lines(Report(Third("fog-table, tex-pal8")).All[1].Without));

    [Fact]
    public void Stand_where_their_feature_title_and_cards_are()
    {
        var report = Report(Third("tex-pal8"));
        Assert.Equal(
            ("without-fog.png z.jpg", "without-fog.png", "z.jpg", "without-fog.png z.jpg", "", "without-fog.png z.jpg", "z.jpg", "z.jpg", "z.jpg", ""),
            (Files(report.All), Files(report.OfFeature("fog-table")), Files(report.OfFeature("tex-pal8")), Files(report.OfTitle("gravel-tide")), Files(report.OfTitle("mole-harbour")),
                Files(report.OfCard("heron-16")), Files(report.OfCard("heron-32")), Files(report.OfBoth("heron-16", "heron-32")), Files(report.OfBoth("heron-32", "heron-16")),
                Files(report.OfBoth("heron-16", "coot-8"))));
    }

    [Fact]
    public void Are_none_of_titles_outside_the_library()
    {
        var catalog = CaptureWorld.Load(Pair() + "\nlibraries: {other: {name: Other, titles: [mole-harbour]}}", Pictures).Catalog!;
        Assert.Empty(CaptureReport.Of(new Decisions(catalog, catalog.Libraries.Single())).All);
    }

    [Theory]
    [InlineData("2.0", "1.0", "By the records this route loses table fog. One of the two deserves another look; a picture alone changes no verdict.",
        "By the records this route keeps table fog. One of the two deserves another look; a picture alone changes no verdict.")]
    [InlineData("1.0", "2.0", "", "")]
    [InlineData("2.0", "2.0", "By the records this route loses table fog. One of the two deserves another look; a picture alone changes no verdict.", "")]
    public void Note_where_the_records_say_otherwise(string with, string without, string againstBaseline, string againstLoss)
    {
        var captures = Pair().Replace("nl-9x 1.0", "nl-9x A", StringComparison.Ordinal).Replace("nl-9x 2.0", "nl-9x " + without, StringComparison.Ordinal).Replace("nl-9x A", "nl-9x " + with, StringComparison.Ordinal);
        var pair = Assert.Single(Report(captures).All);
        Assert.Equal((againstBaseline, againstLoss), (pair.With.Against, pair.Without.Against));
    }

    [Fact]
    public void Note_a_route_that_does_not_run_by_the_records()
    {
        var pair = Assert.Single(Report(Pair(), Hardware.Replace("{severe: {fog-table: The far shore shows}}", "{must: [fog-table]}", StringComparison.Ordinal)).All);
        Assert.Equal(("", "By the records this route does not run. One of the two deserves another look; a picture alone changes no verdict."), (pair.With.Against, pair.Without.Against));
    }

    [Fact]
    public void Are_silent_where_the_records_leave_it_open()
    {
        var pair = Assert.Single(Report(Pair(), Hardware.Replace("supply: {fog-table: yes}", "supply: {}", StringComparison.Ordinal).Replace(", supply: {fog-table: no}", "", StringComparison.Ordinal)).All);
        Assert.Equal(("", ""), (pair.With.Against, pair.Without.Against));
    }

    [Fact]
    public void Are_among_what_deserves_a_look()
    {
        var catalog = CaptureWorld.Load(Pair().Replace("nl-9x 2.0", "nl-9x 1.0", StringComparison.Ordinal), Pictures).Catalog!;
        Assert.Equal(
            [new CareItem(
                "capture against records", "without-fog", "By the records this route keeps table fog. One of the two deserves another look; a picture alone changes no verdict.", "explain gravel-tide heron-16")],
            CareReport.Of(new Decisions(catalog, null), [], [], null).Items.Where(item => item.About == "without-fog"));
    }

    [Fact]
    public void Change_no_verdict()
    {
        var catalog = CaptureWorld.Load(Pair().Replace("nl-9x 2.0", "nl-9x 1.0", StringComparison.Ordinal), Pictures).Catalog!;
        var without = CaptureWorld.Load("  {}").Catalog!;
        Assert.Equal(Labels(without), Labels(catalog));

        static IEnumerable<string> Labels(FeatureMatrix.Model.Catalog of) =>
            of.Titles.SelectMany(title => of.Cards.Select(card => new Decisions(of, null).CellOn(title, card).Label));
    }

    private static string Third(string loses) => Pair(others: $"  z: {{{Forced}, driver: nl-9x 2.0, picture: third.jpg, loses: [{loses}], baseline: with-fog}}");

    private static CaptureReport Report(string captures, string hardware = Hardware)
    {
        var result = CollectionLoader.Load(
            [new SourceText("v.yaml", Worlds.Vocabulary), new SourceText("h.yaml", hardware), new SourceText("seen/ferry.yaml", $"captures:\n{captures}")],
            pictures: [.. Pictures.Select(picture => new SourcePicture(picture.Item1, _ => picture.Item2))]);
        Assert.Equal("", string.Join('\n', result.Faults));
        return CaptureReport.Of(new Decisions(result.Catalog!, null));
    }

    private static IEnumerable<string> Lines(CapturePane pane) => [pane.File, pane.Heading, pane.Setup, pane.Taken, pane.Note, pane.Against, pane.AltText, pane.SizeText];

    private static string Files(IEnumerable<CapturePair> pairs) => string.Join(' ', pairs.Select(pair => pair.Without.File));
}
