using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Capabilities;

/// <summary>
/// What a machine's graphics interfaces report about themselves, in the text that src/probe writes and src/probe/README.md
/// defines. Nothing is interpreted here: words are as the interfaces gave them.
/// </summary>
/// <param name="Sections">In the order of the file.</param>
/// <param name="MadeBy">Which program wrote the file, in its own words; empty if it does not say.</param>
/// <param name="IsComplete">False where the file stops early, as it does when an old driver hangs the machine.</param>
/// <param name="Faults">In the order of the file; empty for a sound one.</param>
public sealed record CapabilityDump(
    EquatableList<DumpSection> Sections, string MadeBy, bool IsComplete, EquatableList<ImportFault> Faults)
{
    /// <summary>The sections of one kind, in the order of the file.</summary>
    public IEnumerable<DumpSection> SectionsOf(string kind) => Sections.Where(s => s.Kind == kind);

    /// <summary>Reads a dump. Never throws: what cannot be read is a fault, and the rest is still there.</summary>
    public static CapabilityDump Parse(ReadOnlySpan<byte> file) => CapabilityDumpParser.Parse(file);
}

/// <summary>The lines about one thing: an adapter under one interface, the system, a display device.</summary>
/// <param name="Kind">For example <c>direct3d9</c>.</param>
/// <param name="Ordinals">Which of its kind, counted from 0; for Direct3D 7 the DirectDraw device, then its own number.</param>
/// <param name="Line">Where the section begins.</param>
/// <param name="Entries">Its lines that say something, in order.</param>
public sealed record DumpSection(string Kind, EquatableList<uint> Ordinals, int Line, EquatableList<DumpEntry> Entries)
{
    /// <summary>The first text under a key; null if there is none.</summary>
    public string? Text(string key) => Entries.OfType<TextEntry>().FirstOrDefault(e => e.Key == key)?.Value;

    /// <summary>The first number under a key; null if there is none.</summary>
    public uint? Number(string key) => Entries.OfType<NumberEntry>().FirstOrDefault(e => e.Key == key)?.Value;

    /// <summary>The first word of a structure's field; null where the dump does not have it.</summary>
    public uint? Field(string structure, string field) => Entries.OfType<FieldEntry>()
        .FirstOrDefault(e => e.Structure == structure && e.Field == field)?.Value;
}

/// <summary>One line of a section.</summary>
/// <param name="Line">The line, counted from 1.</param>
public abstract record DumpEntry(int Line);

/// <summary>A named text.</summary>
public sealed record TextEntry(int Line, string Key, string Value) : DumpEntry(Line);

/// <summary>A named whole number.</summary>
public sealed record NumberEntry(int Line, string Key, uint Value) : DumpEntry(Line);

/// <summary>The size in bytes that a structure had in the program that wrote the dump.</summary>
public sealed record SizeEntry(int Line, string Structure, uint Bytes) : DumpEntry(Line);

/// <summary>One word of a structure, named as the public headers name it; arrays as <c>dwRops[3]</c>.</summary>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Structure">The structure's public name.</param>
/// <param name="Field">The field, with the names of the structures it lies in: <c>dpcTriCaps.dwRasterCaps</c>.</param>
/// <param name="Value">The word.</param>
/// <param name="Bytes">Its width: 1, 2 or 4.</param>
public sealed record FieldEntry(int Line, string Structure, string Field, uint Value, int Bytes) : DumpEntry(Line);

/// <summary>A version in four parts, most significant first.</summary>
public sealed record VersionEntry(int Line, string Key, EquatableList<uint> Parts) : DumpEntry(Line);

/// <summary>The version that a driver's or runtime's file carries.</summary>
public sealed record FileEntry(int Line, string Name, EquatableList<uint> Parts) : DumpEntry(Line);

/// <summary>PCI identifiers as an interface reports them; zero where the driver says nothing.</summary>
public sealed record PciEntry(int Line, uint Vendor, uint Device, uint Subsystem, uint Revision) : DumpEntry(Line);

/// <summary>A display device as the system's list of devices spells it, for example bus <c>PCI</c>.</summary>
public sealed record HardwareIdEntry(int Line, string Bus, string Id) : DumpEntry(Line);

/// <summary>Bytes of one pool of memory, all and free. Interfaces count differently; bus memory may be included.</summary>
public sealed record MemoryEntry(int Line, string Pool, uint Total, uint Free) : DumpEntry(Line);

/// <summary>The four-character codes that DirectDraw accepts, as numbers.</summary>
public sealed record FourCcEntry(int Line, EquatableList<uint> Codes) : DumpEntry(Line);

/// <summary>One surface format of Direct3D 7: the words of a DDPIXELFORMAT after its size.</summary>
public sealed record PixelFormatEntry(
    int Line, string Use, uint Flags, uint FourCc, uint Bits, uint Mask1, uint Mask2, uint Mask3, uint Mask4) : DumpEntry(Line);

/// <summary>Formats of Direct3D 8 or 9 that were asked for one use: those that it accepts and those that it refuses.</summary>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Use">For example <c>texture</c>, <c>depth</c>, <c>target-texture</c>, <c>window</c>.</param>
/// <param name="Display">The display format under which it was asked (a D3DFMT number).</param>
/// <param name="Yes">Accepted.</param>
/// <param name="No">Refused. A format in neither list was not asked, so nothing is known about it.</param>
public sealed record FormatsEntry(int Line, string Use, uint Display, EquatableList<uint> Yes, EquatableList<uint> No)
    : DumpEntry(Line);

/// <summary>Numbers of samples a pixel, full screen, asked of one format.</summary>
public sealed record SamplesEntry(int Line, uint Format, EquatableList<uint> Yes, EquatableList<uint> No) : DumpEntry(Line);

/// <summary>A display mode; 0 Hz or 1 Hz is the adapter's default. The format is a D3DFMT number, 0 where not said.</summary>
public sealed record ModeEntry(int Line, uint Width, uint Height, uint Bits, uint Hertz, uint Format) : DumpEntry(Line);

/// <summary>Whether a device makes queries of one type.</summary>
public sealed record QueryEntry(int Line, string Name, bool IsSupported) : DumpEntry(Line);

/// <summary>An extension: <c>gl</c> of OpenGL itself, <c>wgl</c> of the window system.</summary>
public sealed record ExtensionEntry(int Line, string Kind, string Name) : DumpEntry(Line);

/// <summary>The length in bytes of the whole extension string as the driver gives it.</summary>
public sealed record ExtensionLengthEntry(int Line, string Kind, uint Bytes) : DumpEntry(Line);

/// <summary>A limit of OpenGL, under its public name; more than one value for vectors.</summary>
public sealed record LimitEntry(int Line, string Name, EquatableList<uint> Values) : DumpEntry(Line);

/// <summary>A call that was about to be made; the last one in an unfinished file names the culprit.</summary>
public sealed record StepEntry(int Line, string Call) : DumpEntry(Line);

/// <summary>A library or entry point that the machine does not have.</summary>
public sealed record AbsentEntry(int Line, string What) : DumpEntry(Line);

/// <summary>A call that failed, with the number it gave.</summary>
public sealed record FailedEntry(int Line, string Call, uint Code) : DumpEntry(Line);

/// <summary>A line that was not understood, kept as it stands (at most its first 400 characters).</summary>
public sealed record UnknownEntry(int Line, string Content) : DumpEntry(Line);
