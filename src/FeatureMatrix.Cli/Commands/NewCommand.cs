using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Cli.Scaffolding;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Starts collections and their files. Nothing is overwritten, and nothing is written that would not load.</summary>
internal static class NewCommand
{
    private static readonly Option<string?> NameOption = new("--name") { Description = "Name for people. Default: made from the id.", HelpName = "text" };
    private static readonly Option<string?> ChipOption = new("--chip") { Description = "Chip of a new card; for a new chip, the one it is like.", HelpName = "id", CompletionSources = { Known.Chips } };
    private static readonly Option<string?> BoardOption = new("--card") { Description = "The card of a specimen, or the one on which something was seen.", HelpName = "id", CompletionSources = { Known.Cards } };
    private static readonly Option<string?> TitleOption = new("--title") { Description = "The title that was seen.", HelpName = "id", CompletionSources = { Known.Titles } };
    private static readonly Option<string?> RendererOption = new("--renderer") { Description = "Its renderer, where it has several.", HelpName = "id" };
    private static readonly Option<string?> DriverOption = new("--driver") { Description = "The driver with its version, for example \"reed-9x 1.0\".", HelpName = "driver", CompletionSources = { Known.Drivers } };
    private static readonly Option<string?> SystemOption = new("--os") { Description = "The operating system on which it was seen.", HelpName = "id", CompletionSources = { Known.Systems } };
    private static readonly Option<string?> WrapperOption = new("--wrapper") { Description = "none, or the wrapper with its version, for example duskglass@1.4.", HelpName = "wrapper" };
    private static readonly Option<string?> RunsOption = new("--runs") { Description = "Whether it ran: yes or no.", HelpName = "yes|no" };
    private static readonly Option<string?> EngineOption = new("--engine") { Description = "Engine of a new title: it brings renderers and needs.", HelpName = "id" };
    private static readonly Option<string?> ApiOption = new("--api") { Description = "What a new title asks for or a new wrapper offers, for example \"direct3d 6\".", HelpName = "interface" };
    private static readonly Option<string?> OnOption = new("--on") { Description = "What a new wrapper stands on, for example \"direct3d 7\".", HelpName = "interface" };
    private static readonly Option<string[]> OsOption = new("--os") { Description = "Operating systems of a new title or driver.", HelpName = "ids", AllowMultipleArgumentsPerToken = true, CompletionSources = { Known.Systems } };
    private static readonly Option<string[]> CardOption = new("--card") { Description = "Cards that a new driver lists.", HelpName = "ids", AllowMultipleArgumentsPerToken = true, CompletionSources = { Known.Cards } };

    public static Command Create(Terminal terminal)
    {
        var command = new Command(
            "new",
            "Start a collection, or a record in one. Other records are written by hand, as data/README.md shows: sources and people in sources.yaml, facts of their own and words of the vocabulary in any file. Runs come by 'import runs'.")
        {
            Collection(terminal),
            Entity(terminal, ScaffoldKind.Chip, "Start a chip.", NameOption, ChipOption),
            Entity(terminal, ScaffoldKind.Card, "Start a card with a chip of the collection.", NameOption, ChipOption),
            Entity(terminal, ScaffoldKind.Specimen, "Start a specimen: one physical board.", BoardOption),
            Entity(terminal, ScaffoldKind.Engine, "Start an engine, on which titles build.", NameOption, ApiOption),
            Entity(terminal, ScaffoldKind.Title, "Start a title, from an engine of the collection or with a renderer of its own.", NameOption, EngineOption, ApiOption, OsOption),
            Entity(terminal, ScaffoldKind.Driver, "Start a driver branch.", NameOption, OsOption, CardOption),
            Entity(terminal, ScaffoldKind.Wrapper, "Start a wrapper.", NameOption, ApiOption, OnOption),
            Entity(terminal, ScaffoldKind.Rig, "Start a PC.", NameOption),
            Entity(terminal, ScaffoldKind.Library, "Start a library of all titles of the collection.", NameOption),
            Entity(terminal, ScaffoldKind.Observation, "Start an observation: what was seen with one exact route.", TitleOption, RendererOption, BoardOption, DriverOption, SystemOption, WrapperOption, RunsOption),
        };
        return command;
    }

    private static Command Collection(Terminal terminal)
    {
        var folder = new Argument<string>("folder") { Description = "Folder to put it in; made if it is not there." };
        var command = new Command("collection", "Start an empty collection in a folder.") { folder, NameOption };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(folder)!;
            var usual = Scaffold.NameOf(Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path))));
            var name = parsed.GetValue(NameOption) ?? terminal.Ask("Name of the collection?", usual) ?? usual;
            Write(terminal, path, Scaffold.Collection(name, SchemaCommand.Text()));
            terminal.Print($"Next: new chip ID --collection {path}, then new card, new driver and new title; check tells what is missing.\n");
            return ExitCode.Fine;
        });
        return command;
    }

    private static Command Entity(Terminal terminal, ScaffoldKind kind, string description, params Option[] options)
    {
        var word = kind.ToString().ToLowerInvariant();
        var id = new Argument<string>("id") { Description = "Its id: small letters, digits, hyphens and points. Other files refer to it." };
        var command = new Command(word, description) { id, Session.CollectionOption };
        foreach (var option in options)
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            var chosen = parsed.GetValue(id)!;
            if (chosen.Length == 0 || !chosen.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.'))
                throw new UsageException($"'{chosen}' is no id; an id has small letters, digits, hyphens and points, for example 'reed-bank-2'.");
            var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
            var texts = Session.Texts(folder, terminal);
            if (Session.Load(folder, terminal).Catalog is not { } catalog)
                return ExitCode.Faults;
            var path = $"{Scaffold.Folder(kind)}/{chosen}.yaml";
            RefuseExisting(folder, [path]);
            var answers = Answers(terminal, parsed, options, kind, chosen, catalog);
            var result = Try(texts, path, Scaffold.Write(kind, answers));
            if (result.Catalog is { } made)
            {
                answers = answers with { Inherited = Inherited(kind, answers, made) };
                result = Try(texts, path, Scaffold.Write(kind, answers));
            }

            if (result.Catalog is null)
            {
                // The file is not there and will not be: its name and lines would send people looking for it.
                foreach (var fault in result.Faults.Where(fault => fault.Severity == Severity.Error))
                    terminal.Tell(fault.Origin.File == path ? $"This {word} would not load: {fault.Message} ({fault.Code})." : fault.ToString());
                terminal.Tell("Nothing was written.");
                return ExitCode.Faults;
            }

            Write(terminal, folder, [(path, Scaffold.Write(kind, answers)), .. MissingSchema(folder)]);
            return ExitCode.Fine;
        });
        return command;
    }

    private static LoadResult Try(CollectionTexts texts, string path, string text) =>
        CollectionLoader.Load([.. texts.Files, new SourceText(path, text)], texts.Faults);

    private static IReadOnlyList<string> Inherited(ScaffoldKind kind, ScaffoldAnswers answers, Catalog made) => kind switch
    {
        ScaffoldKind.Chip or ScaffoldKind.Card when answers.Chip.Length > 0 => Inheritance.OfChip(made, answers.Chip),
        ScaffoldKind.Title when answers.Engine.Length > 0 => Inheritance.OfEngine(made.Titles.Single(title => title.Id == answers.Id)),
        _ => [],
    };

    private static ScaffoldAnswers Answers(Terminal terminal, ParseResult parsed, Option[] options, ScaffoldKind kind, string id, Catalog catalog)
    {
        var usual = Scaffold.NameOf(id);
        var engine = kind == ScaffoldKind.Title ? One(EngineOption, "Engine, if it has one of this collection? (empty for none)", needed: false) : "";
        return new ScaffoldAnswers
        {
            Id = id,
            Name = options.Contains(NameOption) ? parsed.GetValue(NameOption) ?? terminal.Ask("Name for people?", usual) ?? usual : usual,
            Source = kind == ScaffoldKind.Observation ? Recorded("own-bench", "{text: Own bench, grade: measured}") : Recorded("own-notes", "{text: Own notes, grade: inferred}"),
            Chip = One(ChipOption, kind == ScaffoldKind.Chip ? "A chip that it is like? (empty for none)" : Listed("Its chip?", catalog.Chips.Select(chip => chip.Id)), needed: kind == ScaffoldKind.Card),
            Engine = engine,
            Api = engine.Length > 0 ? "" : One(ApiOption, "Which interface, at which level, for example direct3d 6?", needed: true),
            On = One(OnOption, "On which interface does it stand, for example direct3d 7?", needed: true),
            Title = One(TitleOption, Listed("Which title?", catalog.Titles.Select(title => title.Id)), needed: true),
            Renderer = One(RendererOption, "Which of its renderers? (empty where it has one only)", needed: false),
            Card = One(BoardOption, Listed("Which card?", catalog.Cards.Select(card => card.Id)), needed: true),
            Driver = One(DriverOption, "Which driver and version? (empty where not noted)", needed: false),
            Wrapper = One(WrapperOption, "Through which wrapper and version? none for none (empty where not noted)", needed: false),
            Runs = One(RunsOption, "Did it run? yes or no", needed: true),
            Oses = options.Contains(SystemOption) ? Noted(One(SystemOption, "Which operating system? (empty where not noted)", needed: false)) : Several(OsOption, Listed("Which operating systems?", catalog.Oses.Select(os => os.Id))),
            Cards = Several(CardOption, Listed("Which cards does the package list?", catalog.Cards.Select(card => card.Id))),
            Titles = kind == ScaffoldKind.Library ? [.. catalog.Titles.Select(title => title.Id)] : [],
        };

        static IReadOnlyList<string> Noted(string word) => word.Length > 0 ? [word] : [];

        string Recorded(string source, string otherwise) => catalog.Sources.Any(one => one.Id == source) ? source : otherwise;

        string One(Option<string?> option, string question, bool needed)
        {
            if (!options.Contains(option))
                return "";
            var answer = parsed.GetValue(option) ?? terminal.Ask(question) ?? "";
            return answer.Length > 0 || !needed ? answer : throw new UsageException($"{question.TrimEnd('.')}{(question.EndsWith('?') ? "" : ".")} Say it with {option.Name}; nothing was written.");
        }

        IReadOnlyList<string> Several(Option<string[]> option, string question)
        {
            if (!options.Contains(option))
                return [];
            if (parsed.GetValue(option) is { Length: > 0 } given)
                return given;
            var answer = (terminal.Ask(question) ?? "").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
            return answer.Length > 0 ? answer : throw new UsageException($"{question.TrimEnd('.')}{(question.EndsWith('?') ? "" : ".")} Say it with {option.Name}; nothing was written.");
        }
    }

    private static string Listed(string question, IEnumerable<string> ids) => ids.ToList() switch
    {
        [] => question + " There is none yet.",
        { Count: <= 20 } few => $"{question} There are: {string.Join(", ", few)}.",
        _ => question,
    };

    /// <summary>The schema that the new file's first line names, where the collection has none yet.</summary>
    private static IReadOnlyList<(string Path, string Text)> MissingSchema(string folder) =>
        File.Exists(Path.Combine(folder, Scaffold.SchemaPath)) ? [] : [(Scaffold.SchemaPath, SchemaCommand.Text())];

    private static void RefuseExisting(string folder, IEnumerable<string> paths)
    {
        if (paths.Select(path => Path.Combine(folder, path)).FirstOrDefault(File.Exists) is { } there)
            throw new UsageException($"{there} exists already, and new overwrites nothing.");
    }

    /// <summary>Writes new files only: each is created, and where one exists already none is.</summary>
    private static void Write(Terminal terminal, string folder, IReadOnlyList<(string Path, string Text)> files)
    {
        RefuseExisting(folder, files.Select(file => file.Path));
        Directory.CreateDirectory(folder);
        CollectionWriter.Write(folder, [.. files.Select(file => new FileChange(file.Path, null, file.Text))]);
        foreach (var (path, _) in files)
            terminal.Print($"Wrote {Path.Combine(folder, path)}\n");
    }
}
