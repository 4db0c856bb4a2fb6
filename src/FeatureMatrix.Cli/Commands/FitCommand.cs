using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Reports.Subjects;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Whether a card may go into a PC, as far as documents tell.</summary>
internal static class FitCommand
{
    public static Command Create(Terminal terminal)
    {
        var card = new Argument<string>("card") { Description = "The card, by id or name." }.Completing(Known.Cards);
        var rig = new Argument<string>("rig") { Description = "The PC, by id or name." }.Completing(Known.Rigs);
        var os = new Option<string[]>("--os") { Description = "The systems to be run there. Default: those installed.", HelpName = "id", CompletionSources = { Known.Systems } };
        var forced = new Option<bool>("--forced") { Description = "A driver is to be forced onto the card." };
        var command = new Command("fit", "Compare a card's documents with a PC's before anyone plugs anything in: voltage, power, monitor, memory.")
        {
            card, rig, os, forced, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var catalog = session.Catalog;
            var chosen = Find.One(parsed.GetValue(rig)!, "rig", catalog.Rigs, one => one.Id, one => one.Name);
            var oses = parsed.GetValue(os) is { Length: > 0 } words
                ? words.Select(word => Find.One(word, "operating system", catalog.Oses, one => one.Id, one => one.Name)).ToList()
                : chosen.Oses;
            terminal.Print(FitReport.Of(
                Find.One(parsed.GetValue(card)!, "card", catalog.Cards, one => one.Id, one => one.Name), chosen, oses, parsed.GetValue(forced)));
            return ExitCode.Fine;
        });
        return command;
    }
}
