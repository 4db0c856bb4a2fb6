using System.Buffers.Binary;
using System.Text;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Browser;

/// <summary>
/// A photograph with a colour profile, taken with the camera on its side: the browser shows what is published of it just as it shows the
/// file as it was. Made by libjpeg-turbo and ExifTool; the profile after ICC.1:2010.
/// </summary>
public sealed class Cleaned_photographs(Site site) : IClassFixture<Site>
{
    [Fact]
    public async Task Look_as_they_did()
    {
        External.Command("cjpeg", "libjpeg-turbo-progs");
        External.Command("exiftool", "libimage-exiftool-perl");
        var folder = Directory.CreateDirectory(Path.Combine(site.Folder, "photographs")).FullName;
        File.WriteAllText(Path.Combine(folder, "x.ppm"), $"P3 64 48 255 {string.Join(' ', Enumerable.Range(0, 64 * 48).Select(i => $"{i % 64 * 4} {i / 64 * 5} {255 - (i % 64 * 3)}"))}");
        File.WriteAllBytes(Path.Combine(folder, "x.icc"), Profile());
        Shell.Run("cjpeg -quality 95 -outfile plain.jpg x.ppm && exiftool -q -overwrite_original -Orientation#=6 plain.jpg && exiftool -q -Artist=Ida '-ICC_Profile<=x.icc' -o noted.jpg plain.jpg", folder);
        var clean = PictureCleaner.Clean("noted.jpg", File.ReadAllBytes(Path.Combine(folder, "noted.jpg")));
        Assert.Equal((48, 64), (clean.Width, clean.Height));
        File.WriteAllBytes(Path.Combine(folder, "clean.jpg"), clean.Bytes.ToArray());
        Assert.DoesNotContain("Lanternworks", Encoding.Latin1.GetString(clean.Bytes.Span), StringComparison.Ordinal);

        var shown = new Dictionary<string, string>();
        foreach (var name in (string[])["plain", "noted", "clean"])
        {
            File.WriteAllText(Path.Combine(folder, $"{name}.html"), $"<!doctype html><title>{name}</title><img src=\"{name}.jpg\" alt=\"\">");
            var page = await site.Open($"photographs/{name}.html");
            shown[name] = Convert.ToHexString(await page.Locator("img").ScreenshotAsync());
            await page.Context.CloseAsync();
        }

        // The plain one has the orientation and no profile: if it looked the same, the test would not see a profile lost.
        Assert.Equal(shown["noted"], shown["clean"]);
        Assert.NotEqual(shown["plain"], shown["clean"]);
        Assert.Empty(site.Complaints);
    }

    /// <summary>A display profile with primaries far from sRGB's, and words about its maker.</summary>
    private static byte[] Profile()
    {
        (string Name, byte[] Data)[] tags =
        [
            ("desc", [.. "desc\0\0\0\0"u8, 0, 0, 0, 13, .. "Lanternworks\0"u8, .. new byte[79]]), ("cprt", "text\0\0\0\0Lanternworks\0\0\0\0"u8.ToArray()),
            ("wtpt", Xyz(0.9642, 1, 0.8249)), ("rXYZ", Xyz(0.15, 0.06, 0.74)), ("gXYZ", Xyz(0.2, 0.63, 0.06)), ("bXYZ", Xyz(0.61, 0.31, 0.02)),
            ("rTRC", Gamma()), ("gTRC", Gamma()), ("bTRC", Gamma()),
        ];
        var profile = new MemoryStream();
        profile.Write(new byte[128]);
        Number(tags.Length);
        var at = 132 + (tags.Length * 12);
        foreach (var (name, data) in tags)
        {
            profile.Write(Encoding.ASCII.GetBytes(name));
            Number(at);
            Number(data.Length);
            at += data.Length;
        }

        foreach (var (_, data) in tags)
            profile.Write(data);
        var bytes = profile.ToArray();
        BinaryPrimitives.WriteInt32BigEndian(bytes, bytes.Length);
        "\u0002\u0010\0\0mntrRGB XYZ "u8.CopyTo(bytes.AsSpan(8));
        "acspMSFT"u8.CopyTo(bytes.AsSpan(36));
        Xyz(0.9642, 1, 0.8249).AsSpan(8).CopyTo(bytes.AsSpan(68));
        return bytes;

        void Number(int number)
        {
            Span<byte> four = stackalloc byte[4];
            BinaryPrimitives.WriteInt32BigEndian(four, number);
            profile.Write(four);
        }
    }

    private static byte[] Gamma() => [.. "curv\0\0\0\0"u8, 0, 0, 0, 1, 2, 0x33, 0, 0];

    private static byte[] Xyz(params double[] values)
    {
        var bytes = new byte[20];
        "XYZ "u8.CopyTo(bytes);
        for (var i = 0; i < 3; i++)
            BinaryPrimitives.WriteInt32BigEndian(bytes.AsSpan(8 + (4 * i)), (int)(values[i] * 65536));
        return bytes;
    }
}
