using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Rendering.Site;

/// <summary>What a page shows.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Subject">The report that its template gets; null for none but the edition.</param>
/// <param name="Tables">The tables that can be copied from it.</param>
internal sealed record Shown(string Heading, object? Subject, params IReadOnlyList<Table> Tables);

/// <summary>A page of a site. What it shows is worked out when it is rendered, so that a plan of all pages costs next to nothing.</summary>
/// <param name="Path">Its file, relative to the folder of the site.</param>
/// <param name="Template">The template, without its ending.</param>
/// <param name="Section">The entry of the navigation that it belongs to.</param>
/// <param name="Show">What it shows.</param>
internal sealed record SitePage(string Path, string Template, string Section, Func<Shown> Show)
{
    /// <summary>The path as one word; its tables are named after it.</summary>
    public string Name => Path[..^".html".Length].Replace('/', '-');

    /// <summary>The script with its tables, where it has any.</summary>
    public string TablesPath => SiteAddress.OfTables(Name);

    /// <summary>The script with the cells of its matrix, where that is large.</summary>
    public string CellsPath => System.IO.Path.ChangeExtension(Path, ".js");

    /// <summary>The page of a matrix.</summary>
    public static SitePage Of(string path, MatrixReport matrix) => Matrix(path, () => matrix);

    /// <summary>All pages of an edition, in a fixed order.</summary>
    public static IEnumerable<SitePage> All(SiteReport edition)
    {
        var catalog = edition.Decisions.Catalog;
        return
        [
            new("index.html", "overview", "overview", () => new Shown("Overview", null)),
            Matrix("coverage/index.html", () => edition.Matrix),
            .. edition.Systems.Select(system => Matrix(SiteAddress.Of("system", system.Id), () => system.Matrix)),
            new("cards/index.html", "cards", "cards", () => new Shown("Cards", null, edition.Supply.ToTable())),
            .. catalog.Cards.Select(card => Of("card", card.Id, () => edition.PageOf(card), page => new Shown(page.Name, page, page.LossTable, page.MemoryTable, page.PresetTable))),
            .. catalog.Cards.SelectMany(card => Decisions(edition, card)),
            .. Comparisons(edition),
            new("titles/index.html", "titles", "titles", () => new Shown("Titles", null)),
            .. edition.Decisions.Titles.SelectMany(title => OfTitle(edition, title)),
            new("features/index.html", "features", "features", () => new Shown("Features", null)),
            .. edition.FeatureIds.Select(id => Of("feature", id, () => edition.Features.First(one => one.Id == id), feature => new Shown(feature.Name, feature))),
            new("wrappers/index.html", "wrappers", "wrappers", () => new Shown("Wrappers", null, edition.WrapperNeeds.ToTable())),
            .. catalog.Wrappers.Select(one => Of("wrapper", one.Id, () => edition.Wrappers.First(page => page.Id == one.Id), wrapper => new Shown(wrapper.Name, wrapper, wrapper.Table))),
            new("drivers/index.html", "drivers", "drivers", () => new Shown("Drivers", null)),
            .. catalog.Branches.Select(one => Of("driver", one.Id, () => edition.Drivers.First(page => page.Id == one.Id), driver => new Shown(driver.Name, driver))),
            new("rigs/index.html", "rigs", "rigs", () => new Shown("Rigs", null)),
            .. catalog.Rigs.Select(one => Of("rig", one.Id, () => edition.Rigs.First(page => page.Id == one.Id), rig => new Shown(rig.Name, rig, rig.Table))),
            new("bench.html", "bench", "bench", () => new Shown(edition.Bench.Heading, edition.Bench, edition.Bench.CardRowTable, edition.Bench.HeadroomTable, edition.Bench.SpeedTable)),
            new("bench-changes.html", "bench-changes", "bench", () => new Shown(edition.Bench.ComparisonTable.Title, edition.Bench, edition.Bench.ComparisonTable)),
            new("bench-runs.html", "bench-runs", "bench", () => new Shown(
                edition.Bench.SeriesTable.Title, edition.Bench, edition.Bench.SeriesTable, edition.Bench.LadderTable, edition.Bench.ScoreTable)),
            new("plan.html", "report", "plan", () => new Shown(edition.Plan.Title, edition.Plan, [.. edition.Plan.Tables])),
            new("sources.html", "sources", "sources", () => new Shown("Sources and grades", null, edition.Sources.ToTable())),
            new("editions.html", "report", "about", () => new Shown(edition.Editions.Title, edition.Editions, [.. edition.Editions.Tables])),
            new("about.html", "about", "about", () => new Shown("About this edition", null)),
        ];
    }

    private static SitePage Matrix(string path, Func<MatrixReport> matrix) => Of(path, "matrix", "coverage", matrix, shown => new Shown(shown.Heading, shown, shown.Table));

    /// <summary>The page of one thing of a kind that has a section of its own.</summary>
    private static SitePage Of<T>(string kind, string id, Func<T> report, Func<T, Shown> shown) => Of(SiteAddress.Of(kind, id), kind, $"{kind}s", report, shown);

    private static SitePage Of<T>(string path, string template, string section, Func<T> report, Func<T, Shown> shown) => new(path, template, section, () => shown(report()));

    /// <summary>The page of a title, and the explanations of its cells.</summary>
    private static IEnumerable<SitePage> OfTitle(SiteReport edition, Title title) =>
    [
        Of("title", title.Id, () => edition.ReportOf(title), report => new Shown(report.Name, report, report.Table)),
        .. edition.Decisions.Catalog.Cards.Select(card => Of(
            SiteAddress.OfCell(title.Id, card.Id, ""), "cell", "coverage", () => CellReport.Of(edition.Decisions, title, card), cell => new Shown(cell.Heading, cell))),
    ];

    /// <summary>What a card would add, and which driver to install on it.</summary>
    private static IEnumerable<SitePage> Decisions(SiteReport edition, Card card) =>
    [
        Of(SiteAddress.Of("worth", card.Id), "worth", "cards", () => edition.WorthOf(card), page => new Shown(page.Report.Title, page, [.. page.Report.Tables])),
        Of(SiteAddress.Of("install", card.Id), "report", "drivers", () => edition.InstallsOf(card), report => new Shown(report.Title, report, [.. report.Tables])),
    ];

    private static IEnumerable<SitePage> Comparisons(SiteReport edition)
    {
        yield return new SitePage("compare/index.html", "compare", "compare", () => new Shown("Compare", edition.Compare, [.. edition.Compare.Ranking.Tables]));
        foreach (var (first, second) in CompareIndex.PairsOf(edition.Decisions.Catalog.Cards) ?? edition.Compare.Pairs.Select(pair => (pair.FirstId, pair.SecondId)))
        {
            yield return Of(
                SiteAddress.OfPair(first, second), "pair", "compare", () => edition.Compare.PairOf(first, second),
                pair => new Shown(pair.Report.Title, pair, [.. pair.Report.Tables, .. pair.Next?.Tables ?? []]));
        }
    }
}
