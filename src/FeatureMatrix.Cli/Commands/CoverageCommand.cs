using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Titles against cards, as a table.</summary>
internal static class CoverageCommand
{
    public static Command Create(Terminal terminal)
    {
        var cards = new Argument<string[]>("cards") { Description = "The cards, by id or name; all where none is named.", Arity = ArgumentArity.ZeroOrMore }.Completing(Known.Cards);
        var setups = new Option<bool>("--setups") { Description = "One column for each driver and operating system instead of each card." };
        var totals = new Option<bool>("--totals") { Description = "Only how many titles run and lose nothing, for certain and at best. Quick for thousands of titles and setups." };
        var brief = new Option<bool>("--short") { Description = "A few words a cell instead of whole labels: narrow enough for a post in a forum." };
        var command = new Command("coverage", "Print which titles run on which cards, and what is lost.")
        {
            cards, setups, totals, brief, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var chosen = parsed.GetValue(cards) is { Length: > 0 } words
                ? words.Select(word => Find.One(word, "card", session.Catalog.Cards, one => one.Id, one => one.Name)).ToList()
                : session.Catalog.Cards;
            if (parsed.GetValue(totals))
            {
                TableOptions.Print(terminal, parsed, TotalsReport.Of(session.Decisions, chosen, parsed.GetValue(setups)));
                return ExitCode.Fine;
            }

            var report = parsed.GetValue(setups)
                ? CoverageReport.BySetup(session.Decisions, chosen)
                : CoverageReport.ByCard(session.Decisions, chosen);
            TableOptions.Print(terminal, parsed, parsed.GetValue(brief) ? report.ToShortTable() : report.ToTable());
            return ExitCode.Fine;
        });
        return command;
    }
}
