using System.Globalization;
using System.Text.Json.Nodes;

namespace FeatureMatrix.Loading.Schema;

/// <summary>
/// Shapes as JSON Schema 2020-12. A YAML editor reads plain scalars by the YAML 1.2 core schema, so <c>1998</c> reaches the schema as a
/// number, <c>true</c> as a boolean and an empty value as null, which counts as not written.
/// </summary>
internal static class SchemaWriter
{
    public const string IdPattern = "^[a-z0-9]+([.-][a-z0-9]+)*$";

    /// <summary>The schema of one shape.</summary>
    /// <param name="shape">What may stand there.</param>
    /// <param name="mayBeNothing">True where an empty value is the same as none.</param>
    public static JsonObject Write(Shape shape, bool mayBeNothing = false)
    {
        if (mayBeNothing)
        {
            return shape is Shape.Any
                ? new JsonObject { ["type"] = new JsonArray("string", "number", "boolean", "null") }
                : new JsonObject { ["anyOf"] = new JsonArray(Write(shape), new JsonObject { ["type"] = "null" }) };
        }

        return shape switch
        {
            Shape.Any => new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") },
            Shape.Form form => new JsonObject { ["type"] = "string", ["pattern"] = $"^\\s*({form.Pattern})\\s*$" },
            Shape.Word word => new JsonObject { ["enum"] = new JsonArray([.. word.Legal.SelectMany(Spellings)]) },
            Shape.Number number => Number(number),
            Shape.List list => new JsonObject { ["type"] = "array", ["items"] = Write(list.Item) },
            Shape.Entries entries => Entries(entries),
            Shape.Map map => Map(map),
            Shape.Either either => new JsonObject { ["anyOf"] = new JsonArray([.. either.Choices.Select(choice => Write(choice))]) },
            Shape.Named named => new JsonObject { ["$ref"] = Reference(named.Name) },
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static string Reference(string name) => $"#/$defs/{name}";

    /// <summary>A word as text, and as the number or boolean that YAML takes it for.</summary>
    private static IEnumerable<JsonNode?> Spellings(string word)
    {
        yield return word;
        if (word is "true" or "false")
            yield return word == "true";
        else if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            yield return number;
    }

    private static JsonObject Number(Shape.Number number) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject
            {
                ["type"] = number.IsWhole ? "integer" : "number",
                ["minimum"] = JsonNode.Parse(Shapes.Print(number.Least)),
                ["maximum"] = JsonNode.Parse(Shapes.Print(number.Most)),
            },
            new JsonObject
            {
                ["type"] = "string",
                ["pattern"] = number.IsWhole ? "^\\s*[0-9]{1,10}\\s*$" : "^\\s*[0-9]{1,9}(\\.[0-9]{1,6})?\\s*$",
            }),
    };

    private static JsonObject Entries(Shape.Entries entries)
    {
        var result = new JsonObject { ["type"] = "object" };
        if (entries.NamesAreIds)
            result["propertyNames"] = new JsonObject { ["pattern"] = IdPattern };
        if (entries.Known is { } known)
            result["allOf"] = new JsonArray(new JsonObject { ["$ref"] = Reference(known) });
        result["additionalProperties"] = Write(entries.Value, entries.MayBeEmpty);
        return result;
    }

    private static JsonObject Map(Shape.Map map)
    {
        var properties = new JsonObject();
        foreach (var key in map.All)
        {
            var value = Write(key.Shape, mayBeNothing: !key.IsRequired);
            value["description"] = key.Meaning;
            properties[key.Name] = value;
        }

        var result = new JsonObject { ["type"] = "object", ["properties"] = properties };
        var required = map.All.Where(key => key.IsRequired).Select(key => (JsonNode?)key.Name).ToArray();
        if (required.Length > 0)
            result["required"] = new JsonArray(required);
        if (map.OneGroup.Count > 0)
            result["oneOf"] = new JsonArray([.. map.OneGroup.Select(group => Group(group, map.OneGroup))]);
        if (map.AtLeastOne.Count > 0)
            result["anyOf"] = new JsonArray([.. map.AtLeastOne.Select(key => Present(key))]);
        if (map.KnownOthers is { } known)
            result["allOf"] = new JsonArray(new JsonObject { ["$ref"] = Reference(known) });
        result["additionalProperties"] = map.Others is { } others ? Write(others, mayBeNothing: true) : false;
        return result;
    }

    /// <summary>All keys of one group, and none that only other groups have.</summary>
    private static JsonObject Group(IReadOnlyList<string> group, IReadOnlyList<IReadOnlyList<string>> all)
    {
        var others = all.SelectMany(keys => keys).Except(group).Select(key => (JsonNode?)Present(key)).ToArray();
        return new JsonObject
        {
            ["allOf"] = new JsonArray([.. group.Select(key => (JsonNode?)Present(key))]),
            ["not"] = new JsonObject { ["anyOf"] = new JsonArray(others) },
        };
    }

    private static JsonObject Present(string key) => new()
    {
        ["required"] = new JsonArray(key),
        ["properties"] = new JsonObject { [key] = new JsonObject { ["not"] = new JsonObject { ["type"] = "null" } } },
    };
}
