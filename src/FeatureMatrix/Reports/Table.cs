namespace FeatureMatrix.Reports;

/// <summary>
/// A table that any format can print. Rows and columns come in their final order; nothing downstream sorts or counts.
/// </summary>
/// <param name="Title">What it shows.</param>
/// <param name="Note">Policy, setup and date that belong to it; may be empty.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows, each with as many cells as there are columns.</param>
public sealed record Table(string Title, string Note, IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<TableCell>> Rows)
{
    /// <summary>The sentence that stands in place of a head without rows; empty where there is nothing better to say than that.</summary>
    public string WhenEmpty { get; init; } = "";

    /// <summary>What to read above or instead of the rows: the note, or why there are none.</summary>
    public string Lead => Rows.Count > 0 ? Note : WhenEmpty.Length > 0 ? WhenEmpty : $"{Note} Nothing to list.".TrimStart();
}

/// <summary>A column's heading, and whether it holds numbers.</summary>
public sealed record TableColumn(string Heading, bool IsNumber = false);

/// <summary>One cell of a table.</summary>
/// <param name="Text">What to read.</param>
/// <param name="Number">The figure behind the text, for formats that calculate; null where there is none.</param>
/// <param name="Tone">How it reads at a glance; null where that does not apply.</param>
public sealed record TableCell(string Text, double? Number = null, CellTone? Tone = null)
{
    /// <summary>A cell without content.</summary>
    public static TableCell Empty { get; } = new("");
}
