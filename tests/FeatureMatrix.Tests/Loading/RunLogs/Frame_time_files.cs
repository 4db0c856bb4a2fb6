using FeatureMatrix.Loading.RunLogs;

namespace FeatureMatrix.Tests.Loading.RunLogs;

public sealed class Frame_time_files
{
    [Fact]
    public void Hold_one_frame_a_line()
    {
        var file = FrameTimeReader.Read("\uFEFF# harbour demo, run 3\r\n16,7\r\n\r\n17\r\n15,25\r\n");

        Assert.Equal([16.7, 17, 15.25], file.Milliseconds);
        Assert.Empty(file.Faults);
    }

    [Fact]
    public void Name_each_faulty_line_and_keep_the_others()
    {
        var file = FrameTimeReader.Read("16.7\nfast\n0\n1,024\n17.0\n");

        Assert.Equal([16.7, 17.0], file.Milliseconds);
        Assert.Equal(
            [
                (RunLogFaultKind.NotANumber, 2, "fast"), (RunLogFaultKind.OutOfRange, 3, "0"),
                (RunLogFaultKind.OtherDecimalMark, 4, "1,024"),
            ],
            file.Faults.Select(fault => (fault.Kind, fault.Line, fault.Found)));
    }
}
