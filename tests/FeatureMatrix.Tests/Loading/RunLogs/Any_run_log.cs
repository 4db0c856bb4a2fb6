using CsCheck;
using FeatureMatrix.Loading.RunLogs;

namespace FeatureMatrix.Tests.Loading.RunLogs;

public sealed class Any_run_log
{
    private static readonly Gen<string> Text =
        Gen.String[Gen.Char["ab=+-@'\",;\t\r\n|. \u00e9\uFEFF"], 0, 12].Select(text => text.Trim());

    private static readonly Gen<RunLogRow> Row =
        Gen.Select(Text, Text, Gen.Double[0.001, 5000], Gen.Int[1, 2000], Text).Select((title, note, fps, width, by) => new RunLogRow
        {
            Title = "x" + title,
            Card = "orlan-2400",
            Fps = fps,
            Width = width,
            Note = note,
            By = by,
        });

    [Fact]
    public void Comes_back_as_it_was_written() =>
        Row.Array[0, 4].Sample(rows =>
        {
            var log = RunLogReader.Read(RunLogWriter.Write(rows));
            return log.Faults.Count == 0 && log.Rows.Select(row => row with { Line = 0 }).SequenceEqual(rows);
        });

    /// <summary>Whatever stands in a file, it is read or faulted, never thrown at.</summary>
    [Fact]
    public void Is_read_or_faulted_whatever_it_holds() =>
        Gen.String[Gen.Char["title,card;fps\t\"\"\n\r=1.5"], 0, 80].Sample(text =>
        {
            var log = RunLogReader.Read("title,card,fps,note\n" + text);
            return log.Rows.All(row => row.Title.Length > 0) && log.Faults.All(fault => fault.Line >= 1);
        });
}
