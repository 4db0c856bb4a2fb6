using System.Globalization;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>How the bits of a constant are to be read.</summary>
public enum ConstantKind
{
    /// <summary>Set means the hardware can do it.</summary>
    Flag,

    /// <summary>Set means the hardware can do less, such as power-of-two textures only (FACTS section 0, trap 1).</summary>
    Restriction,

    /// <summary>The bits hold a count, or are set aside together.</summary>
    Mask,
}

/// <summary>A public constant of the capability structures.</summary>
/// <param name="Name">As the header spells it, for example <c>D3DPRASTERCAPS_FOGTABLE</c>.</param>
/// <param name="Value">One bit; for a mask all of its bits.</param>
/// <param name="Kind">How it is to be read.</param>
public sealed record CapabilityConstant(string Name, uint Value, ConstantKind Kind);

/// <summary>
/// The public names of capability bits and surface formats by interface generation: 7 (also the older DirectDraw
/// interfaces), 8 and 9. The same bit may have another name in another generation (FACTS section 0, trap 2).
/// </summary>
public static class CapabilityConstants
{
    private static readonly Dictionary<(int Generation, string Group), CapabilityConstant[]> Groups = ReadConstants();
    private static readonly Dictionary<(int Generation, string Group), CapabilityConstant?[]> Bits = Groups
        .ToDictionary(g => g.Key, g => Enumerable.Range(0, 32)
            .Select(i => Array.Find(g.Value, c => c.Value == 1u << i)).ToArray());

    private static readonly CapabilityConstant?[] NoBits = new CapabilityConstant?[32];
    private static readonly Dictionary<(int Generation, uint Code), string> Formats = ReadFormats();

    /// <summary>All groups of names, as (generation, what the names begin with).</summary>
    public static IEnumerable<(int Generation, string Group)> AllGroups => Groups.Keys;

    /// <summary>The constants whose names begin with the group and an underscore; none for an unknown group.</summary>
    public static IReadOnlyList<CapabilityConstant> Of(int generation, string group) =>
        Groups.GetValueOrDefault((generation, group), []);

    /// <summary>The constants of a group by the number of their bit, 0 to 31; null where a bit has no name of its own.</summary>
    internal static IReadOnlyList<CapabilityConstant?> ByBit(int generation, string group) =>
        Bits.GetValueOrDefault((generation, group), NoBits);

    /// <summary>The public name of a surface format of Direct3D 8 or 9; null where the header has none.</summary>
    public static string? FormatName(int generation, uint code) => Formats.GetValueOrDefault((generation, code));

    private static Dictionary<(int, string), CapabilityConstant[]> ReadConstants() =>
        ImportTables.Rows("capability-constants")
            .SelectMany(row => row[2].Select(generation => (
                Generation: generation - '0',
                Group: GroupOf(row[0]),
                Constant: new CapabilityConstant(row[0], Word(row[1]), KindOf(row.ElementAtOrDefault(3))))))
            .GroupBy(c => (c.Generation, c.Group), c => c.Constant)
            .ToDictionary(g => g.Key, g => g.ToArray());

    private static Dictionary<(int, uint), string> ReadFormats() =>
        ImportTables.Rows("surface-formats")
            .SelectMany(row => row[2].Select(generation => (Key: (generation - '0', Word(row[1])), Name: row[0])))
            .ToDictionary(f => f.Key, f => f.Name);

    /// <summary>The one group with an underscore of its own apart, names group at their first underscore.</summary>
    private static string GroupOf(string name) =>
        name.StartsWith("D3DPRESENT_INTERVAL_", StringComparison.Ordinal)
            ? "D3DPRESENT_INTERVAL"
            : name[..name.IndexOf('_', StringComparison.Ordinal)];

    private static uint Word(string hexadecimal) =>
        uint.Parse(hexadecimal.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);

    private static ConstantKind KindOf(string? word) => word switch
    {
        null => ConstantKind.Flag,
        "restriction" => ConstantKind.Restriction,
        "mask" => ConstantKind.Mask,
        _ => throw new InvalidOperationException($"unknown kind {word}"),
    };
}
