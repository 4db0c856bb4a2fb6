namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Whether a package lists a card for one system. A listed card says nothing about how well it runs.</summary>
public enum ListingStatus
{
    /// <summary>It cannot be told; <see cref="CardListing.Doubts"/> say why.</summary>
    Unknown,

    /// <summary>The sections for that system were read and hold no ID of the card.</summary>
    NotListed,

    /// <summary>Only an ID of the card's class, or of its vendor alone, is listed.</summary>
    Generic,

    /// <summary>An ID that names the card's chip is listed.</summary>
    Listed,
}

/// <summary>How closely an ID names the card, from the board itself down to its class.</summary>
public enum IdSpecificity
{
    /// <summary>A class or a vendor.</summary>
    Class,

    /// <summary>The chip.</summary>
    Device,

    /// <summary>The chip in one revision.</summary>
    DeviceRevision,

    /// <summary>The board.</summary>
    Board,

    /// <summary>The board in one revision of its chip.</summary>
    BoardRevision,
}

/// <summary>Why a listing is in doubt.</summary>
public enum ListingDoubtKind
{
    /// <summary>The file could not be read to its end.</summary>
    FileIncomplete,

    /// <summary>The file has no [Manufacturer] section with a usable line.</summary>
    NoManufacturer,

    /// <summary>The section that the file names for this system, or any section for it, is absent.</summary>
    NoSectionForSystem,

    /// <summary>
    /// One page of the documentation lets Windows 2000 read decorated sections, another does not, and here it matters.
    /// </summary>
    DocumentationDisagrees,

    /// <summary>A line holds an ID whose %token% is defined nowhere.</summary>
    UnresolvedId,

    /// <summary>A line is for this card only if a subsystem, revision or class that nobody has read agrees.</summary>
    CardPartUnread,

    /// <summary>The line that lists the card names an install section that the file does not have for this system.</summary>
    NoInstallSection,

    /// <summary>
    /// For 9x: signature and service section say that the undecorated section is meant for NT. For NT: nothing installs
    /// a service, as every NT display driver must, so the section is meant for 9x.
    /// </summary>
    OtherFamily,
}

/// <summary>One doubt.</summary>
/// <param name="Kind">Why.</param>
/// <param name="Line">One-based line it comes from; null where it concerns the file.</param>
/// <param name="Subject">The section or ID concerned; empty where there is none.</param>
public sealed record ListingDoubt(ListingDoubtKind Kind, int? Line = null, string Subject = "");

/// <summary>One line that lists the card.</summary>
/// <param name="Device">The line.</param>
/// <param name="Id">The ID that matched.</param>
/// <param name="Specificity">How closely it names the card.</param>
/// <param name="Rank">
/// Identifier score, lower is closer: 0x0000 hardware with hardware ID, 0x1000 hardware with compatible, 0x2000 compatible
/// with hardware, 0x3000 compatible with compatible, plus the position among the IDs that are known of the card.
/// Source: Windows driver documentation, "Identifier Score".
/// </param>
/// <param name="Install">The install section it leads to.</param>
public sealed record ListingHit(ListedDevice Device, HardwareId Id, IdSpecificity Specificity, int Rank, InstallSection Install);

/// <summary>Whether one package lists one card for one system, and what else of its chip it lists there.</summary>
/// <param name="Os">The system asked about.</param>
/// <param name="Status">The answer.</param>
/// <param name="Hits">The lines that list the card, the closest first.</param>
/// <param name="Siblings">
/// Lines for other boards with the same chip, whose driver could be forced on the card; empty where the card is listed.
/// Forcing one can leave a system that does not start, so the advice that shows them carries its caution.
/// </param>
/// <param name="Doubts">Why the answer is unknown, or could be closer than it is.</param>
public sealed record CardListing(
    TargetWindows Os,
    ListingStatus Status,
    IReadOnlyList<ListingHit> Hits,
    IReadOnlyList<ListedDevice> Siblings,
    IReadOnlyList<ListingDoubt> Doubts);
