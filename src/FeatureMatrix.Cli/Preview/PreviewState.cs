using System.Security.Cryptography;
using FeatureMatrix.Rendering;
using FeatureMatrix.Rendering.Site;

namespace FeatureMatrix.Cli.Preview;

/// <summary>
/// What a preview shows at one time: the files of a site, each rendered when somebody looks at it, and the faults of the last attempt. Where
/// a page's template has a fault, what was shown of the page before stays. Several pages may be asked for at once; they take turns.
/// </summary>
internal sealed class PreviewState
{
    private readonly Lock _turn = new();
    private readonly Func<string, OutputFile?> _render;
    private readonly Dictionary<string, OutputFile> _shown;
    private readonly Dictionary<string, OutputFile?> _rendered = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _pageFaults = new(StringComparer.Ordinal);
    private readonly string _looks;

    /// <summary>The state after an attempt.</summary>
    /// <param name="render">A file of the site by its path; null where it has none of that name.</param>
    /// <param name="looks">Style and scripts that every page loads.</param>
    /// <param name="faults">The faults of the attempt, as the console prints them.</param>
    /// <param name="before">What was shown before.</param>
    public PreviewState(Func<string, OutputFile?> render, IEnumerable<OutputFile> looks, IReadOnlyList<string> faults, PreviewState before)
        : this(render, string.Concat(looks.Select(file => Hash(file.Bytes, 4))), faults, before.AllShown())
    {
    }

    private PreviewState(Func<string, OutputFile?> render, string looks, IReadOnlyList<string> faults, Dictionary<string, OutputFile> shown, bool isNothing = false)
    {
        (_render, _looks, Faults, _shown, IsNothing) = (render, looks, faults, shown, isNothing);
    }

    /// <summary>The state before the first build.</summary>
    public static PreviewState Nothing { get; } = new(_ => null, "", [], [], isNothing: true);

    /// <summary>True until there is a good build.</summary>
    public bool IsNothing { get; }

    /// <summary>The faults of the last attempt to read the collection; empty where it was good.</summary>
    public IReadOnlyList<string> Faults { get; }

    /// <summary>The same files with faults beside them.</summary>
    public PreviewState With(IReadOnlyList<string> faults) => new(_render, _looks, faults, AllShown(), IsNothing);

    /// <summary>A file; null where there is none of that name.</summary>
    public OutputFile? Find(string path)
    {
        lock (_turn)
        {
            if (!_rendered.TryGetValue(path, out var file))
                _rendered[path] = file = Rendered(path);
            return file;
        }
    }

    /// <summary>Changes with the page itself and with style and scripts; empty where there is no such page.</summary>
    public string TagOf(string path) => Find(path) is { } file ? Hash(file.Bytes, 8) + _looks : "";

    /// <summary>What a page has to tell: the faults of the last attempt, and that of its own template.</summary>
    public IReadOnlyList<string> FaultsOf(string path)
    {
        Find(path);
        lock (_turn)
            return _pageFaults.TryGetValue(path, out var fault) ? [.. Faults, fault] : Faults;
    }

    private static string Hash(ReadOnlySpan<byte> bytes, int length) => Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, length));

    private OutputFile? Rendered(string path)
    {
        try
        {
            return _render(path);
        }
        catch (TemplateFaultException fault)
        {
            _pageFaults[path] = fault.Message;
            return _shown.GetValueOrDefault(path) ?? OutputFile.Text(path, "<!doctype html><html lang=\"en\"><title>Preview</title><body><p>No good build of this page yet.</p></body></html>\n");
        }
    }

    /// <summary>The latest version of every page that was looked at.</summary>
    private Dictionary<string, OutputFile> AllShown()
    {
        lock (_turn)
        {
            var all = new Dictionary<string, OutputFile>(_shown, StringComparer.Ordinal);
            foreach (var file in _rendered.Values.OfType<OutputFile>())
                all[file.Path] = file;
            return all;
        }
    }
}
