using System.CommandLine;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Reports.Imports;

namespace FeatureMatrix.Cli.Commands.Import;

/// <summary>Reads a dump that the probe wrote on the period PC.</summary>
internal static class DumpCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("file") { Description = "The dump (src/probe/README.md says how it is made)." };
        var targets = new TargetOptions();
        var command = new Command("dump", "Read a capability dump: decode every bit, and take what Direct3D and OpenGL report as measured facts.")
        {
            file, TableOptions.FormatOption, ImportSession.WriteOption, Session.CollectionOption, Session.LibraryOption,
        };
        foreach (var option in targets.All)
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            if (Read(parsed.GetValue(file)!, terminal) is not { } dump || ImportSession.Open(parsed, terminal) is not { } session)
                return ExitCode.Faults;
            var catalog = session.Catalog;
            TableOptions.Print(terminal, parsed, CapabilityReport.Decode(dump, catalog.Features, Session.TitlesOf(parsed, catalog)));

            var gl = dump.SectionsOf("opengl").Select(OpenGlDumpSection.ToReport).FirstOrDefault(report => report.Compatibility is not null);
            var target = targets.Of(parsed, catalog, "dump", DumpFacts.CardName(dump), DumpFacts.DriverVersion(dump), gl?.Software is not null);
            var records = new List<RecordChange> { SourceRecord.Of(target.Source, $"Capability dump made on the PC with {target.CardName}, driver {target.Version}", "measured") };
            records.AddRange(target.Records());
            Take("Direct3D", "direct3d", MeasuredSupply.Of(dump, catalog.Features));
            if (ImportReport.Memory(DumpFacts.ReportedMemory(dump)) is { } memory)
                terminal.Print(memory);
            if (gl is not null)
                Take("OpenGL", "opengl", MeasuredSupply.Of(gl, catalog.Features));
            return session.Finish(records);

            void Take(string name, string api, MeasuredSupply supply)
            {
                terminal.Print(ImportReport.Measured($"{name} in the dump", supply, target));
                if (supply.Statements.Count > 0)
                    records.Add(MeasuredRecord.Of(supply, target, api));
            }
        });
        return command;
    }

    /// <summary>A dump with its faults told; null where the file is none.</summary>
    public static CapabilityDump? Read(string path, Terminal terminal)
    {
        var dump = CapabilityDump.Parse(ImportSession.Read(path));
        foreach (var fault in ImportReport.Faults(path, dump.Faults))
            terminal.Tell(fault);
        return dump.Faults.Any(fault => fault.Kind == ImportFaultKind.NotThisFormat) ? null : dump;
    }
}
