using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering.Charts;
using FeatureMatrix.Reports.Measured;
using Scriban.Runtime;

namespace FeatureMatrix.Rendering.Site;

/// <summary>The functions that templates may call beside those of Scriban. They turn ids into addresses and notes into HTML; they decide nothing.</summary>
internal static class SiteFunctions
{
    /// <summary>The functions for a page.</summary>
    /// <param name="globals">Where they are put.</param>
    /// <param name="root">The way from the page to the folder of the site: empty, <c>../</c> or <c>../../</c>.</param>
    public static void AddTo(ScriptObject globals, string root)
    {
        globals.Import("url", (string kind, string id) => root + SiteAddress.Of(kind, id));
        globals.Import("cell_url", (string title, string card, string setup) => root + SiteAddress.OfCell(title, card, setup));
        globals.Import("table_url", (string name, string format) => root + SiteAddress.OfTable(name, format));
        globals.Import("kebab", (Enum value) => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()));
        globals.Import("markdown", (string text) => MarkdownText.ToHtml(text));
        globals.Import("ladder_chart", (SceneReport scene) => ChartSvg.Ladder(scene));
        globals.Import("against_chart", (AgainstReport comparison, string id) => ChartSvg.Against(comparison, id));
        globals.Import("before_after_chart", (AgainstReport comparison, string id) => ChartSvg.BeforeAfter(comparison, id));
        globals.Import("bar_chart", (CardBars bars, string id) => ChartSvg.Bars(bars, id));
        globals.Import("pictures", (string feature) => PictureCatalog.AllFor(feature));
    }
}

/// <summary>Where the pages of things lie, relative to the folder of the site.</summary>
public static class SiteAddress
{
    /// <summary>The page of a thing: a card, title, feature, wrapper, driver branch, rig or operating system.</summary>
    public static string Of(string kind, string id) => kind switch
    {
        "card" => $"cards/{id}.html",
        "title" => $"titles/{id}.html",
        "feature" => $"features/{id}.html",
        "wrapper" => $"wrappers/{id}.html",
        "driver" => $"drivers/{id}.html",
        "rig" => $"rigs/{id}.html",
        "system" => $"systems/{id}.html",
        "picture" => $"pictures/{id}.png",
        _ => throw new ArgumentException($"there are no pages of kind '{kind}'", nameof(kind)),
    };

    /// <summary>The explanation of a title on a card, or on one setup of the card.</summary>
    public static string OfCell(string title, string card, string setup) =>
        $"cells/{title}/{card}.html{(setup.Length > 0 ? "#" + setup : "")}";

    /// <summary>A table as a file of its own.</summary>
    public static string OfTable(string name, string format) => $"tables/{name}.{format}";
}
