namespace FeatureMatrix.Importing;

/// <summary>Reads the tables under Importing/Tables, which are built into the assembly.</summary>
internal static class ImportTables
{
    /// <summary>The words of each line that says something; <c>#</c> begins a comment line.</summary>
    public static IEnumerable<string[]> Rows(string table)
    {
        using var stream = typeof(ImportTables).Assembly.GetManifestResourceStream($"Importing.Tables.{table}.txt")
            ?? throw new InvalidOperationException($"the table {table} is not built in");
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            if (line.Length > 0 && line[0] != '#')
                yield return line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        }
    }
}
