using System.Text;
using System.Text.RegularExpressions;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Browser;

/// <summary>The charts of a site as frames for video, each with its title.</summary>
internal static partial class ChartFrames
{
    private const string Style = "svg.bench-chart { width: 1760px; max-width: none; height: auto; max-height: 880px; }";

    /// <summary>Draws the charts of all pages.</summary>
    /// <param name="studio">What draws them.</param>
    /// <param name="site">All files of the site.</param>
    // Title and chart come from our own pages, in which texts are escaped already.
    public static IReadOnlyList<OutputFile> Of(FrameStudio studio, IReadOnlyList<OutputFile> site) =>
    [
        .. site.Where(file => file.Path.EndsWith(".html", StringComparison.Ordinal))
            .SelectMany(page => Chart().Matches(Encoding.UTF8.GetString(page.Bytes)).Select(chart => (Page: page.Path, Chart: chart)))
            .Select(one => studio.Draw(NameOf(one.Page, one.Chart.Groups["id"].Value), one.Chart.Groups["title"].Value, Style, one.Chart.Value)),
    ];

    /// <summary>A chart's id is its own on one page only.</summary>
    private static string NameOf(string page, string id) => $"{Path.ChangeExtension(page, null).Replace('/', '-')}-{id}";

    [GeneratedRegex("<svg class=\"bench-chart\"[^>]* aria-labelledby=\"(?<id>[a-z0-9-]+)-title [^>]*>\\s*<title[^>]*>(?<title>[^<]*)</title>.*?</svg>", RegexOptions.Singleline | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Chart();
}
