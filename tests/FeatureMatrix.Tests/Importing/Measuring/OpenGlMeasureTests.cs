using System.Text;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Model;
using Supplied = FeatureMatrix.Model.Support;

namespace FeatureMatrix.Tests.Importing.Measuring;

public sealed class OpenGlMeasureTests
{
    private static readonly Feature FogCoord = Vocabularies.Flag("fog-coord", new() { OpenGlCore = "1.4", OpenGlExtensions = ["GL_EXT_fog_coord"] });
    private static readonly Feature Palette = Vocabularies.Flag("tex-pal8", new() { OpenGlExtensions = ["GL_EXT_paletted_texture"] });
    private static readonly Feature Lighting = Vocabularies.Flag("tnl-hw", Detection.None);
    private static readonly Feature Units = Vocabularies.Ladder(
        "mt-units",
        ["1", "2", "4", "8"],
        new() { OpenGlCore = "1.3", OpenGlExtensions = ["GL_ARB_multitexture"], OpenGlLimit = "GL_MAX_TEXTURE_UNITS" });
    private static readonly Feature Anisotropy = Vocabularies.Ladder(
        "filter-anisotropic",
        ["2", "4", "8", "16"],
        new() { OpenGlExtensions = ["GL_EXT_texture_filter_anisotropic"], OpenGlLimit = "GL_MAX_TEXTURE_MAX_ANISOTROPY_EXT" });
    private static readonly Feature Stencil = Vocabularies.Ladder("stencil-bits", ["1", "4", "8"], new() { OpenGlLimit = "GL_STENCIL_BITS" });
    private static readonly Feature Length = Vocabularies.Ladder("gl-extension-string", ["16", "32", "64"], new() { OpenGlLimit = "GL_EXTENSIONS" });

    private static readonly Feature[] All = [Vocabularies.OpenGl, FogCoord, Palette, Lighting, Units, Anisotropy, Stencil, Length];

    [Fact]
    public void Extensions_versions_and_limits_are_told_apart_from_what_opengl_cannot_report()
    {
        var supply = Of("GL_VERSION: 1.3.1\nGL_EXTENSIONS: GL_EXT_fog_coord GL_XYZ_private\nOpenGL limits:\n    GL_MAX_TEXTURE_UNITS_ARB = 3\n    GL_STENCIL_BITS = 4\n");

        Assert.Equal(
            new MeasuredSupply(
                new([
                    Said(Vocabularies.OpenGl.At(3), Reach.UpTo, Supplied.Yes, "GL_VERSION 1.3"),
                    Said(FogCoord.At(1), Reach.At, Supplied.Yes, "GL_EXT_fog_coord"),
                    Said(Palette.At(1), Reach.At, Supplied.No, "GL_EXT_paletted_texture"),
                    // Nothing of hardware lighting: OpenGL has no question for it.
                    Said(Units.At(2), Reach.UpTo, Supplied.Yes, "GL_MAX_TEXTURE_UNITS = 3"),
                    Said(Anisotropy.At(1), Reach.At, Supplied.No, "GL_EXT_texture_filter_anisotropic"),
                    // The bits of the window that was asked: another may have more.
                    Said(Stencil.At(2), Reach.AtLeast, Supplied.Yes, "GL_STENCIL_BITS = 4"),
                    // 16 and 14 letters and a blank: 31.
                    Said(Length.At(1), Reach.UpTo, Supplied.Yes, "GL_EXTENSIONS"),
                ]),
                new([]),
                new(["GL_XYZ_private"]),
                null),
            supply);
    }

    [Fact]
    public void The_core_version_stands_for_the_extension() =>
        Assert.Equal(
            [Said(FogCoord.At(1), Reach.At, Supplied.Yes, "OpenGL 1.4")],
            Of("GL_VERSION: 1.4\nGL_EXTENSIONS: GL_ARB_multitexture").Statements.Where(s => s.Capability.Feature == FogCoord));

    [Fact]
    public void Without_a_version_what_a_version_may_hold_is_unknown()
    {
        var said = Of("GL_ARB_multitexture").Statements;
        Assert.DoesNotContain(said, s => s.Capability.Feature == FogCoord);
        Assert.Contains(Said(Palette.At(1), Reach.At, Supplied.No, "GL_EXT_paletted_texture"), said);
        Assert.Contains(Said(Units.At(1), Reach.AtLeast, Supplied.Yes, "GL_ARB_multitexture"), said);
    }

    [Fact]
    public void Without_multitexture_there_is_one_texture_unit() =>
        Assert.Contains(
            Said(Units.At(1), Reach.UpTo, Supplied.Yes, "GL_ARB_multitexture"),
            Of("GL_VERSION: 1.1\nGL_EXTENSIONS: GL_EXT_fog_coord").Statements);

    [Fact]
    public void A_software_renderer_emulates_and_says_so()
    {
        var supply = Of("GL_RENDERER: llvmpipe\nGL_VERSION: 1.4\nGL_EXTENSIONS: GL_EXT_paletted_texture");
        Assert.Equal(new SoftwareSign("renderer", "llvmpipe"), supply.Software);
        Assert.All(supply.Statements, s => Assert.NotEqual(Supplied.Yes, s.Support));
        Assert.Contains(Said(Palette.At(1), Reach.At, Supplied.Emulated, "GL_EXT_paletted_texture"), supply.Statements);
    }

    [Fact]
    public void A_fact_carries_the_api_the_grade_and_the_source()
    {
        var source = new Source("", "report of 3 May");
        var fact = Said(Palette.At(1), Reach.At, Supplied.No, "GL_EXT_paletted_texture").ToFact(Scope.Everything, source);
        Assert.Equal(
            new SupplyFact(
                new Scope { Api = Vocabularies.OpenGl }, Palette.At(1), Reach.At, Supplied.No, new Evidence(Grade.Measured, source, Origin.None)),
            fact);
    }

    private static MeasuredStatement Said(Capability what, Reach reach, Supplied support, params string[] signs) =>
        new(Vocabularies.OpenGl, what, reach, support, new EquatableList<string>(signs));

    private static MeasuredSupply Of(string report) =>
        MeasuredSupply.Of(OpenGlReport.Parse(Encoding.ASCII.GetBytes(report)), All);
}
