using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using static FeatureMatrix.Tests.Loading.Captures.CaptureWorld;
using static FeatureMatrix.Tests.Loading.Captures.PictureMaker;

namespace FeatureMatrix.Tests.Loading.Captures;

public sealed class Captures_of_a_collection
{
    private static readonly (string, byte[])[] Pictures = [("seen/with.png", Png(8, 6)), ("seen/shots/without.png", Png(8, 6, 2)), ("seen/third.jpg", Jpeg(8, 6))];

    [Fact]
    public void Are_pairs_of_one_scene_with_setup_and_date()
    {
        var result = Load(
            Pair(others: $"  forced: {{{Usual.Replace("heron-16", "heron-32", StringComparison.Ordinal).Replace("lantern", "ferryman", StringComparison.Ordinal)}, driver: nl-9x 2.0, mode: 640x480, "
                + "depth: 16, note: Seen twice, picture: third.jpg, loses: [fog-table], baseline: with-fog}"),
            Pictures);

        Assert.Equal([], result.Faults);
        var catalog = result.Catalog!;
        Assert.Equal(["forced", "with-fog", "without-fog"], catalog.Captures.Select(capture => capture.Id));
        var (forced, with, without) = (catalog.Captures[0], catalog.Captures[1], catalog.Captures[2]);
        Assert.Equal(
            (null, with, with, "fog-table", "ferry", CaptureKind.FrameGrab, new DateOnly(2026, 3, 1), "A ferry", "measured: lantern"),
            (with.Baseline, without.Baseline, forced.Baseline, Assert.Single(without.Loses).ToString(), without.Scene, without.Kind, without.Date, without.AltText,
                FactWording.Evidence(without.Evidence)));
        Assert.Equal(
            (Install.Forced, new Mode(640, 480), 16, "Seen twice", ObservedWrapper.None.Instance, "Tam Brody"),
            (forced.Setup.Install, forced.Mode, forced.Depth, forced.Note, forced.Wrapper, forced.Evidence.Source!.Text));
        Assert.Equal(("seen/shots/without.png", PictureFormat.Png, 8, 6), (without.Picture!.File, without.Picture.Format, without.Picture.Width, without.Picture.Height));
    }

    [Fact]
    public void Have_no_picture_where_nobody_looks_at_pictures()
    {
        var result = CollectionLoader.Load(
            [new SourceText("v.yaml", Support.Worlds.Vocabulary), new SourceText("h.yaml", Hardware), new SourceText("c.yaml", $"captures:\n{Pair()}")]);
        Assert.Equal([], result.Faults);
        Assert.All(result.Catalog!.Captures, capture => Assert.Null(capture.Picture));
    }

    [Fact]
    public void Hold_nothing_that_was_noted_in_the_file()
    {
        (string, byte[])[] noted =
        [
            ("seen/with.png", [.. Png(8, 6)[..^12], .. PngOf(("tEXt", "Author\0Ida Quill"u8.ToArray()), ("IEND", []))[8..]]),
            ("seen/shots/without.png", Png(8, 6, 2)),
        ];
        Assert.Equal(
            Load(Pair(), Pictures).Catalog!.Captures.Select(capture => Convert.ToHexString(capture.Picture!.Bytes.Span)),
            Load(Pair(), noted).Catalog!.Captures.Select(capture => Convert.ToHexString(capture.Picture!.Bytes.Span)));
    }

    [Theory]
    [InlineData("scene: ferry", "scene: harbour", "seen/ferry.yaml(3,240): error FM111: a pair shows one scene of one title at one size, and the baseline 'with-fog' has scene 'ferry', not 'harbour'")]
    [InlineData("title: gravel-tide", "title: mole-harbour", "seen/ferry.yaml(3,239): error FM111: a pair shows one scene of one title at one size, and the baseline 'with-fog' has title 'gravel-tide', not 'mole-harbour'")]
    [InlineData("card: heron-16", "card: coot-8", "seen/ferry.yaml(3,161): error FM111: driver 'nl-9x@2.0' is not one of card 'coot-8': it lists heron-16")]
    [InlineData("os: windows-98se", "os: windows-xp", "seen/ferry.yaml(3,67): error FM111: driver 'nl-9x@2.0' does not install on windows-xp: it is for windows-98se")]
    [InlineData("kind: frame-grab", "kind: frame-grb", "seen/ferry.yaml(3,106): error FM107: 'frame-grb' is no value of 'kind': it is frame-grab, capture-device or camera; did you mean 'frame-grab'?")]
    [InlineData("date: 2026-03-01", "date: 1.3.2026", "seen/ferry.yaml(3,124): error FM109: '1.3.2026' is no value of 'date'; it wants a date such as 2026-02-11")]
    [InlineData(", os: windows-98se", "", "seen/ferry.yaml(3,16): error FM102: capture 'without-fog' needs the key 'os'")]
    [InlineData(", card: heron-16", "", "seen/ferry.yaml(3,16): error FM102: capture 'without-fog' needs the key 'card'")]
    [InlineData("card: heron-16", "card: heron-32, specimen: heron-a", "seen/ferry.yaml(3,67): error FM111: specimen 'heron-a' is a 'heron-16', not a 'heron-32'")]
    [InlineData(", by: lantern", "", "seen/ferry.yaml(3,16): warning FM201: capture 'without-fog' names neither who saw it ('by') nor a source")]
    [InlineData("by: lantern", "by: lantern, lose: fog-table", "seen/ferry.yaml(3,149): error FM101: unknown key 'lose' in capture 'without-fog'; did you mean 'loses'?")]
    public void That_cannot_be_are_faults(string usual, string wrong, string fault) =>
        Faults(Load(Pair(without: Usual.Replace(usual, wrong, StringComparison.Ordinal)), Pictures), fault);

    [Theory]
    [InlineData("../with.png", "error FM109: '../with.png' is no value of 'picture'; it wants the way to a PNG or JPEG file beside this file or in a folder below it, with '/', such as captures/ferry.png")]
    [InlineData("shots/../with.png", "error FM109: 'shots/../with.png' is no value of 'picture'; it wants the way to a PNG or JPEG file beside this file or in a folder below it, with '/', such as captures/ferry.png")]
    [InlineData("/seen/with.png", "error FM109: '/seen/with.png' is no value of 'picture'; it wants the way to a PNG or JPEG file beside this file or in a folder below it, with '/', such as captures/ferry.png")]
    [InlineData("shots\\with.png", "error FM109: 'shots\\with.png' is no value of 'picture'; it wants the way to a PNG or JPEG file beside this file or in a folder below it, with '/', such as captures/ferry.png")]
    [InlineData("wiht.png", "error FM103: there is no picture file 'seen/wiht.png', links and hidden files left aside; did you mean 'seen/with.png'?")]
    [InlineData("with.png", "error FM104: 'seen/with.png' is the picture of capture 'with-fog' already; each capture has its own")]
    [InlineData("copy.png", "error FM104: 'seen/copy.png' is the picture of capture 'with-fog' already; each capture has its own")]
    [InlineData("text.png", "error FM115: 'seen/text.png' is not taken: it is neither PNG nor JPEG; save it as one of these")]
    [InlineData("huge.png", "error FM002: 'seen/huge.png' is larger than 8 MiB; save it smaller")]
    public void Want_a_picture_file_of_their_own(string picture, string fault) => Faults(
        Load(
            Pair().Replace("shots/without.png", picture, StringComparison.Ordinal),
            [.. Pictures, ("seen/copy.png", Png(8, 6)), ("seen/text.png", "captures: {}"u8.ToArray()), ("seen/huge.png", new byte[PictureCleaner.LargestFile + 1])]),
        "seen/ferry.yaml(3,191): " + fault);

    [Fact]
    public void Of_two_sizes_are_no_pair() => Faults(
        Load(Pair(), ("seen/with.png", Png(8, 6)), ("seen/shots/without.png", Png(6, 8, 2))),
        "seen/ferry.yaml(3,238): error FM111: a pair shows one scene of one title at one size, and the baseline 'with-fog' has 8 × 6 pixels, not 6 × 8");

    [Fact]
    public void That_show_a_loss_need_a_baseline_which_shows_none()
    {
        Faults(
            Load($"  a: {{{Usual}, driver: nl-9x 2.0, picture: with.png, loses: fog-table}}", Pictures),
            "seen/ferry.yaml(2,6): error FM102: capture 'a' needs the key 'baseline'");
        Faults(
            Load(Pair(others: $"  z: {{{Usual}, driver: nl-9x 2.0, picture: third.jpg, loses: fog-table, baseline: without-fog}}"), Pictures),
            "seen/ferry.yaml(4,220): error FM111: capture 'without-fog' shows a loss itself; a baseline has no 'loses'");
        Faults(
            Load(Pair(others: $"  z: {{{Usual}, driver: nl-9x 2.0, picture: third.jpg, baseline: with-fog}}"), Pictures),
            "seen/ferry.yaml(4,192): error FM111: 'baseline' counts with 'loses' only");
        Faults(
            Load($"  a: {{{Usual}, driver: nl-9x 2.0, picture: with.png}}", Pictures),
            "seen/ferry.yaml(2,3): warning FM203: capture 'a' is in no pair, so nothing shows it: give it 'loses' and a 'baseline', or name it as one");
    }

    [Fact]
    public void That_cannot_be_read_are_faults() => Faults(
        CollectionLoader.Load(
            [new SourceText("v.yaml", Support.Worlds.Vocabulary), new SourceText("h.yaml", Hardware), new SourceText("c.yaml", $"captures:\n  a: {{{Usual}, driver: nl-9x 2.0, picture: x.png}}")],
            pictures: [new SourcePicture("x.png", _ => throw new IOException("Permission denied"))]),
        "c.yaml(2,3): warning FM203: capture 'a' is in no pair, so nothing shows it: give it 'loses' and a 'baseline', or name it as one",
        "c.yaml(2,181): error FM005: 'x.png' cannot be read: Permission denied");

    private static void Faults(LoadResult result, params string[] faults) => Assert.Equal(faults, result.Faults.Select(fault => fault.ToString()));
}
