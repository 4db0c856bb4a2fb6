using System.Text;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Tests.Importing.OpenGl;
using Supplied = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Importing.Measuring;

/// <summary>The project's vocabulary on the real report of Mesa's software renderer, against plain text search of it.</summary>
public sealed class RealMeasureTests(RealReport real) : IClassFixture<RealReport>
{
    [Fact]
    public void Each_feature_is_what_a_text_search_for_its_extensions_says()
    {
        var vocabulary = Vocabularies.Ours();
        var text = Encoding.Latin1.GetString(real.Bytes());
        var supply = MeasuredSupply.Of(OpenGlReport.Parse(real.Bytes()), vocabulary);
        Assert.NotNull(supply.Software);

        // The report's version is 4.5, so every feature with a core version has it; of the others the text decides. The
        // compatibility profile's names stand between its heading and its limits, the window system's before them.
        var window = text[text.IndexOf("GLX extensions:", StringComparison.Ordinal)..text.IndexOf("OpenGL vendor string:", StringComparison.Ordinal)];
        var profile = text[text.IndexOf("\nOpenGL extensions:", StringComparison.Ordinal)..text.IndexOf("\nOpenGL limits:", StringComparison.Ordinal)];
        var words = (window + profile).Split([' ', ',', '\n']).ToHashSet();
        Assert.Contains("OpenGL version string: 4.5 ", text, StringComparison.Ordinal);
        var asked = vocabulary.Where(f => !f.HasLevels && f.Detection.OpenGlExtensions.Count > 0).ToList();
        Assert.True(asked.Count > 15);
        foreach (var feature in asked)
        {
            var expected = feature.Detection.OpenGlCore is not null || feature.Detection.OpenGlExtensions.Any(words.Contains)
                ? Supplied.Emulated
                : Supplied.No;
            var said = Assert.Single(supply.Statements, s => s.Capability.Feature == feature);
            Assert.Equal((feature.Id, expected), (feature.Id, said.Support));
        }

        // FACTS section 0, trap 3: OpenGL cannot report these.
        Assert.DoesNotContain(supply.Statements, s => s.Capability.Feature.Id is "tnl-hw" or "depth-wbuffer" or "fog-z" or "fog-w");
    }

    [Theory]
    [InlineData("GL_EXT_texture_compression_s3tc", new[] { "tex-dxt1", "tex-dxt3-5" })]
    [InlineData("GL_NV_fog_distance", new[] { "fog-range" })]
    // OpenGL 1.4 contains it, so its name decides nothing here.
    [InlineData("GL_EXT_fog_coord", new string[0])]
    public void Deleting_one_extension_changes_exactly_the_features_that_name_it(string extension, string[] features)
    {
        var vocabulary = Vocabularies.Ours();
        var text = Encoding.Latin1.GetString(real.Bytes());
        Assert.Contains(extension + ",", text, StringComparison.Ordinal);
        var before = MeasuredSupply.Of(OpenGlReport.Parse(real.Bytes()), vocabulary);
        var after = MeasuredSupply.Of(
            OpenGlReport.Parse(Encoding.Latin1.GetBytes(text.Replace(extension + ",", "", StringComparison.Ordinal))), vocabulary);

        var changed = before.Statements.Zip(after.Statements).Where(p => p.First.Support != p.Second.Support || p.First.Capability != p.Second.Capability);
        Assert.Equal(features.Select(f => (f, Supplied.Emulated, Supplied.No)), changed.Select(p => (p.First.Capability.Feature.Id, p.First.Support, p.Second.Support)));
    }
}
