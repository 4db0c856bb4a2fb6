namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>What a package offers to one system.</summary>
public enum SystemSupport
{
    /// <summary>It cannot be told: nothing in the file is certainly for that system, or the documentation disagrees about it.</summary>
    Unknown,

    /// <summary>Empty sections exclude the system.</summary>
    Excluded,

    /// <summary>A section for that system lists a device that can be installed there.</summary>
    Offered,
}

/// <summary>The models sections that one system reads.</summary>
/// <param name="Sections">One for each manufacturer that has one for this system.</param>
/// <param name="Doubts">Where something that should be there is not.</param>
public sealed record SystemSections(IReadOnlyList<ModelsSection> Sections, IReadOnlyList<ListingDoubt> Doubts)
{
    /// <summary>What a package offers to a system. Devices that it cannot install there offer nothing and exclude nothing.</summary>
    public static SystemSupport SupportOf(InfPackage package, TargetWindows os)
    {
        var readings = Readings(package, os).Select(r => r.Support(package, os)).Distinct().ToList();
        return readings.Count == 1 ? readings[0] : SystemSupport.Unknown;
    }

    private SystemSupport Support(InfPackage package, TargetWindows os)
    {
        var devices = Sections.SelectMany(s => s.Devices!).ToList();
        if (devices.Exists(d => package.InstallDoubt(d, os) is null))
            return SystemSupport.Offered;
        return devices.Count == 0 && Sections.Count > 0 && Doubts.Count == 0 ? SystemSupport.Excluded : SystemSupport.Unknown;
    }

    /// <summary>
    /// The sections a system reads: on 9x the undecorated ones; on NT, of those decorated for the system the one with the
    /// highest version not above it, else the undecorated one. Windows 2000 gives two readings where a decorated section
    /// would serve it: one page of the documentation has decorated sections read from Windows XP on, another accepts
    /// them on Windows 2000.
    /// Source: Windows driver documentation, "INF Manufacturer Section" and "Combining Platform Extensions with Operating
    /// System Versions".
    /// </summary>
    public static IReadOnlyList<SystemSections> Readings(InfPackage package, TargetWindows os)
    {
        ArgumentNullException.ThrowIfNull(package);
        ArgumentNullException.ThrowIfNull(os);
        var disputed = os == TargetWindows.Windows2000
            && package.Manufacturers.Any(m => m.Models.Any(s => s.Decoration?.Admits(os) == true));
        return disputed
            ? [Of(package, os, decorated: false), Of(package, os, decorated: true)]
            : [Of(package, os, decorated: true)];
    }

    private static SystemSections Of(InfPackage package, TargetWindows os, bool decorated)
    {
        var sections = new List<ModelsSection>();
        var doubts = new List<ListingDoubt>();
        if (!package.Complete)
            doubts.Add(new ListingDoubt(ListingDoubtKind.FileIncomplete));
        if (package.Manufacturers.Count == 0)
            doubts.Add(new ListingDoubt(ListingDoubtKind.NoManufacturer));
        foreach (var models in package.Manufacturers.Select(m => m.Models))
        {
            var chosen = models.Where(m => decorated && m.Decoration?.Admits(os) == true).MaxBy(m => m.Decoration!.Closeness)
                ?? models.Single(m => m.Decoration is null);
            if (chosen.Devices is null)
                doubts.Add(new ListingDoubt(ListingDoubtKind.NoSectionForSystem, Subject: chosen.SectionName));
            else
                sections.Add(chosen);
        }

        return new SystemSections(sections, doubts);
    }
}
