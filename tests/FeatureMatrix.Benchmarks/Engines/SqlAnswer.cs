using System.Data.Common;
using System.Globalization;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>Takes the answer out of a database.</summary>
internal static class SqlAnswer
{
    /// <summary>Asks for the counts; with a path also writes the whole answer, for comparison with other engines.</summary>
    public static void Write(DbConnection connection, Relations relations, string? path)
    {
        var counts = Read(connection, SqlText.Counts, row => new SetupCounts(Int(row, 1), Int(row, 2), Int(row, 3), Int(row, 4), Long(row, 5), Long(row, 6)));
        if (path is null)
            return;
        using var answer = new AnswerFile(path, relations.Titles.Count, relations.Setups);
        var routes = Read(connection, SqlText.Routes, row => (byte)Long(row, 0)).ToArray();
        for (var title = 0; title < relations.Titles.Count; title++)
            answer.WriteTitles(title, routes.AsSpan(title * relations.Setups, relations.Setups));
        answer.WriteCounts(counts);
    }

    private static int Int(DbDataReader row, int column) => (int)Long(row, column);

    private static long Long(DbDataReader row, int column) => row.GetValue(column) switch
    {
        System.Numerics.BigInteger big => (long)big,
        var value => Convert.ToInt64(value, CultureInfo.InvariantCulture),
    };

    private static List<T> Read<T>(DbConnection connection, string sql, Func<DbDataReader, T> read)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var rows = command.ExecuteReader();
        var all = new List<T>();
        while (rows.Read())
            all.Add(read(rows));
        return all;
    }
}
