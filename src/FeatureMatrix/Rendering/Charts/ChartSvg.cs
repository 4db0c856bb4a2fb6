using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Rendering.Charts;

/// <summary>
/// Charts as SVG text: for a page (the element stands in the HTML as it is) or for a file of its own. Each has a title, all it shows in words,
/// and tells its parts apart by shape, dash and direct label; colours come from the site's style sheet. The same report gives the same bytes.
/// </summary>
public static class ChartSvg
{
    /// <summary>The resolution ladders of a scene: runs, means with intervals, fitted curves, knees, what sets the pace.</summary>
    public static string Ladder(SceneReport scene) => LadderChart.Draw(scene);

    /// <summary>A against B in percent, mode by mode, with intervals around a line at no difference.</summary>
    /// <param name="comparison">One row at least.</param>
    /// <param name="id">Unique on the page: small letters, digits, hyphens.</param>
    public static string Against(AgainstReport comparison, string id) => AgainstChart.Draw(comparison, id);

    /// <summary>Before and after a change in frames per second, every run shown, mode by mode.</summary>
    /// <param name="comparison">One row at least.</param>
    /// <param name="id">Unique on the page: small letters, digits, hyphens.</param>
    public static string BeforeAfter(AgainstReport comparison, string id) => BeforeAfterChart.Draw(comparison, id);

    /// <summary>A bar for each card, with its interval and the floor.</summary>
    /// <param name="bars">One bar at least.</param>
    /// <param name="id">Unique on the page: small letters, digits, hyphens.</param>
    public static string Bars(CardBars bars, string id) => BarChart.Draw(bars, id);
}
