using FeatureMatrix.Cli;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The command <c>whatif</c> on the demo.</summary>
public sealed class What_if
{
    private static readonly string Demo = Repository.PathTo("data", "demo");

    [Fact]
    public void Less_memory_takes_away_what_needs_it() => Assert.Equal(
        """
        Title,Now,Then,Why
        Marl Pit,"works, wrapper only",does not run,Pondglass 1.2 needs 8.00 MiB of video memory
        Nine Fathom Bell,"loses W-buffer (wrong picture, cosmetic), wrapper only",does not run,Pondglass 2.0 needs 8.00 MiB of video memory
        Vitriol Avenue,"works, wrapper only",does not run,Pondglass 2.0 needs 8.00 MiB of video memory

        """,
        Csv("kite-2", "--memory", "4MiB"));

    [Fact]
    public void Memory_of_its_own_for_textures_takes_the_largest_preset() => Assert.Equal(
        """
        Title,Now,Then,Why
        Peatfire,"runs, dithering in 16-bit modes not known, natively; texture preset up to normal","runs, dithering in 16-bit modes not known, natively",dithering in 16-bit modes not known
        The Reedcutter,"loses table (pixel) fog (severe) and depth bias (polygon offset) (cosmetic), natively; texture preset up to small","loses table (pixel) fog (severe) and depth bias (polygon offset) (cosmetic), natively",Direct3D with Corvane Lantern driver for Windows 95 and 98 1.30 on Windows 95

        """,
        Csv("lantern-3d", "--memory", "4MiB+8MiB"));

    [Theory]
    [InlineData("16MiB")]
    [InlineData("16 MiB")]
    [InlineData("16384KiB")]
    [InlineData("0.015625GiB")]
    public void The_memory_it_has_changes_nothing(string size) => Assert.Equal("Title,Now,Then,Why\n", Csv("kite-2", "--memory", size));

    [Theory]
    [InlineData("4")]
    [InlineData("4 MB")]
    [InlineData("0MiB")]
    [InlineData("-4MiB")]
    [InlineData("4MiB+4MiB+4MiB")]
    [InlineData("4MiB+")]
    public void A_size_that_is_none_is_refused_with_an_example(string size)
    {
        var (code, _, messages) = CommandRun.Of("whatif", "kite-2", $"--memory={size}", "--collection", Demo);
        Assert.Equal(ExitCode.Usage, code);
        Assert.Equal($"--memory {size}: write a size with its unit (KiB, MiB, GiB), for example 32MiB, or two as 4MiB+8MiB.\n", messages.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Nothing_to_change_is_refused() =>
        Assert.Equal("Say what to change: --card, --driver, --os, --memory or --rig.\n", CommandRun.Of("whatif", "kite-2", "--collection", Demo).Messages.ReplaceLineEndings("\n"));

    private static string Csv(params string[] args)
    {
        var (code, results, messages) = CommandRun.Of(["whatif", .. args, "--format", "csv", "--collection", Demo]);
        Assert.True(code == ExitCode.Fine, messages);
        return results.ReplaceLineEndings("\n");
    }
}
