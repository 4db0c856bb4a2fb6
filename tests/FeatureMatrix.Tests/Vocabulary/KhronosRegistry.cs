using System.Xml.Linq;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>
/// The public registry of OpenGL, GLX and WGL names: gl.xml, glx.xml and wgl.xml of the Debian package khronos-api. Read here
/// with nothing of the project's own.
/// </summary>
internal sealed class KhronosRegistry
{
    private readonly List<XElement> _extensions;
    private readonly List<XElement> _versions;

    private KhronosRegistry(IReadOnlyList<XElement> roots)
    {
        _extensions = [.. roots.SelectMany(root => root.Element("extensions")!.Elements("extension"))];
        _versions = [.. roots.SelectMany(root => root.Elements("feature")).Where(version => (string?)version.Attribute("api") == "gl")];
        ExtensionNames = _extensions.Select(Name).ToHashSet(StringComparer.Ordinal);
        EnumNames = roots.SelectMany(root => root.Elements("enums")).Elements("enum").Select(Name).ToHashSet(StringComparer.Ordinal);
    }

    public IReadOnlySet<string> ExtensionNames { get; }

    public IReadOnlySet<string> EnumNames { get; }

    /// <summary>Versions of core OpenGL, such as <c>1.3</c>.</summary>
    public IReadOnlySet<string> CoreVersions => _versions.Select(v => (string)v.Attribute("number")!).ToHashSet(StringComparer.Ordinal);

    public static KhronosRegistry Read() => new(
        [.. new[] { "gl.xml", "glx.xml", "wgl.xml" }.Select(name =>
            XDocument.Load(External.File("/usr/share/khronos-api/" + name, "khronos-api")).Root!)]);

    /// <summary>Tokens and commands an extension brings, without the suffix of its maker (GL_CLAMP_TO_EDGE_SGIS: GL_CLAMP_TO_EDGE).</summary>
    public IReadOnlySet<string> BroughtBy(string extension)
    {
        var maker = extension.Split('_')[1];
        return _extensions.Where(e => Name(e) == extension).Elements("require").Elements()
            .Where(e => e.Name.LocalName is "enum" or "command")
            .Select(e => Stem(Name(e), maker))
            .ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Tokens and commands that are new in a version of core OpenGL.</summary>
    public IReadOnlySet<string> NewInCore(string version) =>
        _versions.Where(v => (string?)v.Attribute("number") == version).Elements("require").Elements()
            .Where(e => e.Name.LocalName is "enum" or "command")
            .Select(Name)
            .ToHashSet(StringComparer.Ordinal);

    private static string Stem(string name, string maker) =>
        name.EndsWith("_" + maker, StringComparison.Ordinal) ? name[..^(maker.Length + 1)]
        : name.EndsWith(maker, StringComparison.Ordinal) ? name[..^maker.Length]
        : name;

    private static string Name(XElement element) => (string)element.Attribute("name")!;
}
