using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Faults;

/// <summary>Captures and their picture files.</summary>
internal static partial class FaultTexts
{
    public static Fault NoWayToAPicture(Origin at, string word) => WrongForm(at, "'picture'", word, Forms.Picture);

    public static Fault NoPicture(Origin at, string path, IEnumerable<string> there) => Error(
        "FM103", at, $"there is no picture file '{Cut(path)}', links and hidden files left aside{MeantOr(path, there, "there is")}");

    public static Fault PictureTooLarge(Origin at, string path) =>
        Error("FM002", at, $"'{Cut(path)}' is larger than {PictureCleaner.LargestFile >> 20} MiB; save it smaller");

    public static Fault TooManyPictures(Origin at) =>
        Error("FM002", at, $"the pictures of this collection have more than {PictureCleaner.MostBytes >> 20} MiB together");

    public static Fault UnreadPicture(Origin at, string path, string reason) => Error("FM005", at, $"'{Cut(path)}' cannot be read: {OneLine(reason)}");

    public static Fault DamagedPicture(Origin at, string path, string reason) => Error("FM115", at, $"'{Cut(path)}' is not taken: {reason}");

    public static Fault SamePicture(Origin at, string path, string first) =>
        Error("FM104", at, $"'{Cut(path)}' is the picture of capture '{first}' already; each capture has its own");

    public static Fault DriverOfAnother(Origin at, Driver driver, Card card) => Exclusion(
        at, $"driver '{driver.Id}' is not one of card '{card.Id}': it lists {ListOf(driver.Lists.Select(one => one.Id))}");

    public static Fault DriverElsewhere(Origin at, Driver driver, Os os) => Exclusion(
        at, $"driver '{driver.Id}' does not install on {os.Id}: it is for {ListOf(driver.Oses.Select(one => one.Id))}");

    public static Fault BaselineLoses(Origin at, Capture baseline) =>
        Exclusion(at, $"capture '{baseline.Id}' shows a loss itself; a baseline has no 'loses'");

    public static Fault OtherTitle(Origin at, Capture capture, Capture baseline) =>
        Unpaired(at, baseline, $"title '{baseline.Renderer.Title.Id}'", $"'{capture.Renderer.Title.Id}'");

    public static Fault OtherScene(Origin at, Capture capture, Capture baseline) => Unpaired(at, baseline, $"scene '{Cut(baseline.Scene)}'", $"'{Cut(capture.Scene)}'");

    public static Fault OtherSize(Origin at, CapturePicture picture, Capture baseline) => Unpaired(
        at, baseline, $"{Number(baseline.Picture!.Width)} × {Number(baseline.Picture.Height)} pixels", $"{Number(picture.Width)} × {Number(picture.Height)}");

    public static Fault Unused(Origin at, string label) =>
        Warning("FM203", at, $"{label} is in no pair, so nothing shows it: give it 'loses' and a 'baseline', or name it as one");

    private static Fault Unpaired(Origin at, Capture baseline, string its, string ours) =>
        Exclusion(at, $"a pair shows one scene of one title at one size, and the baseline '{baseline.Id}' has {its}, not {ours}");

    private static string ListOf(IEnumerable<string> ids) => string.Join(", ", ids) is { Length: > 0 } some ? some : "none";
}
