using CsCheck;

namespace FeatureMatrix.Tests.Resolving.Generated;

/// <summary>What the laws and oracles are tried on: prints how many catalogs of a hundred show each shape.</summary>
public sealed class Generated_catalogs(ITestOutputHelper output)
{
    private const int Catalogs = 800;

    [Fact]
    public void Show_every_rule_label_and_case_in_one_of_a_hundred()
    {
        var counts = Shapes.All.ToDictionary(shape => shape, _ => 0, StringComparer.Ordinal);
        CatalogGenerator.Plans.Sample(
            plan =>
            {
                foreach (var shape in Shapes.Of(CatalogBuilder.Build(plan)))
                    counts[shape]++;
            },
            seed: "0000FeatureM1", iter: Catalogs, threads: 1);
        foreach (var (shape, count) in counts)
            output.WriteLine($"{100.0 * count / Catalogs,6:F1} % {shape}");
        Assert.Empty(counts.Where(pair => pair.Value * 100 < Catalogs).Select(pair => $"{pair.Key}: {pair.Value} of {Catalogs}"));
    }
}
