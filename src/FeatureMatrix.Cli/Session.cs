using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Wording;

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

    /// <summary>The option that names a policy file.</summary>
    public static Option<string?> PolicyOption { get; } = new("--policy")
    {
        Description = "File with a policy that is laid over the library's, key by key: allowed systems and wrappers, forcing, mode, speed floor, worths.",
        HelpName = "file",
    };

    public Catalog Catalog { get; }

    public Decisions Decisions { get; }

    /// <summary>Where the program's own vocabulary lies.</summary>
    public static string VocabularyFolder => Path.Combine(AppContext.BaseDirectory, "vocabulary");

    /// <summary>Loads the collection. Faults are printed; null where they block.</summary>
    public static Session? Open(ParseResult parsed, Terminal terminal, string? named = null)
    {
        var folder = Folder(named ?? parsed.GetValue(CollectionOption));
        var result = Load(folder, terminal, parsed.GetValue(PolicyOption));
        return result.Catalog is { } catalog ? new Session(catalog, new Decisions(catalog, LibraryOf(result, parsed.GetValue(LibraryOption)))) : null;
    }

    /// <summary>The library that a word means; all titles where there is none but a policy; null for the default terms.</summary>
    public static Library? LibraryOf(LoadResult result, string? word)
    {
        if (word is not null)
            return Find.One(word, "library", result.Catalog!.Libraries, one => one.Id, one => one.Name);
        return result.Policy is { } policy ? Weighing.AllTitles(result.Catalog!, policy) : null;
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
    /// <param name="folder">The collection's folder.</param>
    /// <param name="terminal">Where errors go.</param>
    /// <param name="policyFile">A policy to lay over the library's; null for none.</param>
    /// <param name="outcome">What errors come to.</param>
    public static LoadResult Load(string folder, Terminal terminal, string? policyFile = null, string outcome = "; nothing was written")
    {
        var result = Load(Texts(folder, terminal), policyFile);
        foreach (var fault in result.Faults.Where(fault => fault.Severity == Severity.Error))
            terminal.Tell(fault.ToString());
        if (result.Catalog is null)
            terminal.Tell($"{Names.Count(result.Faults.Count(fault => fault.Severity == Severity.Error), "fault")} in {folder}{outcome}.{(result.HasUnreadFile ? " Words that name other records were not looked up, because a file cannot be read." : "")}");
        return result;
    }

    /// <summary>Loads texts, and a policy file where one is named.</summary>
    public static LoadResult Load(CollectionTexts texts, string? policyFile)
    {
        if (policyFile is null)
            return CollectionLoader.Load(texts.Files, texts.Faults, pictures: texts.Pictures);
        if (!File.Exists(policyFile))
            throw new UsageException($"There is no file {policyFile}.");
        var policy = CollectionFolder.ReadOne(policyFile);
        return CollectionLoader.Load(texts.Files, [.. texts.Faults, .. policy.Faults], policy.Files is [var file] ? file : null, texts.Pictures);
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
