using System.Globalization;
using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli.Preview;

/// <summary>
/// Builds an edition again when its sources change: the collection is read and resolved only if one of its files changed, pages are drawn if
/// either changed. A build with faults leaves the last good one standing.
/// </summary>
internal sealed class PreviewBuild(string collection, string? library, string? templates, string? policy = null)
{
    private string _collectionStamp = "";
    private string _templateStamp = "";
    private SiteReport? _site;
    private volatile PreviewState _state = PreviewState.Nothing;

    /// <summary>What there is to see now.</summary>
    public PreviewState State => _state;

    /// <summary>How often the collection was read and resolved, and how often pages were drawn.</summary>
    public (int Resolved, int Drawn) Work { get; private set; }

    /// <summary>Looks for changes and builds if there are any. True where something was tried.</summary>
    public bool Update()
    {
        var (collectionStamp, templateStamp) = (Stamp([collection, Session.VocabularyFolder], policy), Stamp([.. Templates.FoldersOf(templates)]));
        if (collectionStamp == _collectionStamp && templateStamp == _templateStamp)
            return false;
        var isSameCollection = collectionStamp == _collectionStamp;
        (_collectionStamp, _templateStamp) = (collectionStamp, templateStamp);
        try
        {
            if (!isSameCollection)
                _site = null;
            if ((_site ??= Read()) is { } site)
            {
                _state = new PreviewState(SiteRenderer.Render(site, Templates.Read(templates), PictureCache.Get), []);
                Work = (Work.Resolved, Work.Drawn + 1);
            }
        }
        catch (Exception problem) when (problem is TemplateFaultException or UsageException or IOException or UnauthorizedAccessException)
        {
            _state = _state.With([problem.Message]);
        }

        return true;
    }

    private SiteReport? Read()
    {
        var result = Session.Load(CollectionFolder.Read(collection, Session.VocabularyFolder), policy);
        if (result.Catalog is not { } catalog)
        {
            _state = _state.With(result.Faults.Where(fault => fault.Severity == Severity.Error).Select(fault => fault.ToString()).ToList());
            return null;
        }

        Work = (Work.Resolved + 1, Work.Drawn);
        return SiteReport.Of(EditionReport.Of(new Decisions(catalog, Session.LibraryOf(result, library))));
    }

    /// <summary>Names, sizes and times of all files in some folders, and of one more: differs when one is written, added, moved or removed.</summary>
    private static string Stamp(IReadOnlyList<string> folders, string? file = null)
    {
        try
        {
            return string.Join('\n', folders.SelectMany(folder => new DirectoryInfo(folder).EnumerateFiles("*", SearchOption.AllDirectories))
                .Concat(file is null ? [] : [new FileInfo(file)]).Select(file => string.Create(CultureInfo.InvariantCulture, $"{file.FullName} {file.Length} {file.LastWriteTimeUtc.Ticks}")).Order(StringComparer.Ordinal));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // A file that vanished while it was counted: the next look sees what is there then.
            return problem.Message;
        }
    }
}
