using FeatureMatrix.Pictures;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;
using Scriban.Runtime;

namespace FeatureMatrix.Rendering.Site;

/// <summary>Turns the pages of an edition into the files of a site that works from its folder, without a server.</summary>
public sealed class SiteRenderer
{
    private static readonly IReadOnlyList<NavigationEntry> Navigation =
    [
        new("overview", "index.html", "Overview"), new("coverage", "coverage/index.html", "Coverage"), new("cards", "cards/index.html", "Cards"),
        new("compare", "compare/index.html", "Compare"),
        new("titles", "titles/index.html", "Titles"), new("features", "features/index.html", "Features"),
        new("wrappers", "wrappers/index.html", "Wrappers"), new("drivers", "drivers/index.html", "Drivers"), new("rigs", "rigs/index.html", "Rigs"),
        new("bench", "bench.html", "Bench"), new("plan", "plan.html", "Plan"), new("sources", "sources.html", "Sources"), new("about", "about.html", "About"),
    ];

    private readonly SiteReport _edition;
    private readonly TemplateSet _templates;

    internal SiteRenderer(SiteReport edition, TemplateSet templates)
    {
        _edition = edition;
        _templates = templates;
    }

    /// <summary>All files of the site, in a fixed order.</summary>
    /// <exception cref="TemplateFaultException">A template is missing or wrong.</exception>
    /// <param name="edition">What to show.</param>
    /// <param name="templates">How to show it.</param>
    /// <param name="draw">Where illustrations come from; null to draw each one now.</param>
    public static IReadOnlyList<OutputFile> Render(SiteReport edition, TemplateSet templates, Func<IllustrationPair, DrawnPair>? draw = null) =>
        new SiteFiles(edition, templates, draw).All();

    /// <summary>One matrix of an edition's site, with the files that belong to it alone.</summary>
    internal static IReadOnlyList<OutputFile> RenderMatrix(SiteReport edition, TemplateSet templates, string path, MatrixReport matrix) =>
        new SiteRenderer(edition, templates).Files(SitePage.Of(path, matrix));

    /// <summary>
    /// One page: its own template first, then the frame around it. Its tables go into one script beside the site, and so do the cells of a
    /// large matrix.
    /// </summary>
    internal IReadOnlyList<OutputFile> Files(SitePage page)
    {
        var (path, shown) = (page.Path, page.Show());
        var root = string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/')));
        var source = page.TablesPath;
        // No id holds an underscore, so the second table of one thing never has the name of the first table of another.
        var named = shown.Tables.Select((table, i) => new NamedTable($"{page.Name}{(i > 0 ? $"_{i + 1}" : "")}", source, table)).ToList();
        var large = shown.Subject is MatrixReport matrix && MatrixCells.IsLarge(matrix) ? matrix : null;
        var globals = new ScriptObject
        {
            ["edition"] = _edition,
            ["root"] = root,
            ["path"] = path,
            ["section"] = page.Section,
            ["heading"] = shown.Heading,
            ["subject"] = shown.Subject,
            ["tables"] = named,
            ["navigation"] = Navigation,
            ["is_leaf"] = shown.Subject is CellReport,
            ["is_large"] = large is not null,
        };
        SiteFunctions.AddTo(globals, path, root);
        SiteFunctions.AddTo(globals, _edition.Captures);
        globals["content"] = _templates.Render($"pages/{page.Template}.html", globals);
        var files = new List<OutputFile> { OutputFile.Text(path, _templates.Render("pages/frame.html", globals)) };
        if (named.Count > 0)
            files.Add(TableFiles.Of(source, named));
        if (large is not null)
            files.Add(MatrixCells.Of(page.CellsPath, large));
        return files;
    }
}

/// <summary>A table with its name and the script that holds it.</summary>
public sealed record NamedTable(string Name, string Source, Table Table);

/// <summary>An entry of the navigation: the section it stands for, its page, and its name.</summary>
public sealed record NavigationEntry(string Section, string Path, string Name);
