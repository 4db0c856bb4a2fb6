using FeatureMatrix.Model;

namespace FeatureMatrix.Importing;

/// <summary>What is wrong with a place in a file that is being imported.</summary>
public enum ImportFaultKind
{
    /// <summary>The file does not begin as its format must; nothing was read.</summary>
    NotThisFormat,

    /// <summary>The file is longer than an import reads; the rest was not read.</summary>
    FileTooLong,

    /// <summary>The line is longer than the format allows; it was not understood.</summary>
    LineTooLong,

    /// <summary>No kind of line begins with this word. The line is kept.</summary>
    UnknownKeyword,

    /// <summary>A word, number or text is missing here; found is what was expected.</summary>
    Missing,

    /// <summary>Not a whole decimal number from 0 to 4294967295.</summary>
    NotDecimal,

    /// <summary>Not <c>0x</c> with 2, 4 or 8 hexadecimal digits, or not of the length this place needs.</summary>
    NotHexadecimal,

    /// <summary>A quoted text that does not end, or an escape that the format does not have.</summary>
    BadText,

    /// <summary>A byte outside printable ASCII; the format writes such bytes as escapes.</summary>
    BadByte,

    /// <summary>Words after the end of what this kind of line holds.</summary>
    Surplus,

    /// <summary>A line that must stand inside a section stands before the first.</summary>
    OutsideSection,

    /// <summary>The section was opened before, with the same numbers. Both are kept.</summary>
    RepeatedSection,

    /// <summary>The field was given before in this section. The first one counts.</summary>
    RepeatedField,

    /// <summary>The structure has another size than its public definition: the words may not mean what they seem.</summary>
    WrongStructureSize,

    /// <summary>The word is wider or narrower than the field of that name.</summary>
    WrongFieldWidth,

    /// <summary>The file stops without its last line: the machine stopped during the last step, or the file was cut.</summary>
    NoEnd,

    /// <summary>Anything after the line that ends the file.</summary>
    AfterEnd,

    /// <summary>Not the name of an extension, in a list of extensions. It is left out.</summary>
    NotAnExtension,

    /// <summary>There are more faults than are listed.</summary>
    More,
}

/// <summary>One fault of an imported file, as data; the sentence is made where reports are worded.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Column">The byte of the line, counted from 1.</param>
/// <param name="Found">What stands there, printable and at most 60 characters long; empty for nothing.</param>
public sealed record ImportFault(ImportFaultKind Kind, int Line, int Column, string Found);

/// <summary>Collects faults up to a limit, so that a broken file cannot fill the memory with complaints.</summary>
internal sealed class ImportFaults
{
    /// <summary>The number of faults listed before <see cref="ImportFaultKind.More"/> ends the list.</summary>
    public const int Limit = 100;

    private const int LongestQuote = 60;

    private readonly List<ImportFault> _faults = [];

    public void Add(ImportFaultKind kind, int line, int column, string found)
    {
        if (_faults.Count < Limit)
            _faults.Add(new ImportFault(kind, line, column, Printable(found)));
        else if (_faults.Count == Limit)
            _faults.Add(new ImportFault(ImportFaultKind.More, line, column, ""));
    }

    public EquatableList<ImportFault> ToList() => new(_faults);

    private static string Printable(string text)
    {
        var cut = text.Length > LongestQuote ? text[..LongestQuote] : text;
        return string.Concat(cut.Select(c => c is >= ' ' and <= '~' ? c : '?'));
    }
}
