using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>How things of the model are called in sentences and cells.</summary>
public static class Names
{
    /// <summary>A capability inside a sentence: <c>table fog</c>, <c>pixel shader version 1.4</c>.</summary>
    public static string Of(Capability capability)
    {
        var name = InSentence(capability.Feature.Name);
        if (!capability.Feature.HasLevels)
            return name;
        var unit = capability.Feature.Unit;
        if (unit.Length == 0)
            return $"{name} {capability.Level}";
        var isOne = capability.Level == "1" && unit.EndsWith('s');
        var one = isOne ? unit[..^1] : unit;
        // "textures in one pass" counted in textures reads "2 textures in one pass", "depth-buffer bits" in bits "24 depth-buffer bits".
        if (name.StartsWith(unit + " ", StringComparison.Ordinal))
            return $"{capability.Level} {one}{name[unit.Length..]}";
        if (name.EndsWith(unit, StringComparison.Ordinal))
            return $"{capability.Level} {(isOne ? name[..^1] : name)}";
        return $"{name} {capability.Level}{(char.IsLetter(unit[0]) ? " " : "")}{one}";
    }

    /// <summary>The alternatives of a need: <c>table fog or vertex fog</c>.</summary>
    public static string Of(IReadOnlyList<Capability> choices) => string.Join(" or ", choices.Select(Of));

    /// <summary>A driver with its version.</summary>
    public static string Of(Driver driver) => driver.Kind switch
    {
        DriverKind.Unrecorded => "a driver that is not recorded",
        DriverKind.Bios => $"BIOS {driver.Version}".TrimEnd(),
        DriverKind.Package or DriverKind.VbeExtension => $"{driver.Branch.Name} {driver.Version}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A wrapper with its version.</summary>
    public static string Of(WrapperVersion wrapper) => $"{wrapper.Wrapper.Name} {wrapper.Version}";

    /// <summary>A graphics path: what the title calls it, or its API.</summary>
    public static string Of(Renderer renderer)
    {
        if (renderer.Name.Length > 0)
            return renderer.Name;
        return renderer.Api is { } api ? Api(api) : "software";
    }

    /// <summary>An API with its level: <c>Direct3D 7</c>.</summary>
    public static string Api(Capability api) =>
        api.Feature.HasLevels ? $"{api.Feature.Name} {api.Level}" : api.Feature.Name;

    /// <summary>Driver and operating system, with a mark where the driver is forced.</summary>
    public static string Of(Setup setup)
    {
        var forced = setup.Install == Install.Forced ? " (forced)" : "";
        return $"{Of(setup.Driver)}{forced} on {setup.Os.Name}";
    }

    /// <summary>A route in full, without the card.</summary>
    public static string Of(Route route)
    {
        var through = route.Wrapper is { } wrapper ? $" through {Of(wrapper)}" : "";
        return $"{Of(route.Renderer)}{through} with {Of(route.Setup)}";
    }

    /// <summary>Bytes in MiB with two digits, as in FACTS table C.</summary>
    public static string Mebibytes(long bytes) => (bytes / 1048576.0).ToString("0.00", CultureInfo.InvariantCulture) + " MiB";

    /// <summary>A grade as an adjective.</summary>
    public static string Of(Grade grade) => grade switch
    {
        Grade.Hearsay => "hearsay",
        Grade.Inferred => "inferred",
        Grade.Documented => "documented",
        Grade.Measured => "measured",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A strength as an adjective for a loss.</summary>
    public static string Of(Strength strength) => strength switch
    {
        Strength.Bonus => "a bonus",
        Strength.Cosmetic => "cosmetic",
        Strength.Ungraded => "not graded",
        Strength.Severe => "severe",
        Strength.Must => "a must",
        Strength.Unknown => "of unknown strength",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A supply state in a sentence.</summary>
    public static string Of(Support support) => support switch
    {
        Support.No => "no",
        Support.Broken => "broken",
        Support.Unknown => "not known",
        Support.Emulated => "emulated",
        Support.Yes => "yes",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A list in a sentence: <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> parts, string last = "and") => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} {last} {parts[^1]}",
    };

    /// <summary>A count with its noun: <c>1 title</c>, <c>2 titles</c>.</summary>
    public static string Count(int count, string noun, string? plural = null) =>
        $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? noun : plural ?? noun + "s")}";

    /// <summary>A small number as a word.</summary>
    public static string Words(int number) => number switch
    {
        1 => "one",
        2 => "two",
        3 => "three",
        _ => number.ToString(CultureInfo.InvariantCulture),
    };

    /// <summary>The text with its first letter large.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What stands for a library where none was chosen.</summary>
    public const string EveryTitle = "All titles";

    /// <summary>A name in the middle of a sentence: "The loft bench" becomes "the loft bench", "All titles" becomes "all titles".</summary>
    public static string InMiddle(string name) =>
        name.StartsWith("The ", StringComparison.Ordinal) || name == EveryTitle ? char.ToLowerInvariant(name[0]) + name[1..] : name;

    /// <summary>A feature's name inside a sentence: "Table fog" becomes "table fog"; "DXT1 …", "W-buffer" and "T&amp;L …" keep their capitals.</summary>
    public static string InSentence(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1]) && !IsProperName(name)
            ? char.ToLowerInvariant(name[0]) + name[1..]
            : name;

    private static bool IsProperName(string name) => name.StartsWith("Direct", StringComparison.Ordinal) || name.StartsWith("Glide", StringComparison.Ordinal);
}
