using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Vocabulary;

/// <summary>
/// OpenGL names in the vocabulary against the Khronos XML registry (Debian package khronos-api: /usr/share/khronos-api/gl.xml,
/// glx.xml, wgl.xml).
/// </summary>
public sealed class OpenGlNames
{
    private static readonly Lazy<KhronosRegistry> Read = new(KhronosRegistry.Read);

    private static KhronosRegistry Registry => Read.Value;

    private static IReadOnlyList<Feature> Reported =>
        [.. VocabularyFixture.Features.Where(f => f.Detection.OpenGlExtensions.Count > 0 || f.Detection.OpenGlCore is not null)];

    [Fact]
    public void Every_extension_is_in_the_registry()
    {
        var named = VocabularyFixture.Features.SelectMany(f => f.Detection.OpenGlExtensions.Select(e => $"{f.Id}: {e}")).ToList();
        Assert.True(named.Count >= 45, $"only {named.Count} extension names were found in the vocabulary");
        Assert.DoesNotContain(named, n => !Registry.ExtensionNames.Contains(n.Split(": ")[1]));
    }

    [Fact]
    public void Every_limit_is_in_the_registry()
    {
        var named = VocabularyFixture.Features.Where(f => f.Detection.OpenGlLimit is not null).ToList();
        Assert.Equal(
            ["aa-multisample", "depth-bits", "filter-anisotropic", "gl-extension-string", "mrt", "mt-units", "stencil-bits", "tex-max-size", "tnl-lights", "vtx-blend"],
            named.Select(f => f.Id).Order(StringComparer.Ordinal));
        Assert.Empty(named.Where(f => !Registry.EnumNames.Contains(f.Detection.OpenGlLimit!)).Select(f => f.Id));
        Assert.Empty(named.Where(f => !f.HasLevels).Select(f => f.Id));
    }

    [Fact]
    public void Every_core_version_is_in_the_registry() =>
        Assert.Empty(Reported.Where(f => f.Detection.OpenGlCore is { } core && !Registry.CoreVersions.Contains(core)).Select(f => f.Id));

    [Fact]
    public void Core_version_is_the_one_that_took_in_a_name_of_the_extension()
    {
        // A token or command of the extension, less its maker's suffix, is new in that core version. The extension for sizes that
        // are not powers of two brings neither.
        var checkedHere = Reported.Where(f => f.Detection is { OpenGlCore: not null, OpenGlExtensions.Count: > 0 })
            .Where(f => f.Id != "tex-npot").ToList();
        Assert.True(checkedHere.Count >= 18, $"only {checkedHere.Count} features have both");
        Assert.Empty(checkedHere
            .Where(f => !f.Detection.OpenGlExtensions.Any(e => Registry.BroughtBy(e).Overlaps(Registry.NewInCore(f.Detection.OpenGlCore!))))
            .Select(f => $"{f.Id} {f.Detection.OpenGlCore}"));
    }

    [Fact]
    public void Extensions_are_full_names_and_listed_once_a_feature()
    {
        Assert.DoesNotContain(Reported.SelectMany(f => f.Detection.OpenGlExtensions), e =>
            !e.StartsWith("GL_", StringComparison.Ordinal) && !e.StartsWith("WGL_", StringComparison.Ordinal) && !e.StartsWith("GLX_", StringComparison.Ordinal));
        Assert.Empty(Reported.Where(f => f.Detection.OpenGlExtensions.Distinct(StringComparer.Ordinal).Count() != f.Detection.OpenGlExtensions.Count).Select(f => f.Id));
    }

    [Theory] // FACTS trap 3: what OpenGL cannot report is unknown, never absent.
    [InlineData("tnl-hw")]
    [InlineData("depth-wbuffer")]
    [InlineData("fog-w")]
    [InlineData("fog-z")]
    [InlineData("fog-table")]
    [InlineData("overlay-yuv")]
    [InlineData("tex-colorkey")]
    public void What_OpenGl_cannot_report_has_no_OpenGl_sign(string id)
    {
        var detection = VocabularyFixture.Feature(id).Detection;
        Assert.Empty(detection.OpenGlExtensions);
        Assert.Null(detection.OpenGlCore);
        Assert.Null(detection.OpenGlLimit);
        Assert.NotEmpty(detection.Direct3D);
    }
}
