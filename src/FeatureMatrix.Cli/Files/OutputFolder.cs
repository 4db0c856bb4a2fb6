using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Files;

/// <summary>
/// Puts an edition into its folder so that either the old or the new one is there, never half of one, whatever stops the program:
/// everything is written to a folder beside it, which then takes its place. Files that somebody else put into the folder move along
/// and are never deleted. What a stopped run left behind goes when the next one begins.
/// </summary>
internal sealed class OutputFolder
{
    /// <summary>The list of the files we wrote, so that the next edition knows what is ours. It is the last file of an edition to be written.</summary>
    public const string ManifestName = ".written-by-publish";

    private readonly string _path;
    private readonly string _next;
    private readonly string _previous;
    private readonly string _lock;
    private bool _isInPlace;

    public OutputFolder(string path)
    {
        _path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        if (new DirectoryInfo(_path) is { LinkTarget: not null } link)
            _path = link.ResolveLinkTarget(returnFinalTarget: true)!.FullName;
        if (File.Exists(_path))
            throw new UsageException($"{path} is a file. Name a folder with --out.");
        var parent = Path.GetDirectoryName(_path) ?? throw new UsageException($"{path} cannot be an output folder.");
        var name = Path.GetFileName(_path);
        _next = Path.Combine(parent, $".{name}.being-written");
        _previous = Path.Combine(parent, $".{name}.before");
        _lock = Path.Combine(parent, $".{name}.locked");
    }

    /// <summary>Replaces the edition in the folder.</summary>
    /// <returns>What could not be tidied up after the new edition was in place; null where all went well.</returns>
    public string? Replace(IReadOnlyList<OutputFile> files)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
            using var held = FileLock.Take(_lock, $"Another publish is writing to {_path}. Wait until it has finished");
            foreach (var step in Steps(files))
                step();
            return null;
        }
        catch (Exception problem) when (_isInPlace && problem is (IOException or UnauthorizedAccessException))
        {
            return $"The new edition is in place, but the old one could not be removed: {problem.Message.TrimEnd('.')}. The next publish tries again.";
        }
        catch (Exception problem) when (problem is (IOException or UnauthorizedAccessException) and not FileLockException)
        {
            DiscardNext();
            throw new IOException(
                $"The edition could not be written to {_path}: {problem.Message.TrimEnd('.')}. The last edition there is as it was. "
                + "Free some space, mend the permissions of the folder and of the one that holds it, or name another folder with --out", problem);
        }
    }

    /// <summary>The steps, in order. After any of them the folder holds a whole edition, and running them all again tidies up.</summary>
    public IEnumerable<Action> Steps(IReadOnlyList<OutputFile> files)
    {
        foreach (var step in Recover())
            yield return step;
        var kept = OfOthers(files);
        // From here on the folder is ours, so that what anybody adds to it meanwhile counts as theirs.
        if (Directory.Exists(_path) && !File.Exists(Path.Combine(_path, ManifestName)))
            yield return () => File.WriteAllText(Path.Combine(_path, ManifestName), "");
        yield return () => Directory.CreateDirectory(_next);
        foreach (var file in files)
            yield return () => Write(Path.Combine(_next, file.Path), file.Bytes);
        foreach (var entry in kept)
            yield return () => entry.CopyTo(_next);
        yield return () => File.WriteAllLines(Path.Combine(_next, ManifestName), files.Select(file => file.Path).Order(StringComparer.Ordinal));

        if (!Directory.Exists(_path))
            yield return () => Directory.Move(_next, _path);
        else if (FolderExchange.IsSupported)
            yield return () => FolderExchange.Swap(_next, _path, _previous);
        else
        {
            yield return () => Directory.Move(_path, _previous);
            yield return () => Directory.Move(_next, _path);
        }

        yield return () => _isInPlace = true;
        foreach (var step in Retire(_next).Concat(Retire(_previous)))
            yield return step;
    }

    /// <summary>Brings the last good edition back where an earlier run was stopped between two moves, and removes what it left.</summary>
    private IEnumerable<Action> Recover()
    {
        if (!Directory.Exists(_path) && Directory.Exists(_previous))
            yield return () => Directory.Move(_previous, _path);
        foreach (var step in Retire(_next).Concat(Retire(_previous)))
            yield return step;
    }

    /// <summary>
    /// Removes an edition that is not in its place: one half written, which has no list of our files yet and holds copies only,
    /// or a whole one. From a whole one the files of others that are missing in the folder, or newer than there, go to the folder.
    /// </summary>
    private IEnumerable<Action> Retire(string folder)
    {
        if (!Directory.Exists(folder))
            yield break;
        if (File.Exists(Path.Combine(folder, ManifestName)))
        {
            var ours = OutputEntry.Manifest(folder);
            var current = OutputEntry.Manifest(_path);
            foreach (var entry in OutputEntry.In(folder).Where(entry => !ours.Contains(entry.Name)))
                yield return () => entry.MoveTo(_path, isTaken: current.Contains(entry.Name));
        }

        yield return () => Directory.Delete(folder, recursive: true);
    }

    private List<OutputEntry> OfOthers(IReadOnlyList<OutputFile> files)
    {
        if (!Directory.Exists(_path))
            return [];
        var all = OutputEntry.In(_path);
        if (!File.Exists(Path.Combine(_path, ManifestName)) && all.Exists(entry => entry.Name != ".gitignore"))
            throw new UsageException($"{_path} holds files that publish did not write. Name an empty folder, or one that it wrote before, with --out.");
        var ours = OutputEntry.Manifest(_path);
        var kept = all.Where(entry => !ours.Contains(entry.Name)).ToList();
        // Upper and lower case are the same name on many systems, and a file can stand where the edition has a folder.
        var taken = files.SelectMany(file => OutputEntry.WithFolders(file.Path)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var wanted = files.Select(file => file.Path).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var clash = kept.Find(entry => (taken.Contains(entry.Name) && !(entry.IsFolder && !wanted.Contains(entry.Name))) || OutputEntry.WithFolders(entry.Name).Any(wanted.Contains));
        return clash is null
            ? kept
            : throw new UsageException($"{Path.Combine(_path, clash.Name)} was not written by publish, and the new edition has a file of that name. Move it away first.");
    }

    private static void Write(string path, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
    }

    // Gives back the space that the failed attempt took; where that fails too, the next publish does it.
    private void DiscardNext()
    {
        try
        {
            if (Directory.Exists(_next) && !File.Exists(Path.Combine(_next, ManifestName)))
                Directory.Delete(_next, recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The first failure is the one to tell.
        }
    }
}
