using System.Globalization;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>
/// Places a shader version on its ladder. Direct3D 8 knows versions up to 1.1 for vertices and 1.4 for pixels, so its
/// highest answer says nothing about those above. The level <c>2.x</c> is version 2.0 with any of the extras that the
/// structures for 2.0 report beyond their minimum (D3DPS20_MIN_NUMINSTRUCTIONSLOTS 96 and D3DVS20_MIN_NUMTEMPS 12 in
/// d3d9caps.h).
/// </summary>
internal static class ShaderLadder
{
    private const string Extended = "2.x";
    private const uint LeastPixelSlots = 96;
    private const uint LeastVertexRegisters = 12;

    public static Claim? Read(Feature feature, DumpSection section, CapabilityLimit limit)
    {
        var (major, minor) = limit.ShaderVersion;
        var isPixel = limit.Member.Name.StartsWith("Pixel", StringComparison.Ordinal);
        var name = string.Create(CultureInfo.InvariantCulture, $"{major}.{minor}");
        var sign = $"{limit.Name} = {name}";
        if ((major, minor) == (2, 0))
        {
            return (HasExtras(section, limit.Structure, isPixel), feature.At(Extended)) switch
            {
                (true, { } extended) => Claim.UpTo(extended.Step, sign),
                (null, { } extended) => new Claim(extended.Step - 1, extended.Step + 1, new([sign])),
                _ => Ladder.UpTo(feature, 2.0, sign),
            };
        }

        var amount = double.Parse(name, CultureInfo.InvariantCulture);
        var isHighest = limit.Structure.Generation == 8 && amount >= (isPixel ? 1.4 : 1.1);
        return isHighest ? Ladder.AtLeast(feature, amount, sign) : Ladder.UpTo(feature, amount, sign);
    }

    /// <summary>Null where the dump does not have the words.</summary>
    private static bool? HasExtras(DumpSection section, CapabilityStructure structure, bool isPixel)
    {
        var part = isPixel ? "PS20Caps" : "VS20Caps";
        var caps = section.Field(structure.Name, $"{part}.Caps");
        var amount = section.Field(structure.Name, isPixel ? $"{part}.NumInstructionSlots" : $"{part}.NumTemps");
        if (caps is null || amount is null)
            return null;
        return caps != 0 || amount > (isPixel ? LeastPixelSlots : LeastVertexRegisters);
    }
}
