using System.Globalization;
using System.Numerics;
using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>The lists of a dump that an interface answers for item by item: surface formats and numbers of samples.</summary>
internal static class Direct3DFormats
{
    /// <summary>As the field of a sign: depth and stencil formats that can be drawn with.</summary>
    public const string Depth = "depth-formats";

    /// <summary>As the field of a sign: numbers of samples a pixel, which are the levels themselves.</summary>
    public const string Samples = "samples";

    private const string Suffix = "formats";
    private const uint AlphaPixels = 0x1; // DDPF_ALPHAPIXELS, ddraw.h

    /// <summary>Whether a sign's field is such a list and no member of a structure.</summary>
    public static bool IsList(string field) => field.EndsWith(Suffix, StringComparison.Ordinal) || field == Samples;

    /// <summary>Whether the format is accepted; null where nobody asked.</summary>
    public static bool? Accepts(Direct3DSign sign, DumpSection section) =>
        sign.Generation == 7 ? HasTexture(sign, section) : AcceptsUnderAnyDisplay(sign, section);

    /// <summary>Whether a texture format of Direct3D 7 is the one that a sign means.</summary>
    public static bool Matches(Direct3DSign sign, PixelFormatEntry format)
    {
        if (!sign.Constant.StartsWith("DDPF_", StringComparison.Ordinal))
            return format.FourCc == sign.Value;
        if ((format.Flags & sign.Value) == 0)
            return false;
        var alpha = (format.Flags & AlphaPixels) == 0 ? 0 : format.Mask4;
        return sign.Channels.Count == 0
            || sign.Channels.SequenceEqual(new[] { format.Mask1, format.Mask2, format.Mask3, alpha }.Select(BitOperations.PopCount));
    }

    /// <summary>
    /// Depth or stencil bits of Direct3D 7, whose list is whole. The format's bit count includes the stencil bits, and its
    /// mask, where the driver gives one, says which are left for depth. Source: Microsoft's reference of DDPIXELFORMAT
    /// (dwStencilBitDepth: the number of z-bits is dwZBufferBitDepth minus dwStencilBitDepth).
    /// </summary>
    public static Claim? DepthBits(Direct3DSign sign, Feature feature, DumpSection section)
    {
        var formats = section.Entries.OfType<PixelFormatEntry>().Where(format => format.Use == "depth").ToList();
        if (formats.Count == 0)
            return null;
        var isStencil = sign.Constant == "DDPF_STENCILBUFFER";
        var bits = formats.Where(format => (format.Flags & sign.Value) != 0)
            .Select(format => isStencil ? format.Mask1 : DepthOf(format)).DefaultIfEmpty(0u).Max();
        return Ladder.UpTo(feature, bits, string.Create(CultureInfo.InvariantCulture, $"{sign.Constant} with {bits} bits"));
    }

    /// <summary>The highest number that any format was accepted with; no for higher ones that were asked and always refused.</summary>
    public static Claim? SamplesOf(Feature feature, DumpSection section)
    {
        var asked = section.Entries.OfType<SamplesEntry>().ToList();
        if (asked.Count == 0)
            return null;
        var most = asked.SelectMany(entry => entry.Yes).DefaultIfEmpty(0u).Max();
        var yes = Ladder.StepOf(feature, most);
        var refused = asked.SelectMany(entry => entry.No).ToHashSet();
        var no = feature.Steps + 1;
        while (no > yes + 1 && refused.Any(number => Ladder.StepOf(feature, number) == no - 1))
            no--;
        return new Claim(yes, no, new([string.Create(CultureInfo.InvariantCulture, $"{Math.Max(most, 1)} samples a pixel")]));
    }

    private static uint DepthOf(PixelFormatEntry format) => format.Mask2 != 0
        ? (uint)BitOperations.PopCount(format.Mask2)
        : format.Bits - Math.Min(format.Bits, format.Mask1);

    /// <summary>A list of Direct3D 7 is whole: with any format given, one that is not there is refused.</summary>
    private static bool? HasTexture(Direct3DSign sign, DumpSection section)
    {
        var formats = section.Entries.OfType<PixelFormatEntry>().Where(format => format.Use == "texture").ToList();
        return formats.Count == 0 ? null : formats.Exists(format => Matches(sign, format));
    }

    /// <summary>Accepted under any display format; refused only where it was asked and never accepted.</summary>
    private static bool? AcceptsUnderAnyDisplay(Direct3DSign sign, DumpSection section)
    {
        var use = sign.Field == Suffix ? "texture" : sign.Field[..^(Suffix.Length + 1)];
        var asked = section.Entries.OfType<FormatsEntry>()
            .Where(entry => entry.Use == use && (entry.Yes.Contains(sign.Value) || entry.No.Contains(sign.Value))).ToList();
        return asked.Count == 0 ? null : asked.Exists(entry => entry.Yes.Contains(sign.Value));
    }
}
