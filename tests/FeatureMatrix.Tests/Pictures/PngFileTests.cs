using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures;

/// <summary>Structure by the PNG specification (W3C Recommendation, 2nd edition), read here without the writer's code.</summary>
public sealed class PngFileTests
{
    private static readonly Picture Sample = new(5, 4, [.. Enumerable.Range(0, 60).Select(i => (byte)(i * i * 7))]);

    [Fact]
    public void The_file_has_a_signature_and_three_chunks()
    {
        var file = Sample.ToPng();

        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], file.Take(8));
        Assert.Equal(["IHDR", "IDAT", "IEND"], Chunks(file).Select(c => c.Type));
    }

    [Fact]
    public void Every_checksum_is_right() =>
        Assert.All(Chunks(Sample.ToPng()), chunk => Assert.Equal(BitwiseCrc([.. Encoding.ASCII.GetBytes(chunk.Type), .. chunk.Data]), chunk.Crc));

    [Fact]
    public void The_empty_end_chunk_has_its_well_known_checksum() =>
        Assert.Equal(0xAE426082, Chunks(Sample.ToPng()).Last().Crc); // the twelve bytes that end every PNG file

    [Fact]
    public void The_header_states_size_eight_bits_and_true_colour() =>
        Assert.Equal([0, 0, 0, 5, 0, 0, 0, 4, 8, 2, 0, 0, 0], Chunks(Sample.ToPng()).First().Data);

    [Fact]
    public void The_pixels_read_back_are_the_pixels_written() => Assert.Equal(Sample.Rgb, Decode(Sample.ToPng()));

    [Fact]
    public void A_large_gradient_reads_back_through_all_row_filters()
    {
        var rgb = new byte[300 * 40 * 3];
        for (var i = 0; i < rgb.Length; i++)
            rgb[i] = (byte)(i / 900 < 13 ? i % 900 / 4 : i / 900 < 26 ? i / 900 * 9 : i * 2654435761L >> 13);

        Assert.Equal(rgb, Decode(new Picture(300, 40, rgb).ToPng()));
    }

    private static List<(string Type, byte[] Data, uint Crc)> Chunks(byte[] file)
    {
        var chunks = new List<(string, byte[], uint)>();
        for (var at = 8; at < file.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(at));
            chunks.Add((Encoding.ASCII.GetString(file, at + 4, 4), file[(at + 8)..(at + 8 + length)],
                BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(at + 8 + length))));
            at += 12 + length;
        }

        return chunks;
    }

    // One bit at a time, straight from the generator polynomial, so that no table is shared with the writer.
    private static uint BitwiseCrc(byte[] bytes)
    {
        var crc = uint.MaxValue;
        foreach (var value in bytes)
        {
            for (var bit = 0; bit < 8; bit++)
            {
                var carry = ((crc ^ (uint)(value >> bit)) & 1) != 0;
                crc >>= 1;
                if (carry)
                    crc ^= 0xEDB88320;
            }
        }

        return ~crc;
    }

    private static byte[] Decode(byte[] file)
    {
        var chunks = Chunks(file);
        int width = BinaryPrimitives.ReadInt32BigEndian(chunks[0].Data), height = BinaryPrimitives.ReadInt32BigEndian(chunks[0].Data.AsSpan(4));
        using var zlib = new ZLibStream(new MemoryStream(chunks.Single(c => c.Type == "IDAT").Data), CompressionMode.Decompress);
        using var plain = new MemoryStream();
        zlib.CopyTo(plain);
        var raw = plain.ToArray();
        var stride = width * 3;
        var rgb = new byte[stride * height];
        for (var y = 0; y < height; y++)
        {
            var filter = raw[y * (stride + 1)];
            for (var i = 0; i < stride; i++)
            {
                int left = i < 3 ? 0 : rgb[(y * stride) + i - 3], above = y == 0 ? 0 : rgb[((y - 1) * stride) + i];
                var predicted = filter switch { 0 => 0, 1 => left, 2 => above, _ => throw new InvalidDataException($"filter {filter}") };
                rgb[(y * stride) + i] = (byte)(raw[(y * (stride + 1)) + 1 + i] + predicted);
            }
        }

        return rgb;
    }
}
