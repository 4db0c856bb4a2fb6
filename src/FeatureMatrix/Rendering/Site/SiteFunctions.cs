using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering.Charts;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Reports.Pages;
using Scriban.Runtime;

namespace FeatureMatrix.Rendering.Site;

/// <summary>The functions that templates may call beside those of Scriban. They turn ids into addresses and notes into HTML; they decide nothing.</summary>
internal static class SiteFunctions
{
    /// <summary>The functions for a page.</summary>
    /// <param name="globals">Where they are put.</param>
    /// <param name="path">The page, relative to the folder of the site.</param>
    /// <param name="root">The way from the page to the folder of the site: empty, <c>../</c> or <c>../../</c>.</param>
    public static void AddTo(ScriptObject globals, string path, string root)
    {
        // What lies in the page's own folder is named without the way to it, which makes a matrix a good deal lighter.
        var folder = path[..(path.LastIndexOf('/') + 1)];
        string To(string address) => folder.Length > 0 && address.StartsWith(folder, StringComparison.Ordinal) ? address[folder.Length..] : root + address;
        globals.Import("url", (string kind, string id) => To(SiteAddress.Of(kind, id)));
        globals.Import("cell_url", (string title, string card, string setup) => To(SiteAddress.OfCell(title, card, setup)));
        globals.Import("pair_url", (string first, string second) => To(SiteAddress.OfPair(first, second)));
        globals.Import("difference_json", (ComparedView view) => DifferenceJson.Write(view.Comparison, view.Export));
        globals.Import("kebab", (Enum value) => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()));
        globals.Import("markdown", (string text) => MarkdownText.ToHtml(text));
        globals.Import("ladder_chart", (SceneReport scene) => ChartSvg.Ladder(scene));
        globals.Import("against_chart", (AgainstReport comparison, string id) => ChartSvg.Against(comparison, id));
        globals.Import("before_after_chart", (AgainstReport comparison, string id) => ChartSvg.BeforeAfter(comparison, id));
        globals.Import("bar_chart", (CardBars bars, string id) => ChartSvg.Bars(bars, id));
        globals.Import("pictures", (string feature) => PictureCatalog.AllFor(feature));
    }

    /// <summary>The functions that find a collection's own pictures.</summary>
    public static void AddTo(ScriptObject globals, CaptureReport captures)
    {
        globals.Import("captures_of_feature", captures.OfFeature);
        globals.Import("captures_of_title", captures.OfTitle);
        globals.Import("captures_of_card", captures.OfCard);
        globals.Import("captures_of_both", captures.OfBoth);
    }
}

/// <summary>Where the pages of things lie, relative to the folder of the site.</summary>
public static class SiteAddress
{
    /// <summary>The page of a thing: a card, title, feature, wrapper, driver branch, rig or operating system; what a card would add, and what to install on it; a picture, drawn or captured.</summary>
    public static string Of(string kind, string id) => kind switch
    {
        "card" => $"cards/{id}.html",
        "title" => $"titles/{id}.html",
        "feature" => $"features/{id}.html",
        "wrapper" => $"wrappers/{id}.html",
        "driver" => $"drivers/{id}.html",
        "rig" => $"rigs/{id}.html",
        "system" => $"coverage/{id}.html",
        "worth" => $"worth/{id}.html",
        "install" => $"installs/{id}.html",
        "picture" => $"pictures/{id}.png",
        "capture" => $"captures/{id}",
        _ => throw new ArgumentException($"there are no pages of kind '{kind}'", nameof(kind)),
    };

    /// <summary>The explanation of a title on a card, or on one setup of the card.</summary>
    public static string OfCell(string title, string card, string setup) =>
        $"coverage/{title}/{card}.html{(setup.Length > 0 ? "#" + setup : "")}";

    /// <summary>The comparison of two cards.</summary>
    public static string OfPair(string first, string second) => $"compare/{first}/{second}.html";

    /// <summary>The script that holds the tables of a page.</summary>
    public static string OfTables(string page) => $"tables/{page}.js";
}
