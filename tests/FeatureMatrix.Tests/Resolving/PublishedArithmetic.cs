using FeatureMatrix.Model;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>
/// Frame-buffer sizes (rule R10) against published tables, MiB to two decimals: "Upgrading and Repairing PCs", chapter 15, table
/// 15.13 (depth buffer as deep as the colours).
/// </summary>
public sealed class Frame_buffer_sizes
{
    [Theory]
    [InlineData(1024, 768, 16, 4.50, 6.00)]
    [InlineData(1024, 768, 24, 6.75, 9.00)]
    [InlineData(1024, 768, 32, 9.00, 12.00)]
    [InlineData(1280, 1024, 16, 7.50, 10.00)]
    [InlineData(1280, 1024, 24, 11.25, 15.00)]
    [InlineData(1280, 1024, 32, 15.00, 20.00)]
    [InlineData(1600, 1200, 16, 10.99, 14.65)]
    [InlineData(1600, 1200, 24, 16.48, 21.97)]
    [InlineData(1600, 1200, 32, 21.97, 29.30)]
    public void Are_the_published_ones_for_two_and_three_buffers(int width, int height, int bits, double twoBuffers, double threeBuffers)
    {
        Assert.Equal(twoBuffers, Mebibytes(FrameBuffer.Bytes(new Mode(width, height), bits, 1, bits, 1)));
        Assert.Equal(threeBuffers, Mebibytes(FrameBuffer.Bytes(new Mode(width, height), bits, 2, bits, 1)));
    }

    [Fact] // "PC Hardware: A Beginner's Guide", chapter 12: 4 MB takes 1600x1200 at 16 bit in 2D, but only 800x600 in 3D.
    public void Let_four_mebibytes_go_to_800_by_600_in_three_dimensions()
    {
        Assert.True(FrameBuffer.Bytes(new Mode(800, 600), 16, 1, 16, 1) <= 4 << 20);
        Assert.True(FrameBuffer.Bytes(new Mode(1024, 768), 16, 1, 16, 1) > 4 << 20);
        Assert.True(new Mode(1600, 1200).Pixels * 2 <= 4 << 20);
    }

    [Fact] // PC 98 System Design Guide, chapter 14, item 7: 800x600x16, two buffers, depth, and 1.25 MB of textures; fits 4 MiB.
    public void Leave_the_textures_of_the_minimum_system() =>
        Assert.Equal((4 << 20) - 3584, FrameBuffer.Bytes(new Mode(800, 600), 16, 1, 16, 1) + (5 << 18));

    [Theory] // Rule R10: the multisampled columns of FACTS C3 multiply the front buffer as well and are upper bounds only.
    [InlineData(1024, 768, 32, 4, 27.00, 36.00)]
    [InlineData(640, 480, 16, 2, 2.93, 3.52)]
    public void Do_not_multiply_the_front_buffer(int width, int height, int bits, int samples, double expected, double all)
    {
        var bytes = FrameBuffer.Bytes(new Mode(width, height), bits, 1, bits, samples);
        Assert.Equal(expected, Mebibytes(bytes));
        Assert.True(expected < all);
        Assert.Equal(all, Mebibytes(bytes + ((samples - 1) * new Mode(width, height).Pixels * bits / 8)));
    }

    private static double Mebibytes(long bytes) => Math.Round(bytes / 1048576.0, 2);
}

/// <summary>
/// Needs put together as Kleene's strong tables say (S. C. Kleene, Introduction to Metamathematics, 1952, section 64; as printed in
/// FACTS I): two musts are his "and", an any-of is his "or".
/// </summary>
public sealed class Needs_that_are_not_known
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Theory]
    [InlineData('T', 'T', 'T', 'T')]
    [InlineData('T', 'U', 'U', 'T')]
    [InlineData('T', 'F', 'F', 'T')]
    [InlineData('U', 'T', 'U', 'T')]
    [InlineData('U', 'U', 'U', 'U')]
    [InlineData('U', 'F', 'F', 'U')]
    [InlineData('F', 'T', 'F', 'T')]
    [InlineData('F', 'U', 'F', 'U')]
    [InlineData('F', 'F', 'F', 'F')]
    public void Come_together_by_Kleenes_tables(char one, char other, char both, char either)
    {
        Assert.Equal(both, Value("must: [tex-pal8, tex-dxt1]", one, other));
        Assert.Equal(either, Value("must: [{any-of: [tex-pal8, tex-dxt1]}]", one, other));
        Assert.Equal(both, Letter(Math.Min(Number(one), Number(other))));
        Assert.Equal(either, Letter(Math.Max(Number(one), Number(other))));
    }

    private static int Number(char value) => (int)(value switch { 'T' => Support.Yes, 'F' => Support.No, _ => Support.Unknown });

    private static char Letter(int support) => (Support)support switch { Support.Yes => 'T', Support.No => 'F', _ => 'U' };

    private static char Value(string needs, char one, char other)
    {
        var facts = string.Concat(Fact("tex-pal8", one), Fact("tex-dxt1", other));
        var world = $"titles: {{bay: {{name: Bay, os: [windows-98se], source: bench, renderers: {{d3d: {{api: direct3d 6, needs: {{{needs}}}}}}}}}}}\n{(facts.Length > 0 ? "facts:\n" + facts : "")}";
        return LabelWording.Label(ResolverQuestion.Ask(Worlds.Load(Base, world), "bay on heron-16 with heron-9x@2.0")) switch
        {
            "works, natively" => 'T',
            "does not run" => 'F',
            "not known, at best works, natively" => 'U',
            var label => throw new InvalidOperationException(label),
        };
    }

    private static string Fact(string feature, char value) => value switch
    {
        'T' => $"  - {{chip: heron, {feature}: yes, source: manual}}\n",
        'F' => $"  - {{chip: heron, {feature}: no, source: manual}}\n",
        _ => "",
    };
}
