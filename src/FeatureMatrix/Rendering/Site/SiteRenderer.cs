using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering.Editions;
using FeatureMatrix.Reports;
using Scriban.Runtime;

namespace FeatureMatrix.Rendering.Site;

/// <summary>Turns an edition into the files of a site that works from its folder, without a server.</summary>
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
    private readonly List<Func<IReadOnlyList<OutputFile>>> _pages = [];

    private SiteRenderer(SiteReport edition, TemplateSet templates)
    {
        _edition = edition;
        _templates = templates;
    }

    /// <summary>All files of the site, in a fixed order.</summary>
    /// <exception cref="TemplateFaultException">A template is missing or wrong.</exception>
    /// <param name="edition">What to show.</param>
    /// <param name="templates">How to show it.</param>
    /// <param name="draw">Where illustrations come from; null to draw each one now.</param>
    public static IReadOnlyList<OutputFile> Render(SiteReport edition, TemplateSet templates, Func<IllustrationPair, DrawnPair>? draw = null)
    {
        var renderer = new SiteRenderer(edition, templates);
        renderer.AddAll();
        return [.. templates.PlainFiles.Select(file => new OutputFile(file.Name, file.Bytes)), .. renderer.Finished(), .. PictureFiles.Of(edition.Features.Select(feature => feature.Id), draw ?? DrawnPair.Of)];
    }

    /// <summary>Renders what was added, on all processors, in the order in which it was added; the first page with a fault tells its own.</summary>
    private IEnumerable<OutputFile> Finished()
    {
        var rendered = _pages.AsParallel().AsOrdered().Select(render =>
        {
            try
            {
                return (Files: render(), Fault: (TemplateFaultException?)null);
            }
            catch (TemplateFaultException fault)
            {
                return ([], fault);
            }
        }).ToList();
        return rendered.Find(page => page.Fault is not null).Fault is { } first ? throw first : rendered.SelectMany(page => page.Files);
    }

    private void AddAll()
    {
        Page("index.html", "overview", "overview", "Overview", null);
        Matrix("coverage/index.html", _edition.Matrix);
        foreach (var system in _edition.Systems)
            Matrix(SiteAddress.Of("system", system.Id), system.Matrix);
        Page("cards/index.html", "cards", "cards", "Cards", null, _edition.Supply.ToTable());
        foreach (var card in _edition.Cards)
            Page(SiteAddress.Of("card", card.Id), "card", "cards", card.Name, card, card.LossTable, card.MemoryTable, card.PresetTable);
        Comparisons();
        Page("titles/index.html", "titles", "titles", "Titles", null);
        foreach (var title in _edition.Titles)
        {
            Page(SiteAddress.Of("title", title.Id), "title", "titles", title.Name, title, title.Table);
            foreach (var tile in title.Tiles)
            {
                _pages.Add(() =>
                {
                    var cell = _edition.Explain(title.Id, tile.CardId);
                    return Render(SiteAddress.OfCell(title.Id, tile.CardId, ""), "cell", "coverage", cell.Heading, cell);
                });
            }
        }

        Page("features/index.html", "features", "features", "Features", null);
        foreach (var feature in _edition.Features)
            Page(SiteAddress.Of("feature", feature.Id), "feature", "features", feature.Name, feature);
        Page("wrappers/index.html", "wrappers", "wrappers", "Wrappers", null, _edition.WrapperNeeds.ToTable());
        foreach (var wrapper in _edition.Wrappers)
            Page(SiteAddress.Of("wrapper", wrapper.Id), "wrapper", "wrappers", wrapper.Name, wrapper, wrapper.Table);
        Page("drivers/index.html", "drivers", "drivers", "Drivers", null);
        foreach (var driver in _edition.Drivers)
            Page(SiteAddress.Of("driver", driver.Id), "driver", "drivers", driver.Name, driver);
        Page("rigs/index.html", "rigs", "rigs", "Rigs", null);
        foreach (var rig in _edition.Rigs)
            Page(SiteAddress.Of("rig", rig.Id), "rig", "rigs", rig.Name, rig, rig.Table);
        var bench = _edition.Bench;
        Page("bench.html", "bench", "bench", bench.Heading, bench, bench.CardRowTable, bench.HeadroomTable, bench.SpeedTable);
        Page("bench-changes.html", "bench-changes", "bench", bench.ComparisonTable.Title, bench, bench.ComparisonTable);
        Page("bench-runs.html", "bench-runs", "bench", bench.SeriesTable.Title, bench, bench.SeriesTable, bench.LadderTable, bench.ScoreTable);
        Page("plan.html", "report", "plan", _edition.Plan.Title, _edition.Plan, [.. _edition.Plan.Tables]);
        Page("sources.html", "sources", "sources", "Sources and grades", null, _edition.Sources.ToTable());
        Page("editions.html", "report", "about", _edition.Editions.Title, _edition.Editions, [.. _edition.Editions.Tables]);
        if (EditionFeed.Of(_edition.History, _edition.Name, "editions.html") is { } feed)
            _pages.Add(() => [feed]);
        Page("about.html", "about", "about", "About this edition", null);
    }

    /// <summary>One matrix of an edition's site, with the files that belong to it alone.</summary>
    internal static IReadOnlyList<OutputFile> RenderMatrix(SiteReport edition, TemplateSet templates, string path, MatrixReport matrix)
    {
        var renderer = new SiteRenderer(edition, templates);
        renderer.Matrix(path, matrix);
        return [.. renderer.Finished()];
    }

    private void Matrix(string path, MatrixReport matrix)
    {
        Page(path, "matrix", "coverage", matrix.Heading, matrix, matrix.Table);
        if (MatrixCells.IsLarge(matrix))
            _pages.Add(() => [MatrixCells.Of(Path.ChangeExtension(path, ".js"), matrix)]);
    }

    private void Comparisons()
    {
        var compare = _edition.Compare;
        Page("compare/index.html", "compare", "compare", "Compare", compare, [.. compare.Ranking.Tables]);
        foreach (var pair in compare.Pairs)
            Page(SiteAddress.OfPair(pair.FirstId, pair.SecondId), "pair", "compare", pair.Report.Title, pair, [.. pair.Report.Tables, .. pair.Next?.Tables ?? []]);
    }

    private void Page(string path, string template, string section, string heading, object? subject, params IReadOnlyList<Table> tables) =>
        _pages.Add(() => Render(path, template, section, heading, subject, tables));

    /// <summary>One page: its own template first, then the frame around it. Its tables go into one script beside the site.</summary>
    private List<OutputFile> Render(string path, string template, string section, string heading, object? subject, params IReadOnlyList<Table> tables)
    {
        var root = string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/')));
        // No id holds an underscore, so the second table of one thing never has the name of the first table of another.
        var name = path[..^".html".Length].Replace('/', '-');
        var source = SiteAddress.OfTables(name);
        var named = tables.Select((table, i) => new NamedTable($"{name}{(i > 0 ? $"_{i + 1}" : "")}", source, table)).ToList();
        var globals = new ScriptObject
        {
            ["edition"] = _edition,
            ["root"] = root,
            ["path"] = path,
            ["section"] = section,
            ["heading"] = heading,
            ["subject"] = subject,
            ["tables"] = named,
            ["navigation"] = Navigation,
            ["is_leaf"] = subject is CellReport,
            ["is_large"] = subject is MatrixReport matrix && MatrixCells.IsLarge(matrix),
        };
        SiteFunctions.AddTo(globals, path, root);
        globals["content"] = _templates.Render($"{template}.html", globals);
        var page = OutputFile.Text(path, _templates.Render("frame.html", globals));
        return named.Count > 0 ? [page, TableFiles.Of(source, named)] : [page];
    }
}

/// <summary>A table with its name and the script that holds it.</summary>
public sealed record NamedTable(string Name, string Source, Table Table);

/// <summary>An entry of the navigation: the section it stands for, its page, and its name.</summary>
public sealed record NavigationEntry(string Section, string Path, string Name);
