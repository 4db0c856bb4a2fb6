using System.CommandLine;
using FeatureMatrix.Cli.Commands.Import;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Names a card by its hardware ID and drafts its record.</summary>
internal static class IdentifyCommand
{
    private const string UsualList = "/usr/share/misc/pci.ids";

    public static Command Create(Terminal terminal)
    {
        var word = new Argument<string>("hardware-id") { Description = @"As Windows writes it: PCI\VEN_1234&DEV_5678, with &SUBSYS_ and &REV_ where known. In quotes." };
        var ids = new Option<string>("--ids") { Description = $"The PCI ID list. Default: {UsualList}.", DefaultValueFactory = _ => UsualList, HelpName = "file" };
        var card = new Option<string?>("--card") { Description = "Id for the card's record. Default: made of its name.", HelpName = "id" };
        var chip = new Option<string?>("--chip") { Description = "Id of its chip. Default: made of its name.", HelpName = "id" };
        var command = new Command("identify", "Name a card by its hardware ID, and draft a record of it. Shows what would change; --write writes it.")
        {
            word, ids, card, chip, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var text = parsed.GetValue(word)!;
            if (!HardwareId.TryParse(text, out var id, out var faultAt))
                throw new UsageException($@"'{text}' is no hardware ID: something else is expected at character {faultAt + 1}. Write it as PCI\VEN_1234&DEV_5678, in quotes.");
            if (PciCard.From(id!) is not { } pci)
                throw new UsageException($"'{text}' names no single chip: it lacks VEN_ or DEV_.");
            var list = parsed.GetValue(ids)!;
            if (!File.Exists(list))
                throw new UsageException($"There is no PCI ID list {list}. Debian has it in the package pci.ids; name another with --ids.");
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            PciNames names;
            using (var reader = File.OpenText(list))
                names = PciNames.Of(pci, reader);
            terminal.Print(IdentityReport.Of(id!, names, CardRecord.Known(session.Catalog, id!)));
            return session.Finish(CardRecord.Of(session.Catalog, id!, names, parsed.GetValue(card), parsed.GetValue(chip)));
        });
        return command;
    }
}
