using System.Globalization;
using System.Net;
using FeatureMatrix.Rendering;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Cli.Browser;

/// <summary>A collection's own pictures as frames for video: both of a pair side by side, with all that says what they are.</summary>
internal static class CaptureFrames
{
    private const int PaneWidth = 936;
    private const int PaneHeight = 702;

    /// <summary>The width that words want, below small pictures too.</summary>
    private const int LeastWidth = 720;

    /// <summary>Draws all pairs.</summary>
    public static IReadOnlyList<OutputFile> Of(FrameStudio studio, CaptureReport captures) => [.. captures.All.Select(pair => Draw(studio, pair))];

    private static OutputFile Draw(FrameStudio studio, CapturePair pair)
    {
        (CapturePane Pane, string File)[] panes = [(pair.With, "with"), (pair.Without, "without")];
        foreach (var (pane, file) in panes)
            studio.Put(file, pane.Picture.Bytes.Span);
        var (width, height, isWhole) = Shown(pair.Width, pair.Height);
        var size = string.Create(CultureInfo.InvariantCulture, $" width=\"{width}\" height=\"{height}\"{(isWhole ? " class=\"whole\"" : "")}");
        return studio.Draw(
            $"capture-{Path.GetFileNameWithoutExtension(pair.Without.File)}", Escaped($"{pair.TitleName}, {pair.Scene}"), Style(Math.Max(width, LeastWidth)),
            $"<div>{Each(one => $"<p>{Escaped(one.Pane.Heading)}</p>")}{Each(one => $"<img src=\"{one.File}\" alt=\"\"{size}>")}"
            + $"{Each(one => $"<p class=\"setup\">{Escaped($"{one.Pane.Setup}. {one.Pane.Taken}. {one.Pane.Against}".TrimEnd())}</p>")}</div>");

        string Each(Func<(CapturePane Pane, string File), string> html) => string.Concat(panes.Select(html));
    }

    /// <summary>The size in which a picture is shown: larger only by whole numbers, so that every pixel stays a square; smaller where it has to be.</summary>
    private static (int Width, int Height, bool IsWhole) Shown(int width, int height)
    {
        var times = Math.Min(PaneWidth / width, PaneHeight / height);
        if (times > 0)
            return (width * times, height * times, true);
        var share = Math.Min((double)PaneWidth / width, (double)PaneHeight / height);
        return ((int)Math.Round(width * share), (int)Math.Round(height * share), false);
    }

    private static string Style(int width) => string.Create(CultureInfo.InvariantCulture, $$"""
        body { gap: 24px; }
        h1 { width: {{(2 * width) + 16}}px; }
        div { display: grid; grid-template-columns: {{width}}px {{width}}px; gap: 0 16px; }
        p { margin: 0 0 10px; font-size: 26px; }
        p.setup { max-width: none; margin: 12px 0 0; font-size: 22px; }
        .whole { image-rendering: pixelated; }
        """);

    private static string Escaped(string text) => WebUtility.HtmlEncode(text);
}
