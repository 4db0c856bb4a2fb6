using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Importing.Executables;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads a title's folder.</summary>
internal static class TitleCommand
{
    private const int MostFiles = 5_000;

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("folder") { Description = "Folder that the title is installed in. Nothing in it is executed." };
        var title = new Option<string?>("--title") { Description = "Id of the title. Default: made of the folder's name.", HelpName = "id", CompletionSources = { Known.Titles } };
        var os = new Option<string[]>("--os") { Description = "Systems that it runs on. Needed for renderers that the collection does not have.", HelpName = "id", CompletionSources = { Known.Systems } };
        var command = new Command("title", "Read a title's programs: import tables and names in them become likely renderers and needs, graded inferred.")
        {
            folder, title, os, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(folder)!;
            if (!Directory.Exists(path))
                throw new UsageException($"There is no folder {path}.");
            var scan = TitleScanner.Scan(Files(path));
            foreach (var fault in TitleScanReport.Faults(scan))
                terminal.Tell(fault);
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var catalog = session.Catalog;
            var name = new DirectoryInfo(path).Name;
            var id = parsed.GetValue(title) ?? PlainWords.AsId(name);
            if (id.Length == 0)
                throw new UsageException($"No id can be made of '{name}'; give one with --title.");
            var oses = (parsed.GetValue(os) ?? []).Select(word => Find.One(word, "operating system", catalog.Oses, one => one.Id, one => one.Name)).ToList();
            terminal.Print(TitleScanReport.Of(name, scan, catalog.Features));
            var records = TitleRecord.Of(scan, catalog, id, PlainWords.Of(name), oses).ToList();
            return records.Count > 0 && oses.Count == 0
                ? throw new UsageException("Name the systems that the title runs on with --os.")
                : session.Finish(records);
        });
        return command;
    }

    private static IEnumerable<TitleFile> Files(string folder)
    {
        var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 16, AttributesToSkip = FileAttributes.ReparsePoint };
        var paths = Directory.EnumerateFiles(folder, "*", options).Where(TitleScanner.IsOfInterest).Take(MostFiles + 1).Order(StringComparer.Ordinal).ToList();
        if (paths.Count > MostFiles)
            throw new UsageException($"{folder} holds more than {MostFiles} programs; name the folder of one title.");
        foreach (var path in paths)
        {
            // A longer file is not looked at, only told of.
            var isRead = new FileInfo(path).Length <= PortableExecutable.LargestFile;
            yield return new TitleFile(
                Path.GetRelativePath(folder, path).Replace('\\', '/'), isRead ? File.ReadAllBytes(path) : new byte[PortableExecutable.LargestFile + 1]);
        }
    }
}
