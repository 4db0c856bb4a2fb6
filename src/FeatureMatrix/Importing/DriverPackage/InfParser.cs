using System.Text;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>
/// Splits the text of an INF file into sections, entries and fields.
/// Source: Windows driver documentation, "General Syntax Rules for INF Files". One rule is stricter here: a quoted string
/// ends with its line, and a missing quote is a fault there, where the documentation lets it run on.
/// </summary>
internal sealed class InfParser
{
    private readonly string _text;
    private readonly InfFaults _faults;
    private readonly Dictionary<string, (int Line, string Name, List<InfEntry> Entries)> _sections = new(StringComparer.OrdinalIgnoreCase);
    private readonly StringBuilder _field = new();
    private List<InfEntry>? _current;
    private int _position;
    private int _line = 1;
    private int _lineStart;
    private int _fields;

    private InfParser(string text, InfFaults faults) => (_text, _faults) = (text, faults);

    private int Column => _position - _lineStart + 1;

    public static InfDocument Parse(string text, InfFaults faults) => new InfParser(text, faults).Document();

    private InfDocument Document()
    {
        while (_position < _text.Length && _fields <= InfLimits.Fields)
            ReadLine();
        var complete = _position >= _text.Length;
        if (!complete)
            _faults.Add(InfFaultKind.TooMuchContent, _line, Column);
        return new InfDocument(
            _sections.ToDictionary(s => s.Key, s => new InfSection(s.Value.Name, s.Value.Line, s.Value.Entries), StringComparer.OrdinalIgnoreCase),
            complete);
    }

    private void ReadLine()
    {
        SkipBlanks();
        if (AtLineEnd || Current == ';')
            SkipLine();
        else if (Current == '[')
            ReadHeading();
        else
            ReadEntry();
    }

    private void ReadHeading()
    {
        var (line, column, start) = (_line, Column, _position + 1);
        while (!AtLineEnd && Current != ']')
            _position++;
        var name = _text[start.._position].Trim();
        if (AtLineEnd)
            _faults.Add(InfFaultKind.UnclosedSectionName, line, column, name);
        else if (name.Length == 0)
            _faults.Add(InfFaultKind.EmptySectionName, line, column);
        if (!_sections.TryGetValue(name, out var section))
        {
            section = (line, name, []);
            _sections.Add(name, section);
            _fields++;
        }

        _current = section.Entries;
        SkipLine();
    }

    private void ReadEntry()
    {
        if (_current is null)
            _faults.Add(InfFaultKind.ContentBeforeSection, _line, Column);
        InfField? key = null;
        var values = new List<InfField>(2);
        var dropped = false;
        for (var more = true; more;)
        {
            var field = ReadField(keyAllowed: key is null && values.Count == 0);
            var stop = AtLineEnd ? '\n' : Current;
            if (stop == '=')
                key = field;
            else if (values.Count < InfLimits.FieldsInEntry)
                values.Add(field);
            else if (!dropped)
                Drop(field);
            more = stop is '=' or ',';
            if (more)
                _position++;
        }

        SkipLine();
        _fields += values.Count + 1;
        _current?.Add(new InfEntry(key, values));

        void Drop(InfField field)
        {
            dropped = true;
            _faults.Add(InfFaultKind.TooManyFields, field.Line, field.Column);
        }
    }

    /// <summary>Reads up to the comma, the key's equals sign or the end of the entry, and stays on it.</summary>
    private InfField ReadField(bool keyAllowed)
    {
        SkipBlanksAndContinuations();
        var (line, column) = (_line, Column);
        var kept = 0; // characters that trailing blanks must not take away
        var tooLong = false;
        _field.Clear();
        while (!AtLineEnd && Current is not (',' or ';') && !(keyAllowed && Current == '='))
        {
            if (Current == '"')
            {
                ReadQuoted();
                kept = _field.Length;
            }
            else if (Current == '\\' && ContinuesLine())
            {
                SkipBlanksAndContinuations();
            }
            else
            {
                var run = RunLength();
                _field.Append(_text, _position, Math.Min(run, InfLimits.FieldCharacters + 1));
                if (!char.IsWhiteSpace(Current) && Current != '\0')
                    kept = _field.Length;
                _position += run;
            }

            if (_field.Length > InfLimits.FieldCharacters)
            {
                if (!tooLong)
                    _faults.Add(InfFaultKind.FieldTooLong, line, column);
                tooLong = true;
                _field.Length = InfLimits.FieldCharacters;
                kept = Math.Min(kept, InfLimits.FieldCharacters);
            }
        }

        return new InfField(_field.ToString(0, kept), line, column);
    }

    private void ReadQuoted()
    {
        var (line, column) = (_line, Column);
        _position++;
        while (!AtLineEnd)
        {
            if (Current == '"')
            {
                _position++;
                if (AtLineEnd || Current != '"')
                    return;
            }

            if (_field.Length <= InfLimits.FieldCharacters)
                _field.Append(Current);
            _position++;
        }

        _faults.Add(InfFaultKind.UnclosedQuote, line, column);
    }

    /// <summary>
    /// How many characters belong together here: a %token%, because a semicolon inside it is part of it, or a run of
    /// backslashes, so that no run is looked at twice.
    /// </summary>
    private int RunLength()
    {
        if (Current == '%')
            return TokenLength();
        var end = _position + 1;
        while (Current == '\\' && end < _text.Length && _text[end] == '\\')
            end++;
        return end - _position;
    }

    /// <summary>Length of a %token% from here on its own line, or 1 for a lone percent sign.</summary>
    private int TokenLength()
    {
        var limit = Math.Min(_text.Length, _position + InfLimits.FieldCharacters);
        for (var end = _position + 1; end < limit && _text[end] is not ('\r' or '\n' or '"' or ','); end++)
        {
            if (_text[end] == '%')
                return end - _position + 1;
        }

        return 1;
    }

    private void SkipBlanksAndContinuations()
    {
        SkipBlanks();
        while (!AtLineEnd && Current == '\\' && ContinuesLine())
        {
            SkipLine();
            SkipBlanks();
        }
    }

    /// <summary>Whether only backslashes, blanks and a comment follow on this line, so that the entry goes on below.</summary>
    private bool ContinuesLine()
    {
        var i = _position;
        while (i < _text.Length && _text[i] == '\\')
            i++;
        while (i < _text.Length && IsBlank(_text[i]))
            i++;
        return i >= _text.Length || _text[i] is '\r' or '\n' or ';';
    }

    private bool AtLineEnd => _position >= _text.Length || _text[_position] is '\r' or '\n';

    private char Current => _text[_position];

    // Old editors end a file with control-Z, and pad with zero characters.
    private static bool IsBlank(char c) => c is not ('\r' or '\n') && (char.IsWhiteSpace(c) || c is '\0' or '\x1A' or '\uFEFF');

    private void SkipBlanks()
    {
        while (_position < _text.Length && IsBlank(Current))
            _position++;
    }

    private void SkipLine()
    {
        while (!AtLineEnd)
            _position++;
        if (_position >= _text.Length)
            return;
        _position += Current == '\r' && _position + 1 < _text.Length && _text[_position + 1] == '\n' ? 2 : 1;
        _line++;
        _lineStart = _position;
    }
}
