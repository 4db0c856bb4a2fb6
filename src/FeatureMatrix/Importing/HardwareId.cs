using System.Globalization;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Importing;

/// <summary>The board maker's own pair of numbers on a PCI or AGP card.</summary>
/// <param name="Id">What the board maker calls this board.</param>
/// <param name="Vendor">Who made the board; the number is assigned by the PCI SIG.</param>
public sealed record PciSubsystem(ushort Id, ushort Vendor);

/// <summary>What kind of device a PCI function says it is.</summary>
/// <param name="Base">Base class; 03 is a display controller.</param>
/// <param name="Sub">Subclass; 00 under 03 is VGA compatible.</param>
/// <param name="Interface">Programming interface; null where an ID leaves it out.</param>
public sealed record PciClass(byte Base, byte Sub, byte? Interface);

/// <summary>
/// One Windows hardware or compatible ID of a PCI or AGP device, for example
/// <c>PCI\VEN_102C&amp;DEV_00E0&amp;SUBSYS_00000000&amp;REV_04</c>. A part that is null is not written in the ID, which then
/// covers every value of that part. Note the order inside <c>SUBSYS_</c>: first the subsystem's id, then its vendor, the
/// reverse of what the PCI ID list prints.
/// Source: Windows driver documentation, "Identifiers for PCI Devices".
/// </summary>
public sealed record HardwareId(
    ushort? Vendor, ushort? Device = null, PciSubsystem? Subsystem = null, byte? Revision = null, PciClass? Class = null)
{
    private const string Enumerator = @"PCI\";

    /// <summary>
    /// Reads an ID in any of the documented forms; letter case does not matter, the order of the parts does.
    /// </summary>
    /// <param name="text">The ID, without white space around it.</param>
    /// <param name="id">The ID, or null where the text is none.</param>
    /// <param name="faultAt">Zero-based position of the first character that does not fit; the length of the text where it ends too early.</param>
    public static bool TryParse(string text, out HardwareId? id, out int faultAt)
    {
        var reader = new PartReader(text);
        id = null;
        if (!reader.Take(Enumerator))
        {
            faultAt = reader.Position;
            return false;
        }

        uint? vendor = reader.Part("VEN_", 4);
        var device = vendor is null ? null : reader.Part("DEV_", 4);
        var subsystem = device is null ? null : reader.Part("SUBSYS_", 8);
        var revision = device is null ? null : reader.Part("REV_", 2);
        var @class = revision is null && subsystem is null ? reader.ClassPart() : null;
        faultAt = reader.Position;
        if (!reader.AtEnd || (vendor is null && @class is null))
            return false;

        id = new HardwareId(
            (ushort?)vendor,
            (ushort?)device,
            subsystem is { } s ? new PciSubsystem((ushort)(s >> 16), (ushort)(s & 0xFFFF)) : null,
            (byte?)revision,
            @class);
        return true;
    }

    /// <summary>The ID as Windows writes it, in capitals.</summary>
    public override string ToString()
    {
        var parts = new List<string>(5);
        if (Vendor is { } vendor)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"VEN_{vendor:X4}"));
        if (Device is { } device)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"DEV_{device:X4}"));
        if (Subsystem is { } subsystem)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"SUBSYS_{subsystem.Id:X4}{subsystem.Vendor:X4}"));
        if (Revision is { } revision)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"REV_{revision:X2}"));
        if (Class is { } c)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"CC_{c.Base:X2}{c.Sub:X2}{c.Interface:X2}"));
        return Enumerator + string.Join('&', parts);
    }

    /// <summary>Walks the parts of an ID; a part that is absent leaves the position where it was.</summary>
    private struct PartReader(string text)
    {
        private bool _first = true;

        public int Position { get; private set; }

        public readonly bool AtEnd => Position == text.Length;

        public bool Take(string literal)
        {
            if (string.Compare(text, Position, literal, 0, literal.Length, StringComparison.OrdinalIgnoreCase) != 0)
                return false;
            Position += literal.Length;
            return true;
        }

        public uint? Part(string name, int digits)
        {
            var start = Position;
            if ((_first || Take("&")) && Take(name) && Hex(digits) is { } value)
            {
                _first = false;
                return value;
            }

            Position = start;
            return null;
        }

        public PciClass? ClassPart()
        {
            if (Part("CC_", 6) is { } full)
                return new PciClass((byte)(full >> 16), (byte)(full >> 8), (byte)full);
            return Part("CC_", 4) is { } coarse ? new PciClass((byte)(coarse >> 8), (byte)coarse, null) : null;
        }

        private uint? Hex(int digits)
        {
            var end = Position + digits;
            if (end > text.Length || (end < text.Length && text[end] != '&')
                || Digits.Hexadecimal(text.AsSpan(Position, digits)) is not { } value)
                return null;
            Position = end;
            return value;
        }
    }
}
