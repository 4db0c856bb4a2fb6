using System.Text;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.OpenGl;

/// <summary>The report that Mesa's information program (Debian package mesa-utils) gives of the software renderer here.</summary>
public sealed class RealReport
{
    private readonly Lock _lock = new();
    private byte[]? _bytes;

    public byte[] Bytes()
    {
        External.Command("glxinfo", "mesa-utils");
        lock (_lock)
            return _bytes ??= Encoding.Latin1.GetBytes(VirtualDisplay.Run(["glxinfo", "-l"]));
    }
}

/// <summary>The real report against a plain text search of it.</summary>
public sealed class RealReportTests(RealReport real) : IClassFixture<RealReport>
{
    [Fact]
    public void Extensions_are_those_that_a_text_search_finds()
    {
        var report = OpenGlReport.Parse(real.Bytes());
        Assert.Empty(report.Faults);
        Assert.Equal(NamesUnder("OpenGL extensions:"), report.Compatibility!.Extensions);
        Assert.Equal(NamesUnder("OpenGL core profile extensions:"), report.Core!.Extensions);
        Assert.Equal(NamesUnder("GLX extensions:"), report.WindowSystem);
        Assert.True(report.Compatibility.Extensions.Count > report.Core.Extensions.Count);
        // Seen with Mesa 22.3.6: only the compatibility profile has fog coordinates, neither has paletted textures.
        Assert.Contains("GL_EXT_fog_coord", report.Compatibility.Extensions);
        Assert.DoesNotContain("GL_EXT_fog_coord", report.Core.Extensions);
        Assert.DoesNotContain("GL_EXT_paletted_texture", report.Compatibility.Extensions);
    }

    [Fact]
    public void Strings_and_limits_are_those_of_the_text()
    {
        var report = OpenGlReport.Parse(real.Bytes());
        Assert.Equal(After("OpenGL vendor string: "), report.Vendor);
        Assert.Equal(After("OpenGL renderer string: "), report.Renderer);
        Assert.Equal(After("OpenGL version string: "), report.Compatibility!.VersionText);
        Assert.Equal(After("OpenGL core profile version string: "), report.Core!.VersionText);
        Assert.Equal(After("OpenGL shading language version string: "), report.Compatibility.ShadingLanguage);
        Assert.Equal(After("    GL_MAX_TEXTURE_SIZE = "), $"{report.Compatibility.Limit("GL_MAX_TEXTURE_SIZE")!.Values[0]}");
        Assert.Equal(After("    GL_MAX_TEXTURE_UNITS_ARB = "), $"{report.Compatibility.Limit("GL_MAX_TEXTURE_UNITS_ARB")!.Values[0]}");
        Assert.Equal(new SoftwareSign("renderer", "llvmpipe"), report.Software);
    }

    [Fact]
    public void Deleting_one_extension_removes_exactly_it()
    {
        const string deleted = "GL_EXT_secondary_color";
        var text = Encoding.Latin1.GetString(real.Bytes());
        Assert.Contains(deleted + ",", text, StringComparison.Ordinal);
        var without = OpenGlReport.Parse(Encoding.Latin1.GetBytes(text.Replace(deleted + ",", "", StringComparison.Ordinal)));
        var whole = OpenGlReport.Parse(real.Bytes());
        Assert.Equal([deleted], whole.Compatibility!.Extensions.Except(without.Compatibility!.Extensions));
        Assert.Empty(without.Compatibility.Extensions.Except(whole.Compatibility.Extensions));
        Assert.Equal(whole, without with { Compatibility = without.Compatibility with { Extensions = whole.Compatibility.Extensions } });
    }

    [Fact]
    public void The_same_text_with_an_invented_renderer_line_is_hardware()
    {
        // Synthetic: everything but the renderer's name and the sign beside it is the software renderer's own text.
        var text = Encoding.Latin1.GetString(real.Bytes())
            .Replace($"OpenGL renderer string: {After("OpenGL renderer string: ")}", "OpenGL renderer string: Quillon Lumen 4", StringComparison.Ordinal)
            .Replace("    Accelerated: no", "    Accelerated: yes", StringComparison.Ordinal);
        var report = OpenGlReport.Parse(Encoding.Latin1.GetBytes(text));
        Assert.Equal("Quillon Lumen 4", report.Renderer);
        Assert.Null(report.Software);
        Assert.Equal(OpenGlReport.Parse(real.Bytes()).Compatibility, report.Compatibility);
    }

    private string[] Lines() => Encoding.Latin1.GetString(real.Bytes()).Split('\n');

    private string After(string label) =>
        Lines().First(l => l.StartsWith(label, StringComparison.Ordinal))[label.Length..].Trim();

    private IEnumerable<string> NamesUnder(string heading) => Lines()
        .SkipWhile(l => l != heading).Skip(1).TakeWhile(l => l.StartsWith("    ", StringComparison.Ordinal))
        .SelectMany(l => l.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries));
}
