namespace FeatureMatrix.Importing.Worksheets;

/// <summary>What is said of faults of a worksheet that no file of a collection could have.</summary>
internal static class WorksheetFaultTexts
{
    public const string NoWorkbook = "is no workbook in Office Open XML (.xlsx), or it is damaged or protected by a password";
    public const string TooLarge = "holds more than a worksheet can: at most 32 MiB unpacked in 1,000 parts, 200,000 filled cells and 16 million characters are read";
    public const string MissingSheet = "the sheet is missing; it may not be renamed";
    public const string SeenWithoutFeature = "no feature is named to the left of it";

    public static string BadName(string found) =>
        $"the worksheet's name is '{found}'; it consists of small letters, digits and hyphens, as it was made";

    public static string UnknownColumn(string found, string? near) =>
        $"unknown column '{found}'{(near is null ? "; columns may not be renamed" : $"; did you mean '{near}'?")}";

    public static string RepeatedColumn(string found) => $"a second column '{found}'";

    public static string MissingColumn(string name) => $"the column '{name}' is missing";

    public static string Missing(string column) => column switch
    {
        "date" => "a filled row needs its date, as year-month-day",
        "by" => "a filled row needs the name of whoever looked",
        _ => $"a filled row needs its {column}",
    };
}
