using FeatureMatrix.Pictures;

namespace FeatureMatrix.Tests.Pictures.RealOpenGl;

/// <summary>
/// When two renderers agree. Fixed beforehand (issue 7): no channel of a pixel differs by more than 2 of 255, save in one pixel of a hundred
/// (edges, where the last bits of a position decide).
/// </summary>
internal static class Agreement
{
    private const int Tolerance = 2;
    private const double ExceptedShare = 0.01;

    public static void Check(string what, RealPicture real, Framebuffer ours)
    {
        var theirs = real.Gl.ReadRgb();
        var rgb = ours.Resolve().Rgb.ToArray();
        Assert.True(rgb.Distinct().Count() > 6, "the scene must show something");
        var apart = Enumerable.Range(0, ours.Width * ours.Height)
            .Select(p => Enumerable.Range(p * 3, 3).Max(i => Math.Abs(theirs[i] - rgb[i]))).Order().ToList();
        var excepted = apart.Count(d => d > Tolerance);
        Report($"{what}: largest difference {apart[^1]}, {excepted} of {apart.Count} pixels above 2; "
            + $"without 1 % of pixels {apart[(int)(apart.Count * (1 - ExceptedShare))]}");
        Assert.True(excepted <= ExceptedShare * apart.Count,
            $"{what}: {excepted} of {apart.Count} pixels differ by more than {Tolerance}, the largest by {apart[^1]}");
    }

    public static void Report(string line) => TestContext.Current.TestOutputHelper?.WriteLine(line);
}
