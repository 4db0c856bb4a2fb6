using FeatureMatrix.Resolving.Bulk;
using Microsoft.Data.Sqlite;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>SQLite in memory, by joins.</summary>
internal static class SqliteEngine
{
    private const int TitlesInBatch = 250;

    public static void Answer(Relations relations, string? path)
    {
        using var connection = new SqliteConnection("Data Source=:memory:");
        connection.Open();
        foreach (var table in SqlText.Tables)
            Run(connection, table);
        using (var transaction = connection.BeginTransaction())
        {
            Insert(connection, "INSERT INTO asks VALUES ($0, $1, $2)", relations.Titles.SelectMany((routes, title) => routes.SelectMany((route, place) => route.Select(demand => new[] { title, place, demand }))));
            Insert(connection, "INSERT INTO costs VALUES ($0, $1, $2, $3, $4)", Enumerable.Range(0, relations.Setups).SelectMany(setup => Enumerable.Range(0, relations.Demands).Select(demand =>
            {
                var toll = relations[setup, demand];
                return new[] { setup, demand, toll.Worst, toll.Best, toll.Marks.HasFlag(BulkMarks.Reduced) ? 1 : 0 };
            })));
            transaction.Commit();
        }

        Run(connection, "CREATE INDEX asks_by_title ON asks (title)");
        Run(connection, "CREATE INDEX costs_by_demand ON costs (demand, setup, worst, best, reduced)");
        for (var first = 0; first < relations.Titles.Count; first += TitlesInBatch)
            Run(connection, SqlText.CellsByJoining("min", first, first + TitlesInBatch));
        SqlAnswer.Write(connection, relations, path);
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static void Insert(SqliteConnection connection, string sql, IEnumerable<int[]> rows)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        foreach (var row in rows)
        {
            command.Parameters.Clear();
            for (var i = 0; i < row.Length; i++)
                command.Parameters.AddWithValue($"${i}", row[i]);
            command.ExecuteNonQuery();
        }
    }
}
