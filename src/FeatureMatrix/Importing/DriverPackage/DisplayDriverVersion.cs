using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>The systems a display driver's version number stands for.</summary>
public enum DisplayDriverSystem
{
    /// <summary>The number follows no documented scheme, which says nothing about the driver.</summary>
    Unknown,

    /// <summary>Windows 95.</summary>
    Windows95,

    /// <summary>Windows 98 alone.</summary>
    Windows98,

    /// <summary>Windows 98 and Me.</summary>
    Windows98AndMe,

    /// <summary>The 9x family; the documentation does not say which.</summary>
    Windows9x,

    /// <summary>Windows 2000.</summary>
    Windows2000,

    /// <summary>Windows XP and later.</summary>
    WindowsXp,
}

/// <summary>
/// What the four numbers of a Windows display driver's version say. Makers deviate from the scheme, so it is a hint.
/// Source: Windows driver documentation, "Version Numbers for Display Drivers"; where two of its ranges share an end, the
/// end counts to the later one.
/// </summary>
/// <param name="System">The systems.</param>
/// <param name="DirectX">The DirectX release of its driver interface; 0 for none, null where unknown.</param>
public sealed record DisplayDriverVersion(DisplayDriverSystem System, int? DirectX)
{
    private static readonly DisplayDriverVersion s_unknown = new(DisplayDriverSystem.Unknown, null);

    // Windows 95's ranges, each from its first version on; the last entry ends the scheme.
    private static readonly ((int, int, int, int) From, DisplayDriverVersion Meaning)[] s_early =
    [
        ((4, 0, 0, 96), new(DisplayDriverSystem.Windows95, 0)),
        ((4, 2, 0, 95), new(DisplayDriverSystem.Windows95, 1)),
        ((4, 3, 0, 1096), new(DisplayDriverSystem.Windows95, 2)),
        ((4, 3, 0, 2030), new(DisplayDriverSystem.Windows95, 3)),
        ((4, 4, 0, 0), s_unknown),
    ];

    /// <summary>Reads a version such as <c>4.13.10.1234</c>; what a maker adds after a hyphen is passed over.</summary>
    public static DisplayDriverVersion Of(string version)
    {
        ArgumentNullException.ThrowIfNull(version);
        var parts = version.Split('-')[0].Split('.');
        var numbers = new int[4];
        if (parts.Length != 4)
            return s_unknown;
        for (var i = 0; i < 4; i++)
        {
            if (Digits.Decimal(parts[i]) is not { } number || number > 9999)
                return s_unknown;
            numbers[i] = number;
        }

        var (family, release, third, last) = (numbers[0], numbers[1], numbers[2], numbers[3]);
        return (family, release, third) switch
        {
            (4, < 5, _) => s_early.LastOrDefault(r => (family, release, third, last).CompareTo(r.From) >= 0).Meaning ?? s_unknown,
            (4, 5, 0) => new DisplayDriverVersion(DisplayDriverSystem.Windows98, 5),
            (4, 10 or 11, 10) => new DisplayDriverVersion(DisplayDriverSystem.Windows9x, release - 5),
            (4, 12 or 13 or 14, 10) => new DisplayDriverVersion(DisplayDriverSystem.Windows98AndMe, release - 5),
            (5, 12 or 13 or 14, 10) => new DisplayDriverVersion(DisplayDriverSystem.Windows2000, release - 5),
            // An older text had 01 for XP.
            (6, 12 or 13 or 14, 10 or 1) => new DisplayDriverVersion(DisplayDriverSystem.WindowsXp, release - 5),
            _ => s_unknown,
        };
    }
}
