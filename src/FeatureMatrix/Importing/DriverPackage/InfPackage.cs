namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>What [Version] says of the package; null where it is silent.</summary>
/// <param name="Signature">The signature without its dollar signs, as written.</param>
/// <param name="Class">The setup class; Display for graphics drivers.</param>
/// <param name="Provider">Who provides the package.</param>
/// <param name="DriverDate">Date of the driver.</param>
/// <param name="DriverVersion">Version of the driver, as written.</param>
public sealed record InfVersion(string? Signature, string? Class, string? Provider, DateOnly? DriverDate, string? DriverVersion);

/// <summary>One ID in a models line.</summary>
/// <param name="Text">The ID, tokens replaced.</param>
/// <param name="Pci">The ID read as a PCI ID, or null where it is of another kind.</param>
/// <param name="Resolved">False where a token in it is defined nowhere, so that it could be any ID.</param>
public sealed record ModelId(string Text, HardwareId? Pci, bool Resolved);

/// <summary>One line of a models section: a device that the package installs.</summary>
/// <param name="Description">What Windows shows, tokens replaced where possible.</param>
/// <param name="InstallSection">Undecorated name of its install section.</param>
/// <param name="HardwareId">The ID the device is listed by; null where the line leaves it out.</param>
/// <param name="CompatibleIds">Further IDs, the most specific first.</param>
/// <param name="Line">One-based line in the file.</param>
public sealed record ListedDevice(
    string Description, string InstallSection, ModelId? HardwareId, IReadOnlyList<ModelId> CompatibleIds, int Line)
{
    /// <summary>All IDs of the line, the hardware ID first.</summary>
    public IEnumerable<ModelId> Ids => HardwareId is null ? CompatibleIds : CompatibleIds.Prepend(HardwareId);
}

/// <summary>One models section that [Manufacturer] points to.</summary>
/// <param name="Decoration">The systems it is for; null is the undecorated section.</param>
/// <param name="SectionName">Its full name.</param>
/// <param name="Devices">Its devices; null where the file has no such section, empty where it has an empty one.</param>
public sealed record ModelsSection(InfDecoration? Decoration, string SectionName, IReadOnlyList<ListedDevice>? Devices);

/// <summary>One line of [Manufacturer].</summary>
/// <param name="Name">The manufacturer's name, tokens replaced where possible.</param>
/// <param name="Models">The undecorated models section first, then the decorated ones in the order of the line.</param>
public sealed record InfManufacturer(string Name, IReadOnlyList<ModelsSection> Models);

/// <summary>Which install section a device gets on one system.</summary>
/// <param name="Name">Full name of the section; null where the file has none for that system.</param>
/// <param name="Service">Whether a service section belongs to it or another INF file is included, as an NT driver needs.</param>
public sealed record InstallSection(string? Name, bool Service);

/// <summary>A driver package as its INF file describes it.</summary>
/// <param name="Version">What [Version] says.</param>
/// <param name="Manufacturers">The manufacturers and their devices, in the order of the file.</param>
/// <param name="Faults">Everything that is wrong with the file, in the order of the file.</param>
/// <param name="Complete">False where the file could not be read to its end, so that what it does not list means nothing.</param>
/// <param name="Document">The sections themselves.</param>
public sealed record InfPackage(
    InfVersion Version,
    IReadOnlyList<InfManufacturer> Manufacturers,
    IReadOnlyList<InfFault> Faults,
    bool Complete,
    InfDocument Document)
{
    /// <summary>
    /// The install section that a system takes for a device: on NT the architecture's, then NT's, then the undecorated one;
    /// on 9x the undecorated one.
    /// Source: Windows driver documentation, "INF DDInstall Section".
    /// </summary>
    public InstallSection InstallFor(ListedDevice device, TargetWindows os)
    {
        string[] suffixes = os.Family == WindowsFamily.Nt ? [".NTx86", ".NT", ""] : [""];
        var name = suffixes.Select(s => device.InstallSection + s).FirstOrDefault(n => Document.Section(n) is not null);
        var section = name is null ? null : Document.Section(name);
        return new InstallSection(
            name,
            section is not null
            && (Document.Section(name + ".Services") is not null || section.Entry("Include") is not null || section.Entry("Needs") is not null));
    }

    /// <summary>
    /// Why a line is no evidence that the system can install the device, or null: its install section is absent, or it is
    /// meant for the other family. An NT display driver needs a service; a section with one, under a signature for NT, is
    /// not for 9x.
    /// </summary>
    public ListingDoubt? InstallDoubt(ListedDevice device, TargetWindows os)
    {
        var install = InstallFor(device, os);
        if (install.Name is null)
            return new ListingDoubt(ListingDoubtKind.NoInstallSection, device.Line, device.InstallSection);
        var meantForNt = string.Equals(Version.Signature, "Windows NT", StringComparison.OrdinalIgnoreCase);
        var otherFamily = os.Family == WindowsFamily.Nt ? !install.Service : install.Service && meantForNt;
        return otherFamily ? new ListingDoubt(ListingDoubtKind.OtherFamily, device.Line, install.Name) : null;
    }
}
