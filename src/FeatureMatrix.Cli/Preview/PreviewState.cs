using System.Security.Cryptography;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Cli.Preview;

/// <summary>What a preview shows at one time: the files of the last good build, and the faults of the last attempt.</summary>
internal sealed class PreviewState
{
    private readonly Dictionary<string, string> _tags = new(StringComparer.Ordinal);
    private readonly string _looks;

    public PreviewState(IReadOnlyList<OutputFile> files, IReadOnlyList<string> faults)
    {
        Files = files.ToDictionary(file => file.Path, StringComparer.Ordinal);
        Faults = faults;
        _looks = string.Concat(files.Where(file => file.Path.EndsWith(".css", StringComparison.Ordinal) || (file.Path.EndsWith(".js", StringComparison.Ordinal) && !file.Path.Contains('/', StringComparison.Ordinal)))
            .Select(file => Convert.ToHexStringLower(SHA256.HashData(file.Bytes).AsSpan(0, 4))));
    }

    /// <summary>The state before the first build.</summary>
    public static PreviewState Nothing { get; } = new([], []);

    /// <summary>The files of the last good build by path; empty before there is one.</summary>
    public IReadOnlyDictionary<string, OutputFile> Files { get; }

    /// <summary>The faults of the last attempt, as the console prints them; empty where it was good.</summary>
    public IReadOnlyList<string> Faults { get; }

    /// <summary>The same files with faults beside them.</summary>
    public PreviewState With(IReadOnlyList<string> faults) => new([.. Files.Values], faults);

    /// <summary>Changes with the page itself and with style and scripts; empty where there is no such page.</summary>
    public string TagOf(string path)
    {
        lock (_tags)
        {
            if (!_tags.TryGetValue(path, out var tag))
                _tags[path] = tag = Files.TryGetValue(path, out var file) ? Convert.ToHexStringLower(SHA256.HashData(file.Bytes).AsSpan(0, 8)) + _looks : "";
            return tag;
        }
    }
}
