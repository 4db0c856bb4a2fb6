using FeatureMatrix.Pictures;

namespace FeatureMatrix.Rendering.Site;

/// <summary>Both panes of an illustration as PNG files.</summary>
public sealed record DrawnPair(byte[] With, byte[] Without)
{
    /// <summary>Draws an illustration; the same one is always the same bytes.</summary>
    public static DrawnPair Of(IllustrationPair pair) => new(pair.DrawWith().ToPng(), pair.DrawWithout().ToPng());
}

/// <summary>Illustrations as files.</summary>
internal static class PictureFiles
{
    /// <summary>One pane of an illustration of these features; null where the path names none.</summary>
    public static OutputFile? Find(IEnumerable<string> featureIds, string path, Func<IllustrationPair, DrawnPair> draw)
    {
        var pair = featureIds.SelectMany(PictureCatalog.AllFor).FirstOrDefault(pair => PathsOf(pair).Contains(path));
        return pair is null ? null : Files(pair, draw(pair)).First(file => file.Path == path);
    }

    /// <summary>Two files for each illustration of these features, in catalogue order. Drawn on several threads.</summary>
    public static IEnumerable<OutputFile> Of(IEnumerable<string> featureIds, Func<IllustrationPair, DrawnPair> draw)
    {
        var pairs = featureIds.SelectMany(PictureCatalog.AllFor).ToList();
        var drawn = new DrawnPair[pairs.Count];
        Parallel.For(0, pairs.Count, i => drawn[i] = draw(pairs[i]));
        return pairs.Zip(drawn, Files).SelectMany(files => files);
    }

    private static string[] PathsOf(IllustrationPair pair) => [SiteAddress.Of("picture", $"{pair.Id}-with"), SiteAddress.Of("picture", $"{pair.Id}-without")];

    private static IEnumerable<OutputFile> Files(IllustrationPair pair, DrawnPair drawn) => PathsOf(pair).Zip([drawn.With, drawn.Without], (path, bytes) => new OutputFile(path, bytes));
}
