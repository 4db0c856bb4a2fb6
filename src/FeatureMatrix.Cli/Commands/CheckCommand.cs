using System.CommandLine;
using System.Globalization;
using System.Text;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Looks for faults in the data, and helps where nothing is wrong but something is missing.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var date = DateOption.Create("Judge the age of prices by this day. Default: they are not judged.");
        var sarif = new Option<string?>("--sarif") { Description = "Also write the faults to this file, as SARIF 2.1.0.", HelpName = "file" };
        var cards = new Option<bool>("--cards") { Description = "Print how much is recorded of each card, and no more." };
        var command = new Command("check", "List every fault with file, line and column; then what is missing most, what disagrees, and what decides nothing.")
        {
            date, sarif, cards, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed =>
        {
            var day = parsed.Day(date);
            var folder = Session.Folder(parsed.GetValue(Session.CollectionOption));
            var result = Session.Load(folder, terminal, outcome: "");
            foreach (var warning in result.Faults.Where(fault => fault.Severity == Severity.Warning))
                terminal.Tell(warning.ToString());
            if (parsed.GetValue(sarif) is { } file)
                AtomicFile.Write(file, Encoding.UTF8.GetBytes(SarifLog.Write(result.Faults, ProgramVersion.Text)));
            if (result.Catalog is not { } catalog)
                return ExitCode.Faults;
            var report = CareReport.Of(new Decisions(catalog, LibraryOf(parsed, catalog)), Unsourced(result.Faults), result.Hidden, day);
            var isForReading = parsed.GetValue(TableOptions.FormatOption) == TableFormat.Text && !parsed.GetValue(cards);
            if (isForReading)
            {
                terminal.Print(
                    $"{folder}: {Names.Count(catalog.Cards.Count, "card")}, {Names.Count(catalog.Drivers.Count(), "driver version")}, "
                    + $"{Names.Count(catalog.WrapperVersions.Count(), "wrapper version")}, {Names.Count(catalog.Titles.Count, "title")}, "
                    + $"{Names.Count(catalog.Observations.Count, "observation")}; {Names.Count(result.Faults.Count, "warning")}.\n\n");
                TableOptions.Print(terminal, parsed, report.ToCardTable());
                terminal.Print("\n");
            }

            TableOptions.Print(terminal, parsed, parsed.GetValue(cards) ? report.ToCardTable() : report.ToTable());
            return ExitCode.Fine;
        });
        return command;
    }

    private static Library? LibraryOf(ParseResult parsed, Catalog catalog) =>
        parsed.GetValue(Session.LibraryOption) is { } id ? Find.One(id, "library", catalog.Libraries, one => one.Id, one => one.Name) : null;

    private static IReadOnlyList<(string, string)> Unsourced(IReadOnlyList<Fault> faults) =>
    [
        .. faults.Where(fault => fault.Code == Fault.WithoutSource)
            .Select(fault => (string.Create(CultureInfo.InvariantCulture, $"{fault.Origin.File}({fault.Origin.Line},{fault.Origin.Column})"), fault.Message)),
    ];
}
