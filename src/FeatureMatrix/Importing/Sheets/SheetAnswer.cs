namespace FeatureMatrix.Importing.Sheets;

/// <summary>A value with the cell, or the place in the mapping, that it came from.</summary>
internal sealed record Placed(string Value, string Place);

/// <summary>What one cell, or the whole of a row, says.</summary>
internal sealed record SheetAnswer
{
    /// <summary>What it is about, and what goes with it: title, card, driver, date, note.</summary>
    public required IReadOnlyDictionary<string, Placed> About { get; init; }

    /// <summary>What is said of features: the feature, and its state or strength.</summary>
    public IReadOnlyList<(Placed Feature, Placed State)> Features { get; init; } = [];

    /// <summary>Keys of a longer statement about the one feature, such as <c>effect</c> or <c>broken</c>.</summary>
    public IReadOnlyList<(string Key, Placed Value)> Details { get; init; } = [];
}

/// <summary>A column as it was found in the sheet.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Letters">As spreadsheets name it.</param>
/// <param name="Heading">Its heading; may be empty.</param>
/// <param name="Mapped">What the mapping says of it; null where it says nothing.</param>
internal sealed record FoundColumn(int Number, string Letters, string Heading, MappedColumn? Mapped);

/// <summary>What of a sheet was understood.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">All columns with a heading or a mapping, from left to right.</param>
/// <param name="Words">Each word that was met in answers, with its meaning and how often; in the order first met.</param>
/// <param name="BlankCount">Empty cells among the answers: not known.</param>
/// <param name="RowCount">Rows that answer something.</param>
/// <param name="EmptyRowCount">Rows without an answer.</param>
internal sealed record SheetUnderstanding(
    string Name, IReadOnlyList<FoundColumn> Columns, IReadOnlyList<(string Word, Meaning Meaning, int Count)> Words, int BlankCount, int RowCount, int EmptyRowCount);
