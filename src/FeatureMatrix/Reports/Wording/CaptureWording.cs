using System.Globalization;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;

namespace FeatureMatrix.Reports.Wording;

/// <summary>What a capture shows, and how it came about.</summary>
internal static class CaptureWording
{
    /// <summary>The heading of the picture that a loss is held against.</summary>
    public static string With(Capture capture) => $"With {List(capture.Loses)}: {On(capture.Baseline!, capture)}";

    /// <summary>The heading of the picture with the loss.</summary>
    public static string Without(Capture capture) => $"Without {List(capture.Loses, "or")}: {On(capture, capture.Baseline!)}";

    /// <summary>The setup, without the card that stands in the heading.</summary>
    public static string Setup(Capture capture)
    {
        var parts = new List<string>
        {
            Names.Of(capture.Setup),
            Names.Of(capture.Renderer),
            capture.Wrapper switch
            {
                ObservedWrapper.NotStated => "wrapper not stated",
                ObservedWrapper.None => "no wrapper",
                ObservedWrapper.Version version => Names.Of(version.Used),
                _ => throw new System.Diagnostics.UnreachableException(),
            },
        };
        if (capture.Mode is { } mode)
            parts.Add(mode.ToString());
        if (capture.Depth is { } depth)
            parts.Add($"{depth.ToString(CultureInfo.InvariantCulture)} bit");
        if (capture.Rig is { } rig)
            parts.Add(Names.InMiddle(rig.Name));
        return string.Join(", ", parts);
    }

    /// <summary>How it was taken, when and by whom; how good that word is where nobody measured.</summary>
    public static string Taken(Capture capture)
    {
        var how = capture.Kind switch
        {
            CaptureKind.FrameGrab => "Frame grab",
            CaptureKind.CaptureDevice => "Recorded from the output by a capture device",
            CaptureKind.Camera => "Photographed from the screen",
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        var who = capture.Evidence.Source is { } source ? $"by {Names.InMiddle(source.Whole)}" : "nobody says by whom";
        var grade = capture.Evidence.Grade == Grade.Measured ? "" : $" ({Names.Of(capture.Evidence.Grade)})";
        return $"{how}, {capture.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, {who}{grade}";
    }

    /// <summary>Where records and picture part; empty where they do not.</summary>
    public static string Against(CaptureCheck check)
    {
        if (check.IsFine)
            return "";
        var records = check.DoesNotRun ? "does not run" : check.Kept.Count > 0 ? $"keeps {List(check.Kept)}" : $"loses {List(check.Lost)}";
        return $"By the records this route {records}. One of the two deserves another look; a picture alone changes no verdict.";
    }

    /// <summary>The word that leads to the picture itself.</summary>
    public static string Size(CapturePicture picture) => string.Create(CultureInfo.InvariantCulture, $"Full size: {picture.Width} × {picture.Height}");

    /// <summary>The card; its driver too where the other picture is of the same card.</summary>
    private static string On(Capture capture, Capture other) =>
        capture.Setup.Card.Name + (capture.Setup.Card == other.Setup.Card ? $", {Names.Of(capture.Setup.Driver)}" : "");

    private static string List(IReadOnlyList<Capability> capabilities, string last = "and") => Names.List([.. capabilities.Select(Names.Of)], last);
}
