using System.Globalization;
using System.Text.RegularExpressions;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>
/// Reads the public Direct3D and DirectDraw headers as plain text, independently of the project's tables. The headers
/// are those of the Debian package mingw-w64-common (d3dcaps.h, ddraw.h, d3d8caps.h, d3d9caps.h, d3d8types.h,
/// d3d9types.h under /usr/share/mingw-w64/include).
/// </summary>
internal static partial class PublicHeader
{
    private static readonly string[][] CapabilityFiles = [["d3dcaps.h", "ddraw.h"], ["d3d8caps.h"], ["d3d9caps.h"]];

    public static string Text(string file) =>
        File.ReadAllText(External.File($"/usr/share/mingw-w64/include/{file}", "mingw-w64-common"));

    /// <summary>Every #define of a number in the capability headers of a generation (7, 8 or 9).</summary>
    public static IReadOnlyList<(string Name, uint Value)> Numbers(int generation) =>
        [.. CapabilityFiles[generation - 7].SelectMany(file => Text(file).Split('\n').SelectMany(NumberIn))];

    /// <summary>The D3DFMT_ codes of a generation (8 or 9).</summary>
    public static IReadOnlyList<(string Name, uint Value)> Formats(int generation)
    {
        var text = Text($"d3d{generation}types.h");
        var start = text.IndexOf("typedef enum _D3DFORMAT", StringComparison.Ordinal);
        var body = text[start..text.IndexOf("} D3DFORMAT", start, StringComparison.Ordinal)];
        return [.. FormatLine().Matches(body).Select(m => (m.Groups["name"].Value, m.Groups["a"].Success ? FourCc(m) : Number(m.Groups["number"].Value)))];
    }

    private static IEnumerable<(string Name, uint Value)> NumberIn(string line)
    {
        var words = line.Split(['\t', ' ', '\r'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 3 || words[0] != "#define" || words[1].Contains('(', StringComparison.Ordinal))
            yield break;
        var value = string.Concat(words[2..].TakeWhile(w => !w.StartsWith("/*", StringComparison.Ordinal)))
            .Replace("__MSABI_LONG", "", StringComparison.Ordinal).Trim('(', ')');
        var shift = value.Split("<<");
        if (shift.Length == 2 && shift[0] == "1")
            yield return (words[1], 1u << int.Parse(shift[1], CultureInfo.InvariantCulture));
        else if (value.Length > 0 && value.All(c => char.IsAsciiHexDigit(c) || c is 'x' or 'X') && char.IsAsciiDigit(value[0]))
            yield return (words[1], Number(value));
    }

    private static uint Number(string text) =>
        text.StartsWith("0x", StringComparison.OrdinalIgnoreCase)
            ? Convert.ToUInt32(text, 16)
            : uint.Parse(text, CultureInfo.InvariantCulture);

    private static uint FourCc(Match m) =>
        (uint)(m.Groups["a"].Value[0] | m.Groups["b"].Value[0] << 8 | m.Groups["c"].Value[0] << 16 | m.Groups["d"].Value[0] << 24);

    [GeneratedRegex(
        @"(?<name>D3DFMT_\w+)\s*=\s*(?<number>0x\w+|\d+|MAKEFOURCC\('(?<a>.)', '(?<b>.)', '(?<c>.)', '(?<d>.)'\))",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000)]
    private static partial Regex FormatLine();
}
