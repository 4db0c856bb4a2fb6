using System.Buffers.Binary;
using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Loading.Captures;

/// <summary>
/// PNG files (W3C Recommendation "Portable Network Graphics", 2nd edition). What a decoder needs to show the same pixels stays, byte for
/// byte: IHDR, PLTE, IDAT, IEND, and of the ancillary chunks tRNS, gAMA, cHRM and sRGB. Everything else goes, above all texts, times, Exif,
/// thumbnails and the profile of the monitor (iCCP), and so does whatever follows IEND.
/// </summary>
internal static class PngCleaner
{
    /// <summary>The clean picture.</summary>
    /// <exception cref="DamagedPictureException">The file is no whole PNG, or has too many pixels.</exception>
    public static CapturePicture Clean(string path, ReadOnlySpan<byte> file)
    {
        using var clean = new MemoryStream(file.Length);
        using var pixels = new MemoryStream();
        clean.Write(PngFormat.Signature);
        var header = default(PngHeader);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var last = "";
        for (var at = PngFormat.Signature.Length; last != "IEND";)
        {
            var chunk = Chunk.Read(file, at);
            if (at == PngFormat.Signature.Length)
                header = PngHeader.Read(chunk.Name, chunk.Data);
            if (Keeps(chunk, header, seen, last))
            {
                clean.Write(chunk.Whole);
                if (chunk.Name == "IDAT")
                    pixels.Write(chunk.Data);
            }

            at += chunk.Whole.Length;
            last = chunk.Name;
            seen.Add(last);
        }

        if (!seen.Contains("IDAT") || (header.NeedsPalette && !seen.Contains("PLTE")))
            throw PictureReasons.NoPixels;
        pixels.Position = 0;
        header.CheckPixels(pixels);
        return new CapturePicture(path, PictureFormat.Png, header.Width, header.Height, clean.ToArray());
    }

    /// <summary>Whether a chunk stays; those that do must stand where clause 5.6 of the specification wants them.</summary>
    private static bool Keeps(Chunk chunk, PngHeader header, HashSet<string> seen, string last)
    {
        var isRight = chunk.Name switch
        {
            "IHDR" => last.Length == 0,
            "PLTE" => !seen.Contains("IDAT") && !seen.Contains("tRNS") && header.TakesPalette(chunk.Data.Length),
            "IDAT" => !seen.Contains("IDAT") || last == "IDAT",
            "IEND" => chunk.Data.Length == 0,
            "tRNS" => !seen.Contains("IDAT") && (seen.Contains("PLTE") || !header.NeedsPalette) && header.TakesTransparency(chunk.Data.Length),
            "gAMA" => chunk.Data.Length == 4 && IsEarly(),
            "cHRM" => chunk.Data.Length == 32 && IsEarly(),
            "sRGB" => chunk.Data.Length == 1 && IsEarly(),
            _ => (bool?)null,
        };
        if (isRight is null && char.IsAsciiLetterUpper(chunk.Name[0]))
            throw PictureReasons.StrangeChunk(chunk.Name);
        if (isRight == false || (isRight == true && chunk.Name != "IDAT" && seen.Contains(chunk.Name)))
            throw PictureReasons.Misplaced(chunk.Name, chunk.At);
        return isRight == true;

        bool IsEarly() => !seen.Contains("PLTE") && !seen.Contains("IDAT");
    }

    /// <summary>One chunk of a file.</summary>
    private readonly ref struct Chunk
    {
        private const int Frame = 12;

        private Chunk(string name, int at, ReadOnlySpan<byte> whole)
        {
            Name = name;
            At = at;
            Whole = whole;
        }

        /// <summary>Its four letters.</summary>
        public string Name { get; }

        /// <summary>Where it begins.</summary>
        public int At { get; }

        /// <summary>Length, name, data and checksum.</summary>
        public ReadOnlySpan<byte> Whole { get; }

        public ReadOnlySpan<byte> Data => Whole[8..^4];

        public static Chunk Read(ReadOnlySpan<byte> file, int at)
        {
            var rest = file[at..];
            if (rest.Length < Frame || BinaryPrimitives.ReadUInt32BigEndian(rest) is var length && length > rest.Length - Frame)
                throw PictureReasons.CutOff(file.Length);
            var whole = rest[..((int)length + Frame)];
            var letters = whole.Slice(4, 4);
            foreach (var letter in letters)
            {
                if (!char.IsAsciiLetter((char)letter))
                    throw PictureReasons.NoChunk(at);
            }

            var name = Encoding.ASCII.GetString(letters);
            return BinaryPrimitives.ReadUInt32BigEndian(whole[^4..]) == PngFormat.Checksum(letters, whole[8..^4])
                ? new Chunk(name, at, whole)
                : throw PictureReasons.WrongChecksum(name, at);
        }
    }
}
