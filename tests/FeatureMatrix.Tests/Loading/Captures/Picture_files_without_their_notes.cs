using System.Text;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Model;
using static FeatureMatrix.Tests.Loading.Captures.PictureMaker;

namespace FeatureMatrix.Tests.Loading.Captures;

/// <summary>
/// What may be published of a picture file. PNG by the W3C Recommendation "Portable Network Graphics" (2nd edition), JPEG by ITU-T T.81,
/// Exif by CIPA DC-008, colour profiles by ICC.1:2010.
/// </summary>
public sealed class Picture_files_without_their_notes
{
    private static readonly (string, byte[]) Palette = ("PLTE", [0, 0, 0, 255, 255, 255]);
    private static readonly (string, byte[]) Index = ("IDAT", Pixels(2).Data);
    private static readonly byte[] Jfif = Named(0xE0, "JFIF\0", [1, 1, 1, 0, 72, 0, 72, 0, 0]);
    private static readonly byte[] Adobe = Named(0xEE, "Adobe", [0, 100, 0, 0, 0, 0, 1]);

    [Fact]
    public void Of_a_png_stay_the_pixels_and_what_their_numbers_mean()
    {
        (string, byte[])[] kept = [("gAMA", [0, 0, 177, 143]), ("cHRM", new byte[32]), ("sRGB", [0])];
        byte[] noted =
        [
            .. PngOf(
                Header(8, 1, 1, 3), ("tEXt", "Author\0Ida Quill"u8.ToArray()), kept[0], kept[1], ("tIME", new byte[7]), kept[2], ("iCCP", "The monitor\0\0x"u8.ToArray()),
                ("eXIf", "MM\0*"u8.ToArray()), Palette, ("tRNS", [0]), ("bKGD", [0]), ("hIST", new byte[4]), ("pHYs", new byte[9]), ("acTL", new byte[8]), ("prVt", [1, 2]),
                Index, ("iTXt", "Comment"u8.ToArray()), ("zTXt", "Place"u8.ToArray()), ("IEND", [])),
            .. "What follows the end"u8,
        ];

        Same(new CapturePicture("x.png", PictureFormat.Png, 8, 1, PngOf(Header(8, 1, 1, 3), kept[0], kept[1], kept[2], Palette, ("tRNS", [0]), Index, ("IEND", []))), noted);
    }

    [Fact]
    public void A_png_without_notes_stays_as_it_is() => Same(new CapturePicture("x.png", PictureFormat.Png, 20, 15, Png(20, 15)), Png(20, 15));

    [Fact]
    public void Of_a_jpeg_stay_tables_frame_and_scan()
    {
        var noted = Jpeg(20, 15, 70,
        [
            Named(0xE0, "JFIF\0", [1, 1, 1, 0, 72, 0, 72, 1, 1, 9, 9, 9]), Named(0xE0, "JFXX\0", [0x13, 1, 1, 5, 5, 5]), Exif(1), Named(0xE1, "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta/>"),
            Named(0xE2, "MPF\0", new byte[20]), Named(0xED, "Photoshop 3.0\0By-line"), Adobe, Named(0xEE, "Adobe", new byte[7]), Named(0xFE, "Taken by Ida Quill"),
            Named(0xEF, "Serial 123"),
        ]);

        Same(new CapturePicture("x.jpg", PictureFormat.Jpeg, 20, 15, Jpeg(20, 15, 70, [Jfif, Adobe])), [.. noted, .. Jpeg(8, 8)]);
    }

    [Theory]
    [InlineData(2, true, 20, 15)]
    [InlineData(3, false, 20, 15)]
    [InlineData(6, true, 15, 20)]
    [InlineData(8, false, 15, 20)]
    public void A_camera_held_on_its_side_leaves_its_orientation_and_no_more(int orientation, bool isBig, int width, int height)
    {
        byte[] only = [(byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0];
        Same(
            new CapturePicture("x.jpg", PictureFormat.Jpeg, width, height, Jpeg(20, 15, 64, [Jfif, Named(0xE1, "Exif\0\0", only)])),
            Jpeg(20, 15, 64, [Exif((ushort)orientation, isBig), Exif(5), Jfif]));
    }

    [Theory]
    [InlineData("4D4D002A00000008000101120003")]
    [InlineData("4D4D002A7FFFFFFF")]
    [InlineData("4D4D002A000000080001011200030000000100090000")]
    [InlineData("58580000")]
    [InlineData("")]
    public void An_orientation_that_cannot_be_read_is_upright(string tiff) =>
        Same(new CapturePicture("x.jpg", PictureFormat.Jpeg, 20, 15, Jpeg(20, 15)), Jpeg(20, 15, 64, [Named(0xE1, "Exif\0\0", Convert.FromHexString(tiff))]));

    [Fact]
    public void Of_a_colour_profile_stay_the_colours()
    {
        var whole = Profile(0x41, ("desc", "Ida's monitor..."), ("rTRC", "curve..."), ("gTRC", "curve..."), ("cprt", "Ida Quill..."), ("mmod", "serial.."), ("wtpt", "white..."));
        var colours = Profile(0x41, ("rTRC", "curve..."), ("gTRC", "curve..."), ("wtpt", "white..."));
        foreach (var range in (Range[])[4..8, 24..36, 40..44, 48..56, 80..100])
            colours.AsSpan(range).Clear();

        var profile = JpegProfile(PictureCleaner.Clean("x.jpg", Jpeg(8, 8, 64, [Named(0xE2, "ICC_PROFILE\0\u0002\u0002", [.. whole.AsSpan(200)]), Named(0xE2, "ICC_PROFILE\0\u0001\u0002", [.. whole.AsSpan(0, 200)])])));
        Assert.Equal(Convert.ToHexString(colours), Convert.ToHexString(profile));
    }

    [Theory]
    [InlineData("\u0001\u0002", "")]
    [InlineData("\u0000\u0001", "")]
    [InlineData("\u0001\u0001", "too short")]
    public void A_damaged_colour_profile_is_not_taken(string place, string data) =>
        Refused("its colour profile is damaged; save it without one, in sRGB", Jpeg(8, 8, 64, [Named(0xE2, "ICC_PROFILE\0" + place + data)]));

    [Theory]
    [InlineData(0, 1), InlineData(0, 2), InlineData(0, 4), InlineData(0, 8), InlineData(0, 16), InlineData(2, 8), InlineData(2, 16)]
    [InlineData(3, 1), InlineData(3, 4), InlineData(3, 8), InlineData(4, 8), InlineData(4, 16), InlineData(6, 8), InlineData(6, 16)]
    public void Every_kind_of_png_is_taken_whole_and_not_with_a_byte_less_or_more(byte colourType, byte depth)
    {
        foreach (var (width, height) in ((int, int)[])[(1, 1), (2, 3), (5, 9), (13, 11), (64, 40)])
        {
            foreach (var interlace in (byte[])[0, 1])
            {
                var bytes = RawBytes(width, height, depth * colourType switch { 2 => 3, 4 => 2, 6 => 4, _ => 1 }, interlace == 1);
                var file = With(bytes);
                Same(new CapturePicture("x.png", PictureFormat.Png, width, height, file), file);
                Refused("its pixels cannot be unpacked to the size it states", With(bytes - 1));
                Refused("its pixels cannot be unpacked to the size it states", With(bytes + 1));

                byte[] With(int count) => PngOf(
                    [Header(width, height, depth, colourType, interlace), .. colourType == 3 ? [Palette] : Array.Empty<(string, byte[])>(), Pixels(count), ("IEND", [])]);
            }
        }
    }

    [Fact]
    public void A_file_cut_off_anywhere_is_not_taken()
    {
        foreach (var file in (byte[][])[Png(20, 15), Jpeg(20, 15, 64, [Jfif, Exif(6)])])
        {
            for (var length = 0; length < file.Length; length++)
                Assert.Throws<DamagedPictureException>(() => PictureCleaner.Clean("x", file.AsSpan(0, length)));
        }
    }

    [Fact]
    public void A_png_with_a_wrong_bit_is_not_taken()
    {
        var file = Png(6, 5);
        for (var bit = 0; bit < file.Length * 8; bit++)
        {
            var damaged = file.ToArray();
            damaged[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Throws<DamagedPictureException>(() => PictureCleaner.Clean("x.png", damaged));
        }
    }

    /// <summary>Rows with a byte of filter each, counted pixel by pixel from the drawing of the seven passes in clause 8.2.</summary>
    private static int RawBytes(int width, int height, int bits, bool isInterlaced)
    {
        string[] passes = ["16462646", "77777777", "56565656", "77777777", "36463646", "77777777", "56565656", "77777777"];
        return Enumerable.Range(0, height).Sum(y => Enumerable.Range(0, width)
            .GroupBy(x => isInterlaced ? passes[y % 8][x % 8] : '1').Sum(pass => 1 + (((pass.Count() * bits) + 7) / 8)));
    }

    private static byte[] JpegProfile(CapturePicture picture)
    {
        var bytes = picture.Bytes.ToArray();
        var at = bytes.AsSpan().IndexOf(Encoding.ASCII.GetBytes("ICC_PROFILE\0\u0001\u0001"));
        return bytes[(at + 14)..(at - 2 + (bytes[at - 2] << 8) + bytes[at - 1])];
    }

    private static void Same(CapturePicture expected, byte[] file)
    {
        var before = file.ToArray();
        var clean = PictureCleaner.Clean(expected.File, file);
        Assert.Equal(expected with { Bytes = default }, clean with { Bytes = default });
        Assert.Equal(Convert.ToHexString(expected.Bytes.Span), Convert.ToHexString(clean.Bytes.Span));
        Assert.Equal(before, file);
    }

    private static void Refused(string reason, byte[] file) => Assert.Equal(reason, Assert.Throws<DamagedPictureException>(() => PictureCleaner.Clean("x", file)).Message);
}
