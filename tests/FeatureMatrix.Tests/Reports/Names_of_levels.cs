using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Demo;

namespace FeatureMatrix.Tests.Reports;

/// <summary>How levels of the vocabulary read in a sentence, as singular and plural.</summary>
public sealed class Names_of_levels(LodenSluice demo) : IClassFixture<LodenSluice>
{
    [Theory]
    [InlineData("mt-units", "1", "1 texture in one pass")]
    [InlineData("mt-units", "2", "2 textures in one pass")]
    [InlineData("depth-bits", "24", "24 depth-buffer bits")]
    [InlineData("stencil-bits", "1", "stencil buffer 1 bit")]
    [InlineData("stencil-bits", "8", "stencil buffer 8 bits")]
    [InlineData("filter-anisotropic", "4", "anisotropic filtering 4:1")]
    [InlineData("ps-version", "1.4", "pixel shader version 1.4")]
    [InlineData("tex-max-size", "2048", "largest texture edge 2048 px")]
    public void Count_one_as_one(string feature, string level, string name)
    {
        var found = demo.Catalog.Features.Single(one => one.Id == feature);

        Assert.Equal(name, Names.Of(found.At(found.Levels.ToList().IndexOf(level) + 1)));
    }
}
