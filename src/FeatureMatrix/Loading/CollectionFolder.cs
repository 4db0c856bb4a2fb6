using System.Text;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>The texts of a collection, and what could not be read as text.</summary>
/// <param name="Files">Ordered by path.</param>
/// <param name="Faults">Files that are no text, too large or not readable.</param>
public sealed record CollectionTexts(IReadOnlyList<SourceText> Files, IReadOnlyList<Fault> Faults);

/// <summary>The only place where loading touches the disk.</summary>
public static class CollectionFolder
{
    /// <summary>The folder of the vocabulary in messages and in the order of files.</summary>
    public const string VocabularyName = "vocabulary";

    /// <summary>Most files of a collection.</summary>
    public const int MostFiles = 20_000;

    /// <summary>Most bytes of all files of a collection together; a thousand cards with all their facts and runs take a tenth.</summary>
    public const long MostBytes = 128L * 1024 * 1024;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>More collections than this, each building on the next, are taken for a slip.</summary>
    private const int DeepestLayer = 8;

    /// <summary>
    /// Reads every YAML and CSV file below both folders, and those of the collections that the first builds on; hidden files and links are
    /// passed over. The path of a file of another collection begins with the way there: <c>../shared/chips.yaml</c>.
    /// </summary>
    /// <param name="folder">The collection.</param>
    /// <param name="vocabularyFolder">The vocabulary; null to read none.</param>
    public static CollectionTexts Read(string folder, string? vocabularyFolder)
    {
        var files = new List<SourceText>();
        var faults = new List<Fault>();
        if (vocabularyFolder is not null)
            ReadFolder(vocabularyFolder, VocabularyName + "/", 0, files, faults);
        ReadFolder(folder, "", 0, files, faults);
        ReadBases(folder, [Path.GetFullPath(folder)], 1, folder, files, faults);
        files.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));
        return new CollectionTexts(files, faults);
    }

    /// <summary>Reads one file that belongs to no collection, such as a policy. Its path in messages is the one given.</summary>
    public static CollectionTexts ReadOne(string path)
    {
        var files = new List<SourceText>();
        var faults = new List<Fault>();
        ReadFile(path, path, 0, files, faults);
        return new CollectionTexts(files, faults);
    }

    /// <summary>Reads the folders that the collection in a folder builds on, and theirs.</summary>
    private static void ReadBases(string folder, IReadOnlyList<string> above, int layer, string top, List<SourceText> files, List<Fault> faults)
    {
        var prefix = PrefixOf(top, folder);
        if (files.Find(file => file.Path == prefix + BaseFolders.File) is not { } named)
            return;
        foreach (var word in BaseFolders.In(named))
        {
            var path = Path.GetFullPath(Path.Combine(folder, word.Text.Trim()));
            if (Path.IsPathRooted(word.Text.Trim()) || word.Text.Contains('\\', StringComparison.Ordinal))
                faults.Add(FaultTexts.BaseNotRelative(word.Origin, word.Text));
            else if (!File.Exists(Path.Combine(path, BaseFolders.File)))
                faults.Add(FaultTexts.NoBase(word.Origin, word.Text));
            else if (above.Contains(path, StringComparer.Ordinal) || layer > DeepestLayer)
                faults.Add(FaultTexts.BaseInCircle(word.Origin, word.Text));
            else
                ReadBase(path, [.. above, path], layer, top, files, faults);
        }
    }

    private static void ReadBase(string folder, IReadOnlyList<string> above, int layer, string top, List<SourceText> files, List<Fault> faults)
    {
        var prefix = PrefixOf(top, folder);
        var known = files.Find(file => file.Path == prefix + BaseFolders.File);
        if (known is { Layer: > 0 })
            return;
        if (known is null)
            ReadFolder(folder, prefix, layer, files, faults);
        else
            MoveTo(layer, prefix, files);
        ReadBases(folder, above, layer + 1, top, files, faults);
    }

    /// <summary>Moves the files of a folder inside the collection, which were read as a part of it, to the layer of their own collection.</summary>
    private static void MoveTo(int layer, string prefix, List<SourceText> files)
    {
        for (var i = 0; i < files.Count; i++)
        {
            if (files[i].Path.StartsWith(prefix, StringComparison.Ordinal))
                files[i] = files[i] with { Layer = layer };
        }
    }

    private static string PrefixOf(string top, string folder) =>
        Path.GetRelativePath(top, folder) is var way && way == "." ? "" : way.Replace('\\', '/') + "/";

    private static void ReadFolder(string folder, string prefix, int layer, List<SourceText> files, List<Fault> faults)
    {
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = 16,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
            IgnoreInaccessible = false,
        };
        try
        {
            var paths = Directory.EnumerateFiles(folder, "*", options).Where(IsRead).Take(MostFiles + 1).ToList();
            if (paths.Count > MostFiles)
            {
                faults.Add(FaultTexts.TooManyFiles(new Origin(prefix.Length == 0 ? folder : prefix, 0, 0)));
                return;
            }

            if (paths.Sum(path => new FileInfo(path).Length) > MostBytes)
            {
                faults.Add(FaultTexts.TooMuchText(new Origin(prefix.Length == 0 ? folder : prefix, 0, 0)));
                return;
            }

            foreach (var path in paths)
                ReadFile(path, prefix + Path.GetRelativePath(folder, path).Replace('\\', '/'), layer, files, faults);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(FaultTexts.CannotRead(new Origin(folder, 0, 0), e.Message));
        }
    }

    private static bool IsRead(string path) => Path.GetExtension(path) is ".yaml" or ".yml" or ".csv";

    private static void ReadFile(string path, string name, int layer, List<SourceText> files, List<Fault> faults)
    {
        var origin = new Origin(name, 0, 0);
        try
        {
            if (new FileInfo(path).Length > NodeParser.LongestFile)
            {
                faults.Add(FaultTexts.FileTooLarge(origin));
                return;
            }

            var bytes = File.ReadAllBytes(path);
            if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
                faults.Add(FaultTexts.IsUtf16(origin));
            else if (bytes.AsSpan().Contains((byte)0))
                faults.Add(FaultTexts.HoldsNul(origin));
            else
                files.Add(new SourceText(name, StrictUtf8.GetString(bytes), layer));
        }
        catch (DecoderFallbackException)
        {
            faults.Add(FaultTexts.NotUtf8(origin));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(FaultTexts.CannotRead(origin, e.Message));
        }
    }
}
