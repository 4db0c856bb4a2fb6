using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Loading.Captures;

/// <summary>Small picture files, made by hand, and the notes that cameras and programs put into such files.</summary>
internal static class PictureMaker
{
    /// <summary>A PNG of one colour pattern; another seed is another picture.</summary>
    public static byte[] Png(int width, int height, int seed = 1) =>
        new Picture(width, height, [.. Enumerable.Range(0, width * height * 3).Select(i => (byte)(i * seed * 7))]).ToPng();

    /// <summary>A PNG of chunks as they are given, with right checksums.</summary>
    public static byte[] PngOf(params IEnumerable<(string Type, byte[] Data)> chunks)
    {
        using var file = new MemoryStream();
        file.Write(PngFormat.Signature);
        foreach (var (type, data) in chunks)
            PngFormat.WriteChunk(file, Encoding.ASCII.GetBytes(type), data);
        return file.ToArray();
    }

    /// <summary>The chunk IHDR.</summary>
    public static (string Type, byte[] Data) Header(int width, int height, byte depth = 8, byte colourType = 2, byte interlace = 0)
    {
        var data = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(data, width);
        BinaryPrimitives.WriteInt32BigEndian(data.AsSpan(4), height);
        (data[8], data[9], data[12]) = (depth, colourType, interlace);
        return ("IHDR", data);
    }

    /// <summary>A chunk IDAT that unpacks to so many bytes of one value.</summary>
    public static (string Type, byte[] Data) Pixels(int bytes, byte value = 0)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write([.. Enumerable.Repeat(value, bytes)]);
        return ("IDAT", packed.ToArray());
    }

    /// <summary>A grey baseline JPEG; another shade is another picture.</summary>
    /// <param name="width">Pixels in a row.</param>
    /// <param name="height">Rows.</param>
    /// <param name="shade">64 to 127.</param>
    /// <param name="head">Application segments, as <see cref="Segment"/> makes them.</param>
    public static byte[] Jpeg(int width, int height, byte shade = 64, params IEnumerable<byte[]> head) =>
    [
        0xFF, 0xD8, .. head.SelectMany(segment => segment),
        .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)1, 64)]),
        .. Segment(0xC0, [8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 1, 1, 0x11, 0]),
        .. Segment(0xC4, [0x00, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7]), // "0" is no change of the mean, "10" one of seven bits
        .. Segment(0xC4, [0x10, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]), // "0" ends a block
        .. Segment(0xDA, [1, 1, 0, 0, 63, 0]),
        .. Scan((width + 7) / 8 * ((height + 7) / 8), shade),
        0xFF, 0xD9,
    ];

    /// <summary>A JPEG segment with its marker and length.</summary>
    public static byte[] Segment(byte marker, params ReadOnlySpan<byte> data) => [0xFF, marker, (byte)((data.Length + 2) >> 8), (byte)(data.Length + 2), .. data];

    /// <summary>An application segment that begins with a name in ASCII.</summary>
    public static byte[] Named(byte marker, string name, params ReadOnlySpan<byte> data) => Segment(marker, [.. Encoding.ASCII.GetBytes(name), .. data]);

    /// <summary>Exif with an orientation and the name of a photographer.</summary>
    public static byte[] Exif(ushort orientation, bool isBig = true)
    {
        var tiff = new MemoryStream();
        tiff.Write(isBig ? "MM"u8 : "II"u8);
        Short(42);
        Long(8);
        Short(2);
        Entry(0x0112, 3, 1, isBig ? (uint)orientation << 16 : orientation);
        Entry(0x013B, 2, 12, 38);
        Long(0);
        tiff.Write("Ida Quill 1\0"u8);
        return Named(0xE1, "Exif\0\0", tiff.ToArray());

        void Entry(ushort tag, ushort type, uint count, uint value)
        {
            Short(tag);
            Short(type);
            Long(count);
            Long(value);
        }

        void Short(ushort value) => tiff.Write(isBig ? [(byte)(value >> 8), (byte)value] : [(byte)value, (byte)(value >> 8)]);

        void Long(uint value)
        {
            Span<byte> bytes = stackalloc byte[4];
            if (isBig)
                BinaryPrimitives.WriteUInt32BigEndian(bytes, value);
            else
                BinaryPrimitives.WriteUInt32LittleEndian(bytes, value);
            tiff.Write(bytes);
        }
    }

    /// <summary>A colour profile with a header full of origins, and tags as given.</summary>
    public static byte[] Profile(byte origin, params (string Name, string Data)[] tags)
    {
        var header = new byte[128];
        header.AsSpan().Fill(origin);
        var begin = 132 + (12 * tags.Length);
        byte[] table = [0, 0, 0, (byte)tags.Length];
        byte[] data = [];
        foreach (var (name, text) in tags)
        {
            table = [.. table, .. Encoding.ASCII.GetBytes(name), 0, 0, (byte)((begin + data.Length) >> 8), (byte)(begin + data.Length), 0, 0, 0, (byte)text.Length];
            data = [.. data, .. Encoding.ASCII.GetBytes(text)];
        }

        BinaryPrimitives.WriteInt32BigEndian(header, begin + data.Length);
        "acsp"u8.CopyTo(header.AsSpan(36));
        return [.. header, .. table, .. data];
    }

    private static byte[] Scan(int blocks, byte shade)
    {
        var bits = new StringBuilder("10").Append(Convert.ToString(shade, 2)).Append('0');
        for (var i = 1; i < blocks; i++)
            bits.Append("00");
        bits.Append('1', (8 - (bits.Length % 8)) % 8);
        return [.. Enumerable.Range(0, bits.Length / 8).Select(i => Convert.ToByte(bits.ToString(i * 8, 8), 2)).SelectMany(value => value == 0xFF ? (byte[])[0xFF, 0] : [value])];
    }
}
