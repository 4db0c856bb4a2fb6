using System.Numerics;
using FeatureMatrix.Importing.Capabilities;

namespace FeatureMatrix.Tests.Importing.Capabilities;

/// <summary>The names of capability bits against the public headers, which <see cref="PublicHeader"/> reads.</summary>
public sealed class CapabilityNamesTests
{
    public static TheoryData<string> Structures => new(CapabilityStructures.All.Select(s => s.Name));

    [Theory]
    [MemberData(nameof(Structures))]
    public void Flipping_any_bit_changes_exactly_its_own_name(string name)
    {
        var structure = CapabilityStructures.Find(name)!;
        var header = PublicHeader.Numbers(structure.Generation);
        var random = new Random(20051);
        var words = structure.Members.ToDictionary(m => m.Name, m => (uint)random.NextInt64() & WidthMask(m));
        var before = Decoded(structure, words);
        foreach (var member in structure.Members)
        {
            for (var i = 0; i < member.Bytes * 8; i++)
            {
                var bit = 1u << i;
                words[member.Name] ^= bit;
                var after = Decoded(structure, words);
                words[member.Name] ^= bit;

                var expected = ExpectedName(structure, member, bit, header);
                before.SymmetricExceptWith(after);
                var changed = before.Select(e => e.Name ?? $"{structure.Name}.{e.Member} 0x{e.Bit:X8}").Distinct().ToList();
                before.SymmetricExceptWith(after);
                Assert.Equal([expected], changed);
            }
        }
    }

    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    public void Names_and_values_are_those_of_the_headers(int generation)
    {
        var header = PublicHeader.Numbers(generation);
        foreach (var group in CapabilityConstants.AllGroups.Where(g => g.Generation == generation).Select(g => g.Group))
        {
            var ours = CapabilityConstants.Of(generation, group).Select(c => (c.Name, c.Value)).Order();
            // ddraw.h names four bits of dwSVCaps twice, for interfaces before 7 and from 7 on; the latter count.
            var theirs = header
                .Where(c => c.Name.StartsWith(group + "_", StringComparison.Ordinal) && c.Value != 0)
                .Where(c => c.Name is not ("DDSVCAPS_ENIGMA" or "DDSVCAPS_FLICKER" or "DDSVCAPS_REDBLUE" or "DDSVCAPS_SPLIT"))
                .Order();
            Assert.Equal(theirs, ours);
        }
    }

    [Theory]
    [InlineData(8)]
    [InlineData(9)]
    public void Format_codes_are_those_of_the_headers(int generation)
    {
        var theirs = PublicHeader.Formats(generation).Where(f => f.Value is not (0 or 0xFFFFFFFF)).ToList();
        Assert.True(theirs.Count > 35);
        foreach (var (name, code) in theirs)
            Assert.Equal(name, CapabilityConstants.FormatName(generation, code));
        Assert.Equal(theirs.Count, Enumerable.Range(0, 256).Count(c => CapabilityConstants.FormatName(generation, (uint)c) is not null)
            + theirs.Count(f => f.Value > 255));
    }

    [Fact]
    public void A_bit_that_a_generation_renamed_has_the_name_of_its_own()
    {
        // FACTS section 0, trap 2; the headers: d3dcaps.h:178, d3d8caps.h:161, d3d9caps.h:193.
        Assert.Equal("D3DPTFILTERCAPS_MAGFAFLATCUBIC", NameOf(7, "D3DPTFILTERCAPS", 0x08000000));
        Assert.Equal("D3DPTFILTERCAPS_MAGFAFLATCUBIC", NameOf(8, "D3DPTFILTERCAPS", 0x08000000));
        Assert.Equal("D3DPTFILTERCAPS_MAGFPYRAMIDALQUAD", NameOf(9, "D3DPTFILTERCAPS", 0x08000000));
        Assert.Equal("D3DPRASTERCAPS_ZBIAS", NameOf(8, "D3DPRASTERCAPS", 0x4000));
        Assert.Null(NameOf(9, "D3DPRASTERCAPS", 0x4000));
        Assert.Equal("D3DPRASTERCAPS_DEPTHBIAS", NameOf(9, "D3DPRASTERCAPS", 0x4000000));

        static string? NameOf(int generation, string group, uint bit) =>
            CapabilityConstants.Of(generation, group).SingleOrDefault(c => c.Value == bit)?.Name;
    }

    [Theory]
    // FACTS section 0, trap 1: set means the hardware can do less.
    [InlineData("D3DPTEXTURECAPS", "D3DPTEXTURECAPS_POW2")]
    [InlineData("D3DPTEXTURECAPS", "D3DPTEXTURECAPS_SQUAREONLY")]
    [InlineData("D3DPTEXTURECAPS", "D3DPTEXTURECAPS_CUBEMAP_POW2")]
    [InlineData("D3DPTEXTURECAPS", "D3DPTEXTURECAPS_VOLUMEMAP_POW2")]
    [InlineData("D3DDEVCAPS", "D3DDEVCAPS_SEPARATETEXTUREMEMORIES")]
    public void A_bit_that_means_less_when_set_is_a_restriction(string group, string name) =>
        Assert.Equal(ConstantKind.Restriction, CapabilityConstants.Of(9, group).Single(c => c.Name == name).Kind);

    private static uint WidthMask(StructureMember member) => uint.MaxValue >> (32 - member.Bytes * 8);

    /// <summary>What the header, or for words without flags the field, calls the bit.</summary>
    private static string ExpectedName(
        CapabilityStructure structure, StructureMember member, uint bit, IReadOnlyList<(string Name, uint Value)> header)
    {
        var field = $"{structure.Name}.{member.Name}";
        if (member.Group.Length == 0)
            return field;
        var group = header.Where(c => c.Name.StartsWith(member.Group + "_", StringComparison.Ordinal)).ToList();
        var mask = group.FirstOrDefault(c => BitOperations.PopCount(c.Value) > 1 && (c.Value & bit) != 0 && c.Name != "DDSCAPS2_CUBEMAP_ALLFACES");
        if (mask.Name is not null)
            return mask.Name;
        var own = group.Where(c => c.Value == bit).Select(c => c.Name).ToList();
        return own.Count == 0 ? $"{field} 0x{bit:X8}" : own.First(n => own.Count == 1 || n.Contains("RESERVED", StringComparison.Ordinal));
    }

    private static HashSet<(string Member, string? Name, uint Bit, uint Value)> Decoded(
        CapabilityStructure structure, Dictionary<string, uint> words)
    {
        var fields = structure.Members.Select(m => (DumpEntry)new FieldEntry(1, structure.Name, m.Name, words[m.Name], m.Bytes));
        var section = new DumpSection("direct3d9", new([0]), 1, new(fields));
        return [.. CapabilityDecoder.Decode(section).Select(c => c switch
        {
            CapabilityFlag flag => (flag.Member.Name, flag.Constant?.Name, flag.Bit, flag.IsSet ? 1u : 0u),
            CapabilityLimit limit => (limit.Member.Name, limit.Name, 0u, limit.Raw),
            _ => throw new InvalidOperationException(),
        })];
    }
}
