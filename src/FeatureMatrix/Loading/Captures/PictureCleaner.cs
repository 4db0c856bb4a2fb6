using FeatureMatrix.Model;
using FeatureMatrix.Pictures;

namespace FeatureMatrix.Loading.Captures;

/// <summary>
/// Turns a picture file into one that may be published: the same pixels without what cameras and programs note beside them. Nothing is
/// decoded and encoded anew, so nothing of the picture is lost.
/// </summary>
internal static class PictureCleaner
{
    /// <summary>Largest file of a picture, in bytes.</summary>
    public const int LargestFile = 8 * 1024 * 1024;

    /// <summary>Most bytes of all pictures of a collection.</summary>
    public const long MostBytes = 128L * 1024 * 1024;

    /// <summary>Longest side in pixels: four times what the cards of the time show.</summary>
    public const int LargestSide = 4096;

    /// <summary>The clean picture.</summary>
    /// <exception cref="DamagedPictureException">The file is no whole PNG or JPEG, or has too many pixels.</exception>
    public static CapturePicture Clean(string path, ReadOnlySpan<byte> file)
    {
        if (file.StartsWith(PngFormat.Signature))
            return PngCleaner.Clean(path, file);
        return file.StartsWith(JpegCleaner.Start) ? JpegCleaner.Clean(path, file) : throw PictureReasons.Unknown;
    }

    /// <summary>Checks a size in pixels.</summary>
    /// <exception cref="DamagedPictureException">A side has no pixels or too many.</exception>
    public static void MustFit(long width, long height)
    {
        if (width is < 1 or > LargestSide || height is < 1 or > LargestSide)
            throw PictureReasons.TooManyPixels(width, height);
    }
}
