using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace FeatureMatrix.Cli.Help;

/// <summary>The usual help, and below it what one would type.</summary>
internal sealed class HelpWithExamples : SynchronousCommandLineAction
{
    private readonly HelpAction _usual = new();

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var exit = _usual.Invoke(parseResult);
        var examples = CommandExamples.Of(CommandTree.PathOf(parseResult.CommandResult.Command));
        if (examples.Count == 0)
            return exit;
        var output = parseResult.InvocationConfiguration.Output;
        output.WriteLine("Examples:");
        foreach (var example in examples)
        {
            output.WriteLine($"  {example.Purpose}:");
            output.WriteLine($"    {example.CommandLine}");
        }

        output.WriteLine();
        return exit;
    }
}
