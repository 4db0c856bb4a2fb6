namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>What is wrong at one place of an INF file.</summary>
public enum InfFaultKind
{
    /// <summary>The file is longer than <see cref="InfLimits.Bytes"/>; nothing of it was read.</summary>
    FileTooLarge,

    /// <summary>The file holds more values or longer substitutions than the limits allow; the rest was not read.</summary>
    TooMuchContent,

    /// <summary>The bytes are not text in the encoding that the file's first bytes announce.</summary>
    NotText,

    /// <summary>Something other than a comment stands before the first section.</summary>
    ContentBeforeSection,

    /// <summary>A section heading lacks its closing bracket.</summary>
    UnclosedSectionName,

    /// <summary>A section heading names nothing.</summary>
    EmptySectionName,

    /// <summary>A quoted string is still open at the end of its line; it was taken to end there.</summary>
    UnclosedQuote,

    /// <summary>A field is longer than <see cref="InfLimits.FieldCharacters"/>; what follows was dropped.</summary>
    FieldTooLong,

    /// <summary>An entry has more than <see cref="InfLimits.FieldsInEntry"/> values; what follows was dropped.</summary>
    TooManyFields,

    /// <summary>A %token% is defined in no [Strings] section; the text keeps it as written.</summary>
    UnknownToken,

    /// <summary>A string key is defined twice in one section; the first definition holds.</summary>
    DuplicateString,

    /// <summary>A required section is absent; the subject names it.</summary>
    MissingSection,

    /// <summary>[Version] has no signature, or one that is neither of the two documented.</summary>
    UnknownSignature,

    /// <summary>DriverVer is not mm/dd/yyyy with an optional version of up to four numbers.</summary>
    MalformedDriverVersion,

    /// <summary>An operating system decoration in [Manufacturer] does not follow its documented form; it was ignored.</summary>
    MalformedDecoration,

    /// <summary>A line of a models section names no install section or no ID.</summary>
    IncompleteModel,

    /// <summary>An ID begins like a PCI ID but has none of its documented forms; it can match no card.</summary>
    MalformedHardwareId,

    /// <summary>More faults than <see cref="InfLimits.Faults"/> were found; the rest are not listed.</summary>
    MoreFaults,
}

/// <summary>One fault of an INF file and where it is.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Line">One-based line; 1 for a fault of the file as a whole.</param>
/// <param name="Column">One-based column, counted in UTF-16 code units.</param>
/// <param name="Subject">The text that is at fault, or the name of what is missing; empty where there is none.</param>
public sealed record InfFault(InfFaultKind Kind, int Line, int Column, string Subject = "");

/// <summary>The bounds that keep the work on any file small, whatever is in it.</summary>
public static class InfLimits
{
    /// <summary>Longest file that is read. Display driver INF files of the period stay under one megabyte.</summary>
    public const int Bytes = 4 * 1024 * 1024;

    /// <summary>Longest field. Source: Windows driver documentation, "General Syntax Rules for INF Files", "INF Size Limits".</summary>
    public const int FieldCharacters = 4095;

    /// <summary>Most values of one entry.</summary>
    public const int FieldsInEntry = 256;

    /// <summary>Most keys and values in a file.</summary>
    public const int Fields = 400_000;

    /// <summary>Most characters that substitutions may write in total.</summary>
    public const int SubstitutedCharacters = 8 * 1024 * 1024;

    /// <summary>Most faults that are listed.</summary>
    public const int Faults = 500;
}
