using System.Text.Json;
using System.Text.Json.Nodes;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Schema;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;
using Json.Schema;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace FeatureMatrix.Tests.Loading.Schema;

/// <summary>The schema as an editor uses it: YAML read by the 1.2 core schema, then checked.</summary>
internal static class SchemaFile
{
    /// <summary>The vocabulary's own files.</summary>
    public static IReadOnlyList<SourceText> VocabularyFiles { get; } = CollectionFolder.Read(Repository.PathTo("data", "vocabulary"), null).Files;

    public static Catalog Vocabulary { get; } = CollectionLoader.Load(VocabularyFiles).Catalog!;

    public static string Text { get; } = CollectionSchema.Write(Vocabulary);

    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    public static bool Accepts(string yaml) => Accepts(Read(yaml));

    public static bool Accepts(JsonNode? tree) => Evaluate(tree, OutputFormat.Flag).IsValid;

    /// <summary>Where and why the schema refuses a text; empty where it accepts it.</summary>
    public static string Complaint(string yaml)
    {
        var result = Evaluate(Read(yaml), OutputFormat.List);
        return result.IsValid
            ? ""
            : string.Join('\n', result.Details!.Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")).Take(8));
    }

    /// <summary>A YAML text as JSON. Plain scalars become null, booleans and numbers as in the core schema of YAML 1.2 (section 10.3.2).</summary>
    public static JsonNode? Read(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return stream.Documents.Count == 0 ? null : Convert(stream.Documents[0].RootNode);
    }

    private static EvaluationResults Evaluate(JsonNode? tree, OutputFormat format) =>
        Schema.Evaluate(JsonSerializer.SerializeToElement(tree), new EvaluationOptions { OutputFormat = format });

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Convert(pair.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Convert)]),
        YamlScalarNode { Style: ScalarStyle.Plain } scalar => Plain(scalar.Value ?? ""),
        YamlScalarNode scalar => scalar.Value,
        _ => throw new InvalidOperationException(),
    };

    private static JsonNode? Plain(string text) => text switch
    {
        "" or "null" or "~" => null,
        "true" => true,
        "false" => false,
        _ when text.Length < 20 && text.All(c => char.IsAsciiDigit(c)) => long.Parse(text, System.Globalization.CultureInfo.InvariantCulture),
        _ when text.Count(c => c == '.') == 1 && text.All(c => char.IsAsciiDigit(c) || c == '.') && char.IsAsciiDigit(text[^1]) && char.IsAsciiDigit(text[0]) =>
            double.Parse(text, System.Globalization.CultureInfo.InvariantCulture),
        _ => text,
    };
}
