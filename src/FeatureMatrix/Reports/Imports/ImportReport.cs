using System.Globalization;
using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What an import found and would change, in words.</summary>
public static class ImportReport
{
    /// <summary>What a report measured: how much of the vocabulary it speaks of, what it contradicts, what has no feature.</summary>
    public static ExplanationLine Measured(string heading, MeasuredSupply supply, ReportTarget target)
    {
        ArgumentNullException.ThrowIfNull(supply);
        ArgumentNullException.ThrowIfNull(target);
        var lines = new List<ExplanationLine>();
        if (supply.Software is { } sign)
        {
            lines.Add(new(LineKind.Caution,
                $"This is a software renderer: its {sign.Where} says '{PlainWords.Of(sign.Sign)}'. The processor draws, not the card. What it supplies is "
                + "recorded as emulated, and the driver as software, so that its routes count as software only."));
        }

        if (StringLength(supply) is { } length)
            lines.Add(length);
        lines.AddRange(supply.Statements.Select(statement => Statement(statement, target)));
        lines.AddRange(supply.Disputes.Select(dispute => new ExplanationLine(
            LineKind.Gap, $"{dispute.Feature.Name}: the report contradicts itself ({string.Join(", ", dispute.Signs)}), so nothing is recorded of it")));
        if (supply.Unmapped.Count > 0)
        {
            lines.Add(new(LineKind.Statement, $"{Names.Count(supply.Unmapped.Count, "name")} that no feature of the vocabulary knows:",
                [new ExplanationLine(LineKind.Fact, string.Join(", ", supply.Unmapped.Select(PlainWords.Of)))]));
        }

        return new ExplanationLine(LineKind.Statement, $"{heading}: {Names.Count(supply.Statements.Count, "statement")}.", lines);
    }

    /// <summary>Why a driver's own figure of video memory is shown and not recorded; null where the dump has none.</summary>
    /// <param name="bytes">What the driver reports.</param>
    public static ExplanationLine? Memory(uint? bytes) => bytes is not { } amount ? null : new(
        LineKind.Statement,
        string.Create(CultureInfo.InvariantCulture, $"The driver manages {amount / (1024.0 * 1024):0.##} MiB of video memory. ")
        + "That is not what the board carries (drivers keep some for themselves, and some count bus memory), so nothing is recorded of it: "
        + "count the chips (featmatrix chips) and write the card's 'memory' yourself. Clocks and voltages are in no dump.");

    /// <summary>Faults of a foreign file, each with its place.</summary>
    public static IEnumerable<string> Faults(string file, IEnumerable<ImportFault> faults) => faults.Select(fault => string.Create(
        CultureInfo.InvariantCulture, $"{file}({fault.Line},{fault.Column}): {ImportFaultWording.Text(fault)}"));

    /// <summary>The files that would change, line by line, and the values that stay.</summary>
    public static string Change(CollectionChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        var text = new StringBuilder();
        foreach (var file in change.Files)
        {
            text.Append(file.Path).Append(file.Before is null ? " (new)\n" : "\n");
            foreach (var line in TextDifference.Of(file.Before ?? "", file.After))
                text.Append(Line(line)).Append('\n');
        }

        foreach (var kept in change.Kept.Distinct())
            text.Append(Kept(kept)).Append('\n');
        if (change.Files.Count == 0)
            text.Append("The collection says all this already: nothing would change.\n");
        return text.ToString();
    }

    /// <summary>Why a value stays.</summary>
    public static string Kept(KeptValue kept) => kept.Line is null
        ? $"Kept {kept.File}: {kept.Key}: {kept.Stands}, as this import has it first. It also has {(kept.Imported.Length == 0 ? "nothing" : kept.Imported)} there."
        : kept.Imported.Length == 0
        ? string.Create(CultureInfo.InvariantCulture, $"Kept {kept.File}({kept.Line}): {kept.Key}: {kept.Stands}. The import says nothing of it, but somebody wrote more there than imports do.")
        : string.Create(CultureInfo.InvariantCulture, $"Kept {kept.File}({kept.Line}): {kept.Key}: {kept.Stands}. The import has {kept.Imported}; what a person wrote is never overwritten, so change it by hand where the import is right.");

    private static string Line(DifferenceLine line) => line.Kind switch
    {
        DifferenceKind.Same => string.Create(CultureInfo.InvariantCulture, $"{line.Number,5}   {line.Text}"),
        DifferenceKind.Added => string.Create(CultureInfo.InvariantCulture, $"{line.Number,5} + {line.Text}"),
        DifferenceKind.Gone => string.Create(CultureInfo.InvariantCulture, $"{line.Number,5} - {line.Text}"),
        DifferenceKind.Skipped => "      …",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static ExplanationLine Statement(MeasuredStatement statement, ReportTarget target)
    {
        var subject = statement.Capability.Feature.IsApi ? Names.Api(statement.Capability) : Names.Of(statement.Capability);
        var reach = statement.Capability.Feature.HasLevels && statement.Support != Support.No
            ? statement.Reach == Reach.AtLeast ? "at least " : "up to "
            : "";
        var kind = statement.Support == Support.No ? LineKind.Loss : LineKind.Met;
        return new ExplanationLine(
            kind, $"{reach}{subject}: {Names.Of(statement.Support)} ({string.Join(", ", statement.Signs.Select(PlainWords.Of))})",
            [.. Others(statement, target)]);
    }

    /// <summary>What the collection says otherwise about the same card with the same driver, and what becomes of it.</summary>
    private static IEnumerable<ExplanationLine> Others(MeasuredStatement statement, ReportTarget target)
    {
        if (target is not { KnownCard: { } card, KnownDriver: { } driver })
            yield break;
        foreach (var fact in target.Catalog.Facts.Where(fact => driver.Oses.Any(os => (target.Os is null || os == target.Os)
            && fact.Scope.Covers(card, driver, os, statement.Api))))
        {
            var claim = fact.ClaimFor(statement.Capability);
            if (claim == Support.Unknown || claim == statement.Support || IsOfThisImport(fact, target))
                continue;
            var outcome = fact.Evidence.Grade == Grade.Measured
                ? "both are measured: where they have the same scope they make the answer unknown until one of them is taken out"
                : "both stay in the collection; where they have the same scope the measured one counts";
            yield return new ExplanationLine(LineKind.Caution, $"{FactWording.Fact(fact)}: {outcome}");
        }
    }

    /// <summary>The entry that this import is about to write again.</summary>
    private static bool IsOfThisImport(SupplyFact fact, ReportTarget target) =>
        fact.Evidence.Source?.Id is { Length: > 0 } id && id == target.Source;

    private static ExplanationLine? StringLength(MeasuredSupply supply) =>
        supply.Statements.FirstOrDefault(statement => statement.Capability.Feature.Id == "gl-extension-string") is { } length
            ? new ExplanationLine(LineKind.Caution,
                $"The extension string has {length.Capability.Level} bytes or more. Titles that copy it into a shorter buffer stop at the start; a title's defects "
                + "with 'if-present: gl-extension-string' are judged by it.")
            : null;
}
