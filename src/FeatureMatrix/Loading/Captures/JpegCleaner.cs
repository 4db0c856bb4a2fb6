using System.Buffers.Binary;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Captures;

/// <summary>
/// JPEG files (ITU-T T.81, annex B). Tables, frame and scans stay, byte for byte. Of the application segments four say how the picture is
/// shown, and these are written anew with that and nothing else: JFIF (without its thumbnail), the orientation of Exif, the colour
/// profile, and Adobe's colour transform. All others go, with comments and whatever follows the end mark.
/// </summary>
internal static class JpegCleaner
{
    private const byte StartOfImage = 0xD8;
    private const byte EndOfImage = 0xD9;
    private const byte StartOfScan = 0xDA;

    /// <summary>The first bytes of every JPEG file.</summary>
    public static ReadOnlySpan<byte> Start => [0xFF, StartOfImage, 0xFF];

    /// <summary>The clean picture.</summary>
    /// <exception cref="DamagedPictureException">The file is no whole JPEG that browsers show, or has too many pixels.</exception>
    public static CapturePicture Clean(string path, ReadOnlySpan<byte> file)
    {
        using var body = new MemoryStream(file.Length);
        var head = new JpegHead();
        (int Width, int Height)? size = null;
        var hasScan = false;
        for (var at = 2; ;)
        {
            var (marker, from) = Marker(file, at);
            if (marker == EndOfImage)
                break;
            var segment = Segment(file, marker, from);
            at = from + segment.Length;
            switch (marker)
            {
                case 0xC0 or 0xC1 or 0xC2:
                    size = size is null ? SizeOf(segment, marker, from) : throw PictureReasons.WrongSegment(marker, from);
                    Keep(body, marker, segment);
                    break;
                case 0xC4 or 0xDB or 0xDD:
                    Keep(body, marker, segment);
                    break;
                case StartOfScan:
                    if (size is null)
                        throw PictureReasons.WrongSegment(marker, from);
                    Keep(body, marker, segment);
                    var coded = Coded(file[at..]);
                    body.Write(coded);
                    at += coded.Length;
                    hasScan = true;
                    break;
                case >= 0xE0 and <= 0xEF or 0xFE:
                    head.Note(marker, segment[2..]);
                    break;
                case >= 0xC3 and <= 0xCF:
                    throw PictureReasons.StrangeCoding;
                default:
                    throw PictureReasons.StrangeMarker(marker, from);
            }
        }

        if (size is not var (width, height) || !hasScan)
            throw PictureReasons.NoScan;
        using var clean = new MemoryStream(file.Length);
        clean.Write([0xFF, StartOfImage]);
        head.WriteTo(clean);
        body.WriteTo(clean);
        clean.Write([0xFF, EndOfImage]);
        return head.IsTurned
            ? new CapturePicture(path, PictureFormat.Jpeg, height, width, clean.ToArray())
            : new CapturePicture(path, PictureFormat.Jpeg, width, height, clean.ToArray());
    }

    /// <summary>Writes a segment with its marker; the segment begins with its length.</summary>
    public static void Keep(Stream target, byte marker, ReadOnlySpan<byte> segment)
    {
        target.Write([0xFF, marker]);
        target.Write(segment);
    }

    /// <summary>The marker at a place, before which bytes FF may stand, and where it ends.</summary>
    private static (byte Marker, int End) Marker(ReadOnlySpan<byte> file, int at)
    {
        var next = at;
        while (next < file.Length && file[next] == 0xFF)
            next++;
        if (next >= file.Length)
            throw PictureReasons.CutOff(file.Length);
        return next > at && file[next] != 0 ? (file[next], next + 1) : throw PictureReasons.NoMarker(at);
    }

    /// <summary>The segment of a marker: a length of two bytes, which counts itself, and the rest.</summary>
    private static ReadOnlySpan<byte> Segment(ReadOnlySpan<byte> file, byte marker, int at)
    {
        if (marker is 0x01 or (>= 0xD0 and <= StartOfImage))
            throw PictureReasons.StrangeMarker(marker, at);
        if (at + 2 > file.Length || BinaryPrimitives.ReadUInt16BigEndian(file[at..]) is var length && at + length > file.Length)
            throw PictureReasons.CutOff(file.Length);
        return length >= 2 ? file.Slice(at, length) : throw PictureReasons.WrongSegment(marker, at);
    }

    /// <summary>Width and height of a frame (T.81, B.2.2) with 8 bits a sample, in grey or colours of light.</summary>
    private static (int Width, int Height) SizeOf(ReadOnlySpan<byte> segment, byte marker, int at)
    {
        if (segment.Length < 8 || segment.Length != 8 + (3 * segment[7]))
            throw PictureReasons.WrongSegment(marker, at);
        if (segment[2] != 8)
            throw PictureReasons.StrangeCoding;
        if (segment[7] is not (1 or 3))
            throw PictureReasons.PrintColours;
        var (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(segment[3..]), BinaryPrimitives.ReadUInt16BigEndian(segment[5..]));
        PictureCleaner.MustFit(width, height);
        return (width, height);
    }

    /// <summary>The coded data of a scan: up to the next FF that neither a stuffed 00 nor a restart marker follows (T.81, B.1.1.5).</summary>
    private static ReadOnlySpan<byte> Coded(ReadOnlySpan<byte> rest)
    {
        for (var at = 0; ;)
        {
            var step = rest[at..].IndexOf((byte)0xFF);
            if (step < 0 || at + step + 1 >= rest.Length)
                throw PictureReasons.CutOff(rest.Length);
            at += step;
            if (rest[at + 1] is not (0 or (>= 0xD0 and <= 0xD7)))
                return rest[..at];
            at += 2;
        }
    }
}
