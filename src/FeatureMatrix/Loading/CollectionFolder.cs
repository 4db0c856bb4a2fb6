using System.Text;
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

    private const int MostFiles = 20_000;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads every YAML and CSV file below both folders; hidden ones and links are passed over.</summary>
    /// <param name="folder">The collection.</param>
    /// <param name="vocabularyFolder">The vocabulary; null to read none.</param>
    public static CollectionTexts Read(string folder, string? vocabularyFolder)
    {
        var files = new List<SourceText>();
        var faults = new List<Fault>();
        if (vocabularyFolder is not null)
            ReadFolder(vocabularyFolder, VocabularyName + "/", files, faults);
        ReadFolder(folder, "", files, faults);
        files.Sort((left, right) => string.CompareOrdinal(left.Path, right.Path));
        return new CollectionTexts(files, faults);
    }

    private static void ReadFolder(string folder, string prefix, List<SourceText> files, List<Fault> faults)
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

            foreach (var path in paths)
                ReadFile(path, prefix + Path.GetRelativePath(folder, path).Replace('\\', '/'), files, faults);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(FaultTexts.CannotRead(new Origin(folder, 0, 0), e.Message));
        }
    }

    private static bool IsRead(string path) => Path.GetExtension(path) is ".yaml" or ".yml" or ".csv";

    private static void ReadFile(string path, string name, List<SourceText> files, List<Fault> faults)
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
                files.Add(new SourceText(name, StrictUtf8.GetString(bytes)));
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
