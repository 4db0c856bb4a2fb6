using System.Globalization;

namespace FeatureMatrix.Loading.Texts;

/// <summary>What values look like, for the end of the sentence "it wants …".</summary>
internal static class Forms
{
    public const string Size = "a size such as '16 MiB' (KiB, MiB or GiB; 1 MiB = 1,048,576 bytes)";

    public const string Clock = "a clock such as '100 MHz' (kHz, MHz or GHz)";

    public const string Refresh = "a rate such as '85 Hz'";

    public const string Rate = "a rate such as '533 MB/s' (MB/s or GB/s; 1 MB = 1,000,000 bytes)";

    public const string Voltage = "a voltage such as 3.3 (above 0, at most 12)";

    public const string Date = "a date such as 2026-02-11";

    public const string Mode = "a mode such as 640x480";

    public const string Money =
        "money such as '18..25 EUR' or '30 EUR', the lower figure first, with a currency of three letters";

    public const string HardwareId =
        @"an ID such as 'PCI\VEN_1234&DEV_5678', optionally with &SUBSYS_ and &REV_, in single quotes";

    public const string Sha256 = "64 hexadecimal digits";

    public const string Version = "a version as its publisher wrote it, without '@'";

    public const string Bits = "a number of 32 bits such as 0x100";
    public const string Channels = "four numbers of bits: red, green, blue and alpha, such as [8, 8, 8, 8]";

    public const string Picture = "the way to a PNG or JPEG file beside this file or in a folder below it, with '/', such as captures/ferry.png";

    public const string Link = "an address that begins with http:// or https://";

    public static string Whole(int least, int most) =>
        string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}");

    public static string Number(double least, double most) =>
        string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}");
}
