using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering.Editions;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Rendering.Site;

/// <summary>The files of an edition's site: all of them for an edition, or only those that somebody looks at.</summary>
public sealed class SiteFiles
{
    private readonly List<Func<IReadOnlyList<OutputFile>>> _inOrder = [];
    private readonly Dictionary<string, Func<IReadOnlyList<OutputFile>>> _byPath = new(StringComparer.Ordinal);
    private readonly SiteReport _edition;
    private readonly Func<IllustrationPair, DrawnPair> _draw;

    /// <summary>Plans a site; nothing is rendered yet.</summary>
    /// <param name="edition">What to show.</param>
    /// <param name="templates">How to show it.</param>
    /// <param name="draw">Where illustrations come from; null to draw each one now.</param>
    public SiteFiles(SiteReport edition, TemplateSet templates, Func<IllustrationPair, DrawnPair>? draw = null)
    {
        (_edition, _draw) = (edition, draw ?? DrawnPair.Of);
        foreach (var (name, bytes) in templates.PlainFiles)
            Add(() => [new OutputFile(name, bytes)], name);
        var renderer = new SiteRenderer(edition, templates);
        foreach (var page in SitePage.All(edition))
            Add(() => renderer.Files(page), page.Path, page.TablesPath, page.CellsPath);
        foreach (var pane in edition.Captures.All.SelectMany(pair => (CapturePane[])[pair.With, pair.Without]).DistinctBy(pane => pane.File))
            Add(() => [CaptureFile(pane)], SiteAddress.Of("capture", pane.File));
        if (EditionFeed.Of(edition.History, edition.Name, "editions.html") is { } feed)
            Add(() => [feed], feed.Path);
    }

    /// <summary>One file; null where the site has none of that name.</summary>
    /// <exception cref="TemplateFaultException">A template is missing or wrong.</exception>
    public OutputFile? Find(string path) => _byPath.TryGetValue(path, out var render)
        ? render().FirstOrDefault(file => file.Path == path)
        : PictureFiles.Find(_edition.FeatureIds, path, _draw);

    /// <summary>All files in a fixed order, made on all processors. The first page with a fault tells its own.</summary>
    /// <exception cref="TemplateFaultException">A template is missing or wrong.</exception>
    public IReadOnlyList<OutputFile> All()
    {
        _edition.Decisions.DecideAll();
        var rendered = _inOrder.AsParallel().AsOrdered().Select(render =>
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
        return rendered.Find(page => page.Fault is not null).Fault is { } first
            ? throw first
            : [.. rendered.SelectMany(page => page.Files), .. PictureFiles.Of(_edition.FeatureIds, _draw)];
    }

    private static OutputFile CaptureFile(CapturePane pane) => new(SiteAddress.Of("capture", pane.File), pane.Picture.Bytes.ToArray());

    private void Add(Func<IReadOnlyList<OutputFile>> render, params ReadOnlySpan<string> paths)
    {
        _inOrder.Add(render);
        foreach (var path in paths)
            _byPath.TryAdd(path, render);
    }
}
