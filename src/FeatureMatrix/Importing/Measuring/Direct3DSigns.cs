using System.Globalization;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>Reads one sign of the vocabulary in one section of a dump.</summary>
internal static class Direct3DSigns
{
    private const string Queries = "queries";

    /// <summary>What the section says by the sign; null where it does not hold the answer.</summary>
    public static Claim? Read(Direct3DSign sign, Feature feature, DumpSection section)
    {
        bool? isThere;
        if (sign.Field == Direct3DFormats.Samples)
            return Direct3DFormats.SamplesOf(feature, section);
        if (sign.Generation == 7 && sign.Field == Direct3DFormats.Depth)
            return Direct3DFormats.DepthBits(sign, feature, section);
        if (sign.Field == Queries)
            isThere = section.Entries.OfType<QueryEntry>().FirstOrDefault(q => q.Name == sign.Constant)?.IsSupported;
        else if (Direct3DFormats.IsList(sign.Field))
            isThere = Direct3DFormats.Accepts(sign, section);
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
    /// What the section says by signs that each show one level: yes up to the highest that is there; no from the lowest step
    /// on at and above which all were asked and none is there. Worked example: D24X8 accepted, D24S8 and D32 refused is 24
    /// bits and not 32; with D32 never asked, 32 stays open.
    /// </summary>
    public static Claim? ReadLevels(IReadOnlyList<Direct3DSign> signs, Feature feature, DumpSection section)
    {
        var answers = signs.Where(sign => feature.At(sign.Level) is not null)
            .Select(sign => (feature.At(sign.Level)!.Value.Step, sign.Constant, IsThere: Direct3DFormats.Accepts(sign, section))).ToList();
        if (answers.TrueForAll(answer => answer.IsThere is null))
            return null;
        var yes = answers.Where(answer => answer.IsThere == true).Select(answer => answer.Step).DefaultIfEmpty(0).Max();
        var no = feature.Steps + 1;
        while (no > yes + 1 && answers.Where(answer => answer.Step == no - 1).ToList() is { Count: > 0 } at && at.TrueForAll(answer => answer.IsThere == false))
            no--;
        var said = answers.Where(answer => (answer.Step == yes && answer.IsThere == true) || answer.Step >= no);
        return new Claim(yes, no, new(said.Select(answer => answer.IsThere == true ? answer.Constant : $"no {answer.Constant}")));
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
