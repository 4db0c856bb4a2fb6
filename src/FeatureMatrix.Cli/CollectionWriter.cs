using System.Text;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Cli;

/// <summary>
/// Writes changed files of a collection so that whoever stops it finds each file as it was or as it is to be: the new text
/// goes to a file beside it, which then takes its place. What was there before stays beside it as <c>NAME.before</c>.
/// </summary>
internal static class CollectionWriter
{
    /// <summary>What is added to the name of the copy of the file as it was; no collection reads files of that name.</summary>
    public const string BeforeSuffix = ".before";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes all files.</summary>
    public static void Write(string folder, IReadOnlyList<FileChange> changes)
    {
        foreach (var step in Steps(folder, changes))
            step();
    }

    /// <summary>The steps, each of which changes at most one name in the folder. After any of them the collection is whole.</summary>
    public static IEnumerable<Action> Steps(string folder, IReadOnlyList<FileChange> changes)
    {
        foreach (var change in changes)
        {
            var path = Path.Combine(folder, change.Path.Replace('/', Path.DirectorySeparatorChar));
            var directory = Path.GetDirectoryName(path)!;
            var next = Path.Combine(directory, $".{Path.GetFileName(path)}.being-written");
            yield return () => Directory.CreateDirectory(directory);
            yield return () => WriteThrough(next, change.After);
            if (change.Before is not null)
                yield return () => File.Copy(path, path + BeforeSuffix, overwrite: true);
            yield return () => File.Move(next, path, overwrite: true);
        }
    }

    /// <summary>Down to the disk before the name changes, so that a power cut cannot leave the name with half a text.</summary>
    private static void WriteThrough(string path, string text)
    {
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write);
        stream.Write(Utf8.GetBytes(text));
        stream.Flush(flushToDisk: true);
    }
}
