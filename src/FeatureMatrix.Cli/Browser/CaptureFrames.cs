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

    private const string Style =
        """
        body { justify-content: flex-start; gap: 24px; padding: 40px 0 0; }
        h1 { width: 1888px; }
        div { display: grid; grid-template-columns: 936px 936px; gap: 0 16px; }
        p { margin: 0 0 10px; font-size: 26px; }
        p.setup { max-width: none; margin: 12px 0 0; font-size: 22px; }
        img { max-width: 936px; max-height: 702px; }
        .whole { image-rendering: pixelated; }
        """;

    /// <summary>Draws all pairs.</summary>
    public static IReadOnlyList<OutputFile> Of(FrameStudio studio, CaptureReport captures) => [.. captures.All.Select(pair => Draw(studio, pair))];

    private static OutputFile Draw(FrameStudio studio, CapturePair pair)
    {
        CapturePane[] panes = [pair.With, pair.Without];
        foreach (var pane in panes)
            studio.Put(pane.File, pane.Picture.Bytes.Span);
        return studio.Draw(
            $"capture-{Path.GetFileNameWithoutExtension(pair.Without.File)}", Escaped($"{pair.TitleName}, {pair.Scene}"), Style,
            $"<div>{Each(pane => $"<p>{Escaped(pane.Heading)}</p>")}{Each(pane => Image(pane, pair))}{Each(pane => $"<p class=\"setup\">{Escaped($"{pane.Setup}. {pane.Taken}. {pane.Against}".TrimEnd())}</p>")}</div>");

        string Each(Func<CapturePane, string> html) => string.Concat(panes.Select(html));
    }

    /// <summary>Larger only by whole numbers, so that every pixel stays a square; smaller where it has to be.</summary>
    private static string Image(CapturePane pane, CapturePair pair)
    {
        var times = Math.Max(1, Math.Min(PaneWidth / pair.Width, PaneHeight / pair.Height));
        var size = times > 1 ? string.Create(CultureInfo.InvariantCulture, $" class=\"whole\" width=\"{pair.Width * times}\" height=\"{pair.Height * times}\"") : "";
        return $"<img src=\"{Escaped(pane.File)}\" alt=\"\"{size}>";
    }

    private static string Escaped(string text) => WebUtility.HtmlEncode(text);
}
