using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Reports.Advice;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Cli.Commands;

/// <summary>The commands that answer with a decision: each makes one report and prints it.</summary>
internal static class DecisionCommands
{
    private static readonly Option<string?> OsOption = new("--os") { Description = "Only this operating system.", HelpName = "system", CompletionSources = { Known.Systems } };

    public static IEnumerable<Command> All(Terminal terminal) =>
    [
        Compare(terminal), Rank(terminal), Driver(terminal), Wrappers(terminal), Plan(terminal), Next(terminal), Worth(terminal),
        Losses(terminal), Memory(terminal), WhatIf(terminal),
    ];

    private static Command Compare(Terminal terminal)
    {
        var (first, second) = (Card("first", "A card, by id or name."), Card("second", "The other card."));
        return Create(terminal, "compare", "Weigh two cards for a library: who wins, why, and what would change it.", [first, second], [],
            (session, parsed) => CompareReport.Of(
                new Weighing(session.Decisions), session.Card(parsed.GetValue(first)!), session.Card(parsed.GetValue(second)!)).ToReport());
    }

    private static Command Rank(Terminal terminal)
    {
        var cards = new Argument<string[]>("cards") { Description = "The cards; all where none is named.", Arity = ArgumentArity.ZeroOrMore }.Completing(Known.Cards);
        return Create(terminal, "rank", "Rank cards for a library, ties and open questions included.", [cards], [],
            (session, parsed) => RankingReport.Of(
                new Weighing(session.Decisions),
                parsed.GetValue(cards) is { Length: > 0 } words ? words.Select(session.Card).ToList() : null).ToReport());
    }

    private static Command Driver(Terminal terminal)
    {
        var card = Card("card", "The card, by id or name.");
        return Create(terminal, "driver", "Find the driver that serves a library best on a card, and what each version changes.", [card], [OsOption],
            (session, parsed) => DriverChoiceReport.Of(new Weighing(session.Decisions), session.Card(parsed.GetValue(card)!), session.Os(parsed.GetValue(OsOption))).ToReport());
    }

    private static Command Wrappers(Terminal terminal)
    {
        var cards = new Argument<string[]>("cards") { Description = "The cards; all where none is named.", Arity = ArgumentArity.ZeroOrMore }.Completing(Known.Cards);
        return Create(terminal, "wrappers", "List the titles that need a wrapper, or only gain by one.", [cards], [],
            (session, parsed) => WrapperReport.Of(
                session.Decisions, parsed.GetValue(cards) is { Length: > 0 } words ? words.Select(session.Card).ToList() : null).ToReport());
    }

    private static Command Plan(Terminal terminal)
    {
        var budget = new Option<decimal?>("--budget") { Description = "All cards to buy may cost no more than this together, at the highest prices on record.", HelpName = "amount" };
        var rigs = new Option<string[]>("--rig") { Description = "Plan for this PC only; may be repeated. All on record where none is named.", HelpName = "rig", CompletionSources = { Known.Rigs } };
        return Create(terminal, "plan", "Find the fewest cards, PCs and installs that cover every must-have, then the most weight.", [], [budget, rigs],
            (session, parsed) => PlanReport.Of(
                new Weighing(session.Decisions), parsed.GetValue(budget),
                parsed.GetValue(rigs) is { Length: > 0 } words ? words.Select(session.Rig).ToList() : null).ToReport());
    }

    private const int MostQuestions = 8;

    private static Command Next(Terminal terminal)
    {
        var (first, second) = (Card("first", "A card, by id or name."), Card("second", "The other card."));
        var sheet = new Option<string?>("--worksheet") { Description = "Also write the tests as a spreadsheet to fill in at the bench; 'import worksheet' reads it back.", HelpName = "file" };
        var all = new Option<bool>("--all") { Description = $"Every question that can change who wins, not only the {MostQuestions} that do most." };
        return Create(terminal, "next", "List what to test next to decide between two cards, in the order of swaps.", [first, second], [sheet, all], (session, parsed) =>
        {
            var report = NextTestReport.Of(new Weighing(session.Decisions), session.Card(parsed.GetValue(first)!), session.Card(parsed.GetValue(second)!));
            if (parsed.GetValue(sheet) is { } path)
            {
                var worksheet = report.ToWorksheet(Path.GetFileNameWithoutExtension(path));
                WorksheetCommand.WriteNew(path, worksheet);
                terminal.Tell($"{Names.Count(worksheet.Tasks.Count, "test")} in {path}. Fill it in and say: import worksheet {path}");
            }

            return (parsed.GetValue(all) ? report : report.Foremost(MostQuestions)).ToReport();
        });
    }

    private static Command Worth(Terminal terminal)
    {
        var card = Card("card", "The card, by id or name.");
        return Create(terminal, "worth", "Say what a card adds to those you own, and the most to pay for it.", [card], [],
            (session, parsed) => CardValueReport.Of(new Weighing(session.Decisions), session.Card(parsed.GetValue(card)!)).ToReport());
    }

    private static Command Losses(Terminal terminal)
    {
        var card = Card("card", "The card, by id or name.");
        return Create(terminal, "losses", "List what a card loses, title by title, and what to do about it.", [card], [], (session, parsed) =>
        {
            var report = CardReport.Of(session.Decisions, session.Card(parsed.GetValue(card)!));
            var table = report.ToTable();
            return new DecisionReport(table.Title, report.Headline, report.PolicyText, report.Cautions, [table with { Title = "Losses", Note = "" }]);
        });
    }

    private static Command Memory(Terminal terminal)
    {
        var card = Card("card", "The card, by id or name.");
        return Create(terminal, "memory", "List which modes a card's memory holds, and which texture presets fit.", [card], [], (session, parsed) =>
        {
            var chosen = session.Card(parsed.GetValue(card)!);
            var report = MemoryReport.Of(session.Decisions, chosen);
            var table = report.ToTable();
            return new DecisionReport(table.Title, table.Note, PolicyWording.Text(session.Decisions.Policy), [], [table with { Title = "Frame buffers", Note = "" }, report.PresetTable()]);
        });
    }

    private static Command WhatIf(Terminal terminal)
    {
        var card = Card("card", "The card as it is now.");
        var other = new Option<string?>("--card") { Description = "Another card in its place.", HelpName = "card", CompletionSources = { Known.Cards } };
        var driver = new Option<string?>("--driver") { Description = "This driver alone.", HelpName = "driver", CompletionSources = { Known.Drivers } };
        var pc = new Option<string?>("--rig") { Description = "In this PC: only its systems, with what its documents and its speed say.", HelpName = "rig", CompletionSources = { Known.Rigs } };
        var pool = MemoryOption.Create();
        return Create(terminal, "whatif", "List the titles that change with another card, driver, system, memory or PC.", [card], [other, driver, OsOption, pool, pc], (session, parsed) =>
        {
            var decisions = session.Decisions;
            var now = session.Card(parsed.GetValue(card)!);
            var then = parsed.GetValue(other) is { } word ? session.Card(word) : now;
            var os = session.Os(parsed.GetValue(OsOption));
            var only = parsed.GetValue(driver) is { } name
                ? Find.One(name, "driver", session.Catalog.Drivers.ToList(), one => one.Id, Names.Of)
                : null;
            var rig = parsed.GetValue(pc) is { } place ? session.Rig(place) : null;
            if (os is not null && !decisions.Policy.Allows(os))
                throw new UsageException($"The policy does not allow {os.Name}. Take another library, or lay a policy over it with --policy.");
            var memory = parsed.Memory(pool, then);
            if (then == now && os is null && only is null && rig is null && memory is null)
                throw new UsageException("Say what to change: --card, --driver, --os, --memory or --rig.");
            return WhatIfReport.Of(new Weighing(decisions), now, new Swap(then, only, os, memory, rig)).ToReport();
        });
    }

    private static Argument<string> Card(string name, string description) => new Argument<string>(name) { Description = description }.Completing(Known.Cards);

    private static Command Create(
        Terminal terminal, string name, string description, IReadOnlyList<Argument> arguments, IReadOnlyList<Option> options,
        Func<Session, ParseResult, DecisionReport> report)
    {
        var command = new Command(name, description) { TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption };
        foreach (var argument in arguments)
            command.Arguments.Add(argument);
        foreach (var option in options)
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            TableOptions.Print(terminal, parsed, report(session, parsed));
            return ExitCode.Fine;
        });
        return command;
    }
}
