using System.Text;
using System.Text.RegularExpressions;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Browser;

/// <summary>The charts of a site as pictures of 1920 by 1080 pixels, each with its title, for video.</summary>
internal static partial class ChartFrames
{
    private static readonly string[] Sheets = ["style.css", "charts.css"];

    /// <summary>Draws the charts of all pages.</summary>
    /// <param name="chromium">What draws them.</param>
    /// <param name="site">All files of the site.</param>
    /// <param name="tell">Told which chart is drawn.</param>
    public static IReadOnlyList<OutputFile> Of(Chromium chromium, IReadOnlyList<OutputFile> site, Action<string> tell)
    {
        var folder = Directory.CreateTempSubdirectory("featurematrix-frames-").FullName;
        try
        {
            foreach (var sheet in site.Where(file => Sheets.Contains(file.Path, StringComparer.Ordinal)))
                File.WriteAllBytes(Path.Combine(folder, sheet.Path), sheet.Bytes);
            return [.. site.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal))
                .SelectMany(page => Chart().Matches(Encoding.UTF8.GetString(page.Bytes)).Select(chart => (Page: page.Path, Chart: chart)))
                .Select(one => Draw(chromium, folder, NameOf(one.Page, one.Chart.Groups["id"].Value), one.Chart, tell))];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>A chart's id is its own on one page only.</summary>
    private static string NameOf(string page, string id) => $"{Path.ChangeExtension(page, null).Replace('/', '-')}-{id}";

    private static OutputFile Draw(Chromium chromium, string folder, string name, Match chart, Action<string> tell)
    {
        tell($"Drawing the frame of {name}.");
        var (page, target) = (Path.Combine(folder, "frame.html"), Path.Combine(folder, "frame.png"));
        File.WriteAllText(page, Page(chart.Groups["title"].Value, chart.Value));
        return new OutputFile($"frames/{name}.png", chromium.Make(
            folder, page, target, name, $"--screenshot={target}", "--window-size=1920,1080", "--hide-scrollbars", "--force-device-scale-factor=1"));
    }

    // Title and chart come from our own pages, in which texts are escaped already.
    private static string Page(string title, string chart) =>
        $$"""
        <!DOCTYPE html>
        <html lang="en">
        <head><meta charset="utf-8"><title>{{title}}</title>{{string.Concat(Sheets.Select(sheet => $"<link rel=\"stylesheet\" href=\"{sheet}\">"))}}
        <style>
        html, body { width: 1920px; height: 1080px; max-width: none; margin: 0; padding: 0; overflow: hidden; }
        body { display: flex; flex-direction: column; align-items: center; justify-content: center; gap: 40px; }
        h1 { width: 1760px; margin: 0; font-size: 44px; }
        svg.bench-chart { width: 1760px; max-width: none; height: auto; max-height: 880px; }
        </style></head>
        <body><h1>{{title}}</h1>{{chart}}</body>
        </html>
        """;

    [GeneratedRegex("<svg class=\"bench-chart\"[^>]* aria-labelledby=\"(?<id>[a-z0-9-]+)-title [^>]*>\\s*<title[^>]*>(?<title>[^<]*)</title>.*?</svg>", RegexOptions.Singleline | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Chart();
}
