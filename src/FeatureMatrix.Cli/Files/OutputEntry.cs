namespace FeatureMatrix.Cli.Files;

/// <summary>
/// A file, a link or an empty folder in an output folder. Links are never followed: what they lead to belongs to somebody else.
/// </summary>
/// <param name="Folder">The output folder.</param>
/// <param name="Name">The path below it, with slashes.</param>
/// <param name="IsFolder">True for an empty folder.</param>
internal sealed record OutputEntry(string Folder, string Name, bool IsFolder)
{
    private string FullPath => Path.Combine(Folder, Name);

    /// <summary>All entries but the list of our files, in ordinal order.</summary>
    public static List<OutputEntry> In(string folder)
    {
        var found = new List<OutputEntry>();
        Walk(new DirectoryInfo(folder), "");
        found.Sort((left, right) => string.CompareOrdinal(left.Name, right.Name));
        return found;

        void Walk(DirectoryInfo directory, string prefix)
        {
            foreach (var entry in directory.EnumerateFileSystemInfos())
            {
                var name = prefix + entry.Name;
                if (entry is not DirectoryInfo inner || inner.LinkTarget is not null)
                {
                    if (name != OutputFolder.ManifestName)
                        found.Add(new OutputEntry(folder, name, IsFolder: false));
                }
                else if (!inner.EnumerateFileSystemInfos().Any())
                    found.Add(new OutputEntry(folder, name, IsFolder: true));
                else
                    Walk(inner, name + "/");
            }
        }
    }

    /// <summary>The names of the files that publish wrote there; none where it never did.</summary>
    public static HashSet<string> Manifest(string folder)
    {
        var path = Path.Combine(folder, OutputFolder.ManifestName);
        return File.Exists(path) ? File.ReadAllLines(path).ToHashSet(StringComparer.Ordinal) : [];
    }

    /// <summary>A path and those of the folders that it lies in.</summary>
    public static IEnumerable<string> WithFolders(string name)
    {
        yield return name;
        for (var at = name.LastIndexOf('/'); at > 0; at = name.LastIndexOf('/', at - 1))
            yield return name[..at];
    }

    /// <summary>Copies it to the same place below another folder, its time of change too.</summary>
    public void CopyTo(string folder)
    {
        var target = Path.Combine(folder, Name);
        if (IsFolder)
        {
            Directory.CreateDirectory(target);
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        if (new FileInfo(FullPath).LinkTarget is { } link)
            File.CreateSymbolicLink(target, link);
        else
        {
            File.Copy(FullPath, target, overwrite: true);
            File.SetLastWriteTimeUtc(target, File.GetLastWriteTimeUtc(FullPath));
        }
    }

    /// <summary>Moves it to the same place below another folder, unless it is there already and no older.</summary>
    /// <param name="folder">The other folder.</param>
    /// <param name="isTaken">True where the edition there has a file of that name; then it gets another name.</param>
    public void MoveTo(string folder, bool isTaken)
    {
        var target = Path.Combine(folder, isTaken ? Name + ".kept" : Name);
        if (IsFolder)
        {
            if (!File.Exists(target))
                Directory.CreateDirectory(target);
            return;
        }

        var (mine, theirs) = (new FileInfo(FullPath), new FileInfo(target));
        if ((theirs.Exists || theirs.LinkTarget is not null) && theirs.LastWriteTimeUtc >= mine.LastWriteTimeUtc)
            return;
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Move(FullPath, target, overwrite: true);
    }
}
