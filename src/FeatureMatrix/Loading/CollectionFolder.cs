using System.Text;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading;

/// <summary>The texts of a collection, and what could not be read as text.</summary>
/// <param name="Files">Ordered by path.</param>
/// <param name="Faults">Files that are no text, too large or not readable.</param>
public sealed record CollectionTexts(IReadOnlyList<SourceText> Files, IReadOnlyList<Fault> Faults)
{
    /// <summary>The picture files beside them, ordered by path and not yet read.</summary>
    public IReadOnlyList<SourcePicture> Pictures { get; init; } = [];
}

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
    /// Reads every YAML and CSV file below both folders, and those of the collections that the first builds on, and notes which pictures there
    /// are; hidden files and links are passed over. The path of a file of another collection begins with the way there: <c>../shared/chips.yaml</c>.
    /// </summary>
    /// <param name="folder">The collection.</param>
    /// <param name="vocabularyFolder">The vocabulary; null to read none.</param>
    public static CollectionTexts Read(string folder, string? vocabularyFolder)
    {
        var found = new Found();
        if (vocabularyFolder is not null)
            ReadFolder(vocabularyFolder, VocabularyName + "/", 0, found);
        ReadFolder(folder, "", 0, found);
        ReadBases(folder, [Path.GetFullPath(folder)], 1, folder, found);
        found.Files.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));
        found.Pictures.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));
        return new CollectionTexts(found.Files, found.Faults) { Pictures = found.Pictures };
    }

    /// <summary>Reads one file that belongs to no collection, such as a policy. Its path in messages is the one given.</summary>
    public static CollectionTexts ReadOne(string path)
    {
        var found = new Found();
        ReadFile(path, path, 0, found);
        return new CollectionTexts(found.Files, found.Faults);
    }

    /// <summary>Reads the folders that the collection in a folder builds on, and theirs.</summary>
    private static void ReadBases(string folder, IReadOnlyList<string> above, int layer, string top, Found found)
    {
        var prefix = PrefixOf(top, folder);
        if (found.Files.Find(file => file.Path == prefix + BaseFolders.File) is not { } named)
            return;
        foreach (var word in BaseFolders.In(named))
        {
            var path = Path.GetFullPath(Path.Combine(folder, word.Text.Trim()));
            if (Path.IsPathRooted(word.Text.Trim()) || word.Text.Contains('\\', StringComparison.Ordinal))
                found.Faults.Add(FaultTexts.BaseNotRelative(word.Origin, word.Text));
            else if (!File.Exists(Path.Combine(path, BaseFolders.File)))
                found.Faults.Add(FaultTexts.NoBase(word.Origin, word.Text));
            else if (above.Contains(path, StringComparer.Ordinal) || layer > DeepestLayer)
                found.Faults.Add(FaultTexts.BaseInCircle(word.Origin, word.Text));
            else
                ReadBase(path, [.. above, path], layer, top, found);
        }
    }

    private static void ReadBase(string folder, IReadOnlyList<string> above, int layer, string top, Found found)
    {
        var prefix = PrefixOf(top, folder);
        var known = found.Files.Find(file => file.Path == prefix + BaseFolders.File);
        if (known is { Layer: > 0 })
            return;
        if (known is null)
            ReadFolder(folder, prefix, layer, found);
        else
            MoveTo(layer, prefix, found.Files);
        ReadBases(folder, above, layer + 1, top, found);
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

    private static void ReadFolder(string folder, string prefix, int layer, Found found)
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
            var paths = Directory.EnumerateFiles(folder, "*", options).Where(path => IsRead(path) || IsPicture(path)).Take(MostFiles + 1).ToList();
            if (paths.Count > MostFiles)
            {
                found.Faults.Add(FaultTexts.TooManyFiles(new Origin(prefix.Length == 0 ? folder : prefix, 0, 0)));
                return;
            }

            found.Pictures.AddRange(paths.Where(IsPicture).Select(path => new SourcePicture(NameOf(path), most => Beginning(path, most))));
            paths.RemoveAll(IsPicture);
            if (paths.Sum(path => new FileInfo(path).Length) > MostBytes)
            {
                found.Faults.Add(FaultTexts.TooMuchText(new Origin(prefix.Length == 0 ? folder : prefix, 0, 0)));
                return;
            }

            foreach (var path in paths)
                ReadFile(path, NameOf(path), layer, found);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            found.Faults.Add(FaultTexts.CannotRead(new Origin(folder, 0, 0), e.Message));
        }

        string NameOf(string path) => prefix + Path.GetRelativePath(folder, path).Replace('\\', '/');
    }

    private static bool IsRead(string path) => Path.GetExtension(path) is ".yaml" or ".yml" or ".csv";

    private static bool IsPicture(string path) => Path.GetExtension(path).ToLowerInvariant() is ".png" or ".jpg" or ".jpeg";

    /// <summary>The first bytes of a file, and never more, however much it grows meanwhile.</summary>
    private static byte[] Beginning(string path, int most)
    {
        using var file = File.OpenRead(path);
        var bytes = new byte[(int)Math.Min(most, file.Length)];
        return bytes[..file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)];
    }

    private static void ReadFile(string path, string name, int layer, Found found)
    {
        var origin = new Origin(name, 0, 0);
        try
        {
            if (new FileInfo(path).Length > NodeParser.LongestFile)
            {
                found.Faults.Add(FaultTexts.FileTooLarge(origin));
                return;
            }

            var bytes = File.ReadAllBytes(path);
            if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
                found.Faults.Add(FaultTexts.IsUtf16(origin));
            else if (bytes.AsSpan().Contains((byte)0))
                found.Faults.Add(FaultTexts.HoldsNul(origin));
            else
                found.Files.Add(new SourceText(name, StrictUtf8.GetString(bytes), layer));
        }
        catch (DecoderFallbackException)
        {
            found.Faults.Add(FaultTexts.NotUtf8(origin));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            found.Faults.Add(FaultTexts.CannotRead(origin, e.Message));
        }
    }

    /// <summary>What was found so far.</summary>
    private sealed class Found
    {
        public List<SourceText> Files { get; } = [];

        public List<SourcePicture> Pictures { get; } = [];

        public List<Fault> Faults { get; } = [];
    }
}
