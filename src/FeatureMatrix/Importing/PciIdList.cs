using System.Text;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing;

/// <summary>One line of the PCI ID list that names something.</summary>
/// <param name="Line">One-based line number.</param>
/// <param name="Name">The name as written, without white space around it.</param>
public abstract record PciIdEntry(int Line, string Name);

/// <summary>A vendor.</summary>
public sealed record PciVendorEntry(int Line, ushort Vendor, string Name) : PciIdEntry(Line, Name);

/// <summary>A device of the vendor above it.</summary>
public sealed record PciDeviceEntry(int Line, PciDevice Device, string Name) : PciIdEntry(Line, Name);

/// <summary>A board that carries the device above it.</summary>
public sealed record PciSubsystemEntry(int Line, PciDevice Device, PciSubsystem Subsystem, string Name) : PciIdEntry(Line, Name);

/// <summary>A base class.</summary>
public sealed record PciBaseClassEntry(int Line, byte Base, string Name) : PciIdEntry(Line, Name);

/// <summary>A subclass of the base class above it, or one of its programming interfaces.</summary>
public sealed record PciClassEntry(int Line, PciClass Class, string Name) : PciIdEntry(Line, Name);

/// <summary>A line that follows none of the forms; <see cref="PciIdEntry.Name"/> is its text.</summary>
public sealed record PciIdFault(int Line, string Name) : PciIdEntry(Line, Name);

/// <summary>
/// Reads the open PCI ID list (Debian package pci.ids) as a stream: nothing is kept but the line in hand and the vendor,
/// device or class that it belongs to.
/// Format: the list's own header comment. <c>vendor  name</c>, TAB <c>device  name</c>, TAB TAB
/// <c>subvendor subdevice  name</c>; after a line <c>C class  name</c> the same indentation holds subclasses and
/// programming interfaces.
/// </summary>
public static class PciIdList
{
    /// <summary>Characters of one line that are looked at; what follows is dropped. The packaged list stays under 200.</summary>
    public const int LongestLine = 1024;

    /// <summary>The entries in the order of the file; a line that fits nowhere becomes a <see cref="PciIdFault"/>.</summary>
    public static IEnumerable<PciIdEntry> Read(TextReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        return Entries(reader);
    }

    private static IEnumerable<PciIdEntry> Entries(TextReader reader)
    {
        ushort? vendor = null;
        ushort? device = null;
        byte? baseClass = null;
        byte? subclass = null;
        var number = 0;
        var buffer = new StringBuilder();
        while (NextLine(reader, buffer) is { } line)
        {
            number++;
            if (line.Length == 0 || line[0] == '#')
                continue;
            var entry = Entry(number, line, vendor, device, baseClass, subclass);
            (vendor, device, baseClass, subclass) = entry switch
            {
                PciVendorEntry e => (e.Vendor, null, null, null),
                PciDeviceEntry e => (e.Device.Vendor, e.Device.Device, null, null),
                PciBaseClassEntry e => (null, null, e.Base, null),
                PciClassEntry { Class.Interface: null } e => (null, null, e.Class.Base, e.Class.Sub),
                // What is indented under a heading that nobody can read belongs to nothing.
                PciIdFault when line[0] != '\t' => (null, null, null, null),
                _ => (vendor, device, baseClass, subclass),
            };
            yield return entry;
        }
    }

    private static PciIdEntry Entry(int number, string line, ushort? vendor, ushort? device, byte? baseClass, byte? subclass)
    {
        if (line.StartsWith("\t\t", StringComparison.Ordinal))
        {
            if (vendor is { } v && device is { } d && Number(line, 2, 4) is { } subvendor
                && line.Length > 6 && line[6] == ' ' && Number(line, 7, 4) is { } subdevice && NameAfter(line, 11) is { } board)
                return new PciSubsystemEntry(number, new PciDevice(v, d), new PciSubsystem(subdevice, subvendor), board);
            if (baseClass is { } b && subclass is { } s && Number(line, 2, 2) is { } programming && NameAfter(line, 4) is { } name)
                return new PciClassEntry(number, new PciClass(b, s, (byte)programming), name);
        }
        else if (line[0] == '\t')
        {
            if (vendor is { } v && Number(line, 1, 4) is { } d && NameAfter(line, 5) is { } name)
                return new PciDeviceEntry(number, new PciDevice(v, d), name);
            if (baseClass is { } b && Number(line, 1, 2) is { } s && NameAfter(line, 3) is { } kind)
                return new PciClassEntry(number, new PciClass(b, (byte)s, null), kind);
        }
        else if (line.StartsWith("C ", StringComparison.Ordinal))
        {
            if (Number(line, 2, 2) is { } b && NameAfter(line, 4) is { } name)
                return new PciBaseClassEntry(number, (byte)b, name);
        }
        else if (Number(line, 0, 4) is { } v && NameAfter(line, 4) is { } name)
        {
            return new PciVendorEntry(number, v, name);
        }

        return new PciIdFault(number, line);
    }

    private static ushort? Number(string line, int start, int digits) =>
        line.Length >= start + digits ? (ushort?)Digits.Hexadecimal(line.AsSpan(start, digits)) : null;

    /// <summary>The name that two blanks separate from the number before it.</summary>
    private static string? NameAfter(string line, int position) =>
        line.Length > position + 2 && line[position] == ' ' && line[position + 1] == ' ' ? line[(position + 2)..].Trim() : null;

    private static string? NextLine(TextReader reader, StringBuilder buffer)
    {
        buffer.Clear();
        var any = false;
        for (int next; (next = reader.Read()) >= 0;)
        {
            any = true;
            if (next == '\n')
                break;
            if (next != '\r' && buffer.Length < LongestLine)
                buffer.Append((char)next);
        }

        return any ? buffer.ToString() : null;
    }
}
