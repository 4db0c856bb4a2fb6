namespace FeatureMatrix.Importing.Workbooks;

/// <summary>One step on the way from the top of a file to the record of a row.</summary>
internal abstract record BookStep
{
    private BookStep()
    {
    }

    /// <summary>Into the value of a key of the format.</summary>
    public sealed record Key(string Text) : BookStep;

    /// <summary>Into an entry whose key stands in a column.</summary>
    /// <param name="Column">The column.</param>
    /// <param name="MayBegin">True where a row may begin the entry; false where another sheet has to have it.</param>
    public sealed record Entry(string Column, bool MayBegin = false) : BookStep;

    /// <summary>Into an entry of a map, or an item of a list of names.</summary>
    public sealed record Name(string Column) : BookStep;

    /// <summary>Into an item of a list, or what stands alone in its place. The column tells the item; empty where its number in the list does.</summary>
    public sealed record Item(string Column = "") : BookStep;

    /// <summary>Into one need of a strength: an item of a list, an entry of a map, or a text alone.</summary>
    public sealed record Need : BookStep;
}

/// <summary>Where rows of a sheet may stand in a file.</summary>
/// <param name="Kind">What the column <c>kind</c> says of it; empty for a sheet without that column.</param>
/// <param name="HasVersion">True where the row belongs to one version.</param>
/// <param name="Steps">The way.</param>
internal sealed record BookPlace(string Kind, bool HasVersion, IReadOnlyList<BookStep> Steps)
{
    /// <summary>The top-level key.</summary>
    public string Section => ((BookStep.Key)Steps[0]).Text;

    /// <summary>True for a record that has an id and stands right under its section.</summary>
    public bool IsRecord => Steps is [BookStep.Key, BookStep.Entry];

    /// <summary>A way as text: <c>chips/{id}/supply/{feature+}/[]</c>; <c>+</c> where a row may begin the entry, <c>*</c> for names, <c>?</c> for needs.</summary>
    public static BookPlace Of(string way, string kind = "", bool hasVersion = false) => new(kind, hasVersion, [.. way.Split('/').Select(StepOf)]);

    private static BookStep StepOf(string part) => part switch
    {
        "?" => new BookStep.Need(),
        ['[', .. var column, ']'] => new BookStep.Item(column),
        ['{', .. var column, '+', '}'] => new BookStep.Entry(column, MayBegin: true),
        ['{', .. var column, '*', '}'] => new BookStep.Name(column),
        ['{', .. var column, '}'] => new BookStep.Entry(column),
        _ => new BookStep.Key(part),
    };
}

/// <summary>What kind of record the rows of a sheet are.</summary>
internal enum RowKind
{
    /// <summary>Keys with values; or a text alone that stands for one of the keys.</summary>
    Plain,

    /// <summary>A statement about supply, short or long.</summary>
    Supply,

    /// <summary>A need, which may stand as the key of a map.</summary>
    Need,
}

/// <summary>A sheet of a collection's workbook: which records are its rows, and what its columns hold.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="Meaning">What its rows are.</param>
/// <param name="Places">Where they may stand.</param>
/// <param name="Columns">The columns, those that say what a row belongs to first.</param>
internal sealed record BookSheet(string Name, string Meaning, IReadOnlyList<BookPlace> Places, IReadOnlyList<BookColumn> Columns)
{
    /// <summary>What kind of record a row is.</summary>
    public RowKind Kind { get; init; }

    /// <summary>The column whose value may stand alone in the place of the record; empty for none.</summary>
    public string Bare { get; init; } = "";

    /// <summary>The column with that heading; null for none.</summary>
    public BookColumn? Column(string heading) => Columns.FirstOrDefault(column => column.Heading == heading);
}
