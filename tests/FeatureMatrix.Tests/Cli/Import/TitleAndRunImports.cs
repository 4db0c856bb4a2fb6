using FeatureMatrix.Model;
using FeatureMatrix.Tests.Importing.Executables;

namespace FeatureMatrix.Tests.Cli.Import;

/// <summary>A title's folder with programs that mingw-w64 built here (Debian packages gcc-mingw-w64-*), and bench logs.</summary>
public sealed class TitleAndRunImports(MingwPrograms programs)
{
    [Fact]
    public void Programs_become_renderers_and_needs_of_unknown_strength()
    {
        using var bench = new ImportBench();
        var folder = Directory.CreateDirectory(bench.PathOf("Gravel Tide")).FullName;
        File.Copy(programs.OpenGl, Path.Combine(folder, "gl.exe"));
        File.Copy(programs.DirectDraw, Path.Combine(folder, "draw7.exe"));
        bench.Done("import title --os windows-98se", folder, "--write");

        var title = Assert.Single(bench.Load().Titles);
        Assert.Equal(("gravel-tide", "Gravel Tide"), (title.Id, title.Name));
        Assert.Equal(["direct3d 7", "opengl 1.1"], title.Renderers.Select(renderer => renderer.Api.ToString()!).Order());
        var gl = title.Renderers.Single(renderer => renderer.Id == "opengl");
        Assert.All(gl.Needs, need => Assert.Equal((Strength.Unknown, Grade.Inferred), (need.Strength, need.Evidence.Grade)));
        Assert.Contains("tex-pal8", gl.Needs.Select(need => need.Choices.Single().Feature.Id));
        Assert.StartsWith(
            "GL_EXT_paletted_texture in gl.exe at 0x",
            gl.Needs.Single(need => need.Choices[0].Feature.Id == "tex-pal8").Evidence.Source!.Text, StringComparison.Ordinal);
        Assert.EndsWith("nothing would change.\n", bench.Done("import title --os windows-98se", folder, "--write"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_renderer_that_somebody_documented_stays_as_it_is()
    {
        const string ByHand = "collection: {name: Bench}\ntitles:\n  tide: {name: Tide, os: [windows-98se], source: Its manual, renderers: {gl: {api: opengl 1.2, needs: {must: [tex-pal8]}}}}\n";
        using var bench = new ImportBench(ByHand);
        var folder = Directory.CreateDirectory(bench.PathOf("Tide")).FullName;
        File.Copy(programs.OpenGl, Path.Combine(folder, "gl.exe"));
        Assert.EndsWith("nothing would change.\n", bench.Done("import title --os windows-98se", folder, "--write"), StringComparison.Ordinal);
        Assert.Equal(ByHand, bench.Texts()["collection.yaml"]);
    }

    [Fact]
    public void A_bench_log_joins_the_others_once()
    {
        using var bench = new ImportBench(
            """
            collection: {name: Bench}
            chips: {ox: {name: OX, source: The box}}
            cards: {ox4: {name: Ostrel 4, chip: ox, source: The box}}
            titles: {tide: {name: Tide, os: [windows-98se], source: Its manual, renderers: {gl: {api: opengl 1.2}}}}

            """);
        var log = bench.Write("Spring log.txt", "fps;card;title;run\n41,7;ox4;tide;1\n41,7;ox4;tide;2\n"u8.ToArray());
        bench.Done("import runs", log, "--write");
        Assert.Equal([41.7, 41.7], bench.Load().Runs.Select(run => run.Fps!.Value));
        Assert.EndsWith("nothing would change.\n", bench.Done("import runs", log, "--write"), StringComparison.Ordinal);

        File.AppendAllText(log, "39,9;ox4;tide;3\n");
        bench.Done("import runs", log, "--write");
        Assert.Equal(["collection.yaml", "runs/spring-log-2.csv", "runs/spring-log.csv"], bench.Texts().Keys.Order());
        Assert.Equal([39.9, 41.7, 41.7], bench.Load().Runs.Select(run => run.Fps!.Value).Order());
    }

    [Fact]
    public void A_bench_log_with_a_fault_is_refused_with_its_line()
    {
        using var bench = new ImportBench();
        var log = bench.Write("log.csv", "title,card,fps\ntide,ox4,fast\n"u8.ToArray());
        Assert.Equal(1, bench.Run("import runs", log, "--write"));
        Assert.StartsWith($"{log}(2,1): error FM109: 'fast' is no value of 'fps'; it wants a number such as 59.9", bench.Told, StringComparison.Ordinal);
    }
}
