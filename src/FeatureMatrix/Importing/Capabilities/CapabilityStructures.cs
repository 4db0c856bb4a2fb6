using System.Globalization;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>What a word of a capability structure is.</summary>
public enum MemberKind
{
    /// <summary>Each bit has a public name.</summary>
    Bits,

    /// <summary>An unsigned limit in the unit of its public documentation.</summary>
    Number,

    /// <summary>A limit stored as an IEEE single.</summary>
    Real,

    /// <summary>A shader version: of its low 16 bits, major in the upper and minor in the lower half.</summary>
    ShaderVersion,

    /// <summary>Identifiers, reserved words and raster operations: nothing to name.</summary>
    Opaque,

    /// <summary>Changes from minute to minute, such as free memory: no property of card or driver.</summary>
    State,
}

/// <summary>A member of a capability structure.</summary>
/// <param name="Name">With the names of the structures it lies in: <c>dpcTriCaps.dwRasterCaps</c>.</param>
/// <param name="Offset">In bytes from the structure's beginning.</param>
/// <param name="Bytes">Its width: 1, 2 or 4.</param>
/// <param name="Kind">What the word is.</param>
/// <param name="Group">What the names of its bits begin with; empty for other kinds.</param>
public sealed record StructureMember(string Name, int Offset, int Bytes, MemberKind Kind, string Group);

/// <summary>A capability structure as the public headers define it.</summary>
public sealed class CapabilityStructure
{
    private readonly Dictionary<string, StructureMember> _byName;

    internal CapabilityStructure(string name, int generation, IReadOnlyList<int> sizes, IReadOnlyList<StructureMember> members)
    {
        Name = name;
        Generation = generation;
        Sizes = sizes;
        Members = members;
        _byName = members.ToDictionary(m => m.Name);
    }

    /// <summary>Its public name.</summary>
    public string Name { get; }

    /// <summary>The interface generation whose constants name its bits: 7, 8 or 9.</summary>
    public int Generation { get; }

    /// <summary>The sizes in bytes that exist; the first is this layout, the others are earlier, shorter ones.</summary>
    public IReadOnlyList<int> Sizes { get; }

    /// <summary>In their order.</summary>
    public IReadOnlyList<StructureMember> Members { get; }

    /// <summary>The member of a name; null if it has none.</summary>
    public StructureMember? Member(string name) => _byName.GetValueOrDefault(name);
}

/// <summary>The capability structures that a dump may hold.</summary>
public static class CapabilityStructures
{
    /// <summary>In the order of the interfaces' generations.</summary>
    public static IReadOnlyList<CapabilityStructure> All { get; } = [.. Read()];

    private static readonly Dictionary<string, CapabilityStructure> ByName = All.ToDictionary(s => s.Name);

    /// <summary>The structure of a public name; null for one whose words are kept but not understood.</summary>
    public static CapabilityStructure? Find(string name) => ByName.GetValueOrDefault(name);

    private static IEnumerable<CapabilityStructure> Read()
    {
        string[]? head = null;
        var members = new List<StructureMember>();
        var offset = 0;
        foreach (var row in ImportTables.Rows("capability-structures"))
        {
            if (row[0] == "structure")
            {
                if (head is not null)
                    yield return Made(head, members);
                head = row;
                members = [];
                offset = 0;
                continue;
            }

            var bytes = Number(row[1]);
            members.Add(new StructureMember(row[0], offset, bytes, KindOf(row[2]), row.ElementAtOrDefault(3) ?? ""));
            offset += bytes;
        }

        if (head is not null)
            yield return Made(head, members);
    }

    private static CapabilityStructure Made(string[] head, List<StructureMember> members) =>
        new(head[1], Number(head[2]), [.. head[3..].Select(Number)], members);

    private static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);

    private static MemberKind KindOf(string word) => word switch
    {
        "bits" => MemberKind.Bits,
        "number" => MemberKind.Number,
        "real" => MemberKind.Real,
        "shader-version" => MemberKind.ShaderVersion,
        "opaque" => MemberKind.Opaque,
        "state" => MemberKind.State,
        _ => throw new InvalidOperationException($"unknown kind {word}"),
    };
}
