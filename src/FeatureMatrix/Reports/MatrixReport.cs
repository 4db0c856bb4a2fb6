using FeatureMatrix.Bench;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports;

/// <summary>A choice of a filter: an id and what it is called.</summary>
public sealed record Choosable(string Id, string Name);

/// <summary>A column of a drawn matrix.</summary>
/// <param name="CardId">The card.</param>
/// <param name="SetupId">The setup; empty for the whole card.</param>
/// <param name="Name">The card's name.</param>
/// <param name="Below">The driver, where the column is a setup; else year and chip.</param>
/// <param name="Bar">The column's titles by tone.</param>
public sealed record MatrixColumn(string CardId, string SetupId, string Name, string Below, Bar Bar);

/// <summary>A row of a drawn matrix.</summary>
/// <param name="Id">The title.</param>
/// <param name="Name">The title's name.</param>
/// <param name="Year">Year of release, or empty.</param>
/// <param name="Engine">The engine, or empty.</param>
/// <param name="Genre">The genre, or empty.</param>
/// <param name="Weight">Its weight in the library.</param>
/// <param name="Feature">The feature that it loses most often over the columns, for grouping; empty where it loses none.</param>
/// <param name="Tiles">The cells in the order of the columns.</param>
public sealed record MatrixRow(
    string Id, string Name, string Year, string Engine, string Genre, double Weight, string Feature, IReadOnlyList<Tile> Tiles);

/// <summary>A coverage matrix as it is drawn, with the choices of its filters.</summary>
public sealed record MatrixReport
{
    /// <summary>The operating system whose setups are the columns; empty where whole cards are.</summary>
    public required string SystemId { get; init; }

    /// <summary>What it shows.</summary>
    public required string Heading { get; init; }

    /// <summary>The policy in words.</summary>
    public required string PolicyText { get; init; }

    /// <summary>The columns, left to right.</summary>
    public required IReadOnlyList<MatrixColumn> Columns { get; init; }

    /// <summary>The rows, top to bottom.</summary>
    public required IReadOnlyList<MatrixRow> Rows { get; init; }

    /// <summary>How many titles and cells there are, in words.</summary>
    public required string CountText { get; init; }

    /// <summary>Features that some cell loses or does not know.</summary>
    public required IReadOnlyList<Choosable> Features { get; init; }

    /// <summary>Operating systems that some cell goes by.</summary>
    public required IReadOnlyList<Choosable> Systems { get; init; }

    /// <summary>Tones that occur, from good to bad.</summary>
    public required IReadOnlyList<Choosable> Tones { get; init; }

    /// <summary>Strengths of loss that occur, severest first.</summary>
    public required IReadOnlyList<Choosable> Strengths { get; init; }

    /// <summary>Grades of evidence that occur, best first.</summary>
    public required IReadOnlyList<Choosable> Evidences { get; init; }

    /// <summary>Ways that occur: native, wrapper, forced.</summary>
    public required IReadOnlyList<Choosable> Ways { get; init; }

    /// <summary>How measured speeds stand to the limits, as far as that occurs; empty where nothing was measured.</summary>
    public required IReadOnlyList<Choosable> Speeds { get; init; }

    /// <summary>The same as a table, for every other format.</summary>
    public required Table Table { get; init; }

    /// <summary>Draws a coverage report.</summary>
    public static MatrixReport Of(Catalog catalog, CoverageReport coverage, Os? os)
    {
        var names = catalog.Features.ToDictionary(feature => feature.Id, feature => Names.Sentence(feature.Name));
        var rows = coverage.Rows.Select(row => RowOf(row, names)).ToList();
        var tiles = rows.SelectMany(row => row.Tiles).ToList();
        return new MatrixReport
        {
            SystemId = os?.Id ?? "",
            Heading = coverage.Heading,
            PolicyText = coverage.PolicyText,
            Columns = coverage.Columns.Select(ColumnOf).ToList(),
            Rows = rows,
            CountText = $"{Names.Count(rows.Count, "title")}, {Names.Count(tiles.Count, "cell")}",
            Features = tiles.SelectMany(tile => tile.Features).Distinct(StringComparer.Ordinal)
                .Select(id => new Choosable(id, names[id])).OrderBy(choice => choice.Name, StringComparer.Ordinal).ToList(),
            Systems = catalog.Oses.Where(one => tiles.Exists(tile => tile.Systems.Contains(one.Id, StringComparer.Ordinal)))
                .Select(one => new Choosable(one.Id, one.Name)).ToList(),
            Tones = Enum.GetValues<CellTone>().Select(tone => new Choosable(Tile.Kebab(tone), Names.Sentence(CellWording.Of(tone))))
                .Where(choice => tiles.Exists(tile => tile.Tone == choice.Id)).ToList(),
            Strengths = new[] { Strength.Severe, Strength.Ungraded, Strength.Cosmetic }.Select(strength => new Choosable(Tile.MarkOf(strength), Names.Sentence(Names.Of(strength))))
                .Where(choice => tiles.Exists(tile => tile.Marks.Contains(choice.Id, StringComparer.Ordinal))).ToList(),
            Evidences = Enum.GetValues<CellEvidence>().Select(evidence => new Choosable(Tile.Kebab(evidence), Names.Sentence(CellWording.Of(evidence))))
                .Where(choice => tiles.Exists(tile => tile.Evidence == choice.Id)).ToList(),
            Ways = tiles.Select(tile => tile.Way).Where(way => way.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(way => new Choosable(way, Names.Sentence(way))).ToList(),
            Speeds = SpeedsOf(coverage),
            Table = coverage.ToTable(),
        };
    }

    private static List<Choosable> SpeedsOf(CoverageReport coverage)
    {
        var speeds = coverage.Rows.SelectMany(row => row.Cells).Select(cell => cell.Speed?.Speed ?? new Speed.NotMeasured())
            .Select(speed => new Choosable(SpeedWording.Id(speed), Names.Sentence(SpeedWording.State(speed)))).Distinct().ToList();
        var order = new[] { "under", "over", "too-fast", "unclear", "not-measured" };
        return speeds.Count > 1 ? speeds.OrderBy(choice => Array.IndexOf(order, choice.Id)).ToList() : [];
    }

    private static MatrixColumn ColumnOf(CoverageColumn column) => new(
        column.Card.Id, column.Setup is { } setup ? Tile.IdOf(setup) : "", column.Card.Name,
        column.Setup is { } one
            ? $"{Names.Of(one.Driver)}{(one.Install == Install.Forced ? " (forced)" : "")}"
            : string.Join(", ", new[] { column.Card.Chip.Name, column.Card.Year is { } year ? year.ToString(System.Globalization.CultureInfo.InvariantCulture) : "" }.Where(part => part.Length > 0)),
        Bar.Of(column));

    private static MatrixRow RowOf(CoverageRow row, Dictionary<string, string> names)
    {
        var tiles = row.Cells.Select(cell => cell.Tile).ToList();
        var feature = tiles.SelectMany(tile => tile.Features).GroupBy(id => id, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => names[group.Key]).FirstOrDefault("");
        return new MatrixRow(
            row.Title.Id, row.Title.Name, row.Title.Year is { } year ? year.ToString(System.Globalization.CultureInfo.InvariantCulture) : "",
            row.Title.Engine, row.Title.Genre, row.Weight, feature, tiles);
    }
}
