using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>
/// A public C header as plain text: the Direct3D and DirectDraw headers of the Debian package mingw-w64-common. Understands just
/// enough C to find a constant's value and a structure's members.
/// </summary>
internal sealed partial class PublicHeader
{
    private readonly string _text;

    private PublicHeader(string text) => _text = Comment().Replace(text, "");

    public static PublicHeader Read(string name) =>
        new(File.ReadAllText(External.File("/usr/share/mingw-w64/include/" + name, "mingw-w64-common")));

    /// <summary>The value of a <c>#define</c> or of a member of an enumeration; null where the header has neither.</summary>
    public uint? Constant(string name)
    {
        var match = Regex.Match(
            _text,
            $@"(?:^\#define\s+{name}\s+|^\s*{name}\s*=\s*)(?<value>[^\r\n]+)",
            RegexOptions.Multiline | RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(5));
        return match.Success ? Value(match.Groups["value"].Value) : null;
    }

    /// <summary>Names of the members of a structure, by the tag after <c>typedef struct</c>.</summary>
    public IReadOnlyList<string> Members(string tag)
    {
        var body = Regex.Match(
            _text,
            $@"typedef struct {tag}\s*\{{(?<body>.*?)^\}}",
            RegexOptions.Singleline | RegexOptions.Multiline | RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(5));
        Assert.True(body.Success, $"the header has no struct {tag}");
        return [.. Declared().Matches(body.Groups["body"].Value).Select(m => m.Groups["name"].Value)];
    }

    private static uint Value(string text)
    {
        var code = FourCharacters().Match(text);
        if (code.Success)
            return FourCc(string.Concat(code.Groups["c"].Captures.Select(c => c.Value)));
        var number = Number().Match(text);
        Assert.True(number.Success, $"not a number: {text}");
        return number.Groups["hex"].Success
            ? uint.Parse(number.Groups["hex"].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture)
            : uint.Parse(number.Groups["dec"].Value, CultureInfo.InvariantCulture);
    }

    /// <summary>The header's MAKEFOURCC: the first character in the lowest byte.</summary>
    public static uint FourCc(string characters) =>
        characters.Select((character, i) => (uint)character << (8 * i)).Aggregate((a, b) => a | b);

    [GeneratedRegex(@"/\*.*?\*/|//[^\r\n]*", RegexOptions.Singleline, 5000)]
    private static partial Regex Comment();

    [GeneratedRegex(@"(?<name>\w+)(\[\w+\])?\s*[;,]", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Declared();

    [GeneratedRegex(@"MAKEFOURCC\(\s*('(?<c>.)'\s*,?\s*){4}\)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex FourCharacters();

    [GeneratedRegex(@"0[xX](?<hex>[0-9a-fA-F]+)|(?<dec>\d+)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Number();
}
