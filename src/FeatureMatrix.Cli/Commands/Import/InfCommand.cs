using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads a driver package's INF file.</summary>
internal static class InfCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "The INF file of a driver package." };
        var card = new Option<string>("--card") { Description = "The card to ask about, by id or name; its hardware ID is recorded.", Required = true, HelpName = "id", CompletionSources = { Known.Cards } };
        var driver = new Option<string?>("--driver") { Description = "Id of the driver's branch, or BRANCH@VERSION. Default: made of the provider, with the version that the file states.", HelpName = "id" };
        var command = new Command("inf", "Read a driver package: which systems, is this card listed and how closely, which siblings could be forced. Writes the driver record.")
        {
            file, card, driver, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var package = InfReader.Read(ImportSession.Read(path));
            foreach (var fault in PackageReport.Faults(path, package))
                terminal.Tell(fault);
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var chosen = Find.One(parsed.GetValue(card)!, "card", session.Catalog.Cards, one => one.Id, one => one.Name);
            var record = PackageRecord.Of(session.Catalog, package, chosen);
            terminal.Print(PackageReport.Of(package, record, chosen));

            var provider = PlainWords.AsId(package.Version.Provider ?? "");
            var named = (parsed.GetValue(driver) ?? (provider.Length > 0 ? provider + "-driver" : chosen.Id + "-driver")).Split('@', 2);
            var version = named is [_, { Length: > 0 } stated] ? stated : record.Version;
            var source = $"inf-{named[0]}-{PlainWords.AsId(version)}";
            var records = record.Records(named[0], version, source).ToList();
            if (records.Count > 0)
                records.Insert(0, SourceRecord.Of(source, PlainWords.Of($"INF file {Path.GetFileName(path)} of the package"), "documented"));
            return session.Finish(records);
        });
        return command;
    }
}
