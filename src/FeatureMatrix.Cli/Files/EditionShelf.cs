using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Rendering.Editions;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Cli.Files;

/// <summary>The editions that a collection keeps in its folder.</summary>
internal sealed class EditionShelf(string folder)
{
    /// <summary>Longer names than this are refused.</summary>
    private const int LongestName = 60;

    /// <summary>All of them, by name.</summary>
    public IReadOnlyList<EditionState> All()
    {
        var path = Path.Combine(folder, EditionFile.Folder);
        return Directory.Exists(path)
            ? [.. Directory.EnumerateFiles(path, "*" + EditionFile.Extension).Order(StringComparer.Ordinal).Select(Read)]
            : [];
    }

    /// <summary>The one that a word names.</summary>
    public EditionState Named(string word) => Find.One(word, "edition", All(), one => one.Name, one => one.Name);

    /// <summary>Refuses a name that cannot be a file's everywhere, or that an edition has already.</summary>
    public void MustBeFree(string name)
    {
        if (name.Length is 0 or > LongestName || !name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') || !char.IsAsciiLetterOrDigit(name[0]))
            throw new UsageException($"--edition {name}: write small letters, digits and hyphens, at most {LongestName}, for example 2026-autumn.");
        if (File.Exists(PathOf(name)))
            throw new UsageException($"There is an edition {name} already, and editions stay as they were published. Choose another name.");
    }

    /// <summary>Keeps an edition.</summary>
    public void Keep(EditionState edition) =>
        CollectionWriter.Write(folder, [new FileChange($"{EditionFile.Folder}/{edition.Name}{EditionFile.Extension}", null, EditionFile.Write(edition))]);

    private string PathOf(string name) => Path.Combine(folder, EditionFile.Folder, name + EditionFile.Extension);

    private static EditionState Read(string path)
    {
        try
        {
            return EditionFile.Read(File.ReadAllText(path));
        }
        catch (FormatException fault)
        {
            throw new UsageException($"{path} cannot be read as an edition: {fault.Message}. Take it from a copy, or move it away.");
        }
    }
}
