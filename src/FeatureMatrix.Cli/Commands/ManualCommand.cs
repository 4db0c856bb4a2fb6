using System.CommandLine;
using FeatureMatrix.Cli.Help;

namespace FeatureMatrix.Cli.Commands;

/// <summary>The manual page of this very program.</summary>
internal static class ManualCommand
{
    public static Command Create(Terminal terminal, RootCommand root)
    {
        var command = new Command("manual", "Print the manual page, in the form that man reads.");
        command.SetAction(_ => terminal.Print(ManualPage.Write(root)));
        return command;
    }
}
