using System.Globalization;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Importing.Records;

namespace FeatureMatrix.Reports.Wording;

/// <summary>What a driver package says, in words.</summary>
public static class PackageWording
{
    /// <summary>Whether the package lists the card for a system.</summary>
    public static string Status(ListingStatus status) => status switch
    {
        ListingStatus.Unknown => "it cannot be told",
        ListingStatus.NotListed => "not listed",
        ListingStatus.Generic => "listed by its class only, not by name",
        ListingStatus.Listed => "listed",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>How closely an ID names the card.</summary>
    public static string Specificity(IdSpecificity specificity) => specificity switch
    {
        IdSpecificity.Class => "its class",
        IdSpecificity.Device => "its chip",
        IdSpecificity.DeviceRevision => "its chip in this revision",
        IdSpecificity.Board => "this very board",
        IdSpecificity.BoardRevision => "this very board in this revision",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Why an answer is in doubt.</summary>
    public static string Doubt(ListingDoubt doubt)
    {
        ArgumentNullException.ThrowIfNull(doubt);
        var subject = PlainWords.Of(doubt.Subject);
        var line = doubt.Line is { } number ? string.Create(CultureInfo.InvariantCulture, $" (line {number})") : "";
        return doubt.Kind switch
        {
            ListingDoubtKind.FileIncomplete => "the file could not be read to its end",
            ListingDoubtKind.NoManufacturer => "the file has no usable [Manufacturer] section",
            ListingDoubtKind.NoSectionForSystem => $"the file has no section for this system{(subject.Length > 0 ? $" ({subject})" : "")}",
            ListingDoubtKind.DocumentationDisagrees => "the documentation disagrees about which sections Windows 2000 reads, and here it matters",
            ListingDoubtKind.UnresolvedId => $"{subject} is defined nowhere, so that it could be any ID{line}",
            ListingDoubtKind.CardPartUnread => $"{subject} is this card only if a part of its ID that nobody has read agrees{line}",
            ListingDoubtKind.NoInstallSection => $"the install section {subject} is missing for this system{line}",
            ListingDoubtKind.OtherFamily => $"the install section {subject} is meant for the other family of Windows{line}",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    /// <summary>A fault of the file, without the place.</summary>
    public static string Fault(InfFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        var subject = PlainWords.Of(fault.Subject);
        return fault.Kind switch
        {
            InfFaultKind.FileTooLarge => "the file is longer than 4 MiB; nothing of it was read",
            InfFaultKind.TooMuchContent => "the file holds more than the limits allow; the rest was not read",
            InfFaultKind.NotText => "the file is not text in the encoding that its first bytes announce",
            InfFaultKind.ContentBeforeSection => "something stands before the first section",
            InfFaultKind.UnclosedSectionName => "the heading of a section lacks its closing bracket",
            InfFaultKind.EmptySectionName => "the heading of a section names nothing",
            InfFaultKind.UnclosedQuote => "a quoted text is open at the end of its line",
            InfFaultKind.FieldTooLong => "a field is too long; the rest was dropped",
            InfFaultKind.TooManyFields => "an entry has too many values; the rest was dropped",
            InfFaultKind.UnknownToken => $"%{subject.Trim('%')}% is defined in no [Strings] section",
            InfFaultKind.DuplicateString => $"{subject} is defined twice; the first definition holds",
            InfFaultKind.MissingSection => $"the section {subject} is missing",
            InfFaultKind.UnknownSignature => "[Version] has no signature, or an unknown one",
            InfFaultKind.MalformedDriverVersion => $"DriverVer '{subject}' is no date with an optional version",
            InfFaultKind.MalformedDecoration => $"'{subject}' names no operating system",
            InfFaultKind.IncompleteModel => "a line of a models section names no install section or no ID",
            InfFaultKind.MalformedHardwareId => $"'{subject}' has none of the documented forms of an ID",
            InfFaultKind.MoreFaults => "there are more faults than are listed",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
