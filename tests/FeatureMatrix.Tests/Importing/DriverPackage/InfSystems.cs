using System.Text;
using FeatureMatrix.Importing.DriverPackage;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.DriverPackage;

/// <summary>Which sections a system reads, on the examples of the Windows driver documentation.</summary>
public class Choosing_models_sections
{
    private static InfPackage Read(string text) => InfReader.Read(Encoding.Latin1.GetBytes(text));

    private static string Chosen(InfPackage package, TargetWindows os) => string.Join(
        " or ",
        SystemSections.Readings(package, os).Select(r => string.Join(
            '+', r.Sections.Select(s => s.SectionName).Concat(r.Doubts.Select(d => $"no {d.Subject}")))));

    // "INF Manufacturer Section", Example 1: InstallA is for Windows 2000, InstallB for Windows XP and later.
    [Fact]
    public void Undecorated_section_is_for_windows_2000_and_the_newer_one_for_xp()
    {
        var package = Read("""
            [Manufacturer]
            %MyName% = MyName,NTx86.5.1
            [MyName]
            %MyDev% = InstallA,hwid
            [MyName.NTx86.5.1]
            %MyDev% = InstallB,hwid
            """);
        Assert.Equal(
            ["MyName", "MyName", "MyName", "MyName", "MyName.NTx86.5.1"],
            TargetWindows.All.Select(os => Chosen(package, os)));
    }

    // "INF Manufacturer Section", Example 2: no NT 6.0 and later, NT 5.1 and later, not Windows 2000.
    [Fact]
    public void Empty_section_excludes()
    {
        var package = Read("""
            [Manufacturer]
            %MyName% = MyName,NTx86.6.0,NTx86.5.1,
            [MyName.NTx86.6.0]
            [MyName.NTx86.5.1]
            %MyDev% = InstallB,hwid
            [MyName]
            [InstallB]
            [InstallB.Services]
            """);
        var vista = new TargetWindows(WindowsFamily.Nt, 6, 0);
        Assert.Equal(
            [SystemSupport.Excluded, SystemSupport.Offered, SystemSupport.Excluded],
            new[] { TargetWindows.Windows2000, TargetWindows.WindowsXp, vista }.Select(os => SystemSections.SupportOf(package, os)));
    }

    [Fact]
    public void Package_without_services_is_offered_to_9x_and_not_known_for_nt()
    {
        var package = Read("[Version]\nSignature=$Chicago$\n[Manufacturer]\nM=S\n[S]\nX=I,PCI\\VEN_F0A1&DEV_0007\n[I]\na=b");
        Assert.Equal(
            [SystemSupport.Offered, SystemSupport.Offered, SystemSupport.Offered, SystemSupport.Unknown, SystemSupport.Unknown],
            TargetWindows.All.Select(os => SystemSections.SupportOf(package, os)));
    }

    [Theory]
    [InlineData("windows-95", 4, 0)]
    [InlineData("windows-98", 4, 10)]
    [InlineData("windows-98se", 4, 10)]
    [InlineData("windows-me", 4, 90)]
    [InlineData("windows-2000", 5, 0)]
    [InlineData("windows-xp", 5, 1)]
    public void System_of_the_vocabulary_has_its_version(string id, int major, int minor) =>
        Assert.Equal((major, minor), (TargetWindows.Of(id)!.Major, TargetWindows.Of(id)!.Minor));

    [Fact]
    public void Dos_reads_no_inf() => Assert.Null(TargetWindows.Of("dos"));

    // "INF Manufacturer Section": %FooCorp%=FooMfg, NT, NT.5, NT.5.5, NT....0x80 gives [FooMfg.NT.5] on Windows XP.
    [Fact]
    public void Highest_version_not_above_the_system_wins() => Assert.Equal(
        "FooMfg.NT.5",
        Chosen(
            Read("""
                [Manufacturer]
                %FooCorp%=FooMfg, NT, NT.5, NT.5.5, NT....0x80
                [FooMfg.NT]
                [FooMfg.NT.5]
                [FooMfg.NT.5.5]
                [FooMfg.NT....0x80]
                """),
            TargetWindows.WindowsXp));

    // "INF Manufacturer Section": [FooMfg.NTamd64] is for x64 alone.
    [Fact]
    public void Section_for_another_architecture_is_passed_over() => Assert.Equal(
        "no FooMfg", Chosen(Read("[Manufacturer]\n%F%=FooMfg,NTamd64\n[FooMfg.NTamd64]"), TargetWindows.WindowsXp));

    // "Combining Platform Extensions with Operating System Versions" has NTx86 read from Windows 2000 on, "INF
    // Manufacturer Section" from Windows XP on.
    [Fact]
    public void Documentation_disagrees_about_windows_2000() => Assert.Equal(
        "S or S.NTx86", Chosen(Read("[Manufacturer]\nM=S,NTx86\n[S]\n[S.NTx86]"), TargetWindows.Windows2000));

    [Fact]
    public void Decorated_section_that_no_line_names_is_not_read() => Assert.Equal(
        "S", Chosen(Read("[Manufacturer]\nM=S\n[S]\n[S.NTx86]"), TargetWindows.WindowsXp));

    [Fact]
    public void Manufacturer_without_equals_sign_names_its_own_section() => Assert.Equal(
        "Lantern", Chosen(Read("[Manufacturer]\nLantern\n[Lantern]"), TargetWindows.Windows98));

    [Theory]
    [InlineData("NTx86.5.1", "x86", 5, 1, null, null)]
    [InlineData("nt....0x80", null, null, null, null, 0x80)]
    [InlineData("NT.5", null, 5, null, null, null)]
    [InlineData("NTamd64.10.0...14393", "amd64", 10, 0, null, null)]
    public void Decoration_reads(string text, string? architecture, int? major, int? minor, int? product, int? suite) =>
        Assert.Equal(new InfDecoration(text, architecture, major, minor, product, suite), InfDecoration.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("NTx87")]
    [InlineData("NT.five")]
    [InlineData("NT.-5")]
    [InlineData("NT.0xFFFFFFFF")]
    [InlineData("NT.1.2.3.4.5.6")]
    public void Other_text_is_no_decoration(string text) => Assert.Null(InfDecoration.Parse(text));
}

/// <summary>
/// A real INF file that nobody wrote for these tests: the one that Debian's libwine carries. It lists no hardware (no
/// display driver's INF was found in a Debian package), so it checks the syntax and nothing of the listings: names of
/// sections and numbers of entries, against a count of its lines by their first and last character.
/// </summary>
public class Reading_a_packaged_inf
{
    [Fact]
    public void Sections_and_numbers_of_entries_agree_with_a_count_of_lines()
    {
        var path = External.File("/usr/share/wine/wine.inf", "libwine");
        var lines = File.ReadAllLines(path).Select(l => l.Trim()).ToList();
        var package = InfReader.Read(File.ReadAllBytes(path));
        var headings = lines.Where(l => l.StartsWith('[')).Select(l => l[1..l.IndexOf(']', StringComparison.Ordinal)]).ToList();
        Assert.Equal(
            headings.Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase),
            package.Document.Sections.Values.Select(s => s.Name).Order(StringComparer.OrdinalIgnoreCase));

        // An entry begins on every line that is neither blank, comment nor heading and does not continue the one above.
        var expected = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var (current, continued) = ("", false);
        foreach (var line in lines)
        {
            if (line.StartsWith('['))
                expected.TryAdd(current = line[1..line.IndexOf(']', StringComparison.Ordinal)], 0);
            else if (line.Length > 0 && line[0] != ';' && !continued)
                expected[current]++;
            continued = line.EndsWith('\\');
        }

        Assert.Equal(
            expected.OrderBy(p => p.Key, StringComparer.Ordinal),
            package.Document.Sections.Values.ToDictionary(s => s.Name, s => s.Entries.Count).OrderBy(p => p.Key, StringComparer.Ordinal));
        Assert.Equal("CHICAGO", package.Version.Signature);
        Assert.Equal([new InfFault(InfFaultKind.MissingSection, 1, 1, "Manufacturer")], package.Faults);
    }
}
