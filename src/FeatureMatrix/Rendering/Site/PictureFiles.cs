using System.Collections.Concurrent;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Rendering.Site;

/// <summary>Illustrations as files. The same picture is always the same bytes, so each is drawn once in a process.</summary>
internal static class PictureFiles
{
    private static readonly ConcurrentDictionary<string, (byte[] With, byte[] Without)> Drawn = [];

    /// <summary>Two files for each illustration of these features, in catalogue order.</summary>
    public static IEnumerable<OutputFile> Of(IEnumerable<string> featureIds)
    {
        var pairs = featureIds.SelectMany(PictureCatalog.AllFor).ToList();
        Parallel.ForEach(pairs, pair => Drawn.GetOrAdd(pair.Id, _ => (pair.DrawWith().ToPng(), pair.DrawWithout().ToPng())));
        foreach (var pair in pairs)
        {
            yield return new OutputFile(SiteAddress.Of("picture", $"{pair.Id}-with"), Drawn[pair.Id].With);
            yield return new OutputFile(SiteAddress.Of("picture", $"{pair.Id}-without"), Drawn[pair.Id].Without);
        }
    }
}
