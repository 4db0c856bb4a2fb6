using System.Text.RegularExpressions;

namespace FeatureMatrix.Loading.Writing;

/// <summary>Values as YAML text: short ones in one line, maps with long values key by key.</summary>
internal static partial class YamlText
{
    private const int LongestInline = 110;

    /// <summary>A value in one line, as it may stand inside <c>[…]</c> and <c>{…}</c>.</summary>
    public static string Inline(YamlValue value) => value switch
    {
        YamlValue.Text text => Quoted(text.Value),
        YamlValue.Nothing => "null",
        YamlValue.List list => $"[{string.Join(", ", list.Items.Select(Inline))}]",
        YamlValue.Map map => $"{{{string.Join(", ", map.Entries.Select(entry => $"{Quoted(entry.Key)}: {Inline(entry.Value)}"))}}}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A key with its value in lines, indented by so many blanks.</summary>
    public static IEnumerable<string> Lines(string key, YamlValue value, int indent)
    {
        var head = $"{new string(' ', indent)}{Quoted(key)}:";
        return FitsInline(value, head.Length) ? [$"{head} {Inline(value)}"] : Lines(value, indent + 2).Prepend(head);
    }

    /// <summary>An item of a list in lines, its dash indented by so many blanks.</summary>
    public static IEnumerable<string> Item(YamlValue value, int indent)
    {
        var dash = new string(' ', indent) + "- ";
        if (FitsInline(value, dash.Length))
            return [dash + Inline(value)];
        var lines = Lines(value, indent + 2).ToList();
        return lines.Skip(1).Prepend(dash + lines[0][(indent + 2)..]);
    }

    private static IEnumerable<string> Lines(YamlValue value, int indent) => value switch
    {
        YamlValue.Text or YamlValue.Nothing => [new string(' ', indent) + Inline(value)],
        YamlValue.List list => list.Items.SelectMany(item => Item(item, indent)),
        YamlValue.Map map => map.Entries.SelectMany(entry => Lines(entry.Key, entry.Value, indent)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static bool FitsInline(YamlValue value, int before) => value switch
    {
        YamlValue.Text or YamlValue.Nothing => true,
        YamlValue.List { Items.Count: 0 } or YamlValue.Map { Entries.Count: 0 } => true,
        YamlValue.List list => list.Items.All(item => item is YamlValue.Text) && before + Inline(list).Length <= LongestInline,
        YamlValue.Map map => !map.InLines && map.Entries.All(entry => entry.Value is YamlValue.Text) && before + Inline(map).Length <= LongestInline,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A text in the plainest style that reads back as it is. Numbers get quotes, as the format's own examples have.</summary>
    private static string Quoted(string text)
    {
        if (Plain().IsMatch(text) && text is not ("null" or "Null" or "NULL"))
            return text;
        var isSimple = text.All(c => c is >= ' ' and < '\u007f' or > '\u00a0' and < '\ud800' && !IsBreak(c));
        return isSimple && (text.Contains('\\') || text.Contains('"'))
            ? $"'{text.Replace("'", "''", StringComparison.Ordinal)}'"
            : DoubleQuoted(text);
    }

    /// <summary>A text in double quotes, with the escapes of YAML.</summary>
    public static string DoubleQuoted(string text) => $"\"{string.Concat(text.Select(Escaped))}\"";

    private static string Escaped(char c) => c switch
    {
        '"' => "\\\"",
        '\\' => @"\\",
        '\n' => "\\n",
        '\r' => "\\r",
        '\t' => "\\t",
        >= ' ' and < '\u007f' or > '\u00a0' when !IsBreak(c) => c.ToString(),
        _ => $"\\u{(int)c:X4}",
    };

    // YAML 1.1 takes the separators of Unicode for line ends, YAML 1.2 (5.4) does not; a byte order mark may begin a document in both.
    private static bool IsBreak(char c) => c is '\u2028' or '\u2029' or '\ufeff';

    [GeneratedRegex(@"\A[A-Za-z](?:[A-Za-z0-9_./()@+-]|\x20(?=[A-Za-z0-9_(]))*\z", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Plain();
}
