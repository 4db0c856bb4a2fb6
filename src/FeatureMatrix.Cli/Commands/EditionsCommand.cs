using System.CommandLine;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Reports.Editions;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Lists the editions of a collection, and what changed from one to another.</summary>
internal static class EditionsCommand
{
    public static Command Create(Terminal terminal)
    {
        var from = new Argument<string?>("from") { Description = "The earlier edition. Where none is named all are listed.", Arity = ArgumentArity.ZeroOrOne };
        var to = new Argument<string?>("to") { Description = "The later edition. Default: the collection as it is now.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("editions", "List the editions kept so far, or what changed since one of them and which statements caused it.")
        {
            from, to, TableOptions.FormatOption, Session.CollectionOption, Session.LibraryOption,
        };
        command.SetAction(parsed =>
        {
            var shelf = new EditionShelf(Session.Folder(parsed.GetValue(Session.CollectionOption)));
            if (parsed.GetValue(from) is not { } earlier)
            {
                TableOptions.Print(terminal, parsed, new EditionHistory(shelf.All()).ToTable());
                return ExitCode.Fine;
            }

            var before = shelf.Named(earlier);
            if (parsed.GetValue(to) is { } later)
            {
                TableOptions.Print(terminal, parsed, EditionDifference.Between(before, shelf.Named(later)).ToReport());
                return ExitCode.Fine;
            }

            if (Session.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            TableOptions.Print(terminal, parsed, EditionDifference.Between(before, EditionState.Of(session.Decisions, ProgramVersion.Text)).ToReport());
            return ExitCode.Fine;
        });
        return command;
    }
}
