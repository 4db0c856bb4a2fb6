using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>What is said where a mapping and its sheet do not fit.</summary>
internal static class SheetFaultTexts
{
    private const int MostListed = 16;

    public static string NoSheet(string tab, IEnumerable<string> there) => $"the workbook has no sheet '{tab}'{Or(tab, there, "it has")}";

    public static string NoHeading(string heading, string place, IEnumerable<string> there) =>
        $"no heading '{heading}' in {place}{Or(heading, there, "there is")}";

    public static string SeveralHeadings(string heading, IEnumerable<string> letters) =>
        $"several columns are headed '{heading}'; name one of them by its letter: {string.Join(" or ", letters.Select(letter => $"'column {letter}'"))}";

    public static string NotExplained(string word, IEnumerable<string> there) =>
        $"the mapping does not say what '{word}' means{Or(word, there, "it explains")}; explain it under 'words', as 'unknown' if it says nothing";

    public static string Lacks(string what) => $"this row states an answer and no {what}";

    public static string NothingAnswers(string wanted) => $"no column holds answers; map one to {wanted}";

    public static string NoRenderer(string title, IEnumerable<string> renderers) =>
        $"'{title}' has several renderers and this answer belongs to one ({string.Join(", ", renderers)}); give it in a column 'renderer', for this name or under 'same'";

    public static string NoSuchTitle(string title, IEnumerable<string> there) =>
        Nearest.To(title, there) is { } near
            ? $"unknown title '{title}'; did you mean '{near}'?"
            : $"unknown title '{title}'; say under 'names' which it is, or let 'add-titles' add what the collection lacks";

    public static string NoValue(string feature, string word) => $"'{word}' says nothing about {feature}; it wants a single value, such as yes or no";

    private static string Or(string word, IEnumerable<string> there, string lead)
    {
        var all = there.Distinct(StringComparer.Ordinal).ToList();
        if (Nearest.To(word, all) is { } near)
            return $"; did you mean '{near}'?";
        return all.Count is 0 or > MostListed ? "" : $"; {lead} {string.Join(", ", all)}";
    }
}
