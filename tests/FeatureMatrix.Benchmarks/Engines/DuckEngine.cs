using System.Globalization;
using DuckDB.NET.Data;
using FeatureMatrix.Resolving.Bulk;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>DuckDB in memory on all cores, by joins or by bit masks; titles in batches, so that the groups fit into memory.</summary>
internal static class DuckEngine
{
    private const int TitlesInBatch = 250;

    public static void Answer(Relations relations, string? path, bool masks)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        foreach (var table in SqlText.Tables)
            Run(connection, table);
        var ways = masks ? relations.Ways.SelectMany(way => way).Distinct().Order().Select(way => LoadMasks(connection, relations, way)).ToList() : [];
        if (!masks)
            Load(connection, relations);
        for (var first = 0; first < relations.Titles.Count; first += TitlesInBatch)
            Run(connection, masks ? CellsByMasks(ways, first, first + TitlesInBatch) : SqlText.CellsByJoining("least", first, first + TitlesInBatch));
        SqlAnswer.Write(connection, relations, path);
    }

    private static void Run(DuckDBConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static void Load(DuckDBConnection connection, Relations relations)
    {
        using (var asks = connection.CreateAppender("asks"))
        {
            foreach (var (title, place, demand) in relations.Titles.SelectMany((routes, title) => routes.SelectMany((route, place) => route.Select(demand => (title, place, demand)))))
                asks.CreateRow().AppendValue(title).AppendValue(place).AppendValue(demand).EndRow();
        }

        using var costs = connection.CreateAppender("costs");
        for (var setup = 0; setup < relations.Setups; setup++)
        {
            for (var demand = 0; demand < relations.Demands; demand++)
            {
                var toll = relations[setup, demand];
                costs.CreateRow().AppendValue(setup).AppendValue(demand).AppendValue((int)toll.Worst).AppendValue((int)toll.Best).AppendValue(toll.Marks.HasFlag(BulkMarks.Reduced) ? 1 : 0).EndRow();
            }
        }
    }

    /// <summary>For one way: a row for each route and a row for each setup; the masks of every class are as many 64-bit columns as it takes.</summary>
    private static MaskNames LoadMasks(DuckDBConnection connection, Relations relations, int way)
    {
        var masks = new Masks(relations, way);
        var names = new MaskNames(masks, way);
        Run(connection, $"CREATE TABLE {names.Asked} (title INTEGER, place INTEGER{string.Concat(names.Route.SelectMany(name => name).Select(name => $", {name} UBIGINT"))})");
        Run(connection, $"CREATE TABLE {names.Offered} (setup INTEGER{string.Concat(names.Worst.Concat(names.Best).SelectMany(name => name).Select(name => $", {name} UBIGINT"))})");
        using (var asked = connection.CreateAppender(names.Asked))
        {
            for (var title = 0; title < relations.Titles.Count; title++)
            {
                for (var place = 0; place < relations.Titles[title].Count; place++)
                {
                    if (relations.Ways[title][place] != way)
                        continue;
                    var row = asked.CreateRow().AppendValue(title).AppendValue(place);
                    foreach (var word in masks.OfRoute(relations.Titles[title][place]))
                        row.AppendValue(word);
                    row.EndRow();
                }
            }
        }

        using var offered = connection.CreateAppender(names.Offered);
        for (var setup = 0; setup < relations.Setups; setup++)
        {
            var row = offered.CreateRow().AppendValue(setup);
            foreach (var word in masks.OfSetup(setup, atBest: false).Concat(masks.OfSetup(setup, atBest: true)))
                row.AppendValue(word);
            row.EndRow();
        }

        return names;
    }

    private static string CellsByMasks(IReadOnlyList<MaskNames> ways, int first, int end) =>
        $"INSERT INTO cell WITH route AS ({string.Join(" UNION ALL ", ways.Select(names => RoutesByMasks(names, first, end)))}) {SqlText.CellsOfRoutes}";

    private static string RoutesByMasks(MaskNames names, int first, int end)
    {
        var worst = names.Ends(names.Worst, "(({0} + {1}) << 10) | ({2} << 5) | {0}");
        var best = names.Ends(names.Best, "({0} << 10) | (({2} + {1}) << 5) | {1}");
        var reduced = names.Any(names.Worst, MaskClass.Reduced);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"SELECT title, place, setup, {worst} AS w, {best} AS b, ({reduced})::INTEGER AS reduced FROM {names.Asked}, {names.Offered} WHERE title >= {first} AND title < {end}");
    }
}

/// <summary>The tables and columns of the masks of one way.</summary>
internal sealed class MaskNames(Masks masks, int way)
{
    private static readonly MaskClass[] Classes = Enum.GetValues<MaskClass>();

    public string Asked { get; } = string.Create(CultureInfo.InvariantCulture, $"asked{way}");

    public string Offered { get; } = string.Create(CultureInfo.InvariantCulture, $"offered{way}");

    public IReadOnlyList<IReadOnlyList<string>> Route { get; } = Names(masks, "r");

    public IReadOnlyList<IReadOnlyList<string>> Worst { get; } = Names(masks, "w");

    public IReadOnlyList<IReadOnlyList<string>> Best { get; } = Names(masks, "b");

    /// <summary>A code: does not run, or the counts of severe {0}, ungraded {1} and cosmetic {2} losses put together.</summary>
    public string Ends(IReadOnlyList<IReadOnlyList<string>> end, string code) =>
        $"CASE WHEN {Any(end, MaskClass.Stops)} THEN 32768 ELSE {string.Format(CultureInfo.InvariantCulture, code, Count(end, MaskClass.Severe), Count(end, MaskClass.Ungraded), Count(end, MaskClass.Cosmetic))} END";

    public string Any(IReadOnlyList<IReadOnlyList<string>> end, MaskClass of) =>
        Route[(int)of].Count == 0 ? "false" : $"({string.Join(" | ", Pairs(end, of))}) <> 0";

    private string Count(IReadOnlyList<IReadOnlyList<string>> end, MaskClass of) =>
        Route[(int)of].Count == 0 ? "0" : $"({string.Join(" + ", Pairs(end, of).Select(pair => $"bit_count({pair})::INTEGER"))})";

    private IEnumerable<string> Pairs(IReadOnlyList<IReadOnlyList<string>> end, MaskClass of) => Route[(int)of].Zip(end[(int)of], (route, setup) => $"({route} & {setup})");

    private static List<IReadOnlyList<string>> Names(Masks masks, string prefix) =>
        Classes.Select(of => (IReadOnlyList<string>)Enumerable.Range(0, masks.Words(of)).Select(word => $"{prefix}{of}{word}").ToList()).ToList();
}
