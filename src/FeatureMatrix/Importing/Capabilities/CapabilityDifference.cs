namespace FeatureMatrix.Importing.Capabilities;

/// <summary>Something that differs between two dumps of one machine, for example before and after another driver.</summary>
/// <param name="Section">The section's kind and numbers, as the second dump has them where it has the section at all.</param>
public abstract record CapabilityChange(string Section);

/// <summary>A bit that appeared or went.</summary>
/// <param name="Section">Where.</param>
/// <param name="Field">The structure and field.</param>
/// <param name="Bit">The bit's value in the word.</param>
/// <param name="Constant">Its public name; null where it has none.</param>
/// <param name="IsNowSet">True where only the second dump has it.</param>
/// <param name="IsGain">True where the change lets the hardware do more: a feature set, or a restriction gone.</param>
public sealed record FlagChange(string Section, string Field, uint Bit, string? Constant, bool IsNowSet, bool IsGain)
    : CapabilityChange(Section);

/// <summary>A limit with another value.</summary>
public sealed record LimitChange(string Section, string Name, MemberKind Kind, uint Before, uint After) : CapabilityChange(Section);

/// <summary>A surface format that is accepted by one of the two only, where both were asked.</summary>
/// <param name="Section">Where.</param>
/// <param name="Use">The use it was asked for.</param>
/// <param name="Format">The format, in words that identify it.</param>
/// <param name="IsGain">True where the second dump accepts it.</param>
public sealed record FormatChange(string Section, string Use, string Format, bool IsGain) : CapabilityChange(Section);

/// <summary>An extension that one of the two has.</summary>
public sealed record ExtensionChange(string Section, string Kind, string Name, bool IsGain) : CapabilityChange(Section);

/// <summary>
/// Something that only one of the two dumps speaks of. Nothing follows from it: the other may not have been asked.
/// </summary>
/// <param name="Section">The section.</param>
/// <param name="What">The structure's field or the kind of question; empty for the whole section.</param>
/// <param name="IsInSecond">True where only the second speaks of it.</param>
public sealed record OneSided(string Section, string What, bool IsInSecond) : CapabilityChange(Section);

/// <summary>Compares two dumps.</summary>
public static class CapabilityDifference
{
    private const string Device7 = "D3DDEVICEDESC7";

    /// <summary>
    /// All differences, sections in the order of the first dump and then those that only the second has. Words are only
    /// compared within one interface generation, so a constant that a later generation renamed is no change.
    /// </summary>
    public static IReadOnlyList<CapabilityChange> Between(CapabilityDump first, CapabilityDump second)
    {
        var before = ByKey(first);
        var after = ByKey(second);
        var changes = new List<CapabilityChange>();
        foreach (var (key, section) in before)
        {
            if (after.TryGetValue(key, out var other))
                Compare(section, other, changes);
            else
                changes.Add(new OneSided(NameOf(section), "", false));
        }

        changes.AddRange(after.Where(s => !before.ContainsKey(s.Key)).Select(s => new OneSided(NameOf(s.Value), "", true)));
        return changes;
    }

    private static OrderedDictionary<string, DumpSection> ByKey(CapabilityDump dump)
    {
        var sections = new OrderedDictionary<string, DumpSection>();
        foreach (var section in dump.Sections)
            sections.TryAdd(KeyOf(section), section);
        return sections;
    }

    /// <summary>
    /// Direct3D 7 devices are known by their identifier: another driver may list another device before them. All others
    /// are known by their numbers.
    /// </summary>
    private static string KeyOf(DumpSection section)
    {
        var id = section.Entries.OfType<FieldEntry>()
            .Where(f => f.Structure == Device7 && f.Field.StartsWith("deviceGUID.", StringComparison.Ordinal))
            .Select(f => $"{f.Value:X}").ToList();
        return id.Count > 0 && section.Ordinals.Count > 0
            ? $"{section.Kind} {section.Ordinals[0]} {string.Join('-', id)}"
            : NameOf(section);
    }

    private static string NameOf(DumpSection section) => string.Join(' ', [section.Kind, .. section.Ordinals]);

    private static void Compare(DumpSection first, DumpSection second, List<CapabilityChange> changes)
    {
        var name = NameOf(second);
        CompareStructures(name, first, second, changes);
        CompareFormats(name, first, second, changes);
        CompareLimits(name, first, second, changes);
        CompareExtensions(name, first, second, changes);
    }

    private static void CompareStructures(string name, DumpSection first, DumpSection second, List<CapabilityChange> changes)
    {
        var before = CapabilityDecoder.Decode(first).ToLookup(c => $"{c.Structure.Name}.{c.Member.Name}");
        var after = CapabilityDecoder.Decode(second).ToLookup(c => $"{c.Structure.Name}.{c.Member.Name}");
        var fieldsBefore = FieldsOf(first);
        var fieldsAfter = FieldsOf(second);
        foreach (var field in fieldsBefore.Union(fieldsAfter))
        {
            var isInFirst = fieldsBefore.Contains(field);
            if (isInFirst != fieldsAfter.Contains(field))
            {
                changes.Add(new OneSided(name, field, !isInFirst));
                continue;
            }

            var setBefore = before[field].OfType<CapabilityFlag>().Where(f => f.IsSet).ToDictionary(f => f.Bit);
            var setAfter = after[field].OfType<CapabilityFlag>().Where(f => f.IsSet).ToDictionary(f => f.Bit);
            changes.AddRange(setBefore.Values.Concat(setAfter.Values)
                .Where(f => setBefore.ContainsKey(f.Bit) != setAfter.ContainsKey(f.Bit))
                .OrderBy(f => f.Bit)
                .Select(f => new FlagChange(
                    name, field, f.Bit, f.Constant?.Name, setAfter.ContainsKey(f.Bit),
                    setAfter.ContainsKey(f.Bit) != f.IsRestriction)));
            changes.AddRange(before[field].OfType<CapabilityLimit>().Zip(after[field].OfType<CapabilityLimit>())
                .Where(l => l.First.Raw != l.Second.Raw && l.First.Member.Kind != MemberKind.State)
                .Select(l => new LimitChange(name, l.First.Name, l.First.Member.Kind, l.First.Raw, l.Second.Raw)));
        }
    }

    /// <summary>The fields that known structures have in a section, in its order.</summary>
    private static OrderedDictionary<string, FieldEntry>.KeyCollection FieldsOf(DumpSection section)
    {
        var fields = new OrderedDictionary<string, FieldEntry>();
        foreach (var field in section.Entries.OfType<FieldEntry>())
        {
            if (CapabilityStructures.Find(field.Structure)?.Member(field.Field) is not null)
                fields.TryAdd($"{field.Structure}.{field.Field}", field);
        }

        return fields.Keys;
    }

    private static void CompareFormats(string name, DumpSection first, DumpSection second, List<CapabilityChange> changes)
    {
        var before = Answers(first);
        var after = Answers(second);
        foreach (var (question, wasYes) in before)
        {
            if (after.TryGetValue(question, out var isYes) && isYes != wasYes)
                changes.Add(new FormatChange(name, question.Use, question.Format, isYes));
        }

        // The lists of Direct3D 7 are whole: a format that is not listed is refused, where the list was given at all.
        var listsBefore = first.Entries.OfType<PixelFormatEntry>().ToLookup(f => f.Use, Described);
        var listsAfter = second.Entries.OfType<PixelFormatEntry>().ToLookup(f => f.Use, Described);
        foreach (var use in listsBefore.Select(l => l.Key).Where(listsAfter.Contains))
        {
            changes.AddRange(listsBefore[use].Except(listsAfter[use]).Select(f => new FormatChange(name, use, f, false)));
            changes.AddRange(listsAfter[use].Except(listsBefore[use]).Select(f => new FormatChange(name, use, f, true)));
        }
    }

    private static OrderedDictionary<(string Use, string Format), bool> Answers(DumpSection section)
    {
        var generation = section.Kind == "direct3d8" ? 8 : 9;
        var answers = new OrderedDictionary<(string Use, string Format), bool>();
        foreach (var entry in section.Entries)
        {
            switch (entry)
            {
                case FormatsEntry formats:
                    foreach (var code in formats.Yes.Concat(formats.No))
                        answers.TryAdd((formats.Use, $"{Named(code)} on {Named(formats.Display)}"), formats.Yes.Contains(code));
                    break;
                case SamplesEntry samples:
                    foreach (var count in samples.Yes.Concat(samples.No))
                        answers.TryAdd(("samples", $"{count} on {Named(samples.Format)}"), samples.Yes.Contains(count));
                    break;
                case QueryEntry query:
                    answers.TryAdd(("query", query.Name), query.IsSupported);
                    break;
            }
        }

        return answers;

        string Named(uint code) => CapabilityConstants.FormatName(generation, code) ?? $"0x{code:X8}";
    }

    private static string Described(PixelFormatEntry f) =>
        $"0x{f.Flags:X8} 0x{f.FourCc:X8} {f.Bits} 0x{f.Mask1:X8} 0x{f.Mask2:X8} 0x{f.Mask3:X8} 0x{f.Mask4:X8}";

    private static void CompareLimits(string name, DumpSection first, DumpSection second, List<CapabilityChange> changes)
    {
        var after = second.Entries.OfType<LimitEntry>().ToLookup(l => l.Name);
        foreach (var limit in first.Entries.OfType<LimitEntry>())
        {
            if (after[limit.Name].FirstOrDefault() is { } other && limit.Values[0] != other.Values[0])
                changes.Add(new LimitChange(name, limit.Name, MemberKind.Number, limit.Values[0], other.Values[0]));
        }
    }

    private static void CompareExtensions(string name, DumpSection first, DumpSection second, List<CapabilityChange> changes)
    {
        var before = first.Entries.OfType<ExtensionEntry>().Select(e => (e.Kind, e.Name)).ToList();
        var after = second.Entries.OfType<ExtensionEntry>().Select(e => (e.Kind, e.Name)).ToList();
        changes.AddRange(before.Except(after).Select(e => new ExtensionChange(name, e.Kind, e.Name, false)));
        changes.AddRange(after.Except(before).Select(e => new ExtensionChange(name, e.Kind, e.Name, true)));
    }
}
