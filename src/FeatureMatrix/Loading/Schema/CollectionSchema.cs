using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Schema;

/// <summary>
/// The JSON Schema (2020-12) of a collection file, for editors: keys, their documentation, legal words, and the names of the vocabulary.
/// What needs more than one file, such as a reference that leads nowhere or a level that its feature lacks, only the loader finds.
/// </summary>
public static class CollectionSchema
{
    /// <summary>What the file is called.</summary>
    public const string FileName = "collection.schema.json";

    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    private static readonly IReadOnlyList<(string Section, string Definition, Shape.Map Shape, string Meaning)> Kinds =
    [
        ("people", "person", VocabularyShapes.Person, "Those whose word it takes, by pseudonym."),
        ("sources", "source", VocabularyShapes.Source, "Documents and people that statements name."),
        ("features", "feature", VocabularyShapes.Feature, "Rendering features of this collection's own."),
        ("apis", "api-defined", VocabularyShapes.Api, "Interfaces of this collection's own."),
        ("operating-systems", "system", VocabularyShapes.Os, "Operating systems of this collection's own."),
        ("buses", "bus-defined", VocabularyShapes.Bus, "Buses of this collection's own."),
        ("chips", "chip", HardwareShapes.Chip, "Chips, by id."),
        ("cards", "card", HardwareShapes.Card, "Cards, by id."),
        ("specimens", "specimen", HardwareShapes.Specimen, "Physical boards, by id."),
        ("drivers", "driver", HardwareShapes.Driver, "Driver branches, by id."),
        ("wrappers", "wrapper", HardwareShapes.Wrapper, "Wrappers, by id."),
        ("engines", "engine", TitleShapes.Engine, "Engines: profiles that titles build on."),
        ("titles", "title", TitleShapes.Title, "Titles, by id."),
        ("rigs", "rig", BenchShapes.Rig, "PCs, by id."),
        ("libraries", "library", BenchShapes.Library, "Libraries: titles with weights and a policy."),
        ("captures", "capture", BenchShapes.Capture, "Pictures of titles on cards, in pairs of one scene, by id."),
    ];

    /// <summary>The schema with the names of a vocabulary, which an editor offers; others remain legal.</summary>
    public static string Write(Catalog vocabulary)
    {
        var properties = new JsonObject
        {
            ["collection"] = Described(SchemaWriter.Write(new Shape.Named("collection"), mayBeNothing: true), "The collection's name; once in a collection."),
        };
        foreach (var (section, definition, _, meaning) in Kinds)
            properties[section] = Described(SchemaWriter.Write(new Shape.Entries(new Shape.Named(definition), NamesAreIds: true), mayBeNothing: true), meaning);
        properties["observations"] = Described(SchemaWriter.Write(new Shape.List(new Shape.Named("observation")), mayBeNothing: true), "What was seen with one exact route.");
        properties["facts"] = Described(SchemaWriter.Write(new Shape.List(new Shape.Named("fact")), mayBeNothing: true), "Statements that stand with no entity.");
        var root = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "A file of a FeatureMatrix collection",
            ["description"] = "Any file may hold any of these sections. data/README.md is the full description.",
            ["$comment"] = "Generated. What needs more than one file (references, levels of features, ids that occur twice) is checked by the command 'check' only.",
            ["type"] = new JsonArray("object", "null"),
            ["properties"] = properties,
            ["additionalProperties"] = false,
            ["$defs"] = Definitions(vocabulary),
        };
        return root.ToJsonString(Readable) + "\n";
    }

    private static JsonObject Definitions(Catalog vocabulary)
    {
        var result = new JsonObject { ["collection"] = SchemaWriter.Write(VocabularyShapes.Collection) };
        foreach (var (_, definition, shape, _) in Kinds)
            result[definition] = SchemaWriter.Write(shape);
        result["observation"] = SchemaWriter.Write(BenchShapes.Observation);
        result["fact"] = SchemaWriter.Write(BenchShapes.Fact);
        result["source-named"] = SchemaWriter.Write(new Shape.Either([Shapes.Text, new Shape.Named("source")]));
        foreach (var (name, shape) in SupplyShapes.Definitions.Concat(TitleShapes.Definitions))
            result[name] = SchemaWriter.Write(shape);
        var features = vocabulary.Features.Where(feature => !feature.IsApi).ToList();
        var apis = vocabulary.Features.Where(feature => feature.IsApi).ToList();
        result["os"] = Offered(vocabulary.Oses.Select(os => os.Id));
        result["bus"] = Offered(vocabulary.Buses.Select(bus => bus.Id));
        result["api-name"] = Offered(apis.Select(api => api.Id));
        result["api"] = Offered(apis.SelectMany(Names));
        result["capability"] = Offered(features.SelectMany(Names));
        result["known-features"] = Known(vocabulary.Features.Select(feature => (feature.Id, Meaning(feature))));
        result["flag"] = new JsonObject
        {
            ["anyOf"] = new JsonArray(SchemaWriter.Write(Shapes.Word(Words.Supports)), new JsonObject { ["type"] = new JsonArray("object", "array", "null") }),
        };
        result["known-supply"] = KnownSupply(vocabulary.Features);
        result["known-apis"] = Known(apis.Select(api => (api.Id, Meaning(api))));
        result["known-systems"] = Known(vocabulary.Oses.Select(os => (os.Id, os.Name)));
        return result;
    }

    private static IEnumerable<string> Names(Feature feature) =>
        feature.HasLevels ? feature.Levels.Select(level => $"{feature.Id} {level}") : [feature.Id];

    private static string Meaning(Feature feature)
    {
        var levels = feature.HasLevels ? $" Levels: {string.Join(", ", feature.Levels)}." : "";
        return $"{feature.Name}. {feature.Meaning}{levels}".Trim();
    }

    /// <summary>Any text, of which an editor offers some.</summary>
    private static JsonObject Offered(IEnumerable<string> names)
    {
        var known = names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(name => (JsonNode?)name).ToArray();
        return known.Length == 0
            ? SchemaWriter.Write(Shapes.Text)
            : new JsonObject { ["anyOf"] = new JsonArray(new JsonObject { ["enum"] = new JsonArray(known) }, SchemaWriter.Write(Shapes.Text)) };
    }

    private static JsonObject Known(IEnumerable<(string Name, string Meaning)> names)
    {
        var properties = new JsonObject();
        foreach (var (name, meaning) in names.OrderBy(one => one.Name, StringComparer.Ordinal))
            properties[name] = new JsonObject { ["description"] = meaning };
        return new JsonObject { ["properties"] = properties };
    }

    /// <summary>The features with their meaning; of a flag the short form is one of five words.</summary>
    private static JsonObject KnownSupply(IReadOnlyList<Feature> features)
    {
        var properties = new JsonObject();
        foreach (var flag in features.Where(feature => !feature.HasLevels).OrderBy(feature => feature.Id, StringComparer.Ordinal))
            properties[flag.Id] = SchemaWriter.Write(new Shape.Named("flag"));
        return new JsonObject
        {
            ["allOf"] = new JsonArray(SchemaWriter.Write(new Shape.Named("known-features"))),
            ["properties"] = properties,
        };
    }

    private static JsonObject Described(JsonObject schema, string meaning)
    {
        schema["description"] = meaning;
        return schema;
    }
}
