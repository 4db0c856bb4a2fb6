namespace FeatureMatrix.Importing.Capabilities;

/// <summary>One thing that a capability structure says.</summary>
/// <param name="Section">The adapter or device that says it.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Member">The word of it.</param>
public abstract record DecodedCapability(DumpSection Section, CapabilityStructure Structure, StructureMember Member);

/// <summary>A bit. Every bit that has a public name is listed, set or not; of the others only those that are set.</summary>
/// <param name="Section">The adapter or device that says it.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Member">The word of it.</param>
/// <param name="Bit">The bit's value in the word.</param>
/// <param name="Constant">Its public constant in this interface generation; null where it has none.</param>
/// <param name="IsSet">Whether the word has it.</param>
public sealed record CapabilityFlag(
    DumpSection Section, CapabilityStructure Structure, StructureMember Member, uint Bit, CapabilityConstant? Constant, bool IsSet)
    : DecodedCapability(Section, Structure, Member)
{
    /// <summary>True for a bit that means less when set (FACTS section 0, trap 1).</summary>
    public bool IsRestriction => Constant?.Kind == ConstantKind.Restriction;
}

/// <summary>A word, or bits of one, that hold a number.</summary>
/// <param name="Section">The adapter or device that says it.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Member">The word of it.</param>
/// <param name="Constant">The mask that cuts the number out of a word of flags; null for a whole word.</param>
/// <param name="Raw">The bits as reported.</param>
public sealed record CapabilityLimit(
    DumpSection Section, CapabilityStructure Structure, StructureMember Member, CapabilityConstant? Constant, uint Raw)
    : DecodedCapability(Section, Structure, Member)
{
    /// <summary>The name to show: the mask's constant, else the field.</summary>
    public string Name => Constant?.Name ?? $"{Structure.Name}.{Member.Name}";

    /// <summary>The number meant, for limits; for a shader version see <see cref="ShaderVersion"/>.</summary>
    public double Amount => Member.Kind == MemberKind.Real ? BitConverter.UInt32BitsToSingle(Raw) : Raw;

    /// <summary>Major and minor of a shader version; 0.0 means none.</summary>
    public (int Major, int Minor) ShaderVersion => ((int)(Raw >> 8 & 0xFF), (int)(Raw & 0xFF));
}

/// <summary>Turns the words of a dump into names and numbers.</summary>
public static class CapabilityDecoder
{
    /// <summary>
    /// All that the known structures of a dump say, as one flat list: sections in the order of the file, members in the
    /// order of the structure, bits from low to high.
    /// </summary>
    public static IReadOnlyList<DecodedCapability> Decode(CapabilityDump dump) => [.. dump.Sections.SelectMany(Decode)];

    /// <summary>All that the known structures of one section say.</summary>
    public static IEnumerable<DecodedCapability> Decode(DumpSection section)
    {
        foreach (var structure in CapabilityStructures.All)
        {
            var words = section.Entries.OfType<FieldEntry>().Where(f => f.Structure == structure.Name)
                .ToDictionary(f => f.Field, f => f.Value);
            if (words.Count == 0)
                continue;
            foreach (var member in structure.Members)
            {
                if (!words.TryGetValue(member.Name, out var word))
                    continue;
                foreach (var capability in Decode(section, structure, member, word))
                    yield return capability;
            }
        }
    }

    private static IEnumerable<DecodedCapability> Decode(
        DumpSection section, CapabilityStructure structure, StructureMember member, uint word)
    {
        if (member.Kind != MemberKind.Bits)
            return [new CapabilityLimit(section, structure, member, null, word)];

        var masks = CapabilityConstants.Of(structure.Generation, member.Group).Where(c => c.Kind == ConstantKind.Mask).ToList();
        var masked = masks.Aggregate(0u, (bits, mask) => bits | mask.Value);
        var flags = CapabilityConstants.ByBit(structure.Generation, member.Group)
            .Select((constant, i) => new CapabilityFlag(section, structure, member, 1u << i, constant, (word >> i & 1) != 0))
            .Where(flag => (flag.Bit & masked) == 0 && (flag.Constant is not null || flag.IsSet));
        return masks.Select(mask => (DecodedCapability)new CapabilityLimit(section, structure, member, mask, word & mask.Value))
            .Concat(flags);
    }
}
