using System.CommandLine;
using System.Net.Sockets;
using FeatureMatrix.Cli.Preview;

namespace FeatureMatrix.Cli.Commands;

/// <summary>Shows the site in a browser while its collection and templates are being written.</summary>
internal static class PreviewCommand
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("folder") { Description = "Folder of the collection. Default: as for --collection.", Arity = ArgumentArity.ZeroOrOne };
        var templates = new Option<string?>("--templates") { Description = "Folder with templates of your own; what it lacks is taken from ours.", HelpName = "folder" };
        var port = new Option<int>("--port") { Description = "Port on this machine. Default: 8600.", DefaultValueFactory = _ => 8600, HelpName = "number" };
        var command = new Command("preview", "Show the site in a browser on this machine and follow every change of collection and templates.")
        {
            folder, templates, port, Session.CollectionOption, Session.LibraryOption, Session.PolicyOption,
        };
        command.SetAction(async (parsed, stop) =>
        {
            var build = new PreviewBuild(
                Session.Folder(parsed.GetValue(folder) ?? parsed.GetValue(Session.CollectionOption)), parsed.GetValue(Session.LibraryOption), parsed.GetValue(templates),
                parsed.GetValue(Session.PolicyOption));
            using var server = Listen(build, parsed.GetValue(port));
            terminal.Tell($"Open {server.Address} in a browser; stop with Ctrl+C.");
            using var watch = new SourceWatch(build.Sources);
            var serving = server.Run(stop);
            while (!stop.IsCancellationRequested)
            {
                if (await Task.Run(build.Update, CancellationToken.None))
                    Report(terminal, build.Feed.State);
                await Task.WhenAny(serving, watch.Wait(Pause, stop));
            }

            await serving;
            return ExitCode.Fine;
        });
        return command;
    }

    private static PreviewServer Listen(PreviewBuild build, int port)
    {
        if (port is < 1 or > 65535)
            throw new UsageException($"--port {port}: a number from 1 to 65535.");
        try
        {
            return new PreviewServer(build.Feed, port, Patience);
        }
        catch (SocketException)
        {
            throw new UsageException($"Port {port} is taken or not allowed; name another with --port.");
        }
    }

    private static void Report(Terminal terminal, PreviewState state)
    {
        foreach (var fault in state.Faults)
            terminal.Tell(fault);
        terminal.Tell(state.Faults.Count == 0 ? "Built." : state.IsNothing ? "Nothing to show yet." : "The last good build stays.");
    }
}
