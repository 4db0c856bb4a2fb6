using System.Text;
using FeatureMatrix.Importing.Executables;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Importing.Executables;

public class Scanning_a_titles_folder(MingwPrograms programs)
{
    private static TitleScan Scan(params string[] files) =>
        TitleScanner.Scan(files.Select(f => new TitleFile(Path.GetFileName(f), File.ReadAllBytes(f))));

    private static IEnumerable<string> Told(IEnumerable<CandidateRenderer> renderers) => renderers.Select(
        r => $"{r.Use.Api} {r.Use.Level}: {string.Join(", ", r.Sightings.Select(s => $"{s.Kind} {s.Name} in {s.File}").Order(StringComparer.Ordinal))}");

    [Fact]
    public void Direct3d_7_shows_by_its_interface_identifier() => Assert.Equal(
        [
            "direct3d 7: InterfaceId IID_IDirect3D7 in draw7.exe",
            "directdraw 1: Import ddraw.dll in draw7.exe",
            "directdraw 7: Import DirectDrawCreateEx in draw7.exe, InterfaceId IID_IDirectDraw7 in draw7.exe",
        ],
        Told(Scan(programs.DirectDraw).Renderers));

    [Fact]
    public void Direct3d_8_shows_by_its_library_and_function() => Assert.Equal(
        ["direct3d 8: Import Direct3DCreate8 in eight.exe, Import d3d8.dll in eight.exe"], Told(Scan(programs.Direct3D8).Renderers));

    [Fact]
    public void Program_for_64_bits_is_read_too() => Assert.Equal(
        ["direct3d 9: Import Direct3DCreate9 in nine.exe, Import d3d9.dll in nine.exe"],
        Told(Scan(programs.Direct3D9For64Bits).Renderers));

    [Fact]
    public void OpenGl_names_its_extensions_but_not_constants()
    {
        var scan = Scan(programs.OpenGl);
        Assert.Equal(["opengl 1.1: Import OPENGL32.DLL in gl.exe"], Told(scan.Renderers));
        Assert.Equal(["GL_ARB_multitexture", "GL_EXT_paletted_texture"], scan.Extensions.Select(e => e.Name));
        var bytes = File.ReadAllBytes(programs.OpenGl);
        Assert.All(scan.Extensions, e => Assert.Equal(
            e.Name, Encoding.ASCII.GetString(bytes, (int)e.Sightings.Single().Offset, e.Name.Length)));
    }

    [Fact]
    public void Libraries_loaded_at_run_time_show_as_text()
    {
        var scan = Scan(programs.Loader);
        Assert.Equal(["direct3d 9: Text d3d9.dll in loader.exe", "glide 2: Text glide2x.dll in loader.exe"], Told(scan.Renderers));
        var load = Assert.Single(scan.Proprietary);
        Assert.Equal(("glide2x.dll", SightingKind.Text), (load.Library.File, Assert.Single(load.Sightings).Kind));
    }

    /// <summary>A wrapper that draws with OpenGL makes no OpenGL renderer of the title.</summary>
    [Fact]
    public void Wrapper_left_in_the_folder_is_reported_apart()
    {
        var scan = Scan(programs.Direct3D8, programs.Wrapper);
        Assert.Equal(["direct3d 8"], scan.Renderers.Select(r => $"{r.Use.Api} {r.Use.Level}"));
        var shipped = Assert.Single(scan.Shipped);
        Assert.Equal(("ddraw.dll", "directdraw", false), (shipped.File, shipped.Library.Use.Api, shipped.Library.Proprietary));
        Assert.Equal(["opengl 1.1"], shipped.DrawsThrough.Select(r => $"{r.Use.Api} {r.Use.Level}"));
    }

    [Fact]
    public void Library_in_a_subfolder_is_shipped_too() => Assert.Equal(
        ["bin/GLIDE3X.DLL"], TitleScanner.Scan([new TitleFile("bin/GLIDE3X.DLL", "MZ"u8.ToArray())]).Shipped.Select(s => s.File));

    /// <summary>
    /// A real open-source game as Debian packages it; none is packaged for Windows, so this one has text, and no import
    /// table. Its file is searched for the same words by plain comparison.
    /// </summary>
    [Fact]
    public void Packaged_game_shows_the_extensions_it_names()
    {
        var path = External.File("/usr/games/neverball", "neverball");
        var scan = Scan(path);
        Assert.Equal(["opengl "], scan.Renderers.Select(r => $"{r.Use.Api} {r.Use.Level}"));
        var text = Encoding.Latin1.GetString(File.ReadAllBytes(path));
        var named = text.Split('\0').Where(w => w.StartsWith("GL_EXT_", StringComparison.Ordinal) || w.StartsWith("GL_ARB_", StringComparison.Ordinal));
        Assert.Equal(named.Distinct().Order(StringComparer.Ordinal), scan.Extensions.Select(e => e.Name));
        Assert.All(scan.Extensions, e => Assert.Equal(text.IndexOf(e.Name, StringComparison.Ordinal), e.Sightings[0].Offset));
        Assert.NotEmpty(scan.Extensions);
    }

    [Fact]
    public void Order_of_files_does_not_matter()
    {
        string[] files = [programs.OpenGl, programs.DirectDraw, programs.Loader, programs.Wrapper];
        Assert.Equal(Everything(Scan(files)), Everything(Scan([.. files.Reverse()])));

        static string Everything(TitleScan scan) => string.Join('\n', [
            .. Told(scan.Renderers), .. scan.Extensions.Select(e => e.Name), .. scan.Shipped.Select(s => s.File),
            .. scan.Proprietary.Select(p => p.Library.File), .. scan.Faults.Select(f => $"{f.File} {f.Fault}"),
        ]);
    }

    [Fact]
    public void Dos_program_still_shows_its_text()
    {
        var scan = TitleScanner.Scan([new TitleFile("game.exe", Encoding.ASCII.GetBytes("MZ" + new string('\0', 80) + "GLIDE2X.OVL\0"))]);
        Assert.Equal(["glide 2: Text GLIDE2X.OVL in game.exe"], Told(scan.Renderers));
        Assert.Equal([new TitleFileFault("game.exe", new ExecutableFault(ExecutableFaultKind.NotPortableExecutable, 0x3C))], scan.Faults);
    }

    [Fact]
    public void Extensions_become_inferred_needs_of_unknown_strength()
    {
        var palettes = Word("tex-pal8", "GL_EXT_paletted_texture");
        var needs = CandidateNeeds.Of(Scan(programs.OpenGl), [palettes, Word("tex-dxt1", "GL_EXT_texture_compression_s3tc")]);
        var need = Assert.Single(needs);
        Assert.Equal(palettes.At(1), need.Capability);
        Assert.Equal((Grade.Inferred, Strength.Unknown), (CandidateNeed.Grade, CandidateNeed.Strength));
        Assert.Equal("gl.exe", Assert.Single(need.Sightings).File);

        static Feature Word(string id, string extension) => new()
        {
            Id = id,
            Name = id,
            Family = "textures",
            Detection = new Detection { OpenGlExtensions = [extension] },
            Evidence = new Evidence(Grade.Documented, null, Origin.None),
        };
    }

    [Theory]
    [InlineData("Lantern.EXE", true)]
    [InlineData("a/b.dll", true)]
    [InlineData("glide2x.ovl", true)]
    [InlineData("readme.txt", false)]
    [InlineData("noending", false)]
    public void Only_programs_and_libraries_are_opened(string name, bool opened) => Assert.Equal(opened, TitleScanner.IsOfInterest(name));
}

public class Finding_words_in_bytes
{
    private static IEnumerable<(string, long)> Words(string bytes) =>
        TextTokens.In(Encoding.Latin1.GetBytes(bytes)).Select(t => (t.Text, t.Offset));

    [Theory]
    [InlineData("\u0001alpha\0beta5\u00ff", "alpha@1 beta5@7")]
    [InlineData("w\0i\0d\0e\0r\0\0\0plain", "wider@0 plain@12")]
    [InlineData("abcd efgh", "")]
    [InlineData("x\0alpha", "alpha@2")]
    public void Words_of_five_characters_are_found(string bytes, string words) =>
        Assert.Equal(words, string.Join(' ', Words(bytes).Select(w => $"{w.Item1}@{w.Item2}")));

    [Fact]
    public void Overlong_words_are_passed_over() => Assert.Empty(Words(new string('x', 200)));
}
