using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli;

/// <summary>
/// Puts an edition into its folder so that either the old or the new one is there, never half of one: everything is written to
/// a folder beside it, which then takes its place. Files that somebody else put into the folder move along.
/// </summary>
internal sealed class OutputFolder
{
    /// <summary>The list of the files we wrote, so that the next edition knows what is ours.</summary>
    public const string ManifestName = ".written-by-publish";

    private readonly string _path;
    private readonly string _next;
    private readonly string _previous;

    public OutputFolder(string path)
    {
        _path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        var parent = Path.GetDirectoryName(_path) ?? throw new UsageException($"{path} cannot be an output folder.");
        var name = Path.GetFileName(_path);
        _next = Path.Combine(parent, $".{name}.being-written");
        _previous = Path.Combine(parent, $".{name}.before");
    }

    /// <summary>Replaces the edition in the folder.</summary>
    public void Replace(IReadOnlyList<OutputFile> files)
    {
        Recover();
        var kept = FilesOfOthers(files);
        WriteNext(files);
        foreach (var name in kept)
            CopyInto(name);
        if (Directory.Exists(_path))
            Directory.Move(_path, _previous);
        Directory.Move(_next, _path);
        if (Directory.Exists(_previous))
            Directory.Delete(_previous, recursive: true);
    }

    /// <summary>Brings the last good edition back where an earlier run was stopped between its two last steps.</summary>
    private void Recover()
    {
        if (Directory.Exists(_next))
            Directory.Delete(_next, recursive: true);
        if (!Directory.Exists(_previous))
            return;
        if (Directory.Exists(_path))
            Directory.Delete(_previous, recursive: true);
        else
            Directory.Move(_previous, _path);
    }

    private List<string> FilesOfOthers(IReadOnlyList<OutputFile> files)
    {
        if (!Directory.Exists(_path))
            return [];
        var manifest = Path.Combine(_path, ManifestName);
        var all = Directory.EnumerateFiles(_path, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(_path, file).Replace('\\', '/')).Order(StringComparer.Ordinal).ToList();
        if (!File.Exists(manifest) && all.Exists(name => name != ".gitignore"))
            throw new UsageException($"{_path} holds files that publish did not write. Name an empty folder, or one that it wrote before, with --out.");
        var ours = File.Exists(manifest) ? File.ReadAllLines(manifest).ToHashSet(StringComparer.Ordinal) : [];
        var kept = all.Where(name => name != ManifestName && !ours.Contains(name)).ToList();
        var clash = kept.Intersect(files.Select(file => file.Path), StringComparer.Ordinal).FirstOrDefault();
        if (clash is not null)
            throw new UsageException($"{Path.Combine(_path, clash)} was not written by publish, and the new edition has a file of that name. Move it away first.");
        return kept;
    }

    private void WriteNext(IReadOnlyList<OutputFile> files)
    {
        Directory.CreateDirectory(_next);
        foreach (var file in files)
        {
            var path = Path.Combine(_next, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, file.Bytes);
        }

        File.WriteAllLines(Path.Combine(_next, ManifestName), files.Select(file => file.Path).Order(StringComparer.Ordinal));
    }

    private void CopyInto(string name)
    {
        var target = Path.Combine(_next, name);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Copy(Path.Combine(_path, name), target);
    }
}
