namespace FeatureMatrix.Importing.Workbooks;

/// <summary>What is said of faults of a collection's workbook that no file of a collection could have.</summary>
internal static class WorkbookFaultTexts
{
    public const string NoSheets = "holds none of the sheets of a collection's workbook";
    public const string OnlyYes = "only 'yes' takes a row out";
    public const string CutText = "the text is longer than a cell can be; change it in its file";
    public const string FileOfThere = "a row that is there already cannot go to another file; move its record in the files";
    public const string NotInAMap = "where the needs of a strength have effects as a map, an any-of needs a strength that has none yet, or the files";

    /// <summary>The sheets of the workbook that hold no records.</summary>
    public static readonly IReadOnlyList<string> OtherSheets = ["Read me", "Columns", "Words"];

    public static string RenamedSheet(string near) => $"unknown sheet; did you mean '{near}'? Sheets may not be renamed";

    public static string Missing(string heading) => $"a new row needs its {heading}";

    public static string NotOneOf(string found, IEnumerable<string> legal) => $"'{found}' is none of: {string.Join(", ", legal)}";

    public static string NoPlace(string kind) => $"a row of kind '{kind}' cannot stand here: a wrapper's supply belongs to one of its versions";

    public static string Unknown(string heading, string found, string? near) =>
        $"there is no {heading} '{found}' for this row to belong to{(near is null ? "" : $"; did you mean '{near}'?")}";

    public static string ThereAlready(string heading, string found) => $"'{found}' is there already; change its row, or give this one another {heading}";

    public static string Unreadable(CellForm form) => form switch
    {
        CellForm.Items or CellForm.List => "cannot be read as a list: items stand apart by commas, and one with a comma, colon or bracket in it stands in double quotes",
        CellForm.Pairs => "cannot be read as names with values: name: value, name: value; a value with a comma or colon in it stands in double quotes",
        CellForm.Braces => "cannot be read as a small record in braces, such as {text: A manual, grade: documented}",
        CellForm.Text or CellForm.Lines => "cannot be read",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static string BadFile(string found) =>
        $"'{found}' names no file of this collection: small letters, digits and hyphens, folders with '/', and '.yaml' at the end; not in vocabulary/ or runs/";

    public static string ChangedMeanwhile(string stands) => $"also changed in the collection since the workbook was written, where it is '{stands}' now; the workbook's word would replace it";
}
