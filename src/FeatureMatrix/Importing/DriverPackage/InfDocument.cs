namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>One key or value as written, quotes and escapes of quotes resolved, %tokens% still in place.</summary>
/// <param name="Text">The characters.</param>
/// <param name="Line">One-based line of its first character.</param>
/// <param name="Column">One-based column of its first character.</param>
public sealed record InfField(string Text, int Line, int Column);

/// <summary>One entry of a section.</summary>
/// <param name="Key">What stands before the first equals sign; null where the entry has none.</param>
/// <param name="Values">The values between commas; an omitted value is an empty field.</param>
public sealed record InfEntry(InfField? Key, IReadOnlyList<InfField> Values)
{
    /// <summary>The first field of the entry, which says where the entry is.</summary>
    public InfField First => Key ?? Values[0];
}

/// <summary>One named section; sections of the same name are one, their entries in the order of the file.</summary>
/// <param name="Name">The name as first written.</param>
/// <param name="Line">One-based line of its first heading.</param>
/// <param name="Entries">Its entries; none is a statement of its own (it excludes an operating system).</param>
public sealed record InfSection(string Name, int Line, IReadOnlyList<InfEntry> Entries)
{
    /// <summary>The first entry with a key, or null; case does not matter.</summary>
    public InfEntry? Entry(string key) =>
        Entries.FirstOrDefault(e => string.Equals(e.Key?.Text, key, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The sections of an INF file.</summary>
/// <param name="Sections">By name; case does not matter.</param>
/// <param name="Complete">False where a limit or unreadable text ended the reading, so that silence means nothing.</param>
public sealed record InfDocument(IReadOnlyDictionary<string, InfSection> Sections, bool Complete)
{
    /// <summary>The section of a name, or null.</summary>
    public InfSection? Section(string name) => Sections.GetValueOrDefault(name.Trim());
}
