using System.Globalization;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>Reads one sign of the vocabulary in one section of a dump.</summary>
internal static class Direct3DSigns
{
    private const string FormatsSuffix = "formats";
    private const string Queries = "queries";

    /// <summary>What the section says by the sign; null where it does not hold the answer.</summary>
    public static Claim? Read(Direct3DSign sign, Feature feature, DumpSection section)
    {
        bool? isThere;
        if (sign.Field == Queries)
            isThere = section.Entries.OfType<QueryEntry>().FirstOrDefault(q => q.Name == sign.Constant)?.IsSupported;
        else if (sign.Field.EndsWith(FormatsSuffix, StringComparison.Ordinal))
            isThere = sign.Generation == 7 ? HasPixelFormat(sign, section) : AcceptsFormat(sign, section);
        else if (FieldOf(sign, section) is not var (structure, member, word))
            return null;
        else if (sign.Constant.Length == 0)
            return Number(feature, section, structure, member, word);
        else
            isThere = (word & sign.Value) != 0;

        return (isThere, sign.Inverted) switch
        {
            (null, _) => null,
            (true, false) => Claim.Has(feature, sign.Constant),
            (false, true) => Claim.Has(feature, $"no {sign.Constant}"),
            (false, false) => Claim.Lacks($"no {sign.Constant}"),
            (true, true) => Claim.Lacks(sign.Constant),
        };
    }

    /// <summary>
    /// The word that a field's short name means. Direct3D 7 puts a letter for the type before each name and keeps the
    /// capabilities of triangles in a structure of their own; a constant must be one of the word's own.
    /// </summary>
    private static (CapabilityStructure Structure, StructureMember Member, uint Word)? FieldOf(Direct3DSign sign, DumpSection section)
    {
        string[] names = sign.Generation == 7
            ? [$"dpcTriCaps.dw{sign.Field}", $"dw{sign.Field}", $"w{sign.Field}", $"{sign.Field}.dwCaps"]
            : [sign.Field];
        foreach (var structure in CapabilityStructures.All.Where(s => s.Generation == sign.Generation))
        {
            foreach (var member in names.Select(structure.Member).OfType<StructureMember>())
            {
                var isNamed = sign.Constant.Length == 0
                    || (member.Group.Length > 0 && sign.Constant.StartsWith(member.Group + "_", StringComparison.Ordinal));
                if (isNamed && section.Field(structure.Name, member.Name) is { } word)
                    return (structure, member, word);
            }
        }

        return null;
    }

    /// <summary>A list of Direct3D 7 is whole: with any format given, one that is not there is refused.</summary>
    private static bool? HasPixelFormat(Direct3DSign sign, DumpSection section)
    {
        var formats = section.Entries.OfType<PixelFormatEntry>().Where(f => f.Use == "texture").ToList();
        if (formats.Count == 0)
            return null;
        return sign.Constant.StartsWith("DDPF_", StringComparison.Ordinal)
            ? formats.Exists(f => (f.Flags & sign.Value) != 0)
            : formats.Exists(f => f.FourCc == sign.Value);
    }

    /// <summary>Accepted under any display format; refused only where it was asked and never accepted.</summary>
    private static bool? AcceptsFormat(Direct3DSign sign, DumpSection section)
    {
        var use = sign.Field == FormatsSuffix ? "texture" : sign.Field[..^(FormatsSuffix.Length + 1)];
        var asked = section.Entries.OfType<FormatsEntry>()
            .Where(f => f.Use == use && (f.Yes.Contains(sign.Value) || f.No.Contains(sign.Value))).ToList();
        return asked.Count == 0 ? null : asked.Exists(f => f.Yes.Contains(sign.Value));
    }

    private static Claim? Number(
        Feature feature, DumpSection section, CapabilityStructure structure, StructureMember member, uint word)
    {
        var limit = new CapabilityLimit(section, structure, member, null, word);
        if (member.Kind == MemberKind.ShaderVersion)
            return ShaderLadder.Read(feature, section, limit);
        // Drivers written before a limit existed leave 0 in its place; for these that is no answer.
        var isUnanswered = word == 0 && member.Name.Contains("MaxTexture", StringComparison.Ordinal)
            || word == 0 && member.Name.Contains("MaxSimultaneousTextures", StringComparison.Ordinal);
        return isUnanswered
            ? null
            : Ladder.UpTo(feature, limit.Amount, string.Create(CultureInfo.InvariantCulture, $"{limit.Name} = {limit.Amount}"));
    }
}
