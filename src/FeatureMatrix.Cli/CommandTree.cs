using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using FeatureMatrix.Cli.Commands;
using FeatureMatrix.Cli.Commands.Import;
using FeatureMatrix.Cli.Help;

namespace FeatureMatrix.Cli;

/// <summary>All commands under the program's name; help, manual page and completion are made from this tree.</summary>
internal static class CommandTree
{
    /// <summary>What the program is called wherever it is installed.</summary>
    public const string ProgramName = "featmatrix";

    public static RootCommand Create(Terminal terminal)
    {
        var root = new RootCommand("Which titles run on which old graphics card, by which route, and what is lost.") { HelpName = ProgramName };
        root.Options.OfType<HelpOption>().Single().Action = new HelpWithExamples();
        root.Options.OfType<VersionOption>().Single().Action = new PrintVersion(terminal);
        foreach (var command in All(terminal, root))
            root.Subcommands.Add(command);
        return root;
    }

    /// <summary>The words that call a command after the program's name: <c>import opengl</c>.</summary>
    public static string PathOf(Command command) =>
        string.Join(' ', Enclosing(command).Reverse().Select(one => one.Name));

    /// <summary>The commands that do something, in the order of the help; those that only group others are left out.</summary>
    public static IEnumerable<Command> Leaves(Command command) =>
        command.Subcommands.Count == 0 ? [command] : command.Subcommands.SelectMany(Leaves);

    private static IEnumerable<Command> Enclosing(Command command)
    {
        for (var one = command; one is not null and not RootCommand; one = one.Parents.OfType<Command>().FirstOrDefault())
            yield return one;
    }

    private static IEnumerable<Command> All(Terminal terminal, RootCommand root) =>
    [
        PublishCommand.Create(terminal),
        PreviewCommand.Create(terminal),
        CoverageCommand.Create(terminal),
        ExplainCommand.Create(terminal),
        .. DecisionCommands.All(terminal),
        BenchCommands.Bench(terminal),
        BenchCommands.Against(terminal),
        BenchCommands.Headroom(terminal),
        NewCommand.Create(terminal),
        CheckCommand.Create(terminal),
        EditionsCommand.Create(terminal),
        WorkbookCommand.Create(terminal),
        WorksheetCommand.Create(terminal),
        RepeatCommand.Create(terminal),
        SchemaCommand.Create(terminal),
        ImportCommand.Create(terminal),
        IdentifyCommand.Create(terminal),
        ChipsCommand.Create(terminal),
        DifferenceCommand.Create(terminal),
        FitCommand.Create(terminal),
        CompletionCommand.Create(terminal),
        ManualCommand.Create(terminal, root),
    ];

    private sealed class PrintVersion(Terminal terminal) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            terminal.Print(ProgramVersion.Text + "\n");
            return ExitCode.Fine;
        }
    }
}
