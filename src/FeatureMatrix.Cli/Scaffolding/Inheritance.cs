using FeatureMatrix.Model;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>What a new entity already has from its chip or engine, as remarks for its file.</summary>
internal static class Inheritance
{
    private const int Width = 110;

    /// <summary>What is recorded of a chip, without regard to driver or system.</summary>
    public static IReadOnlyList<string> OfChip(Catalog catalog, string chip)
    {
        var facts = catalog.Facts.Where(fact => fact.Scope.Chip?.Id == chip && fact.Scope is { Card: null, Drivers: null, Os: null, Api: null })
            .OrderBy(fact => fact.Capability.ToString(), StringComparer.Ordinal)
            .Select(fact => $"{fact.Capability} {Said(fact.Support)}").Distinct().ToList();
        return facts.Count == 0 ? [$"Nothing is recorded of {chip} yet."] : Wrapped($"Recorded of {chip}: {string.Join(", ", facts)}.");
    }

    /// <summary>What the renderers of a title need.</summary>
    public static IReadOnlyList<string> OfEngine(Title title) =>
    [
        .. title.Renderers.SelectMany(renderer => Wrapped(
            $"{renderer.Id} ({(renderer.Api is { } api ? api.ToString() : "software")}): "
            + (renderer.Needs.Count == 0
                ? "needs nothing in particular"
                : string.Join("; ", renderer.Needs.Select(need => $"{need.Strength.ToString().ToLowerInvariant()} {need}"))))),
    ];

    private static string Said(Support support) => support.ToString().ToLowerInvariant();

    private static List<string> Wrapped(string text)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length + word.Length > Width)
            {
                lines.Add(line);
                line = "  " + word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        lines.Add(line);
        return lines;
    }
}
