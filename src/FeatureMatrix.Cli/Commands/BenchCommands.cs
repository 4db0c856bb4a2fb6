using System.CommandLine;
using FeatureMatrix.Bench;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Model;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Measured;

namespace FeatureMatrix.Cli.Commands;

/// <summary>What the bench log says.</summary>
internal static class BenchCommands
{
    private static readonly Option<string?> CardOption = new("--card") { Description = "Only this card, by id or name.", HelpName = "card", CompletionSources = { Known.Cards } };

    private static readonly Option<string?> TitleOption = new("--title") { Description = "Only this title, by id or name.", HelpName = "title", CompletionSources = { Known.Titles } };

    /// <summary>Series and ladders.</summary>
    public static Command Bench(Terminal terminal)
    {
        var what = new Option<string?>("--show")
        {
            Description = "What to print: runs, ladders, rows, speeds or scores. Default: runs, and as text ladders too.",
            HelpName = "table",
        };
        what.AcceptOnlyFromAmong("runs", "ladders", "rows", "speeds", "scores");
        var command = new Command("bench", "Print what was measured: runs with their noise, and the resolution ladders with what limits them.")
        {
            CardOption, TitleOption, what, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed => Print(terminal, parsed, null, Confidence.Usual, report => parsed.GetValue(what) switch
        {
            "runs" => [report.SeriesTable],
            "ladders" => [report.LadderTable],
            "rows" => [report.CardRowTable],
            "speeds" => [report.SpeedTable],
            "scores" => [report.ScoreTable],
            _ when parsed.GetValue(TableOptions.FormatOption) == TableFormat.Text => [report.SeriesTable, report.LadderTable],
            _ => [report.SeriesTable],
        }));
        return command;
    }

    /// <summary>Everything that was measured with one difference between two things.</summary>
    public static Command Against(Terminal terminal)
    {
        var a = new Argument<string?>("A") { Description = "What is compared: a card, driver, wrapper or setting, as far as it takes. Default: anything.", Arity = ArgumentArity.ZeroOrOne };
        var b = new Argument<string?>("B") { Description = "What it is compared with.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command(
            "against", "Compare runs that differ in one thing alone: drivers, wrappers, cards, sound on and off.")
        {
            a, b, CardOption, TitleOption, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed => Print(terminal, parsed, null, Confidence.Usual, report =>
        {
            var chosen = report.ComparisonsOf(parsed.GetValue(a) ?? "", parsed.GetValue(b) ?? "");
            return chosen.Rows.Count > 0
                ? [chosen]
                : throw new UsageException("No two series of runs differ in that alone. Say 'against' without words to see which do.");
        }));
        return command;
    }

    /// <summary>What is left above a floor.</summary>
    public static Command Headroom(Terminal terminal)
    {
        var floor = new Option<double?>("--floor") { Description = "Frames a second to keep. Default: the library's floor.", HelpName = "fps" };
        var confidence = new Option<double>("--confidence")
        {
            Description = "How sure to be, in percent, above 50 and below 100. Default: 95.",
            DefaultValueFactory = _ => 100 * Confidence.Usual,
            HelpName = "percent",
        };
        var command = new Command("headroom", "Print the highest mode and antialiasing that keep a frame rate, for each setup that was measured.")
        {
            CardOption, TitleOption, floor, confidence, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(confidence) is not (> 50 and < 100))
                throw new UsageException("--confidence has to lie above 50 and below 100.");
            if (parsed.GetValue(floor) is <= 0)
                throw new UsageException("--floor has to lie above 0.");
            return Print(terminal, parsed, parsed.GetValue(floor), parsed.GetValue(confidence) / 100, report => [report.HeadroomTable]);
        });
        return command;
    }

    private static int Print(Terminal terminal, ParseResult parsed, double? floor, double confidence, Func<BenchReport, IReadOnlyList<Table>> choose)
    {
        if (Session.Open(parsed, terminal) is not { } session)
            return ExitCode.Faults;
        var catalog = session.Catalog;
        var card = parsed.GetValue(CardOption) is { } word ? Find.One(word, "card", catalog.Cards, one => one.Id, one => one.Name) : (Card?)null;
        var title = parsed.GetValue(TitleOption) is { } name ? Find.One(name, "title", catalog.Titles, one => one.Id, one => one.Name) : (Title?)null;
        var tables = choose(BenchReport.Of(session.Decisions, card, title, floor, confidence));
        for (var i = 0; i < tables.Count; i++)
        {
            if (i > 0)
                terminal.Print("\n");
            TableOptions.Print(terminal, parsed, tables[i]);
        }

        return ExitCode.Fine;
    }
}
