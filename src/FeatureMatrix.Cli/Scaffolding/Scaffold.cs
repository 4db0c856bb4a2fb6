using System.Globalization;
using FeatureMatrix.Loading.Schema;

namespace FeatureMatrix.Cli.Scaffolding;

/// <summary>
/// The texts of new files. What has to be there is written; what may be there stands in comments with an example, to be uncommented;
/// nothing is claimed that nobody said. Each loads as it is.
/// </summary>
internal static class Scaffold
{
    /// <summary>Where a collection keeps the schema that helps editors.</summary>
    public const string SchemaPath = "schema/" + CollectionSchema.FileName;

    /// <summary>The files of an empty collection, by path.</summary>
    public static IReadOnlyList<(string Path, string Text)> Collection(string name, string schema) =>
    [
        ("collection.yaml", $"""
            {SchemaLine("schema/")}
            # The folder's name and what you say of it. Every other .yaml file below this folder is read too, whatever its name.
            collection:
              name: {Quoted(name)}
              # note: Whose bench this is, in a sentence.
              # currency: EUR

            """),
        ("sources.yaml", $$"""
            {{SchemaLine("schema/")}}
            # Who says so. Statements name one of these ids as their 'source'; the grade says how good it is.
            sources:
              own-bench: {text: Own bench, grade: measured}
              own-notes: {text: Own notes, grade: inferred}
              # a-manual: {text: "Manual of the board, p. 12", grade: documented}
              # a-forum: {text: "A forum post", link: "https://example.org/post", grade: hearsay}

            """),
        (SchemaPath, schema),
    ];

    /// <summary>The folder that files of this kind usually lie in.</summary>
    public static string Folder(ScaffoldKind kind) => kind switch
    {
        ScaffoldKind.Chip => "chips",
        ScaffoldKind.Card => "cards",
        ScaffoldKind.Specimen => "specimens",
        ScaffoldKind.Driver => "drivers",
        ScaffoldKind.Wrapper => "wrappers",
        ScaffoldKind.Engine => "engines",
        ScaffoldKind.Title => "titles",
        ScaffoldKind.Rig => "rigs",
        ScaffoldKind.Library => "libraries",
        ScaffoldKind.Observation => "observations",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The text of one new file.</summary>
    public static string Write(ScaffoldKind kind, ScaffoldAnswers answers) => SchemaLine("../schema/") + "\n" + kind switch
    {
        ScaffoldKind.Chip => HardwareScaffold.Chip(answers),
        ScaffoldKind.Card => HardwareScaffold.Card(answers),
        ScaffoldKind.Specimen => BenchScaffold.Specimen(answers),
        ScaffoldKind.Driver => HardwareScaffold.Driver(answers),
        ScaffoldKind.Wrapper => HardwareScaffold.Wrapper(answers),
        ScaffoldKind.Engine => TitleScaffold.Engine(answers),
        ScaffoldKind.Title => TitleScaffold.Title(answers),
        ScaffoldKind.Rig => BenchScaffold.Rig(answers),
        ScaffoldKind.Library => TitleScaffold.Library(answers),
        ScaffoldKind.Observation => BenchScaffold.Observation(answers),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A name to begin with: <c>reed-bank-2</c> is called Reed Bank 2.</summary>
    public static string NameOf(string id) => CultureInfo.InvariantCulture.TextInfo.ToTitleCase(id.Replace('-', ' '));

    /// <summary>A text in double quotes, as YAML reads it back.</summary>
    public static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    /// <summary>A list in one line.</summary>
    public static string List(IEnumerable<string> words) => $"[{string.Join(", ", words.Select(Quoted))}]";

    /// <summary>What a chip or an engine brings, as comments.</summary>
    public static string Remarks(IReadOnlyList<string> lines, string indent) =>
        string.Concat(lines.Select(line => $"{indent}# {line}\n"));

    private static string SchemaLine(string folder) => $"# yaml-language-server: $schema={folder}{CollectionSchema.FileName}";
}
