using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.RunLogs;

/// <summary>What came of reading a file of frame times.</summary>
/// <param name="Milliseconds">The times in the order of the file, faulty lines left out.</param>
/// <param name="Faults">All faults, by line.</param>
public sealed record FrameTimeFile(EquatableList<double> Milliseconds, EquatableList<RunLogFault> Faults);

/// <summary>
/// Reads the file that the column <c>frame-times</c> of a run log names: one frame a line, milliseconds, decimal point or comma,
/// the same throughout. Empty lines and lines that begin with <c>#</c> are passed over.
/// </summary>
public static class FrameTimeReader
{
    /// <summary>Reads the whole text and collects all faults.</summary>
    public static FrameTimeFile Read(string text)
    {
        var state = new RunLogState();
        List<double> times = [];
        var number = 0;
        foreach (var line in text.TrimStart('\uFEFF').Split('\n'))
        {
            if (state.IsHopeless)
                break;
            number++;
            var value = line.Trim();
            if (value.StartsWith('#'))
                continue;
            if (new RunLogCell(value, number, "frame-times", state).Positive() is { } time)
                times.Add(time);
        }

        return new FrameTimeFile(new EquatableList<double>(times), new EquatableList<RunLogFault>(state.Faults));
    }
}
