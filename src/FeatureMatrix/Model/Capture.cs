namespace FeatureMatrix.Model;

/// <summary>How a capture came from the card into a file.</summary>
public enum CaptureKind
{
    /// <summary>A program read the frame buffer: exact to the pixel, but without what happens behind it, such as a gamma ramp or a video overlay.</summary>
    FrameGrab,

    /// <summary>A capture device recorded the card's output.</summary>
    CaptureDevice,

    /// <summary>A camera was pointed at the screen: colours and sharpness are the camera's and the monitor's too.</summary>
    Camera,
}

/// <summary>The format of a picture file.</summary>
public enum PictureFormat
{
    /// <summary>PNG (W3C Portable Network Graphics).</summary>
    Png,

    /// <summary>JPEG (ITU-T T.81).</summary>
    Jpeg,
}

/// <summary>A picture file without anything that was noted in it about camera, person, place or program; its pixels are those of the file it came from.</summary>
/// <param name="File">The file it came from, for messages.</param>
/// <param name="Format">Its format.</param>
/// <param name="Width">Pixels in a row, as it is shown.</param>
/// <param name="Height">Rows, as it is shown.</param>
/// <param name="Bytes">The file that may be published.</param>
public sealed record CapturePicture(string File, PictureFormat Format, int Width, int Height, ReadOnlyMemory<byte> Bytes);

/// <summary>
/// A picture of one scene of a title, taken on one exact setup. One that shows a loss names its <see cref="Baseline"/>; the two are a pair.
/// It illustrates and decides nothing: what it shows counts for verdicts only where an observation says so too (rule R15).
/// </summary>
public sealed class Capture
{
    /// <summary>Kebab-case and stable.</summary>
    public required string Id { get; init; }

    /// <summary>The graphics path that was watched.</summary>
    public required Renderer Renderer { get; init; }

    /// <summary>The place in the title, in words that are the same for both pictures of a pair.</summary>
    public required string Scene { get; init; }

    /// <summary>Card, driver and operating system.</summary>
    public required Setup Setup { get; init; }

    /// <summary>The physical board; null where not stated.</summary>
    public Specimen? Specimen { get; init; }

    /// <summary>What was said about a wrapper.</summary>
    public required ObservedWrapper Wrapper { get; init; }

    /// <summary>The mode; null where not stated.</summary>
    public Mode? Mode { get; init; }

    /// <summary>The colour depth in bits; null where not stated.</summary>
    public int? Depth { get; init; }

    /// <summary>The rig; null where not stated.</summary>
    public Rig? Rig { get; init; }

    /// <summary>How it was taken.</summary>
    public required CaptureKind Kind { get; init; }

    /// <summary>What is seen to be missing; empty for a baseline.</summary>
    public required IReadOnlyList<Capability> Loses { get; init; }

    /// <summary>The same scene without the loss; null for a baseline.</summary>
    public Capture? Baseline { get; private set; }

    /// <summary>What it shows, for those who do not see it.</summary>
    public required string AltText { get; init; }

    /// <summary>When it was taken.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Remarks, for people.</summary>
    public string Note { get; init; } = "";

    /// <summary>The picture; null where the collection was loaded without looking at pictures.</summary>
    public CapturePicture? Picture { get; init; }

    /// <summary>Who took it.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>Completes the links. Called once, by the loader.</summary>
    public void Link(Capture baseline) => Baseline = baseline;

    /// <inheritdoc/>
    public override string ToString() => Id;
}
