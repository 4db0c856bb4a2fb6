using System.Globalization;

namespace FeatureMatrix.Benchmarks.Engines;

/// <summary>The question in SQL, over the plain relations: join, add up, take the least.</summary>
internal static class SqlText
{
    /// <summary>The tables of the relations.</summary>
    public static IReadOnlyList<string> Tables { get; } =
    [
        "CREATE TABLE asks (title INTEGER, place INTEGER, demand INTEGER)",
        "CREATE TABLE costs (setup INTEGER, demand INTEGER, worst INTEGER, best INTEGER, reduced INTEGER)",
        "CREATE TABLE cell (title INTEGER, setup INTEGER, worst INTEGER, best INTEGER, rank BIGINT)",
    ];

    /// <summary>The counts over all cells.</summary>
    public const string Counts =
        "SELECT setup, sum(CASE WHEN worst < 32768 THEN 1 ELSE 0 END), sum(CASE WHEN best < 32768 THEN 1 ELSE 0 END), " +
        "sum(CASE WHEN worst = 0 THEN 1 ELSE 0 END), sum(CASE WHEN best = 0 THEN 1 ELSE 0 END), sum(worst), sum(best) FROM cell GROUP BY setup ORDER BY setup";

    /// <summary>The best route of each cell, in the order of the answer.</summary>
    public const string Routes = "SELECT rank % 256 FROM cell ORDER BY title, setup";

    /// <summary>What makes cells of routes with their ends <c>w</c>, <c>b</c> and <c>reduced</c>.</summary>
    public const string CellsOfRoutes =
        "SELECT title, setup, min(w), min(b), min(CASE WHEN b < 32768 THEN (((w >> 5) << 20) | ((b >> 5) << 9) | (reduced << 8) | place) ELSE 4611686018427387903 END) FROM route GROUP BY title, setup";

    /// <summary>The cells of some titles by joining.</summary>
    /// <param name="least">The engine's name for the lesser of two values.</param>
    /// <param name="first">The first title.</param>
    /// <param name="end">The title after the last.</param>
    public static string CellsByJoining(string least, int first, int end) => string.Create(
        CultureInfo.InvariantCulture,
        $"INSERT INTO cell WITH route AS (SELECT title, place, setup, {least}(sum(worst), 32768) AS w, {least}(sum(best), 32768) AS b, max(reduced) AS reduced FROM asks JOIN costs USING (demand) WHERE title >= {first} AND title < {end} GROUP BY title, place, setup) {CellsOfRoutes}");
}
