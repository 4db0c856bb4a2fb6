using System.Buffers.Binary;

namespace FeatureMatrix.Pictures;

/// <summary>What every PNG file is made of (W3C Recommendation "Portable Network Graphics", clause 5): a signature, then chunks with a checksum each.</summary>
internal static class PngFormat
{
    private static readonly uint[] CrcTable = MakeCrcTable();

    /// <summary>The first eight bytes of every PNG file.</summary>
    public static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Writes a chunk: length, four letters, data, checksum.</summary>
    public static void WriteChunk(Stream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        file.Write(number);
        file.Write(type);
        file.Write(data);
        BinaryPrimitives.WriteUInt32BigEndian(number, Checksum(type, data));
        file.Write(number);
    }

    /// <summary>The checksum of a chunk: CRC-32 of ISO 3309, as annex D of the specification gives it.</summary>
    public static uint Checksum(ReadOnlySpan<byte> type, ReadOnlySpan<byte> data) => Crc(Crc(0xFFFFFFFF, type), data) ^ 0xFFFFFFFF;

    private static uint Crc(uint crc, ReadOnlySpan<byte> bytes)
    {
        foreach (var value in bytes)
            crc = CrcTable[(byte)(crc ^ value)] ^ (crc >> 8);
        return crc;
    }

    private static uint[] MakeCrcTable()
    {
        var table = new uint[256];
        for (var n = 0u; n < 256; n++)
        {
            var c = n;
            for (var k = 0; k < 8; k++)
                c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
            table[n] = c;
        }

        return table;
    }
}
