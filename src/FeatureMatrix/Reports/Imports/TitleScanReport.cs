using System.Globalization;
using FeatureMatrix.Importing.Executables;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What a title's files say, in words.</summary>
public static class TitleScanReport
{
    /// <summary>Renderers, candidate needs, proprietary libraries and what lies in the folder, each with the places that say so.</summary>
    public static ExplanationLine Of(string name, TitleScan scan, IReadOnlyList<Feature> vocabulary)
    {
        ArgumentNullException.ThrowIfNull(scan);
        var lines = new List<ExplanationLine>();
        lines.AddRange(TitleRecord.Renderers(scan, vocabulary).Select(pair => new ExplanationLine(
            LineKind.Met, $"Likely a renderer: {Names.Api(pair.Api)}", Places(pair.Candidate.Sightings))));
        lines.AddRange(CandidateNeeds.Of(scan, vocabulary).Select(need => new ExplanationLine(
            LineKind.Gap, $"May need {Names.Of(need.Capability)}; nobody saw what happens without it", Places(need.Sightings))));
        lines.AddRange(scan.Proprietary.Select(load => new ExplanationLine(
            LineKind.Gap, $"Loads {load.Library.File}, which belongs to one maker's boards", Places(load.Sightings))));
        lines.AddRange(scan.Shipped.Select(library => new ExplanationLine(LineKind.Caution, Shipped(library))));
        if (lines.Count == 0)
            lines.Add(new(LineKind.Gap, "No graphics interface is named in these files, which says nothing about those that they may reach in another way."));
        lines.Add(new(LineKind.Statement, "Read from names in files; nothing was executed. A program may carry names that it never uses."));
        return new ExplanationLine(LineKind.Statement, PlainWords.Of(name), lines);
    }

    /// <summary>What could not be read, each with file and offset.</summary>
    public static IEnumerable<string> Faults(TitleScan scan) => scan.Faults.Select(fault => string.Create(
        CultureInfo.InvariantCulture, $"{PlainWords.Of(fault.File)}(0x{fault.Fault.Offset:X}): {Fault(fault.Fault.Kind)}"));

    private static string Shipped(ShippedLibrary library)
    {
        var through = library.DrawsThrough.Count == 0
            ? "what it draws with is not seen"
            : $"it draws with {Names.List([.. library.DrawsThrough.Select(one => $"{one.Use.Api} {one.Use.Level}".TrimEnd()).Distinct()])}, as a wrapper does";
        return PlainWords.Of($"{library.File} lies in the folder and is found before the system's own; {through}. It may be the maker's library or a wrapper somebody left there.");
    }

    private static IReadOnlyList<ExplanationLine> Places(IEnumerable<Sighting> sightings) =>
        [.. sightings.Take(5).Select(sighting => new ExplanationLine(LineKind.Fact, TitleRecord.Place(sighting)))];

    private static string Fault(ExecutableFaultKind kind) => kind switch
    {
        ExecutableFaultKind.NotAProgram => "this is no program",
        ExecutableFaultKind.NotPortableExecutable => "this program has no import table that is documented",
        ExecutableFaultKind.OutsideFile => "the import table points outside the file",
        ExecutableFaultKind.TooManyImports => "there are more imports than are read",
        ExecutableFaultKind.FileTooLarge => "the file is larger than 64 MiB and was not read",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
