using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Pages;

/// <summary>One picture of a pair, as a page shows it.</summary>
/// <param name="File">Its file below the folder of captures: the capture's id with the ending of its format.</param>
/// <param name="Heading">With or without what, and on which card.</param>
/// <param name="Setup">Driver, system, path, wrapper, mode.</param>
/// <param name="Taken">How, when and by whom.</param>
/// <param name="Note">Remarks.</param>
/// <param name="Against">What the records say otherwise; empty where they do not.</param>
/// <param name="AltText">What it shows.</param>
/// <param name="Picture">The picture that may be published.</param>
public sealed record CapturePane(string File, string Heading, string Setup, string Taken, string Note, string Against, string AltText, CapturePicture Picture)
{
    /// <summary>The words that lead to the picture itself.</summary>
    public string SizeText => CaptureWording.Size(Picture);
}

/// <summary>Two pictures of one scene, with and without what one of them loses. Both have the same size.</summary>
/// <param name="TitleId">The title.</param>
/// <param name="TitleName">Its name.</param>
/// <param name="Scene">The scene.</param>
/// <param name="With">The baseline.</param>
/// <param name="Without">The picture with the loss.</param>
public sealed record CapturePair(string TitleId, string TitleName, string Scene, CapturePane With, CapturePane Without)
{
    /// <summary>Pictures up to this width fit on the narrowest page as they are, so they are never made smaller, and where a screen makes them larger it keeps their pixels.</summary>
    private const int MostForPixels = 320;

    /// <summary>Pixels in a row of either picture.</summary>
    public int Width => With.Picture.Width;

    /// <summary>Rows of either picture.</summary>
    public int Height => With.Picture.Height;

    /// <summary>True where single pixels are to be kept sharp.</summary>
    public bool IsSmall => Width <= MostForPixels;
}

/// <summary>A collection's own pictures, by what they show. Never mixed with computed illustrations.</summary>
public sealed class CaptureReport
{
    private readonly IReadOnlyList<(Capture Capture, CapturePair Pair)> _pairs;

    private CaptureReport(IReadOnlyList<(Capture, CapturePair)> pairs) => _pairs = pairs;

    /// <summary>All pairs, by title, scene and id.</summary>
    public IReadOnlyList<CapturePair> All => [.. _pairs.Select(one => one.Pair)];

    /// <summary>The pairs of the edition's titles.</summary>
    public static CaptureReport Of(Decisions decisions)
    {
        var titles = decisions.Titles.ToHashSet();
        return new CaptureReport([.. decisions.Catalog.Captures
            .Where(capture => capture is { Picture: not null, Baseline.Picture: not null } && titles.Contains(capture.Renderer.Title))
            .OrderBy(capture => capture.Renderer.Title.Name, StringComparer.Ordinal).ThenBy(capture => capture.Scene, StringComparer.Ordinal).ThenBy(capture => capture.Id, StringComparer.Ordinal)
            .Select(capture => (capture, PairOf(decisions, capture, capture.Baseline!)))]);
    }

    /// <summary>The pairs that show the loss of a feature.</summary>
    public IReadOnlyList<CapturePair> OfFeature(string id) => Where(capture => capture.Loses.Any(lost => lost.Feature.Id == id));

    /// <summary>The pairs of a title.</summary>
    public IReadOnlyList<CapturePair> OfTitle(string id) => Where(capture => capture.Renderer.Title.Id == id);

    /// <summary>The pairs with a picture of a card.</summary>
    public IReadOnlyList<CapturePair> OfCard(string id) => Where(capture => capture.Setup.Card.Id == id || capture.Baseline!.Setup.Card.Id == id);

    /// <summary>The pairs with a picture of each of two cards.</summary>
    public IReadOnlyList<CapturePair> OfBoth(string first, string second) => Where(capture =>
        (capture.Setup.Card.Id, capture.Baseline!.Setup.Card.Id) is var pair && (pair == (first, second) || pair == (second, first)));

    private IReadOnlyList<CapturePair> Where(Func<Capture, bool> isMeant) => [.. _pairs.Where(one => isMeant(one.Capture)).Select(one => one.Pair)];

    private static CapturePair PairOf(Decisions decisions, Capture without, Capture with) => new(
        without.Renderer.Title.Id, without.Renderer.Title.Name, without.Scene,
        PaneOf(decisions, with, without.Loses, CaptureWording.With(without)),
        PaneOf(decisions, without, without.Loses, CaptureWording.Without(without)));

    private static CapturePane PaneOf(Decisions decisions, Capture capture, IReadOnlyList<Capability> lost, string heading) => new(
        $"{capture.Id}.{(capture.Picture!.Format == PictureFormat.Png ? "png" : "jpg")}", heading, CaptureWording.Setup(capture), CaptureWording.Taken(capture), capture.Note,
        CaptureWording.Against(CaptureCheck.Of(decisions, capture, lost)), capture.AltText, capture.Picture);
}
