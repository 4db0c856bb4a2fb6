using System.Buffers.Binary;
using System.Text;

namespace FeatureMatrix.Importing.DriverPackage;

/// <summary>Turns the bytes of an INF file into characters.</summary>
internal static class InfText
{
    /// <summary>
    /// Decodes a file. UTF-16 of either byte order and UTF-8 are known by their byte order mark, UTF-16 without a mark by
    /// the zero bytes beside its first characters. Anything else is one byte a character: such a file does not say its
    /// code page, so bytes above 127 are read as Latin-1. Section names, keys and IDs are ASCII; only descriptions suffer.
    /// </summary>
    /// <returns>The text, or null where it cannot be the text it announces.</returns>
    public static string? Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return Utf16(bytes[2..], bigEndian: false);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Utf16(bytes[2..], bigEndian: true);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            return Encoding.UTF8.GetString(bytes[3..]);
        if (bytes.Length >= 4 && bytes[0] != 0 && bytes[1] == 0 && bytes[2] != 0 && bytes[3] == 0)
            return Utf16(bytes, bigEndian: false);
        if (bytes.Length >= 4 && bytes[0] == 0 && bytes[1] != 0 && bytes[2] == 0 && bytes[3] != 0)
            return Utf16(bytes, bigEndian: true);
        return Encoding.Latin1.GetString(bytes);
    }

    private static string? Utf16(ReadOnlySpan<byte> bytes, bool bigEndian)
    {
        if (bytes.Length % 2 != 0)
            return null;
        var characters = new char[bytes.Length / 2];
        for (var i = 0; i < characters.Length; i++)
        {
            var pair = bytes.Slice(2 * i, 2);
            characters[i] = (char)(bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(pair) : BinaryPrimitives.ReadUInt16LittleEndian(pair));
        }

        return new string(characters);
    }
}
