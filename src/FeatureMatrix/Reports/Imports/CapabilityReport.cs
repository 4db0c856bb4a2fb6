using System.Globalization;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.Records;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Imports;

/// <summary>A dump decoded into one flat table, and two dumps compared, each line with the titles that it touches.</summary>
public static class CapabilityReport
{
    private sealed record Line(string Section, string Field, string Name, string Value, IReadOnlyList<Feature> Features);

    /// <summary>
    /// Everything that a dump's structures, formats, extensions and limits say. What touches most titles stands first, then
    /// what some feature of the vocabulary knows, then the rest in the order of the file; nothing is left out.
    /// </summary>
    public static Table Decode(CapabilityDump dump, IReadOnlyList<Feature> features, IReadOnlyList<Title> titles)
    {
        ArgumentNullException.ThrowIfNull(dump);
        var index = new SignIndex(features, titles);
        var lines = dump.Sections.SelectMany(section => Lines(section, index))
            .Select((line, place) => (line, place, index.AskersOf(line.Features).Count))
            .OrderByDescending(item => item.Count).ThenByDescending(item => item.line.Features.Count > 0).ThenBy(item => item.place);
        return new Table(
            "What the dump says",
            dump.IsComplete ? "" : "The dump stops early: the machine stopped, or the file was cut. What is missing is not known.",
            [new("Titles", IsNumber: true), new("Feature"), new("Where"), new("Field"), new("Name"), new("Value")],
            [
                .. lines.Select(item => (IReadOnlyList<TableCell>)
                [
                    Count(item.Count), new(FeatureNames(item.line.Features)), new(item.line.Section), new(item.line.Field),
                    new(PlainWords.Of(item.line.Name)), new(PlainWords.Of(item.line.Value)),
                ]),
            ]);
    }

    /// <summary>What the second dump has gained, lost and changed, what touches most titles first.</summary>
    public static Table Difference(CapabilityDump first, CapabilityDump second, IReadOnlyList<Feature> features, IReadOnlyList<Title> titles)
    {
        var index = new SignIndex(features, titles);
        var rows = CapabilityDifference.Between(first, second).Select((change, place) => (Row: Row(change, index), place))
            .OrderByDescending(item => index.AskersOf(item.Row.Features).Count).ThenBy(item => item.place).Select(item => item.Row).ToList();
        return new Table(
            "What differs between the two dumps",
            "Gained and lost are seen from the second dump. What only one of the two speaks of may not have been asked of the other.",
            [new("Change"), new("Where"), new("Name"), new("Before"), new("After"), new("Feature"), new("Titles touched")],
            [
                .. rows.Select(row => (IReadOnlyList<TableCell>)
                [
                    new(row.Change), new(row.Section), new(PlainWords.Of(row.Name)), new(row.Before), new(row.After), new(FeatureNames(row.Features)),
                    new(string.Join(", ", index.AskersOf(row.Features).Select(title => title.Name))),
                ]),
            ])
        {
            WhenEmpty = "Nothing differs.",
        };
    }

    private static IEnumerable<Line> Lines(DumpSection section, SignIndex index)
    {
        var where = string.Join(' ', [section.Kind, .. section.Ordinals.Select(number => Number(number))]);
        foreach (var decoded in CapabilityDecoder.Decode(section))
        {
            var field = $"{decoded.Structure.Name}.{decoded.Member.Name}";
            yield return decoded switch
            {
                CapabilityFlag flag => new Line(
                    where, field, flag.Constant?.Name ?? $"0x{flag.Bit:X8}", flag.IsSet ? flag.IsRestriction ? "set (a limit)" : "set" : "not set", index.Of(flag)),
                CapabilityLimit limit => new Line(where, field, limit.Constant?.Name ?? "", Amount(limit.Member.Kind, limit.Raw), index.Of(limit)),
                _ => throw new System.Diagnostics.UnreachableException(),
            };
        }

        var generation = section.Kind == "direct3d8" ? 8 : 9;
        foreach (var entry in section.Entries)
        {
            switch (entry)
            {
                case FormatsEntry formats:
                    foreach (var (code, isThere) in formats.Yes.Select(code => (code, true)).Concat(formats.No.Select(code => (code, false))))
                    {
                        var name = FormatName(generation, code);
                        yield return new Line(where, $"{formats.Use} formats on {FormatName(generation, formats.Display)}", name, isThere ? "accepted" : "refused", index.OfConstant(generation, name));
                    }

                    break;
                case PixelFormatEntry format:
                    yield return new Line(where, $"{format.Use} formats", PixelFormat(format), "accepted", index.OfPixelFormat(format));
                    break;
                case QueryEntry query:
                    yield return new Line(where, "queries", query.Name, query.IsSupported ? "made" : "refused", index.OfConstant(generation, query.Name));
                    break;
                case ExtensionEntry extension:
                    yield return new Line(where, $"{extension.Kind} extensions", extension.Name, "there", index.OfOpenGl(extension.Name));
                    break;
                case LimitEntry limit:
                    yield return new Line(where, "limits", limit.Name, string.Join(", ", limit.Values.Select(Number)), index.OfOpenGl(limit.Name));
                    break;
                default:
                    break;
            }
        }
    }

    private static (string Change, string Section, string Name, string Before, string After, IReadOnlyList<Feature> Features) Row(
        CapabilityChange change, SignIndex index) => change switch
        {
            FlagChange flag => (
                Direction(flag.IsGain), flag.Section, $"{flag.Field} {flag.Constant ?? $"0x{flag.Bit:X8}"}", flag.IsNowSet ? "not set" : "set",
                flag.IsNowSet ? "set" : "not set", flag.Constant is null ? [] : index.OfConstant(GenerationOf(flag.Field), flag.Constant)),
            LimitChange limit => (
                "limit changed", limit.Section, limit.Name, Amount(limit.Kind, limit.Before), Amount(limit.Kind, limit.After),
                limit.Name.Split('.', 2) is [var structure, var member] && CapabilityStructures.Find(structure) is { } known
                    ? index.OfField(known.Generation, member)
                    : index.OfOpenGl(limit.Name)),
            FormatChange format => (
                Direction(format.IsGain), format.Section, $"{format.Use} {format.Format}", format.IsGain ? "refused" : "accepted",
                format.IsGain ? "accepted" : "refused", index.OfConstant(format.Section.StartsWith("direct3d8", StringComparison.Ordinal) ? 8 : 9, format.Format.Split(' ')[0])),
            ExtensionChange extension => (
                Direction(extension.IsGain), extension.Section, extension.Name, extension.IsGain ? "absent" : "there",
                extension.IsGain ? "there" : "absent", index.OfOpenGl(extension.Name)),
            OneSided one => (one.IsInSecond ? "only in the second" : "only in the first", one.Section, one.What, one.IsInSecond ? "not asked" : "", one.IsInSecond ? "" : "not asked", []),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static string Direction(bool isGain) => isGain ? "gained" : "lost";

    private static int GenerationOf(string field) => CapabilityStructures.Find(field.Split('.')[0])?.Generation ?? 0;

    private static string FormatName(int generation, uint code) => CapabilityConstants.FormatName(generation, code) ?? $"0x{code:X8}";

    /// <summary>Bits and masks, or the four-character code.</summary>
    private static string PixelFormat(PixelFormatEntry format) => format.FourCc != 0
        ? string.Concat(BitConverter.GetBytes(format.FourCc).Select(letter => (char)letter))
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{format.Bits} bit, flags 0x{format.Flags:X8}, masks 0x{format.Mask1:X8} 0x{format.Mask2:X8} 0x{format.Mask3:X8} 0x{format.Mask4:X8}");

    private static string FeatureNames(IReadOnlyList<Feature> features) => string.Join(", ", features.Select(feature => feature.Name));

    private static TableCell Count(int count) => new(Number(count), count);

    private static string Amount(MemberKind kind, uint raw) => kind switch
    {
        MemberKind.Real => BitConverter.UInt32BitsToSingle(raw).ToString("R", CultureInfo.InvariantCulture),
        MemberKind.ShaderVersion => string.Create(CultureInfo.InvariantCulture, $"{raw >> 8 & 0xFF}.{raw & 0xFF}"),
        MemberKind.Bits or MemberKind.Opaque => $"0x{raw:X8}",
        MemberKind.Number or MemberKind.State => Number(raw),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Number(uint number) => Number((long)number);
}
