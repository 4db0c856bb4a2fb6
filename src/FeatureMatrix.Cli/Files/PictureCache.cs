using FeatureMatrix.Pictures;
using FeatureMatrix.Rendering.Site;

namespace FeatureMatrix.Cli.Files;

/// <summary>
/// Keeps drawn illustrations between runs, in the user's folder for such things: drawing all of them takes several seconds, and they
/// change with the code that draws them only. Where the folder cannot be used they are drawn each time.
/// </summary>
internal static class PictureCache
{
    /// <summary>How long pictures are kept that this program did not draw: another version of it may be in use beside this one.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromDays(7);

    private static readonly string Folder = Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify) is { Length: > 0 } own ? own : Path.GetTempPath(),
        "featurematrix", "pictures");

    /// <summary>The illustration, from the folder or drawn anew.</summary>
    public static DrawnPair Get(IllustrationPair pair)
    {
        var (with, without) = (Path.Combine(Folder, $"{pair.ContentKey}-with.png"), Path.Combine(Folder, $"{pair.ContentKey}-without.png"));
        try
        {
            if (File.Exists(with) && File.Exists(without))
                return new DrawnPair(File.ReadAllBytes(with), File.ReadAllBytes(without));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return DrawnPair.Of(pair);
        }

        var drawn = DrawnPair.Of(pair);
        Keep(with, drawn.With);
        Keep(without, drawn.Without);
        return drawn;
    }

    /// <summary>Removes what an older program drew, once it is old itself.</summary>
    public static void Tidy()
    {
        var current = PictureCatalog.All.Select(pair => pair.ContentKey).ToHashSet(StringComparer.Ordinal);
        try
        {
            foreach (var file in new DirectoryInfo(Folder).EnumerateFiles().Where(file => !current.Contains(file.Name.Split('-')[0]) && DateTime.UtcNow - file.LastWriteTimeUtc > Grace))
                file.Delete();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // A cache that cannot be tidied does no harm.
        }
    }

    // Written under another name first, so that a run that is stopped leaves no half picture behind.
    private static void Keep(string path, byte[] bytes)
    {
        try
        {
            Directory.CreateDirectory(Folder);
            var unfinished = $"{path}.{Environment.ProcessId}";
            File.WriteAllBytes(unfinished, bytes);
            File.Move(unfinished, path, overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // It will be drawn again.
        }
    }
}
