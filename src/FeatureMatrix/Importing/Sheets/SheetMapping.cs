using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Sheets;

/// <summary>What the answers in a sheet say.</summary>
public enum SheetStates
{
    /// <summary>Whether a title runs, and what was seen.</summary>
    Observations,

    /// <summary>What chips, cards and drivers have.</summary>
    Facts,

    /// <summary>What titles need, and how badly it shows when it is missing.</summary>
    Needs,
}

/// <summary>A value that a mapping gives, with its place in the mapping file.</summary>
internal sealed record Given(string Key, string Value, Origin Origin);

/// <summary>What a word in a sheet means: keys with values, none for a word that says nothing.</summary>
/// <param name="Word">The word as the mapping writes it; compared without regard to capitals and doubled blanks.</param>
/// <param name="IsSilent">True for a word that says no more than an empty cell.</param>
/// <param name="Value">Its one value (<c>yes</c>, <c>severe</c>, a level); empty where it has keys.</param>
/// <param name="Keys">Its keys and values: <c>runs</c>, features, <c>note</c>, or keys of a statement.</param>
internal sealed record Meaning(string Word, bool IsSilent, string Value, IReadOnlyList<Given> Keys);

/// <summary>What a column of a sheet holds.</summary>
internal abstract record ColumnRole
{
    private ColumnRole()
    {
    }

    /// <summary>The values of a key, such as the title or the date.</summary>
    public sealed record Holds(string Key) : ColumnRole;

    /// <summary>Answers about these things: a card, a feature, a driver.</summary>
    /// <param name="Keys">What the answers are about.</param>
    /// <param name="Words">Words of this column alone, which go before those of the whole sheet.</param>
    public sealed record Answers(IReadOnlyList<Given> Keys, IReadOnlyList<Meaning> Words) : ColumnRole;

    /// <summary>Nothing that is read.</summary>
    public sealed record PassedOver : ColumnRole;
}

/// <summary>A column as a mapping names it.</summary>
/// <param name="Heading">Its heading, or <c>column C</c>.</param>
/// <param name="Role">What it holds.</param>
/// <param name="Origin">Where the mapping says so.</param>
internal sealed record MappedColumn(string Heading, ColumnRole Role, Origin Origin);

/// <summary>Titles that the collection lacks are added with one renderer of this interface.</summary>
/// <param name="Api">API and level, as in a collection's file.</param>
/// <param name="Os">Systems, by id.</param>
internal sealed record NewTitles(Given Api, IReadOnlyList<Given> Os);

/// <summary>How to read somebody's own sheet.</summary>
internal sealed record SheetMapping
{
    /// <summary>Names the file that is written; an id.</summary>
    public required string Name { get; init; }

    /// <summary>What the answers say.</summary>
    public required SheetStates States { get; init; }

    /// <summary>Name of the sheet in the workbook; empty for the first.</summary>
    public string Tab { get; init; } = "";

    /// <summary>Where <see cref="Tab"/> is given.</summary>
    public Origin TabOrigin { get; init; } = Origin.None;

    /// <summary>The row of the headings, from 1.</summary>
    public int HeadingRow { get; init; } = 1;

    /// <summary>The last row that is read; null for all.</summary>
    public int? LastRow { get; init; }

    /// <summary>Who says so: <c>text</c>, <c>grade</c>, <c>link</c>.</summary>
    public required IReadOnlyList<Given> Source { get; init; }

    /// <summary>Keys that hold for all answers.</summary>
    public IReadOnlyList<Given> Same { get; init; } = [];

    /// <summary>The columns.</summary>
    public required IReadOnlyList<MappedColumn> Columns { get; init; }

    /// <summary>What words mean.</summary>
    public IReadOnlyList<Meaning> Words { get; init; } = [];

    /// <summary>What names in the sheet mean: a text to an id, or to several keys.</summary>
    public IReadOnlyList<Meaning> Names { get; init; } = [];

    /// <summary>Headings of columns whose empty cells repeat the one above.</summary>
    public IReadOnlyList<string> FillDown { get; init; } = [];

    /// <summary>How to add titles; null to add none.</summary>
    public NewTitles? NewTitles { get; init; }

    /// <summary>Texts as they are compared: no capitals, single blanks.</summary>
    public static string Plain(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
}
