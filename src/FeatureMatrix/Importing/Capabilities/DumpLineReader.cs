using System.Buffers;
using System.Globalization;
using System.Text;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>
/// Reads the words of one line. The first fault is remembered and every later read gives an empty value, so that a line
/// is read straight through and judged once at its end.
/// </summary>
internal sealed class DumpLineReader(string text, int line)
{
    private static readonly SearchValues<char> HexDigits = SearchValues.Create("0123456789ABCDEFabcdef");

    private int _at;

    /// <summary>The first thing that is wrong with the line; null so far.</summary>
    public ImportFault? Fault { get; private set; }

    public int Line => line;

    public bool AtEnd => _at >= text.Length || Fault is not null;

    /// <summary>A word without blanks.</summary>
    public string Word(string expected)
    {
        var (word, _) = Next(expected);
        return word;
    }

    /// <summary>A whole number in decimal.</summary>
    public uint Decimal(string expected)
    {
        var (word, column) = Next(expected);
        if (Fault is not null)
            return 0;
        if (word.All(char.IsAsciiDigit) && uint.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var value))
            return value;
        Fail(ImportFaultKind.NotDecimal, column, word);
        return 0;
    }

    /// <summary>A word in hexadecimal with its width in bytes; 0 for any of 1, 2 and 4.</summary>
    public (uint Value, int Bytes) Hexadecimal(string expected, int bytes = 0)
    {
        var (word, column) = Next(expected);
        if (Fault is not null)
            return (0, 0);
        var digits = word.Length - 2;
        var hasWidth = bytes == 0 ? digits is 2 or 4 or 8 : digits == bytes * 2;
        if (hasWidth && word.StartsWith("0x", StringComparison.Ordinal) && word.AsSpan(2).IndexOfAnyExcept(HexDigits) < 0)
            return (uint.Parse(word.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture), digits / 2);
        Fail(ImportFaultKind.NotHexadecimal, column, word);
        return (0, 0);
    }

    /// <summary>A text between quotation marks; an escape <c>\xHH</c> is the byte of that number, read as Latin-1.</summary>
    public string Quoted(string expected)
    {
        SkipBlank(expected);
        if (Fault is not null)
            return "";
        var start = _at;
        if (text[_at] != '"')
            return Fail(ImportFaultKind.BadText, start, text[start..]);
        var value = new StringBuilder();
        for (_at++; _at < text.Length; _at++)
        {
            switch (text[_at])
            {
                case '"':
                    _at++;
                    return _at < text.Length && text[_at] != ' '
                        ? Fail(ImportFaultKind.BadText, _at, text[_at..])
                        : value.ToString();
                case '\\' when _at + 1 < text.Length && text[_at + 1] is '"' or '\\':
                    value.Append(text[++_at]);
                    break;
                case '\\' when IsByteEscape(_at):
                    value.Append((char)byte.Parse(text.AsSpan(_at + 2, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture));
                    _at += 3;
                    break;
                case '\\':
                    return Fail(ImportFaultKind.BadText, _at, text[_at..]);
                default:
                    value.Append(text[_at]);
                    break;
            }
        }

        return Fail(ImportFaultKind.BadText, start, text[start..]);
    }

    /// <summary>True where the next word is this one.</summary>
    public bool NextIs(string word)
    {
        if (AtEnd)
            return false;
        var rest = text.AsSpan(_at > 0 ? _at + 1 : 0);
        return rest.StartsWith(word, StringComparison.Ordinal) && (rest.Length == word.Length || rest[word.Length] == ' ');
    }

    /// <summary>The next word must be this one.</summary>
    public void Literal(string word)
    {
        var (found, column) = Next(word);
        if (Fault is null && found != word)
            Fail(ImportFaultKind.Missing, column, word);
    }

    /// <summary>Notes a fault that the reader of the whole line sees; an earlier one stands.</summary>
    public void Refuse(ImportFaultKind kind, int at, string found) => Fail(kind, at, found);

    /// <summary>The line must end here.</summary>
    public void End()
    {
        if (Fault is null && _at < text.Length)
            Fail(ImportFaultKind.Surplus, _at, text[_at..]);
    }

    private bool IsByteEscape(int at) =>
        at + 3 < text.Length && text[at + 1] == 'x' && char.IsAsciiHexDigit(text[at + 2]) && char.IsAsciiHexDigit(text[at + 3]);

    private (string Word, int Column) Next(string expected)
    {
        SkipBlank(expected);
        if (Fault is not null)
            return ("", 0);
        var start = _at;
        var end = text.IndexOf(' ', start);
        _at = end < 0 ? text.Length : end;
        return (text[start.._at], start);
    }

    /// <summary>Words are parted by exactly one blank; the first has none before it.</summary>
    private void SkipBlank(string expected)
    {
        if (Fault is not null)
            return;
        if (_at > 0 && _at < text.Length)
            _at++;
        if (_at >= text.Length || text[_at] == ' ')
            Fail(ImportFaultKind.Missing, _at, expected);
    }

    private string Fail(ImportFaultKind kind, int column, string found)
    {
        Fault ??= new ImportFault(kind, line, column + 1, found);
        return "";
    }
}
