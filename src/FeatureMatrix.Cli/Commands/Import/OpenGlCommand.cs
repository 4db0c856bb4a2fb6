using System.CommandLine;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads an OpenGL report.</summary>
internal static class OpenGlCommand
{
    private const string Api = "opengl";

    public static Command Create(Terminal terminal)
    {
        var report = new Argument<string>("report") { Description = "Text file: what an OpenGL information program prints, labelled lines, or a bare extension string." };
        var targets = new TargetOptions();
        var command = new Command("opengl", "Read an OpenGL report: extensions and limits become measured facts about a card with a driver.")
        {
            report, ImportSession.WriteOption, Session.CollectionOption,
        };
        foreach (var option in targets.All)
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(report)!;
            var read = OpenGlReport.Parse(ImportSession.Read(path));
            foreach (var fault in ImportReport.Faults(path, read.Faults))
                terminal.Tell(fault);
            if (read.Faults.Any(fault => fault.Kind == ImportFaultKind.NotThisFormat))
                return ExitCode.Faults;
            if (ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var version = (read.Compatibility ?? read.Core)?.VersionText;
            var target = targets.Of(parsed, session.Catalog, Api, read.Renderer, version, read.Software is not null);
            var supply = MeasuredSupply.Of(read, session.Catalog.Features);
            terminal.Print(ImportReport.Measured($"OpenGL report of {PlainWords.Of(read.Renderer ?? "an unnamed renderer")}, version {PlainWords.Of(version ?? "not given")}", supply, target));
            var source = PlainWords.Of($"OpenGL report of {read.Renderer ?? target.CardName}, version {version ?? "not given"}");
            return session.Finish(
                [SourceRecord.Of(target.Source, source, "measured"), .. target.Records(), MeasuredRecord.Of(supply, target, Api)]);
        });
        return command;
    }
}
