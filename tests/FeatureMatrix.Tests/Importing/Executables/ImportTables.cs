using FeatureMatrix.Importing.Executables;
using FeatureMatrix.Tests.Importing.Fuzzing;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Executables;

/// <summary>Import tables against GNU binutils (objdump -p), which read them independently.</summary>
public class Reading_import_tables(MingwPrograms programs)
{
    private static IReadOnlyList<string> Imports(ReadOnlySpan<byte> file) =>
        [.. PortableExecutable.Read(file).Libraries.SelectMany(l => l.Functions.Select(f => "  " + (f.Name ?? $"#{f.Ordinal}")).Prepend(l.Name))];

    [Fact]
    public void Built_programs_agree_with_objdump()
    {
        string[] built =
            [programs.DirectDraw, programs.Direct3D8, programs.OpenGl, programs.Loader, programs.Wrapper, programs.Direct3D9For64Bits];
        foreach (var program in built)
        {
            var expected = MingwPrograms.ImportsByObjdump(program);
            Assert.NotEmpty(expected);
            Assert.Equal(expected, Imports(File.ReadAllBytes(program)));
        }
    }

    [Fact]
    public void Packaged_windows_libraries_agree_with_objdump()
    {
        var folder = Path.GetDirectoryName(External.File("/usr/lib/x86_64-linux-gnu/wine/x86_64-windows/ddraw.dll", "libwine"))!;
        var files = Directory.GetFiles(folder, "*.dll").Order(StringComparer.Ordinal).Where((_, i) => i % 12 == 0).ToList();
        Assert.InRange(files.Count, 20, 100);
        foreach (var file in files)
            Assert.Equal(MingwPrograms.ImportsByObjdump(file), Imports(File.ReadAllBytes(file)));
    }

    [Fact]
    public void Imports_by_number_agree_with_objdump()
    {
        var file = External.File("/usr/lib/x86_64-linux-gnu/wine/x86_64-windows/comdlg32.dll", "libwine");
        var expected = MingwPrograms.ImportsByObjdump(file);
        Assert.Contains("  #17", expected);
        Assert.Equal(expected, Imports(File.ReadAllBytes(file)));
    }

    [Fact]
    public void Names_lie_at_their_offsets()
    {
        var bytes = File.ReadAllBytes(programs.DirectDraw);
        var library = PortableExecutable.Read(bytes).Libraries.Single(l => string.Equals(l.Name, "ddraw.dll", StringComparison.OrdinalIgnoreCase));
        var function = Assert.Single(library.Functions);
        Assert.Equal(("ddraw.dll", "DirectDrawCreateEx"), (At(library.Offset, 9), At(function.Offset, 18)));

        string At(long offset, int length) => System.Text.Encoding.ASCII.GetString(bytes, (int)offset, length);
    }

    [Fact]
    public void Delayed_library_is_told_apart()
    {
        var library = PortableExecutable.Read(programs.Delayed).Libraries[^1];
        Assert.Equal(("d3d9.dll", true, "Direct3DCreate9"), (library.Name, library.Delayed, library.Functions.Single().Name));
    }

    [Theory]
    [InlineData(0, ExecutableFaultKind.NotAProgram)]
    [InlineData(1, ExecutableFaultKind.NotAProgram)]
    [InlineData(64, ExecutableFaultKind.NotPortableExecutable)]
    [InlineData(1024, ExecutableFaultKind.OutsideFile)]
    public void Cut_off_program_is_a_fault(int length, ExecutableFaultKind kind) => Assert.Equal(
        kind, Assert.Single(PortableExecutable.Read(File.ReadAllBytes(programs.OpenGl).AsSpan(0, length)).Faults).Kind);

    [Fact]
    public void Answers_for_every_input() => Fuzz(1500);

    [Fact, Trait("Category", "campaign")]
    public void Answers_for_every_input_of_a_long_campaign() => Fuzz(100_000);

    private void Fuzz(int inputs)
    {
        // The headers and the import table are what there is to break; the code between them only makes it slow.
        var good = File.ReadAllBytes(programs.OpenGl);
        Rubbish.Feed(inputs, good, bytes => Check([.. "MZ"u8, .. bytes.Skip(2)]));

        static void Check(byte[] bytes)
        {
            var scan = TitleScanner.Scan([new TitleFile("x.exe", bytes)]);
            Assert.All(scan.Renderers.SelectMany(r => r.Sightings), s => Assert.InRange(s.Offset, 0, bytes.Length));
            Assert.InRange(scan.Faults.Count, 0, 100);
        }
    }
}
