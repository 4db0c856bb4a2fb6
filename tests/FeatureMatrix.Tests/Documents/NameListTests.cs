using System.CommandLine;
using System.Text.Json;
using System.Text.RegularExpressions;
using FeatureMatrix.Cli;
using FeatureMatrix.Importing.Workbooks;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Workbook;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Measured;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Documents;

/// <summary>The list of names in DEVELOPERS.md: all that the product has, each once, with where it comes from.</summary>
public sealed partial class The_list_of_names
{
    private static readonly IReadOnlyList<SourceText> Files = CollectionFolder.Read(Repository.PathTo("data", "demo"), Repository.PathTo("data", "vocabulary")).Files;

    private static readonly Catalog Demo = CollectionLoader.Load(Files).Catalog!;

    [Fact]
    public void Has_every_command_and_kind_of_import() => AssertListed("commands", Commands().Select(command => command.Name));

    [Fact]
    public void Has_every_option() => AssertListed("options", Commands().SelectMany(command => command.Options).Select(option => option.Name).Where(name => name.StartsWith("--", StringComparison.Ordinal)));

    [Fact]
    public void Has_every_sheet_of_an_edition_of_a_collection_to_edit_and_of_a_result_to_repeat()
    {
        var decisions = new Decisions(Demo, null);
        var repeat = Demo.Titles.SelectMany(title => Demo.Cards.Select(card => RepeatReport.Of(decisions, title, card))).First(report => report is not null);
        byte[][] books =
        [
            WorkbookWriter.Write(EditionReport.Of(decisions)),
            CollectionBookWriter.Write(CollectionBook.Of(Files, Demo)),
            BenchWorksheetWriter.Write(repeat!),
        ];
        AssertListed("sheets", books.SelectMany(book => new SavedWorkbook(book).Sheets).Except(Demo.Cards.Select(one => one.Name)));
    }

    [Fact]
    public void Has_every_kind_of_page() => AssertListed("pages", Directory.EnumerateFiles(Repository.PathTo("templates", "pages")).Select(path => Path.GetFileNameWithoutExtension(path)));

    [Fact]
    public void Has_every_colour() =>
        AssertListed("colours", Token().Matches(File.ReadAllText(Repository.PathTo("templates", "site", "style.css"))).Select(match => match.Groups["name"].Value));

    [Fact]
    public void Has_every_key_of_the_files_but_the_words_of_the_vocabulary()
    {
        var vocabulary = Demo.Features.Select(feature => feature.Id).Concat(Demo.Oses.Select(os => os.Id)).ToHashSet(StringComparer.Ordinal);
        using var schema = JsonDocument.Parse(File.ReadAllText(Repository.PathTo("data", "schema", "collection.schema.json")));
        AssertListed("keys of files", Keys(schema.RootElement).Where(key => !vocabulary.Contains(key)));
    }

    private static void AssertListed(string kind, IEnumerable<string> names)
    {
        var row = File.ReadLines(Repository.PathTo("DEVELOPERS.md")).Single(line => line.StartsWith($"| {kind} |", StringComparison.Ordinal));
        Assert.Equal(
            string.Join(", ", names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)),
            string.Join(", ", Quoted().Matches(row).Select(match => match.Groups["name"].Value).Order(StringComparer.Ordinal)));
    }

    private static IEnumerable<Command> Commands()
    {
        return Below(CommandTree.Create(new Terminal(TextWriter.Null, TextWriter.Null, useColour: false)));

        static IEnumerable<Command> Below(Command command) => command.Subcommands.SelectMany(one => Below(one).Prepend(one));
    }

    private static IEnumerable<string> Keys(JsonElement node) => node.ValueKind switch
    {
        JsonValueKind.Object => node.EnumerateObject().SelectMany(member =>
            (member.Name == "properties" && member.Value.ValueKind == JsonValueKind.Object ? member.Value.EnumerateObject().Select(one => one.Name) : []).Concat(Keys(member.Value))),
        JsonValueKind.Array => node.EnumerateArray().SelectMany(Keys),
        _ => [],
    };

    [GeneratedRegex("`(?<name>[^`]+)`", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^\s+--(?<name>[a-z-]+):", RegexOptions.ExplicitCapture | RegexOptions.Multiline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();
}
