using System.Buffers.Binary;
using System.IO.Compression;

namespace FeatureMatrix.Pictures;

/// <summary>
/// Writes true-colour PNG files (ISO/IEC 15948, the W3C Recommendation "Portable Network Graphics", 2nd edition): only the chunks
/// IHDR, IDAT and IEND, so no time stamp or program name gets in.
/// </summary>
internal static class PngWriter
{
    public static byte[] Write(int width, int height, ReadOnlySpan<byte> rgb)
    {
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], height);
        header[8] = 8;
        header[9] = 2; // colour type: red, green, blue; the three zeros after it are the only methods there are
        using var file = new MemoryStream();
        file.Write(PngFormat.Signature);
        PngFormat.WriteChunk(file, "IHDR"u8, header);
        PngFormat.WriteChunk(file, "IDAT"u8, Compress(Filter(width, height, rgb)));
        PngFormat.WriteChunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static ReadOnlySpan<byte> Compress(byte[] bytes)
    {
        using var target = new MemoryStream();
        using (var zlib = new ZLibStream(target, CompressionLevel.Fastest, leaveOpen: true))
            zlib.Write(bytes);
        return target.GetBuffer().AsSpan(0, (int)target.Length);
    }

    // Each row is stored by whichever of "as it is", "minus the left pixel" and "minus the row above" has the smallest differences.
    private static byte[] Filter(int width, int height, ReadOnlySpan<byte> rgb)
    {
        var stride = width * 3;
        var rows = new byte[(stride + 1) * height];
        var best = new byte[stride];
        var trial = new byte[stride];
        for (var y = 0; y < height; y++)
        {
            var row = rgb.Slice(y * stride, stride);
            var above = y == 0 ? [] : rgb.Slice((y - 1) * stride, stride);
            byte kind = 0;
            var least = long.MaxValue;
            for (byte candidate = 0; candidate <= 2; candidate++)
            {
                var sum = 0L;
                row.CopyTo(trial);
                if (candidate == 1)
                    Subtract(trial.AsSpan(3), row[..^3]);
                else if (candidate == 2)
                    Subtract(trial, above);
                foreach (var value in trial)
                    sum += value < 128 ? value : 256 - value;

                if (sum >= least)
                    continue;
                least = sum;
                kind = candidate;
                (best, trial) = (trial, best);
            }

            rows[y * (stride + 1)] = kind;
            best.CopyTo(rows, (y * (stride + 1)) + 1);
        }

        return rows;
    }

    private static void Subtract(Span<byte> from, ReadOnlySpan<byte> predicted)
    {
        for (var i = 0; i < predicted.Length; i++)
            from[i] = unchecked((byte)(from[i] - predicted[i]));
    }
}
