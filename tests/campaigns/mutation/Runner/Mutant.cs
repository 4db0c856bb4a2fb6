using System.Globalization;
using System.Text.Json;

namespace FeatureMatrix.Mutation;

/// <summary>A mutant as the report of dotnet-stryker has it.</summary>
/// <param name="Id">Its number in the library.</param>
/// <param name="Place">File, line and column.</param>
/// <param name="Change">What was put there.</param>
internal sealed record Mutant(int Id, string Place, string Change)
{
    /// <summary>Those that could be compiled.</summary>
    public static IEnumerable<Mutant> In(string report)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(report));
        foreach (var file in document.RootElement.GetProperty("files").EnumerateObject())
        {
            foreach (var mutant in file.Value.GetProperty("mutants").EnumerateArray())
            {
                if (mutant.GetProperty("status").GetString() is not ("Survived" or "NoCoverage" or "Killed" or "Timeout"))
                    continue;
                var start = mutant.GetProperty("location").GetProperty("start");
                yield return new(
                    int.Parse(mutant.GetProperty("id").GetString()!, CultureInfo.InvariantCulture),
                    $"{file.Name.Split("/FeatureMatrix/")[^1]}:{start.GetProperty("line").GetInt32()}:{start.GetProperty("column").GetInt32()}",
                    $"{mutant.GetProperty("mutatorName").GetString()}: {mutant.GetProperty("replacement").GetString()}");
            }
        }
    }

    /// <summary>Its line in the results: number, what came of it, place, change, and the test that failed.</summary>
    public string Line(string result, string? killer) =>
        string.Join('\t', new[] { Id.ToString(CultureInfo.InvariantCulture), result, Place, Change, killer ?? "" }.Select(part => string.Join(' ', part.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))));
}
