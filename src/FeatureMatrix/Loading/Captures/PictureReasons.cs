using System.Globalization;

namespace FeatureMatrix.Loading.Captures;

/// <summary>Why a picture file is refused, for the end of the sentence "… cannot be taken for a picture: …". All of them stand here.</summary>
internal static class PictureReasons
{
    public static DamagedPictureException Unknown => new("it is neither PNG nor JPEG; save it as one of these");

    // PNG.
    public static DamagedPictureException NoHeader => new("it is no PNG inside: the header chunk IHDR is missing or wrong");

    public static DamagedPictureException NoPixels => new("it holds no pixels, or is cut off before them");

    public static DamagedPictureException CutOff(long at) => new($"it is cut off at byte {Number(at)}");

    public static DamagedPictureException WrongChecksum(string chunk, long at) => new($"its chunk {chunk} at byte {Number(at)} has a wrong checksum");

    public static DamagedPictureException NoChunk(long at) => new($"what should be a chunk at byte {Number(at)} is none");

    public static DamagedPictureException Misplaced(string chunk, long at) => new($"its chunk {chunk} at byte {Number(at)} has a wrong size or place");

    public static DamagedPictureException StrangeChunk(string chunk) => new($"it needs the chunk {chunk}, which is not part of PNG");

    public static DamagedPictureException WrongPixels => new("its pixels cannot be unpacked to the size it states");

    // JPEG.
    public static DamagedPictureException NoMarker(long at) => new($"what should be a marker at byte {Number(at)} is none");

    public static DamagedPictureException StrangeMarker(byte marker, long at) => new(string.Create(
        CultureInfo.InvariantCulture, $"its marker FF{marker:X2} at byte {at:N0} has no place in a JPEG that browsers show"));

    public static DamagedPictureException WrongSegment(byte marker, long at) => new(string.Create(
        CultureInfo.InvariantCulture, $"its segment FF{marker:X2} at byte {at:N0} has a wrong size or place"));

    public static DamagedPictureException StrangeCoding => new(
        "it is a JPEG of a kind that browsers do not show (lossless, hierarchical, arithmetic or with 12 bits); save it as an ordinary one");

    public static DamagedPictureException PrintColours => new("its colours are made for printing; save it in RGB");

    public static DamagedPictureException NoScan => new("it ends without a picture in it");

    public static DamagedPictureException WrongProfile => new("its colour profile is damaged; save it without one, in sRGB");

    // Both.
    public static DamagedPictureException TooManyPixels(long width, long height) => new(string.Create(
        CultureInfo.InvariantCulture, $"it is {width} × {height} pixels, and a side may have {PictureCleaner.LargestSide} at most; save it smaller"));

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
