using System.CommandLine;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.RunLogs;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>What every import shares: the collection with its texts, and the last step, which shows or writes the change.</summary>
internal sealed class ImportSession
{
    /// <summary>The largest foreign file that is read into memory, in bytes.</summary>
    private const long LargestFile = 64L * 1024 * 1024;

    private readonly Terminal _terminal;
    private readonly string _folder;
    private readonly bool _writes;

    private ImportSession(Terminal terminal, string folder, IReadOnlyList<SourceText> files, Catalog catalog, bool writes)
    {
        _terminal = terminal;
        _folder = folder;
        Files = files;
        _writes = writes;
        Catalog = catalog;
    }

    /// <summary>The option without which nothing is written.</summary>
    public static Option<bool> WriteOption { get; } = new("--write") { Description = "Write the change. Without it the change is only shown." };

    public Catalog Catalog { get; }

    /// <summary>The texts of vocabulary and collection.</summary>
    public IReadOnlyList<SourceText> Files { get; }

    /// <summary>Loads the collection; null where its faults, which are printed, have to be mended first.</summary>
    public static ImportSession? Open(ParseResult parsed, Terminal terminal)
    {
        var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
        var texts = Session.Texts(folder, terminal);
        var result = CollectionLoader.Load(texts.Files, texts.Faults);
        if (result.Catalog is { } catalog)
            return new ImportSession(terminal, folder, texts.Files, catalog, parsed.GetValue(WriteOption));
        PrintErrors(result, terminal);
        terminal.Tell($"Mend these faults in {folder} first; nothing was imported.");
        return null;
    }

    /// <summary>A foreign file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="largest">The largest that is read, in bytes.</param>
    public static byte[] Read(string path, long largest = LargestFile)
    {
        if (!File.Exists(path))
            throw new UsageException($"There is no file {path}.");
        return new FileInfo(path).Length <= largest
            ? File.ReadAllBytes(path)
            : throw new UsageException($"{path} is larger than {largest / 1024 / 1024} MiB; no file of this kind is.");
    }

    /// <summary>Shows the change and, where asked to, writes it. The exit code.</summary>
    public int Finish(IEnumerable<RecordChange> records) => Finish(CollectionEditor.Change(Files, [.. records]));

    /// <summary>Shows and, where asked to, writes rows of a bench log that the collection lacks. The exit code.</summary>
    public int Finish(string name, IEnumerable<RunLogRow> rows) =>
        Finish(CollectionEditor.Add(Files, NewRuns.Of(Files, name, rows) is { } file ? [file] : []));

    /// <summary>Shows and, where asked to, writes a change. The exit code.</summary>
    public int Finish(CollectionChange change)
    {
        _terminal.Print(ImportReport.Change(change));
        if (change.Result.Catalog is null)
        {
            PrintErrors(change.Result, _terminal);
            _terminal.Tell("The collection would not load with this change, so nothing was written.");
            return ExitCode.Faults;
        }

        if (change.Files.Count == 0)
            return ExitCode.Fine;
        _terminal.Print(SightingsReport.Of(Catalog, change.Result.Catalog));
        if (!_writes)
        {
            _terminal.Print("Nothing was written. Say --write to write it.\n");
            return ExitCode.Fine;
        }

        CollectionWriter.Write(_folder, change.Files);
        _terminal.Print($"Written. Files that changed are kept beside the new ones with {CollectionWriter.BeforeSuffix} after their names.\n");
        return ExitCode.Fine;
    }

    private static void PrintErrors(LoadResult result, Terminal terminal)
    {
        foreach (var fault in result.Faults.Where(fault => fault.Severity == Severity.Error))
            terminal.Tell(fault.ToString());
    }
}
