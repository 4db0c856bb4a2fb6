using System.Text;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Cli.Files;

/// <summary>
/// Writes changed files of a collection so that whoever stops it leaves the collection as it was or as it is to be, never a mix:
/// the new texts go to files beside the old ones, then a list of them says that all are there, then each takes its place. Where
/// the list is found later, the rest of the moves is made up for. What was there before stays beside it as <c>NAME.before</c>.
/// </summary>
internal static class CollectionWriter
{
    /// <summary>What is added to the name of the copy of the file as it was; no collection reads files of that name.</summary>
    public const string BeforeSuffix = ".before";

    /// <summary>The list that makes a change final.</summary>
    public const string ListName = ".import-to-finish";

    private const string LockName = ".import-locked";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes all files.</summary>
    public static void Write(string folder, IReadOnlyList<FileChange> changes)
    {
        using var held = Lock(folder);
        Finish(folder);
        try
        {
            foreach (var step in Steps(folder, changes))
                step();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(ListOf(folder)))
                throw new IOException($"The change of {folder} stopped before its last step: {problem.Message.TrimEnd('.')}. Mend that; the next command that reads the collection finishes the change", problem);
            foreach (var change in changes)
                AtomicFile.Discard(AtomicFile.Unfinished(Path.Combine(folder, change.Path)));
            throw;
        }
    }

    /// <summary>The steps, each of which changes at most one name in the folder.</summary>
    public static IEnumerable<Action> Steps(string folder, IReadOnlyList<FileChange> changes)
    {
        var places = changes.Select(change => (Change: change, Path: PlaceOf(folder, change.Path))).ToList();
        foreach (var (change, path) in places)
        {
            yield return () => Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            yield return () => AtomicFile.WriteThrough(AtomicFile.Unfinished(path), Utf8.GetBytes(change.After));
        }

        foreach (var (_, path) in places.Where(place => place.Change.Before is not null))
            yield return () => AtomicFile.Write(path + BeforeSuffix, File.ReadAllBytes(path));
        yield return () => AtomicFile.Write(ListOf(folder), Utf8.GetBytes(string.Concat(changes.Select(change => change.Path + "\n"))));
        foreach (var (_, path) in places)
            yield return () => File.Move(AtomicFile.Unfinished(path), path, overwrite: true);
        yield return () => File.Delete(ListOf(folder));
    }

    /// <summary>Finishes a change that was stopped between its last steps. True where there was one.</summary>
    public static bool FinishInterrupted(string folder)
    {
        if (!File.Exists(ListOf(folder)))
            return false;
        using var held = Lock(folder);
        return Finish(folder);
    }

    private static bool Finish(string folder)
    {
        if (!File.Exists(ListOf(folder)))
            return false;
        foreach (var name in File.ReadAllLines(ListOf(folder)))
        {
            var path = PlaceOf(folder, name);
            if (File.Exists(AtomicFile.Unfinished(path)))
                File.Move(AtomicFile.Unfinished(path), path, overwrite: true);
        }

        File.Delete(ListOf(folder));
        return true;
    }

    private static string ListOf(string folder) => Path.Combine(folder, ListName);

    private static IDisposable Lock(string folder) =>
        FileLock.Take(Path.Combine(folder, LockName), $"Another import is writing to {folder}. Wait until it has finished");

    /// <summary>
    /// Where a file of the collection lies. Refuses what lies outside the folder and what is, or lies behind, a link: the
    /// collection does not read through links, so it must not write through them either.
    /// </summary>
    private static string PlaceOf(string folder, string name)
    {
        var path = folder;
        foreach (var part in name.Split('/', '\\'))
        {
            if (part is "" or "." or ".." || Path.IsPathRooted(part) || part.Contains(':', StringComparison.Ordinal))
                throw new IOException($"'{name}' does not lie in {folder}");
            path = Path.Combine(path, part);
            if (new FileInfo(path).LinkTarget is not null)
                throw new IOException($"{path} is a link, and the collection reads and writes no links. Put the file itself in its place");
        }

        return path;
    }
}
