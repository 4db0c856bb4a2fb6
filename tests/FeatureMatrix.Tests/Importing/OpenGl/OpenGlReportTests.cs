using System.Text;
using FeatureMatrix.Importing;
using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Tests.Importing.Measuring;

namespace FeatureMatrix.Tests.Importing.OpenGl;

public sealed class OpenGlReportTests
{
    /// <summary>In the shape that Mesa's information program prints; the driver is invented.</summary>
    internal const string Invented =
        """
        name of display: :0
        GLX extensions:
            GLX_ARB_multisample, GLX_EXT_swap_control
        OpenGL vendor string: Quillon Graphics
        OpenGL renderer string: Quillon Lumen 4
        OpenGL core profile version string: 3.1.0 Quillon 11
        OpenGL core profile shading language version string: 1.40
        OpenGL core profile extensions:
            GL_ARB_texture_float
        OpenGL version string: 1.4.2 Quillon 11
        OpenGL shading language version string: 1.10
        OpenGL extensions:
            GL_ARB_multitexture, GL_EXT_fog_coord, 
            GL_EXT_paletted_texture
        OpenGL limits:
            GL_MAX_TEXTURE_SIZE = 2048
            GL_MAX_VIEWPORT_DIMS = 2048, 2048
          GL_EXT_texture_lod_bias:
            GL_MAX_TEXTURE_LOD_BIAS_EXT = 15.5

        OpenGL ES profile extensions:
            GL_OES_EGL_image

        """;

    [Fact]
    public void A_report_is_read_by_profile()
    {
        Assert.Equal(
            new OpenGlReport(
                "Quillon Graphics",
                "Quillon Lumen 4",
                new OpenGlProfile(
                    "1.4.2 Quillon 11",
                    "1.10",
                    new(["GL_ARB_multitexture", "GL_EXT_fog_coord", "GL_EXT_paletted_texture"]),
                    new([
                        new OpenGlLimit("GL_MAX_TEXTURE_SIZE", new([2048])),
                        new OpenGlLimit("GL_MAX_VIEWPORT_DIMS", new([2048, 2048])),
                        new OpenGlLimit("GL_MAX_TEXTURE_LOD_BIAS_EXT", new([15.5])),
                    ]),
                    null),
                new OpenGlProfile("3.1.0 Quillon 11", "1.40", new(["GL_ARB_texture_float"]), new([]), null),
                new(["GLX_ARB_multisample", "GLX_EXT_swap_control"]),
                null,
                new([])),
            Parse(Invented));
        Assert.Equal((1, 4), Parse(Invented).Compatibility!.Version);
    }

    [Theory]
    [InlineData("GL_ARB_multitexture GL_EXT_fog_coord WGL_EXT_swap_control ")]
    [InlineData("GL_ARB_multitexture\r\nGL_EXT_fog_coord\r\nWGL_EXT_swap_control\r\n")]
    [InlineData("GL_EXTENSIONS: GL_ARB_multitexture GL_EXT_fog_coord\nWGL_EXT_swap_control")]
    public void A_bare_extension_string_is_a_report_without_a_version(string text)
    {
        var report = Parse(text);
        Assert.Empty(report.Faults);
        Assert.Equal(["GL_ARB_multitexture", "GL_EXT_fog_coord"], report.Compatibility!.Extensions);
        Assert.Equal(["WGL_EXT_swap_control"], report.WindowSystem);
        Assert.Null(report.Compatibility.Version);
        Assert.Null(report.Renderer);
        // 19 and 16 letters and one blank.
        Assert.Equal(36, report.Compatibility.ExtensionStringLength);
    }

    [Theory]
    [InlineData("1.1.0", 1, 1)]
    [InlineData("2.1 Quillon", 2, 1)]
    [InlineData("1.4.2 Build 7", 1, 4)]
    public void A_version_is_the_two_numbers_the_text_begins_with(string text, int major, int minor) =>
        Assert.Equal((major, minor), Parse($"GL_VERSION: {text}").Compatibility!.Version);

    [Theory]
    [InlineData("Quillon 1.4")]
    [InlineData("1")]
    [InlineData("1.")]
    [InlineData(".4")]
    [InlineData("123.4")]
    public void Other_texts_are_no_version(string text) => Assert.Null(Parse($"GL_VERSION: {text}").Compatibility!.Version);

    [Fact]
    public void A_word_that_is_no_extension_is_a_fault_at_its_place()
    {
        var report = Parse("OpenGL extensions:\n    GL_ARB_multitexture, banana GL_EXT_fog_coord\n");
        Assert.Equal([new ImportFault(ImportFaultKind.NotAnExtension, 2, 26, "banana")], report.Faults);
        Assert.Equal(["GL_ARB_multitexture", "GL_EXT_fog_coord"], report.Compatibility!.Extensions);
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing of the kind\n")]
    public void Another_file_is_one_fault(string text) =>
        Assert.Equal([new ImportFault(ImportFaultKind.NotThisFormat, 1, 1, "")], Parse(text).Faults);

    [Theory]
    [InlineData("GL_RENDERER: llvmpipe (LLVM 15.0.6, 256 bits)", "renderer", "llvmpipe")]
    [InlineData("GL_RENDERER: GDI Generic", "renderer", "GDI Generic")]
    [InlineData("GL_RENDERER: Quillon Lumen 4\nExtended renderer info:\n    Accelerated: no", "accelerated", "no")]
    public void A_software_renderer_is_known_by_its_signs(string text, string where, string sign) =>
        Assert.Equal(new SoftwareSign(where, sign), Parse(text).Software);

    [Fact]
    public void Deleting_one_extension_removes_exactly_it()
    {
        var whole = Parse(Invented);
        var without = Parse(Invented.Replace("GL_EXT_fog_coord, ", "", StringComparison.Ordinal));
        Assert.Equal(["GL_EXT_fog_coord"], whole.Compatibility!.Extensions.Except(without.Compatibility!.Extensions));
        Assert.Equal(
            whole,
            without with { Compatibility = without.Compatibility with { Extensions = whole.Compatibility.Extensions } });
    }

    [Fact]
    public void Random_bytes_and_mutated_reports_never_throw()
    {
        var random = new Random(2004);
        var vocabulary = Vocabularies.Ours();
        var sound = Encoding.Latin1.GetBytes(Invented);
        for (var i = 0; i < 2000; i++)
        {
            byte[] file = i % 4 == 0 ? new byte[random.Next(400)] : [.. sound];
            if (i % 4 == 0)
                random.NextBytes(file);
            for (var n = random.Next(1, 12); n > 0 && file.Length > 0; n--)
                file[random.Next(file.Length)] = i % 2 == 0 ? (byte)random.Next(256) : sound[random.Next(sound.Length)];
            var report = OpenGlReport.Parse(file);
            if (i % 10 == 1)
                _ = MeasuredSupply.Of(report, vocabulary);
            Assert.All(report.Faults, f => Assert.True(f is { Line: >= 1, Column: >= 1, Found.Length: <= 60 }));
        }
    }

    private static OpenGlReport Parse(string text) => OpenGlReport.Parse(Encoding.Latin1.GetBytes(text.ReplaceLineEndings("\n")));
}
