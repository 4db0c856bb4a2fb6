using System.CommandLine;
using System.Text;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Loading.RunLogs;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads a bench log.</summary>
internal static class RunsCommand
{
    /// <summary>As large as a log of a collection may be, in bytes.</summary>
    private const long LargestLog = 4L * 1024 * 1024;

    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "Values separated by commas, semicolons or tabs, with the columns of data/README.md in any order." };
        var command = new Command("runs", "Read a bench log: its rows join runs/ under the file's name; rows that are there already are not added again.")
        {
            file, ImportSession.WriteOption, Session.CollectionOption,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var log = RunLogReader.Read(Encoding.UTF8.GetString(ImportSession.Read(path, LargestLog)));
            if (log.Faults.Count > 0)
            {
                foreach (var fault in log.Faults)
                    terminal.Tell(RunLogFaults.Of(path, fault).ToString());
                terminal.Tell("Mend these faults first; nothing was imported.");
                return ExitCode.Faults;
            }

            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var name = PlainWords.AsId(Path.GetFileNameWithoutExtension(path));
            return session.Finish(name.Length > 0 ? name : "log", log.Rows);
        });
        return command;
    }
}
