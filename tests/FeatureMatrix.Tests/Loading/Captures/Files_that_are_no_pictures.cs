using FeatureMatrix.Loading.Captures;
using static FeatureMatrix.Tests.Loading.Captures.PictureMaker;

namespace FeatureMatrix.Tests.Loading.Captures;

public sealed class Files_that_are_no_pictures
{
    private static readonly (string, byte[]) Palette = ("PLTE", [0, 0, 0, 255, 255, 255]);
    private static readonly (string, byte[]) End = ("IEND", []);

    /// <summary>Files with the reason why each is refused.</summary>
    private static readonly Dictionary<string, byte[]> Files = new()
    {
        ["it is neither PNG nor JPEG; save it as one of these"] = "GIF89a"u8.ToArray(),
        ["it is no PNG inside: the header chunk IHDR is missing or wrong"] = PngOf(Pixels(7), End),
        ["it is 4097 × 1 pixels, and a side may have 4096 at most; save it smaller"] = PngOf(Header(4097, 1), End),
        ["it is 1 × 4294967295 pixels, and a side may have 4096 at most; save it smaller"] = PngOf(Header(1, -1), End),
        ["it is 0 × 1 pixels, and a side may have 4096 at most; save it smaller"] = PngOf(Header(0, 1), End),
        ["it holds no pixels, or is cut off before them"] = PngOf(Header(1, 1), End),
        ["it is cut off at byte 33"] = PngOf(Header(1, 1)),
        ["its chunk IDAT at byte 33 has a wrong checksum"] = [.. PngOf(Header(1, 1)), 0, 0, 0, 1, .. "IDAT"u8, 1, 2, 3, 4, 5],
        ["what should be a chunk at byte 33 is none"] = [.. PngOf(Header(1, 1)), 0, 0, 0, 0, .. "ID T"u8, 2, 3, 4, 5],
        ["its chunk PLTE at byte 49 has a wrong size or place"] = PngOf(Header(1, 1), ("gAMA", new byte[4]), ("PLTE", new byte[4]), End),
        ["its chunk gAMA at byte 51 has a wrong size or place"] = PngOf(Header(1, 1, 1, 3), Palette, ("gAMA", new byte[4]), End),
        ["its chunk tRNS at byte 33 has a wrong size or place"] = PngOf(Header(1, 1, 1, 3), ("tRNS", new byte[1]), Palette, End),
        ["its chunk sRGB at byte 46 has a wrong size or place"] = PngOf(Header(1, 1), ("sRGB", new byte[1]), ("sRGB", new byte[1]), End),
        ["its chunk IHDR at byte 33 has a wrong size or place"] = PngOf(Header(1, 1), Header(1, 1), End),
        ["its chunk IDAT at byte 77 has a wrong size or place"] = PngOf(Header(1, 1), ("IDAT", new byte[4]), ("tIME", new byte[4]), ("oFFs", []), ("IDAT", new byte[4]), End),
        ["it needs the chunk CgBI, which is not part of PNG"] = PngOf(Header(1, 1), ("CgBI", new byte[4]), End),
        ["its pixels cannot be unpacked to the size it states"] = PngOf(Header(1, 1), Pixels(4, 5), End),
        ["it is 9999 × 15 pixels, and a side may have 4096 at most; save it smaller"] = Jpeg(9999, 15),
        ["it is 15 × 0 pixels, and a side may have 4096 at most; save it smaller"] = Jpeg(15, 0),
        ["what should be a marker at byte 2 is none"] = [0xFF, 0xD8, 0xFF, 0],
        ["its marker FFD8 at byte 4 has no place in a JPEG that browsers show"] = [0xFF, 0xD8, 0xFF, 0xD8],
        ["its marker FFDC at byte 4 has no place in a JPEG that browsers show"] = [0xFF, 0xD8, .. Segment(0xDC, 0, 1), .. Jpeg(8, 8)[2..]],
        ["its segment FFC0 at byte 4 has a wrong size or place"] = [0xFF, 0xD8, .. Segment(0xC0, 8, 0, 8, 0, 8, 3, 1, 0x11, 0), .. Jpeg(8, 8)[2..]],
        ["its segment FFDA at byte 4 has a wrong size or place"] = [0xFF, 0xD8, .. Segment(0xDA, 1, 1, 0, 0, 63, 0), 0xFF, 0xD9],
        ["its segment FFDB at byte 4 has a wrong size or place"] = [0xFF, 0xD8, 0xFF, 0xDB, 0, 1, 0xFF, 0xD9],
        ["it is cut off at byte 8"] = [0xFF, 0xD8, 0xFF, 0xDB, 0, 67, 0, 1],
        ["it is a JPEG of a kind that browsers do not show (lossless, hierarchical, arithmetic or with 12 bits); save it as an ordinary one"] =
            [0xFF, 0xD8, .. Segment(0xC9, 8, 0, 8, 0, 8, 1, 1, 0x11, 0)],
        ["its colours are made for printing; save it in RGB"] = [0xFF, 0xD8, .. Segment(0xC0, [8, 0, 8, 0, 8, 4, .. new byte[12]])],
        ["it ends without a picture in it"] = [0xFF, 0xD8, .. Segment(0xDB, new byte[65]), 0xFF, 0xD9],
    };

    [Fact]
    public void Are_refused_where_their_pixels_ask_for_a_dictionary() => Assert.Equal(
        "its pixels cannot be unpacked to the size it states",
        Assert.Throws<DamagedPictureException>(() => PictureCleaner.Clean("x", PngOf(Header(1, 1), ("IDAT", [0x78, 0xF9, 1, 2, 3, 4, 5, 6, 7, 8]), End))).Message);

    public static TheoryData<string> Reasons => new(Files.Keys);

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Are_refused_with_the_reason(string reason) =>
        Assert.Equal(reason, Assert.Throws<DamagedPictureException>(() => PictureCleaner.Clean("x", Files[reason])).Message);

    [Fact]
    public void Cost_no_more_memory_than_a_row_of_what_they_promise()
    {
        // 4096 × 4096 × 8 bytes would be 128 MiB; they pack to 130 KiB.
        var file = PngOf(Header(4096, 4096, 16, 6), Pixels(4096 * ((4096 * 8) + 1)), End);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal((4096, 4096), PictureCleaner.Clean("x", file) is var picture ? (picture.Width, picture.Height) : default);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 * file.Length);
    }
}
