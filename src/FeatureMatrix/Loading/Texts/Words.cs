using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Texts;

/// <summary>The fixed words of the format.</summary>
internal static class Words
{
    public static readonly IReadOnlyList<(string, bool)> YesNo = [("yes", true), ("no", false), ("true", true), ("false", false)];

    public static readonly IReadOnlyList<(string, Support)> Supports =
    [
        ("yes", Support.Yes), ("no", Support.No), ("broken", Support.Broken), ("emulated", Support.Emulated), ("unknown", Support.Unknown),
    ];

    public static readonly IReadOnlyList<(string, Support)> YesNoUnknown =
        [("yes", Support.Yes), ("no", Support.No), ("unknown", Support.Unknown)];

    public static readonly IReadOnlyList<(string, Support)> SupportsSeen =
        [("yes", Support.Yes), ("no", Support.No), ("broken", Support.Broken), ("emulated", Support.Emulated)];

    public static readonly IReadOnlyList<(string, Reach)> Reaches = [("up-to", Reach.UpTo), ("at-least", Reach.AtLeast), ("at", Reach.At)];

    public static readonly IReadOnlyList<(string, Grade)> Grades =
    [
        ("measured", Grade.Measured), ("documented", Grade.Documented), ("inferred", Grade.Inferred), ("hearsay", Grade.Hearsay),
    ];

    public static readonly IReadOnlyList<(string, Strength)> Strengths =
    [
        ("must", Strength.Must), ("severe", Strength.Severe), ("cosmetic", Strength.Cosmetic), ("ungraded", Strength.Ungraded),
        ("bonus", Strength.Bonus), ("unknown", Strength.Unknown),
    ];

    /// <summary>The worst loss that a must-have may show; <c>none</c> means none at all.</summary>
    public static readonly IReadOnlyList<(string, Strength)> Tolerances =
        [("none", Strength.Bonus), ("cosmetic", Strength.Cosmetic), ("severe", Strength.Severe)];

    public static readonly IReadOnlyList<(string, DriverKind)> DriverKinds =
        [("package", DriverKind.Package), ("vbe-extension", DriverKind.VbeExtension)];

    public static readonly IReadOnlyList<(string, OsLimitKind)> LimitKinds =
        [("memory", OsLimitKind.Memory), ("processors", OsLimitKind.Processors), ("disk", OsLimitKind.Disk)];

    public static readonly IReadOnlyList<(string, TextureFormat)> TextureFormats =
    [
        ("16-bit", TextureFormat.Bits16), ("8-bit-palette", TextureFormat.Paletted8), ("32-bit", TextureFormat.Bits32),
        ("compressed-4", TextureFormat.Compressed4), ("compressed-8", TextureFormat.Compressed8),
    ];

    public static readonly IReadOnlyList<(string, CaptureKind)> CaptureKinds =
        [("frame-grab", CaptureKind.FrameGrab), ("capture-device", CaptureKind.CaptureDevice), ("camera", CaptureKind.Camera)];

    public static readonly IReadOnlyList<(string, TimingHazardKind)> HazardKinds =
    [
        ("loop-calibration", TimingHazardKind.LoopCalibration), ("work-per-frame", TimingHazardKind.WorkPerFrame),
        ("timer-underflow", TimingHazardKind.TimerUnderflow), ("unsynchronised-cores", TimingHazardKind.UnsynchronisedCores),
    ];

    /// <summary>Whether a hazard follows the frame rate.</summary>
    public static readonly IReadOnlyList<(string, bool)> HazardCauses = [("processor", false), ("frame-rate", true)];

    /// <summary>The value of a word; null and a fault that lists the legal ones where it is none of them.</summary>
    public static T? Read<T>(Scalar word, string label, IReadOnlyList<(string Word, T Value)> legal, FaultList faults)
        where T : struct
    {
        var text = word.Text.Trim();
        foreach (var (candidate, value) in legal)
        {
            if (candidate == text)
                return value;
        }

        faults.Add(FaultTexts.NotOneOf(word.Origin, label, text, legal.Select(l => l.Word)));
        return null;
    }
}
