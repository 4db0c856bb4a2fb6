using System.Diagnostics;

namespace FeatureMatrix.Cli;

/// <summary>Says what is being done once a command has taken more than a second; silent for quick ones.</summary>
internal sealed class Progress(Terminal terminal)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private readonly Stopwatch _watch = Stopwatch.StartNew();

    /// <summary>The next step begins.</summary>
    public void Step(string what)
    {
        if (_watch.Elapsed > Patience)
            terminal.Tell(what);
    }
}
