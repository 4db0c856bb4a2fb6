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
    /// <summary>Two files for each illustration of these features, in catalogue order. Drawn on several threads.</summary>
    public static IEnumerable<OutputFile> Of(IEnumerable<string> featureIds, Func<IllustrationPair, DrawnPair> draw)
    {
        var pairs = featureIds.SelectMany(PictureCatalog.AllFor).ToList();
        var drawn = new DrawnPair[pairs.Count];
        Parallel.For(0, pairs.Count, i => drawn[i] = draw(pairs[i]));
        return pairs.Zip(drawn, (pair, both) => new[]
        {
            new OutputFile(SiteAddress.Of("picture", $"{pair.Id}-with"), both.With),
            new OutputFile(SiteAddress.Of("picture", $"{pair.Id}-without"), both.Without),
        }).SelectMany(files => files);
    }
}
