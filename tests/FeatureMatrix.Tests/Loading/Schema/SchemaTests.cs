using System.Text.Json;
using FeatureMatrix.Loading;
using FeatureMatrix.Tests.Support;
using Json.Schema;

namespace FeatureMatrix.Tests.Loading.Schema;

public sealed class The_schema_of_collection_files
{
    [Fact]
    public void Is_a_schema_of_the_2020_12_dialect() =>
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonDocument.Parse(SchemaFile.Text).RootElement).IsValid);

    [Fact]
    public void Is_the_one_that_is_shipped()
    {
        var path = Repository.PathTo("data", "schema", "collection.schema.json");
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDENS") == "1")
            File.WriteAllText(path, SchemaFile.Text);

        Assert.Equal(File.ReadAllText(path), SchemaFile.Text);
    }

    [Fact]
    public void Explains_every_key()
    {
        var silent = new List<string>();
        Walk(JsonDocument.Parse(SchemaFile.Text).RootElement, "");
        Assert.Equal([], silent);

        void Walk(JsonElement element, string path)
        {
            if (element.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in element.EnumerateArray())
                    Walk(item, path);
            }

            if (element.ValueKind != JsonValueKind.Object)
                return;
            foreach (var member in element.EnumerateObject())
            {
                if (member.Name == "properties" && element.TryGetProperty("additionalProperties", out _))
                {
                    silent.AddRange(member.Value.EnumerateObject()
                        .Where(key => !(key.Value.TryGetProperty("description", out var text) && text.GetString()!.Length > 2))
                        .Select(key => $"{path}/{key.Name}"));
                }

                Walk(member.Value, $"{path}/{member.Name}");
            }
        }
    }

    [Fact]
    public void Accepts_every_file_of_the_demo_and_of_the_vocabulary()
    {
        var files = CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files
            .Where(file => file.Path.EndsWith(".yaml", StringComparison.Ordinal)).ToList();

        Assert.True(files.Count > 25);
        Assert.Equal("", string.Join('\n', files.Select(file => (file.Path, Why: SchemaFile.Complaint(file.Text))).Where(one => one.Why.Length > 0)));
    }

    [Fact]
    public void Is_named_in_the_first_line_of_each_of_them()
    {
        const string Mark = "# yaml-language-server: $schema=";
        var schema = Repository.PathTo("data", "schema", "collection.schema.json");

        foreach (var file in new[] { "demo", "vocabulary" }.SelectMany(folder => Directory.GetFiles(Repository.PathTo("data", folder), "*.yaml", SearchOption.AllDirectories)))
        {
            var first = File.ReadLines(file).First();
            Assert.StartsWith(Mark, first, StringComparison.Ordinal);
            Assert.Equal(schema, Path.GetFullPath(first[Mark.Length..], Path.GetDirectoryName(file)!));
        }
    }

    [Fact]
    public void Offers_the_names_of_the_vocabulary_and_accepts_others() => Assert.True(
        SchemaFile.Text.Contains("\"fog-table\"", StringComparison.Ordinal)
        && SchemaFile.Accepts("chips: {c: {name: C, supply: {brackwater-glint: \"2\"}}}"));
}
