using System.Security.Cryptography;
using System.Text;
using FeatureMatrix.Importing.Worksheets;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>A column of a collection's workbook.</summary>
/// <param name="Heading">What stands above it.</param>
/// <param name="Meaning">What it means and, where it is left empty, what follows.</param>
/// <param name="Legal">The only legal words; empty where others are legal too.</param>
/// <param name="Names">The list of <see cref="CollectionBook.Names"/> that it offers; empty for none.</param>
/// <param name="IsRequired">True where a new row needs it.</param>
/// <param name="IsHidden">True for what the program needs and people do not.</param>
public sealed record CollectionBookColumn(string Heading, string Meaning, IReadOnlyList<string> Legal, string Names, bool IsRequired, bool IsHidden);

/// <summary>A sheet of a collection's workbook.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Meaning">What its rows are.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, with a text for each column; empty for nothing.</param>
public sealed record CollectionBookSheet(string Name, string Meaning, IReadOnlyList<CollectionBookColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>
/// A whole collection as sheets with a row for each record, for people who will not write YAML. Bench logs are no part of it: they are tables
/// already. Collections that it builds on are others' to change and no part of it either.
/// </summary>
/// <param name="Name">What the collection is called.</param>
/// <param name="Sheets">The sheets, also those without rows.</param>
/// <param name="Names">Names to choose from, by what they name.</param>
public sealed record CollectionBook(string Name, IReadOnlyList<CollectionBookSheet> Sheets, IReadOnlyDictionary<string, IReadOnlyList<string>> Names)
{
    private const int SignLength = 6;

    /// <summary>The workbook of a collection that loads.</summary>
    /// <param name="files">Its texts, those of the vocabulary included.</param>
    /// <param name="catalog">The same, loaded.</param>
    public static CollectionBook Of(IReadOnlyList<SourceText> files, Catalog catalog)
    {
        var open = Open(files);
        return new CollectionBook(catalog.Name, [.. BookLayout.Sheets.Select(sheet => SheetOf(sheet, open))], BookNames.Of(catalog, files));
    }

    /// <summary>The files of a collection whose records are rows.</summary>
    internal static IReadOnlyList<BookFile> Open(IEnumerable<SourceText> files) =>
        [.. files.Where(CollectionEditor.IsOfCollection).OrderBy(file => file.Path, StringComparer.Ordinal).Select(file => BookFile.Of(file.Path, file.Text))];

    /// <summary>What a cell shows: what is longer than a cell can be is cut.</summary>
    internal static string Shown(string text) => Plain(text) is var plain && plain.Length > BookLayout.LongestCell ? plain[..BookLayout.LongestCell] : plain;

    /// <summary>A text as a cell gives it back.</summary>
    internal static string Plain(string text) => text.Trim().ReplaceLineEndings("\n");

    /// <summary>A sign by which a cell is known again; it is as long for every text.</summary>
    internal static string Sign(string shown) =>
        shown.Length == 0 ? new string('-', SignLength) : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(shown)))[..SignLength];

    /// <summary>The sign of a column in the signs of a row; null where the row has none.</summary>
    internal static string? SignOf(string signs, int column) => signs.Length >= (column + 1) * SignLength ? signs.Substring(column * SignLength, SignLength) : null;

    private static CollectionBookSheet SheetOf(BookSheet sheet, IReadOnlyList<BookFile> files) => new(
        sheet.Name, sheet.Meaning,
        [
            new CollectionBookColumn(BookLayout.TakeOut, "yes takes the row out of the collection. A row that is deleted here stays there.", ["yes"], "", false, false),
            .. sheet.Columns.Select(column => new CollectionBookColumn(column.Heading, MeaningOf(column), column.Legal, column.Names, column.IsRequired, false)),
            new CollectionBookColumn(BookLayout.File, "The file that the row stands in. For a new row: the file that it is to go to. If empty: the usual one.", [], "file", false, false),
            new CollectionBookColumn(BookLayout.Place, "For the program. Empty for a new row.", [], "", false, true),
            new CollectionBookColumn(BookLayout.Written, "For the program. Empty for a new row.", [], "", false, true),
        ],
        [.. files.SelectMany(file => BookRows.Of(sheet, file)).Select(row => RowOf(sheet, row))]);

    private static string MeaningOf(BookColumn column) => column.Form switch
    {
        CellForm.Items or CellForm.List => column.Meaning + " Several stand apart by commas.",
        CellForm.Lines => column.Meaning + " Each in a line of its own.",
        CellForm.Pairs => column.Meaning + " Written as name: value, name: value.",
        CellForm.Text or CellForm.Braces => column.Meaning,
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static IReadOnlyList<string> RowOf(BookSheet sheet, BookRow row)
    {
        var cells = RowContent.Cells(sheet, row.Record, row.Places);
        List<string> shown = [.. sheet.Columns.Select(column => Shown(cells.GetValueOrDefault(column.Heading, "")))];
        return ["", .. shown, row.File.Path, row.Address, string.Concat(shown.Select(Sign))];
    }
}

/// <summary>The names that cells offer.</summary>
internal static class BookNames
{
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Of(Catalog catalog, IReadOnlyList<SourceText> files)
    {
        var apis = catalog.Features.Where(feature => feature.IsApi).ToList();
        return new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal)
        {
            ["feature"] = Ordered(catalog.Features.Select(feature => feature.Id)),
            ["capability"] = Ordered(catalog.Features.Where(feature => !feature.IsApi).SelectMany(Levels)),
            ["api"] = Ordered(apis.SelectMany(Levels)),
            ["os"] = [.. catalog.Oses.Select(os => os.Id)],
            ["bus"] = [.. catalog.Buses.Select(bus => bus.Id)],
            ["chip"] = [.. catalog.Chips.Select(chip => chip.Id)],
            ["card"] = [.. catalog.Cards.Select(card => card.Id)],
            ["specimen"] = [.. catalog.Specimens.Select(specimen => specimen.Id)],
            ["branch"] = [.. catalog.Branches.Where(branch => branch.Versions.All(driver => driver.Kind is DriverKind.Package or DriverKind.VbeExtension)).Select(branch => branch.Id)],
            ["driver"] = [.. catalog.Drivers.Where(driver => driver.Kind is DriverKind.Package or DriverKind.VbeExtension).Select(WorksheetLayout.Written)],
            ["wrapper"] = [.. catalog.WrapperVersions.Select(WorksheetLayout.Written).Prepend("none"), .. catalog.Wrappers.Select(wrapper => wrapper.Id)],
            ["title"] = [.. catalog.Titles.Select(title => title.Id)],
            ["renderer"] = Ordered(catalog.Titles.SelectMany(title => title.Renderers).Select(renderer => renderer.Id)),
            ["rig"] = [.. catalog.Rigs.Select(rig => rig.Id)],
            ["library"] = [.. catalog.Libraries.Select(library => library.Id)],
            ["source"] = [.. catalog.Sources.Select(source => source.Id)],
            ["engine"] = Under("engines", files),
            ["person"] = Under("people", files),
            ["file"] = Ordered(files.Where(CollectionEditor.IsOfCollection).Select(file => file.Path)),
        };
    }

    private static IEnumerable<string> Levels(Feature feature) => feature.HasLevels ? feature.Levels.Select(level => $"{feature.Id} {level}") : [feature.Id];

    private static IReadOnlyList<string> Under(string section, IReadOnlyList<SourceText> files) => Ordered(
        files.Where(file => file.Path.EndsWith(".yaml", StringComparison.Ordinal)).Select(file => BookFile.Of(file.Path, file.Text).Root[section]).OfType<TreeMap>()
            .SelectMany(map => map.Entries).Select(entry => entry.Key));

    private static IReadOnlyList<string> Ordered(IEnumerable<string> names) => [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
}
