using System.Buffers.Binary;

namespace FeatureMatrix.Loading.Captures;

/// <summary>The one field of Exif that changes how a picture is shown: tag 0112 of the first directory, 1 to 8 (CIPA DC-008, 4.6.4; TIFF 6.0).</summary>
internal static class ExifOrientation
{
    private const ushort Tag = 0x0112;
    private const ushort Short = 3;
    private const int EntryBytes = 12;

    /// <summary>The orientation; 1, which means upright, where none can be read.</summary>
    public static ushort Of(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 10 || !(tiff.StartsWith("MM"u8) || tiff.StartsWith("II"u8)))
            return 1;
        var isBig = tiff[0] == 'M';
        var directory = isBig ? BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]);
        if (directory > tiff.Length - 2)
            return 1;
        var entries = tiff[(int)directory..];
        var count = Number(entries, isBig);
        entries = entries[2..];
        for (var i = 0; i < count && entries.Length >= EntryBytes; i++, entries = entries[EntryBytes..])
        {
            if (Number(entries, isBig) == Tag && Number(entries[2..], isBig) == Short)
                return Number(entries[8..], isBig) is var value and >= 1 and <= 8 ? value : (ushort)1;
        }

        return 1;
    }

    /// <summary>A TIFF block with the orientation and nothing else.</summary>
    public static byte[] Only(ushort orientation) =>
        [(byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8, 0, 1, Tag >> 8, Tag & 0xFF, 0, (byte)Short, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0];

    private static ushort Number(ReadOnlySpan<byte> bytes, bool isBig) =>
        isBig ? BinaryPrimitives.ReadUInt16BigEndian(bytes) : BinaryPrimitives.ReadUInt16LittleEndian(bytes);
}
