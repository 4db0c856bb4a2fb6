using FeatureMatrix.Reports;

namespace FeatureMatrix.Rendering.Tables;

/// <summary>The formats in which any single table can be written.</summary>
public enum TableFormat
{
    /// <summary>Columns of plain text, for a terminal or a letter.</summary>
    Text,

    /// <summary>Comma-separated values (RFC 4180).</summary>
    Csv,

    /// <summary>JSON (RFC 8259).</summary>
    Json,

    /// <summary>A Markdown table with pipes.</summary>
    Markdown,

    /// <summary>Forum text in square brackets (BBCode).</summary>
    Forum,
}

/// <summary>Writes a table. Lines end in a single line feed; the same table gives the same text anywhere.</summary>
public static class TableWriter
{
    /// <summary>The table in a format.</summary>
    public static string Write(Table table, TableFormat format) => format switch
    {
        TableFormat.Text => TextTable.Write(table),
        TableFormat.Csv => CsvTable.Write(table),
        TableFormat.Json => JsonTable.Write(table),
        TableFormat.Markdown => MarkdownTable.Write(table),
        TableFormat.Forum => ForumTable.Write(table),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
