using System.Globalization;
using System.Text;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Importing.Sheets;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What was understood of somebody's own sheet, in words.</summary>
public static class SheetImportReport
{
    private const int MostNamed = 12;

    /// <summary>The columns, the words, the blanks, and what would be added; empty where the mapping could not be read.</summary>
    public static string Understood(SheetImport import)
    {
        ArgumentNullException.ThrowIfNull(import);
        if (import is not { Understood: { } sheet, Mapping: { } mapping })
            return "";
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Sheet {PlainWords.Of(sheet.Name)}, headings in row {mapping.HeadingRow}: {What(mapping.States)}.\n");
        foreach (var column in sheet.Columns)
            text.Append(CultureInfo.InvariantCulture, $"  column {column.Letters} {Quoted(column.Heading)}: {Of(column.Mapped?.Role)}\n");
        if (sheet.Words.Count > 0)
            text.Append("Words:\n");
        foreach (var (word, meaning, count) in sheet.Words)
            text.Append(CultureInfo.InvariantCulture, $"  {Quoted(word)} ({Names.Count(count, "cell")}): {Of(meaning)}\n");
        text.Append(CultureInfo.InvariantCulture, $"{Names.Count(sheet.BlankCount, "empty cell")} among the answers: not known, nothing is written.\n");
        text.Append(CultureInfo.InvariantCulture, $"{Names.Count(import.AnswerCount, "answer")} from {Names.Count(sheet.RowCount, "row")}; {Names.Count(sheet.EmptyRowCount, "row")} without any.\n");
        if (import.NewTitles.Count > 0)
        {
            var more = import.NewTitles.Count > MostNamed ? string.Create(CultureInfo.InvariantCulture, $" and {import.NewTitles.Count - MostNamed} more") : "";
            text.Append(CultureInfo.InvariantCulture, $"New titles: {string.Join(", ", import.NewTitles.Take(MostNamed).Select(PlainWords.Of))}{more}.\n");
        }

        foreach (var kept in import.Kept.Distinct(StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"Kept: {kept}.\n");
        return text.ToString();
    }

    private static string What(SheetStates states) => states switch
    {
        SheetStates.Observations => "whether titles run and what was seen",
        SheetStates.Facts => "what hardware and drivers have",
        SheetStates.Needs => "what titles need",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Of(ColumnRole? role) => role switch
    {
        null => "not in the mapping, not read",
        ColumnRole.PassedOver => "not read, as the mapping says",
        ColumnRole.Holds holds => holds.Key,
        ColumnRole.Answers answers => "answers about " + string.Join(", ", answers.Keys.Select(key => $"{key.Key} {PlainWords.Of(key.Value)}")),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Of(Meaning meaning)
    {
        if (meaning.IsSilent)
            return "says nothing";
        return meaning.Value.Length > 0 ? meaning.Value : string.Join(", ", meaning.Keys.Select(key => $"{key.Key} {PlainWords.Of(key.Value)}"));
    }

    private static string Quoted(string text) => $"'{PlainWords.Of(text)}'";
}
