using System.Globalization;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Rendering;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;

namespace FeatureMatrix.Cli.Preview;

/// <summary>
/// Builds an edition again when its sources change: the collection is read only if one of its files changed, and the pages that somebody looks
/// at are drawn if either changed. A build with faults leaves the last good one standing.
/// </summary>
internal sealed class PreviewBuild(string collection, string? library, string? templates, string? policy = null)
{
    private string _collectionStamp = "";
    private string _templateStamp = "";
    private SiteReport? _site;

    /// <summary>What there is to see.</summary>
    public PreviewFeed Feed { get; } = new();

    /// <summary>The folders whose files make the pages.</summary>
    public IReadOnlyList<string> Sources { get; } = [collection, Session.VocabularyFolder, .. Templates.FoldersOf(templates)];

    /// <summary>How often the collection was read, and how often pages were to be drawn anew.</summary>
    public (int Read, int Drawn) Work { get; private set; }

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
                var set = Templates.Read(templates);
                var looks = set.PlainFiles.Select(file => new OutputFile(file.Name, file.Bytes)).Where(IsLook);
                Feed.Show(new PreviewState(new SiteFiles(site, set, PictureCache.Get).Find, looks, [], Feed.State));
                Work = (Work.Read, Work.Drawn + 1);
            }
        }
        catch (Exception problem) when (problem is TemplateFaultException or UsageException or IOException or UnauthorizedAccessException)
        {
            Feed.Show(Feed.State.With([problem.Message]));
        }

        return true;
    }

    private SiteReport? Read()
    {
        var result = Session.Load(CollectionFolder.Read(collection, Session.VocabularyFolder), policy);
        if (result.Catalog is not { } catalog)
        {
            Feed.Show(Feed.State.With(result.Faults.Where(fault => fault.Severity == Severity.Error).Select(fault => fault.ToString()).ToList()));
            return null;
        }

        Work = (Work.Read + 1, Work.Drawn);
        return SiteReport.Of(EditionReport.Of(new Decisions(catalog, Session.LibraryOf(result, library))));
    }

    private static bool IsLook(OutputFile file) => file.Path.EndsWith(".css", StringComparison.Ordinal) || file.Path.EndsWith(".js", StringComparison.Ordinal);

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
