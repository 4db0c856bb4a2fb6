using System.Buffers.Binary;
using System.IO.Compression;

namespace FeatureMatrix.Loading.Captures;

/// <summary>What the chunk IHDR of a PNG file states (clause 11.2.2 of the specification), and what follows for its other chunks.</summary>
internal readonly record struct PngHeader(int Width, int Height, int BitDepth, int ColourType, bool IsInterlaced)
{
    private const int Grey = 0;
    private const int Colour = 2;
    private const int Indexed = 3;
    private const int GreyWithAlpha = 4;
    private const int ColourWithAlpha = 6;

    /// <summary>The seven passes of an interlaced picture (clause 8.2): first column, first row, step across, step down.</summary>
    private static readonly (int X, int Y, int Across, int Down)[] Passes =
        [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)];

    /// <summary>True where pixels are numbers of a palette.</summary>
    public bool NeedsPalette => ColourType == Indexed;

    private int Channels => ColourType switch
    {
        Grey or Indexed => 1,
        GreyWithAlpha => 2,
        Colour => 3,
        _ => 4,
    };

    /// <summary>Reads the first chunk of a file.</summary>
    public static PngHeader Read(string name, ReadOnlySpan<byte> data)
    {
        if (name != "IHDR" || data.Length != 13 || data[10] != 0 || data[11] != 0 || data[12] > 1 || !IsLegal(data[9], data[8]))
            throw PictureReasons.NoHeader;
        var (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(data), BinaryPrimitives.ReadUInt32BigEndian(data[4..]));
        PictureCleaner.MustFit(width, height);
        return new PngHeader((int)width, (int)height, data[8], data[9], data[12] == 1);
    }

    /// <summary>Whether a palette may have so many bytes.</summary>
    public bool TakesPalette(int bytes) => ColourType is Colour or Indexed or ColourWithAlpha && bytes % 3 == 0 && bytes > 0
        && bytes / 3 <= (NeedsPalette ? 1 << BitDepth : 256);

    /// <summary>Whether the transparency of whole colours may have so many bytes.</summary>
    public bool TakesTransparency(int bytes) => ColourType switch
    {
        Grey => bytes == 2,
        Colour => bytes == 6,
        Indexed => bytes > 0 && bytes <= 1 << BitDepth,
        _ => false,
    };

    /// <summary>Unpacks the pixels a row at a time, without keeping them: every row is there, begins with a legal filter, and nothing follows the last.</summary>
    public void CheckPixels(Stream packed)
    {
        using var unpacked = new ZLibStream(packed, CompressionMode.Decompress);
        var row = new byte[RowBytes(Width)];
        try
        {
            foreach (var (x, y, across, down) in IsInterlaced ? Passes : [(0, 0, 1, 1)])
            {
                var columns = (Width - x + across - 1) / across;
                for (var line = y; line < Height && columns > 0; line += down)
                {
                    unpacked.ReadExactly(row, 0, RowBytes(columns));
                    if (row[0] > 4)
                        throw PictureReasons.WrongPixels;
                }
            }

            if (unpacked.Read(row, 0, 1) > 0)
                throw PictureReasons.WrongPixels;
        }
        // What ends too early, or asks for a dictionary, which PNG has not, is an IOException.
        catch (Exception problem) when (problem is InvalidDataException or IOException)
        {
            throw PictureReasons.WrongPixels;
        }
    }

    private static bool IsLegal(byte colourType, byte depth) => colourType switch
    {
        Grey => depth is 1 or 2 or 4 or 8 or 16,
        Indexed => depth is 1 or 2 or 4 or 8,
        Colour or GreyWithAlpha or ColourWithAlpha => depth is 8 or 16,
        _ => false,
    };

    private int RowBytes(int columns) => 1 + (((columns * Channels * BitDepth) + 7) / 8);
}
