using System.CommandLine;
using FeatureMatrix.Cli.Completion;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Why a title does what it does on a card.</summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal)
    {
        var title = new Argument<string>("title") { Description = "The title, by id or name." }.Completing(Known.Titles);
        var card = new Argument<string>("card") { Description = "The card, by id or name." }.Completing(Known.Cards);
        var os = new Option<string?>("--os") { Description = "Only this operating system.", HelpName = "system", CompletionSources = { Known.Systems } };
        var brief = new Option<bool>("--short") { Description = "Only the verdict, what to use and what else would help." };
        var json = new Option<bool>("--json") { Description = "Print JSON." };
        var command = new Command("explain", "Explain one cell: the answer in short, then the route, what is lost, what is not known, and every fact behind it.")
        {
            title, card, os, brief, json, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(parsed =>
        {
            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var catalog = session.Catalog;
            var chosenTitle = Find.One(parsed.GetValue(title)!, "title", catalog.Titles, one => one.Id, one => one.Name);
            var chosenCard = Find.One(parsed.GetValue(card)!, "card", catalog.Cards, one => one.Id, one => one.Name);
            var verdict = parsed.GetValue(os) is { } word
                ? session.Decisions.Resolver.Resolve(
                    chosenTitle, chosenCard, Find.One(word, "operating system", catalog.Oses, one => one.Id, one => one.Name), session.Decisions.TermsFor(chosenTitle))
                : session.Decisions.On(chosenTitle, chosenCard);
            var explanation = ExplanationBuilder.Explain(verdict, session.Decisions.Speeds, session.Decisions);
            if (parsed.GetValue(brief))
                explanation = explanation.InShort();
            if (parsed.GetValue(json))
                terminal.Print(JsonTable.Write(explanation));
            else
                terminal.Print(explanation);
            return ExitCode.Fine;
        });
        return command;
    }
}
