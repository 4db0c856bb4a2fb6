namespace FeatureMatrix.Importing.Workbooks;

/// <summary>How a value of the format stands in one cell.</summary>
internal enum CellForm
{
    /// <summary>A text.</summary>
    Text,

    /// <summary>A text, or a small record in braces: <c>{text: A manual, grade: documented}</c>.</summary>
    Braces,

    /// <summary>Several texts, separated by commas; one with a comma in it stands in quotes. One alone needs no list in the file.</summary>
    Items,

    /// <summary>The same, and a list in the file also where there is one.</summary>
    List,

    /// <summary>Several texts, each in a line of its own.</summary>
    Lines,

    /// <summary>Names with values: <c>windows-95: no, windows-98se: yes</c>.</summary>
    Pairs,
}

/// <summary>A column of a sheet.</summary>
/// <param name="Heading">What stands above it.</param>
/// <param name="Path">The keys from the row's record to the value; empty for a column that only says where the row belongs.</param>
/// <param name="Form">How the value stands in a cell.</param>
/// <param name="Meaning">What it means, for the note at the cell.</param>
internal sealed record BookColumn(string Heading, IReadOnlyList<string> Path, CellForm Form, string Meaning)
{
    /// <summary>The only legal words; empty where others are legal too.</summary>
    public IReadOnlyList<string> Legal { get; init; } = [];

    /// <summary>The kind of names that it offers, such as <c>card</c>; empty for none.</summary>
    public string Names { get; init; } = "";

    /// <summary>True where a new row needs it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>True for the keys of a record that have no column of their own.</summary>
    public bool IsRest { get; init; }

    /// <summary>True where it says what the row belongs to.</summary>
    public bool IsPlace => Path.Count == 0 && !IsRest;

    /// <summary>A column that says what the row belongs to.</summary>
    public static BookColumn Place(string heading, string meaning, string names = "", IReadOnlyList<string>? legal = null) =>
        new(heading, [], CellForm.Text, meaning) { Names = names, Legal = legal ?? [], IsRequired = true };
}
