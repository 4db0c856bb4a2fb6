using System.Globalization;

namespace FeatureMatrix.Tests.Fuzzing;

/// <summary>
/// Every reader answers whatever it is given: no exception, no hang, bounded memory. The suite feeds a small part; the campaign
/// of 1,000,000 and more is <c>tests/campaigns/fuzz</c>, which prints the figures.
/// </summary>
public sealed class Anything_a_stranger_hands_over(ITestOutputHelper output)
{
    /// <summary>What one input of at most 64 KiB may make a reader allocate in all; a worksheet of 400 KB unpacks to a tree of objects.</summary>
    private static long MostAllocated(FuzzFormat format) => (format.Name == "XLSX worksheets" ? 256L : 64L) * 1024 * 1024;

    /// <summary>All formats, or the one that FUZZ_ONLY names.</summary>
    public static TheoryData<string> Formats => new(FuzzFormats.All.Select(format => format.Name)
        .Where(name => Environment.GetEnvironmentVariable("FUZZ_ONLY") is null or "" || Environment.GetEnvironmentVariable("FUZZ_ONLY") == name));

    [Theory]
    [MemberData(nameof(Formats))]
    public void Is_answered(string name)
    {
        var format = FuzzFormats.All.Single(one => one.Name == name);
        var count = format.Share / 500;
        var figures = FuzzFigures.Of(format, 0, count);
        output.WriteLine(figures.ToString());
        Assert.True(figures.Passed * 2 >= figures.Inputs, $"only {figures.Passed} of {figures.Inputs} inputs got past the first stage");
        Assert.InRange(figures.MostAllocated, 0, MostAllocated(format));
    }

    /// <summary>The share of the campaign that FUZZ_PERCENT names (100 for all), from input FUZZ_FIRST on.</summary>
    [Theory, Trait("Category", "campaign")]
    [MemberData(nameof(Formats))]
    public void Is_answered_in_a_long_campaign(string name)
    {
        var format = FuzzFormats.All.Single(one => one.Name == name);
        var figures = FuzzFigures.Of(format, Number("FUZZ_FIRST", 0), format.Share / 100 * Number("FUZZ_PERCENT", 1));
        var line = string.Create(CultureInfo.InvariantCulture,
            $"| {format.Name} | {figures.Inputs} | {100.0 * figures.Passed / figures.Inputs:0.0} % | {figures.Slowest:0} ms | {figures.MostAllocated / 1024.0 / 1024:0.0} MiB |");
        output.WriteLine(line);
        if (Environment.GetEnvironmentVariable("FUZZ_FIGURES") is { Length: > 0 } file)
            File.AppendAllText(file, line + "\n");
        Assert.True(figures.Passed * 2 >= figures.Inputs, line);
        Assert.True(figures.Slowest < 1000, line);
        Assert.InRange(figures.MostAllocated, 0, MostAllocated(format));
    }

    private static int Number(string variable, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : usual;
}
