namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>The two families of Windows, which choose sections of an INF file differently.</summary>
public enum WindowsFamily
{
    /// <summary>Windows 95, 98 and Me.</summary>
    Windows9x,

    /// <summary>Windows 2000 and later.</summary>
    Nt,
}

/// <summary>A 32-bit x86 Windows that a package is asked about, as a plain workstation.</summary>
/// <param name="Family">How it chooses sections.</param>
/// <param name="Major">Major version.</param>
/// <param name="Minor">Minor version.</param>
public sealed record TargetWindows(WindowsFamily Family, int Major, int Minor)
{
    /// <summary>Windows 95, 4.0.</summary>
    public static TargetWindows Windows95 { get; } = new(WindowsFamily.Windows9x, 4, 0);

    /// <summary>Windows 98 and 98 Second Edition, 4.10; INF files do not tell them apart.</summary>
    public static TargetWindows Windows98 { get; } = new(WindowsFamily.Windows9x, 4, 10);

    /// <summary>Windows Me, 4.90.</summary>
    public static TargetWindows WindowsMe { get; } = new(WindowsFamily.Windows9x, 4, 90);

    /// <summary>Windows 2000, 5.0.</summary>
    public static TargetWindows Windows2000 { get; } = new(WindowsFamily.Nt, 5, 0);

    /// <summary>Windows XP, 5.1.</summary>
    public static TargetWindows WindowsXp { get; } = new(WindowsFamily.Nt, 5, 1);

    /// <summary>The systems of the period, oldest first.</summary>
    public static IReadOnlyList<TargetWindows> All { get; } = [Windows95, Windows98, WindowsMe, Windows2000, WindowsXp];

    /// <summary>The system that an id of the vocabulary stands for, or null where it reads no INF files of this kind.</summary>
    public static TargetWindows? Of(string osId) => osId switch
    {
        "windows-95" => Windows95,
        "windows-98" or "windows-98se" => Windows98,
        "windows-me" => WindowsMe,
        "windows-2000" => Windows2000,
        "windows-xp" => WindowsXp,
        _ => null,
    };
}
