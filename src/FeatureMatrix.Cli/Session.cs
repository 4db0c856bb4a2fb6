using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Loading;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli;

/// <summary>A loaded collection and what the command line chose from it.</summary>
internal sealed class Session
{
    private Session(Catalog catalog, Decisions decisions)
    {
        Catalog = catalog;
        Decisions = decisions;
    }

    /// <summary>The option that names the collection's folder.</summary>
    public static Option<string?> CollectionOption { get; } = new("--collection", "-c")
    {
        Description = "Folder of the collection. Default: this folder if it holds a collection.yaml, else data/demo.",
        HelpName = "folder",
    };

    /// <summary>The option that names the library.</summary>
    public static Option<string?> LibraryOption { get; } = new("--library", "-l")
    {
        Description = "Library whose titles, weights and policy apply. Default: all titles, everything allowed but forced drivers.",
        HelpName = "id",
        CompletionSources = { Known.Libraries },
    };

    public Catalog Catalog { get; }

    public Decisions Decisions { get; }

    /// <summary>Where the program's own vocabulary lies.</summary>
    public static string VocabularyFolder => Path.Combine(AppContext.BaseDirectory, "vocabulary");

    /// <summary>Loads the collection. Faults are printed; null where they block.</summary>
    public static Session? Open(ParseResult parsed, Terminal terminal, string? named = null)
    {
        var folder = Folder(named ?? parsed.GetValue(CollectionOption));
        var result = Load(folder, terminal);
        if (result.Catalog is not { } catalog)
            return null;
        var library = parsed.GetValue(LibraryOption) is { } id ? Find.One(id, "library", catalog.Libraries, one => one.Id, one => one.Name) : null;
        return new Session(catalog, new Decisions(catalog, library));
    }

    /// <summary>The card that a word means.</summary>
    public Card Card(string word) => Find.One(word, "card", Catalog.Cards, one => one.Id, one => one.Name);

    /// <summary>The PC that a word means.</summary>
    public Rig Rig(string word) => Find.One(word, "rig", Catalog.Rigs, one => one.Id, one => one.Name);

    /// <summary>The operating system that a word means; null for no word.</summary>
    public Os? Os(string? word) => word is null ? null : Find.One(word, "operating system", Catalog.Oses, one => one.Id, one => one.Name);

    /// <summary>The titles of the library that the command line names, or all.</summary>
    public static IReadOnlyList<Title> TitlesOf(ParseResult parsed, Catalog catalog) => parsed.GetValue(LibraryOption) is { } id
        ? [.. Find.One(id, "library", catalog.Libraries, one => one.Id, one => one.Name).Entries.Select(entry => entry.Title)]
        : catalog.Titles;

    /// <summary>The texts of a collection, after an interrupted change of it has been finished.</summary>
    public static CollectionTexts Texts(string folder, Terminal terminal)
    {
        if (CollectionWriter.FinishInterrupted(folder))
            terminal.Tell($"A change of {folder} had been stopped before its last step; it is finished now.");
        return CollectionFolder.Read(folder, VocabularyFolder);
    }

    /// <summary>Loads a folder and prints its errors.</summary>
    public static LoadResult Load(string folder, Terminal terminal)
    {
        var texts = Texts(folder, terminal);
        var result = CollectionLoader.Load(texts.Files, texts.Faults);
        foreach (var fault in result.Faults.Where(fault => fault.Severity == Severity.Error))
            terminal.Tell(fault.ToString());
        if (result.Catalog is null)
            terminal.Tell($"{result.Faults.Count(fault => fault.Severity == Severity.Error)} faults in {folder}; nothing was written.");
        return result;
    }

    /// <summary>The folder the command line means.</summary>
    public static string Folder(string? named)
    {
        if (named is not null)
            return Directory.Exists(named) ? named : throw new UsageException($"There is no folder {named}.");
        if (File.Exists("collection.yaml"))
            return ".";
        return File.Exists(Path.Combine("data", "demo", "collection.yaml"))
            ? Path.Combine("data", "demo")
            : throw new UsageException("No collection here: name its folder with --collection.");
    }
}
