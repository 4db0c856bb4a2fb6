using FeatureMatrix.Loading.Schema;

namespace FeatureMatrix.Importing.Workbooks;

/// <summary>Columns from the shapes of the format, so that a key that the format gains is a column at once.</summary>
internal static class ShapeColumns
{
    /// <summary>Keys that name other records, with the kind of names that their cells offer.</summary>
    private static readonly Dictionary<string, string> References = new(StringComparer.Ordinal)
    {
        ["chip"] = "chip",
        ["like"] = "chip",
        ["card"] = "card",
        ["companion"] = "card",
        ["lists"] = "card",
        ["engine"] = "engine",
        ["title"] = "title",
        ["specimen"] = "specimen",
        ["rig"] = "rig",
        ["driver"] = "driver",
        ["wrapper"] = "wrapper",
        ["source"] = "source",
        ["by"] = "person",
        ["renderer"] = "renderer",
    };

    private static readonly Dictionary<string, Shape> Definitions = SupplyShapes.Definitions.Concat(TitleShapes.Definitions)
        .ToDictionary(one => one.Name, one => one.Shape, StringComparer.Ordinal);

    /// <summary>The map that stands under a key of a map, be it alone, in a list, or under names.</summary>
    public static Shape.Map Inner(Shape.Map map, params string[] keys) =>
        keys.Aggregate(map, (current, key) => MapIn(current.All.First(one => one.Name == key).Shape) ?? throw new InvalidOperationException($"no map under {key}"));

    /// <summary>One of the shapes that have a name.</summary>
    public static Shape.Map Named(string name) => MapIn(Definitions[name]) ?? throw new InvalidOperationException($"no map called {name}");

    /// <summary>A column for each key, those of maps within maps included; keys that have a sheet of their own left out.</summary>
    public static IReadOnlyList<BookColumn> Of(Shape.Map map, params string[] without) => [.. Of(map, [], without)];

    private static IEnumerable<BookColumn> Of(Shape.Map map, IReadOnlyList<string> before, string[] without)
    {
        foreach (var key in map.All.Where(key => !without.Contains(key.Name, StringComparer.Ordinal)))
        {
            IReadOnlyList<string> path = [.. before, key.Name];
            var shape = Resolved(key.Shape);
            if (shape is Shape.Map inner)
            {
                foreach (var column in Of(inner, path, without))
                    yield return column;
            }
            else
            {
                yield return new BookColumn(string.Join(' ', path), path, FormOf(key.Name, shape), key.Meaning)
                {
                    IsRequired = key.IsRequired && before.Count == 0,
                    Legal = LegalOf(shape),
                    Names = NamesOf(key.Name, key.Shape),
                };
            }
        }
    }

    private static Shape Resolved(Shape shape) => shape is Shape.Named { Name: var name } && Definitions.TryGetValue(name, out var defined) ? defined : shape;

    private static CellForm FormOf(string key, Shape shape) => shape switch
    {
        Shape.Entries => CellForm.Pairs,
        Shape.Named { Name: "source-named" } => CellForm.Braces,
        Shape.List => CellForm.List,
        Shape.Either { Choices: var choices } when choices.Any(choice => choice is Shape.List) => key == "cautions" ? CellForm.Lines : CellForm.Items,
        _ => CellForm.Text,
    };

    private static IReadOnlyList<string> LegalOf(Shape shape) => shape switch
    {
        Shape.Word word when word.Legal.Contains("true", StringComparer.Ordinal) => ["yes", "no"],
        Shape.Word word => word.Legal,
        _ => [],
    };

    private static string NamesOf(string key, Shape shape) => shape switch
    {
        Shape.Named { Name: "os" or "api" or "bus" or "capability" } named => named.Name,
        Shape.Named { Name: "api-name" } => "api",
        _ => References.GetValueOrDefault(key, ""),
    };

    private static Shape.Map? MapIn(Shape shape) => Resolved(shape) switch
    {
        Shape.Map map => map,
        Shape.List list => MapIn(list.Item),
        Shape.Entries entries => MapIn(entries.Value),
        Shape.Either either => either.Choices.Select(MapIn).FirstOrDefault(map => map is not null),
        _ => null,
    };
}
