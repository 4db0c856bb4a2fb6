using System.Text;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>
/// Replaces %tokens% by the strings of an INF file. Tokens inside a string are not replaced again.
/// Source: Windows driver documentation, "INF Strings Section"; where a file has only strings of certain languages, the
/// section that comes first by name stands in, because the reader's language is not known here.
/// </summary>
internal sealed class InfStrings
{
    private readonly Dictionary<string, string> _strings = new(StringComparer.OrdinalIgnoreCase);
    private readonly InfFaults _faults;
    private int _written;

    public InfStrings(InfDocument document, InfFaults faults)
    {
        _faults = faults;
        var section = document.Section("Strings") ?? document.Sections.Values
            .Where(s => s.Name.StartsWith("Strings.", StringComparison.OrdinalIgnoreCase))
            .MinBy(s => s.Name.ToUpperInvariant(), StringComparer.Ordinal);
        foreach (var entry in section?.Entries ?? [])
        {
            // An unquoted string ends at a comma, as any value does.
            if (entry.Key is { } key && !_strings.TryAdd(key.Text.Replace("%%", "%", StringComparison.Ordinal), entry.Values[0].Text))
                faults.Add(InfFaultKind.DuplicateString, key.Line, key.Column, key.Text);
        }
    }

    /// <summary>Whether every token so far could be replaced within the limit.</summary>
    public bool WithinLimit => _written <= InfLimits.SubstitutedCharacters;

    /// <summary>The field's text with its tokens replaced; <paramref name="resolved"/> is false where one is not defined.</summary>
    public string Expand(InfField field, out bool resolved)
    {
        var text = field.Text;
        resolved = true;
        if (!text.Contains('%', StringComparison.Ordinal))
            return text;
        var result = new StringBuilder();
        for (var i = 0; i < text.Length;)
        {
            var open = text.IndexOf('%', i);
            var close = open < 0 ? -1 : text.IndexOf('%', open + 1);
            if (close < 0)
            {
                result.Append(text, i, text.Length - i);
                break;
            }

            result.Append(text, i, open - i);
            var token = text[(open + 1)..close];
            if (token.Length == 0)
                result.Append('%');
            else if (_strings.TryGetValue(token, out var value))
                result.Append(value);
            else
            {
                resolved = false;
                result.Append(text, open, close + 1 - open);
                _faults.Add(InfFaultKind.UnknownToken, field.Line, field.Column, token);
            }

            i = close + 1;
            if (result.Length > InfLimits.FieldCharacters)
                result.Length = InfLimits.FieldCharacters;
        }

        _written += result.Length;
        if (_written > InfLimits.SubstitutedCharacters)
        {
            resolved = false;
            return text;
        }

        return result.ToString();
    }
}
