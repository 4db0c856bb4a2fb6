using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Tests.Loading.Captures;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>
/// Picture files of captures whose chunks and segments somebody changed: cleaning them gives a reason, or a file that cleaning leaves as it is.
/// </summary>
internal static class FuzzPictures
{
    private static readonly string[] Chunks = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "tEXt", "eXIf", "IDOT"];
    private static readonly byte[] Markers = [0xC0, 0xC2, 0xC4, 0xC9, 0xDA, 0xDB, 0xDC, 0xDD, 0xE0, 0xE1, 0xE2, 0xEE, 0xFE];

    public static IEnumerable<FuzzFormat> Formats(int share) => [new("PNG pictures", share, Read, Png), new("JPEG pictures", share, Read, Jpeg)];

    // The first stage is to tell what kind of file it is, and how large it says it is.
    private static bool Read(byte[] input)
    {
        try
        {
            var clean = PictureCleaner.Clean("x", input);
            Assert.InRange(clean.Bytes.Length, 1, input.Length + 64);
            Assert.True(clean.Bytes.Span.SequenceEqual(PictureCleaner.Clean("x", clean.Bytes.Span).Bytes.Span));
            return true;
        }
        catch (DamagedPictureException problem)
        {
            return problem.Message != PictureReasons.Unknown.Message && problem.Message != PictureReasons.NoHeader.Message
                && !problem.Message.Contains("save it smaller", StringComparison.Ordinal);
        }
    }

    private static byte[] Png(int number)
    {
        var random = new Random(number);
        List<(string Type, byte[] Data)> chunks =
        [
            PictureMaker.Header(16, 9, (byte)(1 << random.Next(4)), 3, (byte)random.Next(2)), ("gAMA", [0, 0, 177, 143]), ("PLTE", new byte[6]), ("tRNS", [0]), ("tEXt", "Author\0Ida"u8.ToArray()),
            PictureMaker.Pixels(random.Next(20, 180)), ("IEND", []),
        ];
        for (var changes = random.Next(4); changes > 0; changes--)
            Change<(string Type, byte[] Data)>(chunks, random, () => (Chunks[random.Next(Chunks.Length)], Bytes(random)), chunk => (chunk.Type, Spoilt(chunk.Data, random)));
        return Flipped(PictureMaker.PngOf(chunks), random);
    }

    private static byte[] Jpeg(int number)
    {
        var random = new Random(number);
        List<byte[]> head =
        [
            PictureMaker.Named(0xE0, "JFIF\0", [1, 1, 1, 0, 72, 0, 72, 0, 0]), PictureMaker.Exif((ushort)random.Next(10), random.Next(2) == 0),
            PictureMaker.Named(0xE2, "ICC_PROFILE\0\u0001\u0001", PictureMaker.Profile(7, ("rTRC", "curve..."), ("desc", "words..."))), PictureMaker.Named(0xFE, "Ida"),
        ];
        for (var changes = random.Next(4); changes > 0; changes--)
            Change(head, random, () => PictureMaker.Segment(Markers[random.Next(Markers.Length)], Bytes(random)), segment => Spoilt(segment, random));
        return Flipped(PictureMaker.Jpeg(random.Next(1, 40), random.Next(1, 40), (byte)random.Next(64, 128), head), random);
    }

    private static void Change<T>(List<T> parts, Random random, Func<T> other, Func<T, T> spoilt)
    {
        var at = random.Next(parts.Count);
        switch (random.Next(5))
        {
            case 0:
                parts.Insert(at, other());
                break;
            case 1 when parts.Count > 1:
                parts.RemoveAt(at);
                break;
            case 2:
                parts.Insert(random.Next(parts.Count), parts[at]);
                break;
            case 3:
                (parts[at], parts[0]) = (parts[0], parts[at]);
                break;
            default:
                parts[at] = spoilt(parts[at]);
                break;
        }
    }

    private static byte[] Spoilt(byte[] data, Random random)
    {
        if (data.Length == 0 || random.Next(4) == 0)
            return Bytes(random);
        var spoilt = data.ToArray();
        spoilt[random.Next(spoilt.Length)] = (byte)random.Next(256);
        return spoilt;
    }

    private static byte[] Bytes(Random random)
    {
        var bytes = new byte[random.Next(40)];
        random.NextBytes(bytes);
        return bytes;
    }

    /// <summary>In one file of six a byte is another, or the end is missing.</summary>
    private static byte[] Flipped(byte[] file, Random random)
    {
        if (random.Next(6) > 0)
            return file;
        if (random.Next(3) == 0)
            return file[..random.Next(file.Length)];
        file[random.Next(file.Length)] ^= (byte)(1 << random.Next(8));
        return file;
    }
}
