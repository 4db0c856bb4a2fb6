using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>
/// One run as a line of a run log states it: ids not yet looked up, nothing assumed. Empty text and null mean not noted. The column
/// that holds each property stands in its description.
/// </summary>
public sealed record RunLogRow
{
    /// <summary>The line of the file on which the row begins, from 1; 0 for a row that was not read.</summary>
    public int Line { get; init; }

    /// <summary>Column <c>title</c>, required: id of the game or program.</summary>
    public string Title { get; init; } = "";

    /// <summary>Column <c>scene</c>: the recorded demo or place that was run. Runs are compared within one scene only.</summary>
    public string Scene { get; init; } = "";

    /// <summary>Column <c>renderer</c>: id of the graphics path within the title.</summary>
    public string Renderer { get; init; } = "";

    /// <summary>Column <c>wrapper</c>: id of the wrapper version, <c>none</c> for stated absence.</summary>
    public string Wrapper { get; init; } = "";

    /// <summary>Column <c>card</c>, required: id of the card.</summary>
    public string Card { get; init; } = "";

    /// <summary>Column <c>specimen</c>: id of the physical board.</summary>
    public string Specimen { get; init; } = "";

    /// <summary>Column <c>driver</c>: id of the driver version.</summary>
    public string Driver { get; init; } = "";

    /// <summary>Column <c>os</c>: id of the operating system.</summary>
    public string Os { get; init; } = "";

    /// <summary>Column <c>rig</c>: id of the PC.</summary>
    public string Rig { get; init; } = "";

    /// <summary>Column <c>width</c>: pixels across, 1 to 16384.</summary>
    public int? Width { get; init; }

    /// <summary>Column <c>height</c>: pixels down, 1 to 16384.</summary>
    public int? Height { get; init; }

    /// <summary>Column <c>depth</c>: colour depth in bits, 1 to 64.</summary>
    public int? Depth { get; init; }

    /// <summary>Column <c>refresh</c>: of the monitor, hertz, more than 0.</summary>
    public double? Refresh { get; init; }

    /// <summary>Column <c>samples</c>: antialiasing samples a pixel, 1 for none, to 64.</summary>
    public int? Samples { get; init; }

    /// <summary>Column <c>filtering</c>: as the title or driver names it.</summary>
    public string Filtering { get; init; } = "";

    /// <summary>Column <c>preset</c>: the quality or texture preset, as the title names it.</summary>
    public string Preset { get; init; } = "";

    /// <summary>Column <c>vsync</c>, <c>on</c> or <c>off</c>: whether the driver waits for the monitor.</summary>
    public bool? Vsync { get; init; }

    /// <summary>Column <c>sound</c>, <c>on</c> or <c>off</c>.</summary>
    public bool? Sound { get; init; }

    /// <summary>
    /// Column <c>factor</c>: any other setting that splits the runs, in words that recur from row to row, such as
    /// <c>linear frame buffer</c>.
    /// </summary>
    public string Factor { get; init; } = "";

    /// <summary>Column <c>run</c>: which repetition, from 1 in the order of running.</summary>
    public int? Run { get; init; }

    /// <summary>Column <c>fps</c>: average frames a second, more than 0.</summary>
    public double? Fps { get; init; }

    /// <summary>Column <c>min-fps</c>: lowest frames a second, 0 or more.</summary>
    public double? MinFps { get; init; }

    /// <summary>Column <c>percentiles</c>: <c>percent=fps</c>, several separated by <c>|</c>, for example <c>1=31.2|5=38</c>.</summary>
    public EquatableList<RunLogPercentile> Percentiles { get; init; } = new([]);

    /// <summary>Column <c>frame-times</c>: name of the file that holds the time of every frame.</summary>
    public string FrameTimes { get; init; } = "";

    /// <summary>Column <c>score</c>: a synthetic result, any number.</summary>
    public double? Score { get; init; }

    /// <summary>Column <c>unit</c>: of the score, as the program prints it.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Column <c>better</c>, <c>higher</c> or <c>lower</c>: which score is better. Required with a score.</summary>
    public bool? HigherIsBetter { get; init; }

    /// <summary>Column <c>discarded</c>: why the run does not count; empty where it does.</summary>
    public string Discarded { get; init; } = "";

    /// <summary>Column <c>date</c>: <c>yyyy-mm-dd</c>.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Column <c>by</c>: who ran it.</summary>
    public string By { get; init; } = "";

    /// <summary>Column <c>note</c>: remarks, for people; may hold line breaks.</summary>
    public string Note { get; init; } = "";
}

/// <summary>A speed that a share of the frames stays under.</summary>
/// <param name="Percent">Of the frames, above 0 and below 100.</param>
/// <param name="Fps">Frames a second, 0 or more.</param>
public sealed record RunLogPercentile(double Percent, double Fps);
