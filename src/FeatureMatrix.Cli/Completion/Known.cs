using System.CommandLine;
using System.CommandLine.Completions;
using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Completion;

/// <summary>
/// Words with which a shell can complete a line: the ids of the collection that the line names, or of the one that would be
/// taken. None where it cannot be read: a line that is being typed has no place for messages.
/// </summary>
internal static class Known
{
    public static IEnumerable<CompletionItem> Cards(CompletionContext line) => Of(line, catalog => catalog.Cards.Select(card => (card.Id, card.Name)));

    public static IEnumerable<CompletionItem> Chips(CompletionContext line) => Of(line, catalog => catalog.Chips.Select(chip => (chip.Id, chip.Name)));

    public static IEnumerable<CompletionItem> Titles(CompletionContext line) => Of(line, catalog => catalog.Titles.Select(title => (title.Id, title.Name)));

    public static IEnumerable<CompletionItem> Libraries(CompletionContext line) => Of(line, catalog => catalog.Libraries.Select(library => (library.Id, library.Name)));

    public static IEnumerable<CompletionItem> Rigs(CompletionContext line) => Of(line, catalog => catalog.Rigs.Select(rig => (rig.Id, rig.Name)));

    public static IEnumerable<CompletionItem> Systems(CompletionContext line) => Of(line, catalog => catalog.Oses.Select(os => (os.Id, os.Name)));

    public static IEnumerable<CompletionItem> Drivers(CompletionContext line) => Of(line, catalog => catalog.Drivers.Select(driver => (driver.Id, Names.Of(driver))));

    /// <summary>Offers these words where this argument is the next to be said.</summary>
    public static T Completing<T>(this T argument, Func<CompletionContext, IEnumerable<CompletionItem>> words)
        where T : Argument
    {
        argument.CompletionSources.Add(line => IsBeingTyped(argument, line) ? words(line) : []);
        return argument;
    }

    private static bool IsBeingTyped(Argument argument, CompletionContext line)
    {
        var said = Said(argument);
        if (line.WordToComplete.Length > 0)
            return said.LastOrDefault() == line.WordToComplete;
        var before = argument.Parents.OfType<Command>().Single().Arguments.TakeWhile(other => other != argument);
        return said.Count < argument.Arity.MaximumNumberOfValues && before.All(other => Said(other).Count > 0);

        List<string> Said(Argument one) => [.. line.ParseResult.GetResult(one)?.Tokens.Select(token => token.Value) ?? []];
    }

    private static IEnumerable<CompletionItem> Of(CompletionContext line, Func<Catalog, IEnumerable<(string Id, string Name)>> choose)
    {
        // The help asks as well, to show what may stand there; a list of all cards would not help.
        if (line is not TextCompletionContext)
            return [];
        try
        {
            var texts = CollectionFolder.Read(Session.Folder(line.ParseResult.GetValue(Session.CollectionOption)), Session.VocabularyFolder);
            return CollectionLoader.Load(texts.Files, texts.Faults).Catalog is { } catalog
                ? [.. choose(catalog).Select(one => new CompletionItem(one.Id, detail: one.Name))]
                : [];
        }
        catch (Exception problem) when (problem is UsageException or IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            return [];
        }
    }
}
