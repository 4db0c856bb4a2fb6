using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Captures;

/// <summary>
/// Files that other programs made and filled with notes (libjpeg-turbo and ExifTool), judged by other programs again: nothing noted is left,
/// the file is whole, and every pixel is the same.
/// </summary>
public sealed class Cleaned_files_for_other_programs : IDisposable
{
    private const string Notes =
        "-Artist='Ida Quill' -Copyright='Ida Quill' -Make=Lanternworks -Model='L 3' -SerialNumber=L3-0071 -Software='Retoucher 4' -DateTimeOriginal='2026:03:01 10:00:00' "
        + "-GPSLatitude=54.1 -GPSLatitudeRef=N -GPSLongitude=8.2 -GPSLongitudeRef=E -UserComment='Under the lamp' -XMP:Creator='Ida Quill' -XMP:City=Brackwater -Comment='Taken at home' ";

    /// <summary>What ExifTool may say of a clean file: about the file as such, and how to show it.</summary>
    private static readonly HashSet<string> Allowed =
    [
        .. ("ExifToolVersion FileName Directory FileSize FileModifyDate FileAccessDate FileInodeChangeDate FilePermissions FileType FileTypeExtension MIMEType ImageWidth ImageHeight "
            + "ImageSize Megapixels EncodingProcess BitsPerSample ColorComponents YCbCrSubSampling JFIFVersion ResolutionUnit XResolution YResolution ExifByteOrder Orientation "
            + "BitDepth ColorType Compression Filter Interlace").Split(' '),
    ];

    private readonly string _folder = Directory.CreateTempSubdirectory("cleaned-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("")]
    [InlineData("-progressive")]
    [InlineData("-grayscale -restart 1")]
    [InlineData("-sample 1x1 -optimize -quality 97")]
    public void A_jpeg_holds_no_notes_and_the_same_pixels(string options)
    {
        External.Command("cjpeg", "libjpeg-turbo-progs");
        External.Command("exiftool", "libimage-exiftool-perl");
        File.WriteAllText(Path.Combine(_folder, "x.ppm"), Ppm(97, 61));
        Shell.Run($"cjpeg {options} -outfile x.jpg x.ppm && cjpeg -outfile thumb.jpg x.ppm && exiftool -q -overwrite_original -Orientation#=6 {Notes} '-ThumbnailImage<=thumb.jpg' -IPTC:By-line='Ida Quill' x.jpg", _folder);
        Assert.Equal(10, Known("x.jpg"));
        Clean("x.jpg");
        Assert.Equal("", Noted("x.jpg"));
        Assert.Equal("Rotate 90 CW", Shell.Run("exiftool -s3 -Orientation clean-x.jpg", _folder).Trim());
        Shell.Run("djpeg -outfile a.ppm x.jpg && djpeg -outfile b.ppm clean-x.jpg && cmp a.ppm b.ppm", _folder);
    }

    [Fact]
    public void A_png_holds_no_notes_and_is_whole()
    {
        External.Command("pngcheck", "pngcheck");
        External.Command("exiftool", "libimage-exiftool-perl");
        File.WriteAllBytes(Path.Combine(_folder, "x.png"), PictureMaker.Png(97, 61, 5));
        Shell.Run($"exiftool -q -overwrite_original {Notes} -PNG:Author='Ida Quill' -PNG:CreationTime='2026:03:01 10:00:00' x.png", _folder);
        Assert.InRange(Known("x.png"), 6, 99);
        Clean("x.png");
        Assert.Equal("", Noted("x.png"));
        Assert.StartsWith("OK: clean-x.png (97x61, 24-bit RGB, non-interlaced", Shell.Run("pngcheck clean-x.png", _folder), StringComparison.Ordinal);
        Assert.Equal(PictureMaker.Png(97, 61, 5), File.ReadAllBytes(Path.Combine(_folder, "clean-x.png")));
    }

    private void Clean(string name) => File.WriteAllBytes(
        Path.Combine(_folder, $"clean-{name}"), PictureCleaner.Clean(name, File.ReadAllBytes(Path.Combine(_folder, name))).Bytes.ToArray());

    /// <summary>How many of the notes a file holds, by name.</summary>
    private int Known(string name) => Shell.Run(
        $"exiftool -s -Artist -Copyright -Make -Model -SerialNumber -Software -GPSPosition -ThumbnailImage -Comment -Creator {name}", _folder)
        .Split('\n', StringSplitOptions.RemoveEmptyEntries).Length;

    private string Noted(string name) => string.Join('\n', Shell.Run($"exiftool -a -U -s -G1 clean-{name}", _folder)
        .Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Where(line => !Allowed.Contains(line.Split(']', ':')[1].Trim())));

    private static string Ppm(int width, int height) =>
        $"P3 {width} {height} 255 {string.Join(' ', Enumerable.Range(0, width * height * 3).Select(i => (i * 31 % 256 ^ (i / 97)) & 255))}";
}
