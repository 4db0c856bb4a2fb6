using System.Text;
using FeatureMatrix.Loading.Writing;

namespace FeatureMatrix.Importing.Worksheets;

/// <summary>
/// One line of a YAML file that grows from left to right, its maps and lists in one line; each value is noted with the cell that it came from.
/// </summary>
internal sealed class FlowLine(string path, int line, PlaceMap places)
{
    private readonly StringBuilder _text = new();

    /// <summary>Raw text, such as indentation or a bracket.</summary>
    public FlowLine Raw(string text)
    {
        _text.Append(text);
        return this;
    }

    /// <summary>A key with a text.</summary>
    public FlowLine Pair(string key, string value, string place) => Pair(key, place, value, place);

    /// <summary>A key with a text, each from a cell of its own.</summary>
    public FlowLine Pair(string key, string keyPlace, string value, string valuePlace)
    {
        Separate();
        Note(key, keyPlace);
        _text.Append(Quoted(key)).Append(": ");
        Note(value, valuePlace);
        _text.Append(Quoted(value));
        return this;
    }

    /// <summary>A text in a list.</summary>
    public FlowLine Item(string value, string place)
    {
        Separate();
        Note(value, place);
        _text.Append(Quoted(value));
        return this;
    }

    /// <summary>Begins a map or list: a key, if any, and the bracket.</summary>
    public FlowLine Open(string key, char bracket, string place = "")
    {
        Separate();
        if (place.Length > 0)
            Note(key, place);
        if (key.Length > 0)
            _text.Append(Quoted(key)).Append(": ");
        _text.Append(bracket);
        return this;
    }

    /// <summary>Ends the innermost map or list.</summary>
    public FlowLine Close(char bracket) => Raw(bracket.ToString());

    /// <summary>The line.</summary>
    public override string ToString() => _text.ToString();

    /// <summary>Notes where what follows came from.</summary>
    public FlowLine Note(string value, string place)
    {
        places.Add(path, line, _text.Length + 1, value, place);
        return this;
    }

    private void Separate()
    {
        if (_text.Length > 0 && _text[^1] is not ('{' or '[' or ' '))
            _text.Append(", ");
    }

    // Plain where a key of the format or an id needs no quotes.
    private static string Quoted(string text) =>
        text.Length > 0 && char.IsAsciiLetterLower(text[0]) && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') && text != "null"
            ? text
            : YamlText.DoubleQuoted(text);
}
