using FeatureMatrix.Cli;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The publish command and the folder it writes to.</summary>
public sealed class Publishing : IDisposable
{
    private const string World = OneBoard.World;

    private readonly string _folder = Directory.CreateTempSubdirectory("publish").FullName;

    public Publishing() => Write(World);

    private string Out => Path.Combine(_folder, "out");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Ends_with_where_to_look()
    {
        var (code, text, _) = Publish();
        Assert.Equal(ExitCode.Fine, code);
        Assert.Equal($"Published One board: 1 card, 1 title, 1 driver version, 0 wrapper versions.\nOpen {Out}/index.html in a browser, or {Out}/edition.xlsx in a spreadsheet.\n", text);
        Assert.True(File.Exists(Path.Combine(Out, "coverage", "low-mist", "dune.html")));
    }

    [Fact]
    public void Leaves_the_last_good_edition_where_the_data_has_a_fault()
    {
        Publish();
        var before = Snapshot();
        Write(World.Replace("fog-table: yes", "fog-tabel: yes", StringComparison.Ordinal));
        var (code, _, messages) = Publish();
        Assert.Equal(ExitCode.Faults, code);
        Assert.Contains("nothing was written", messages, StringComparison.Ordinal);
        Assert.Equal(before, Snapshot());
    }

    [Fact]
    public void Leaves_the_last_good_edition_where_a_template_has_a_fault()
    {
        Publish();
        var before = Snapshot();
        var templates = Directory.CreateDirectory(Path.Combine(_folder, "mine", "pages")).Parent!.FullName;
        File.WriteAllText(Path.Combine(templates, "pages", "about.html"), "{{ nothing }}");
        var (code, _, messages) = Publish("--templates", templates);
        Assert.Equal(ExitCode.Faults, code);
        Assert.Contains($"{Path.Combine(templates, "pages", "about.html")}(1,", messages, StringComparison.Ordinal);
        Assert.Equal(before, Snapshot());
    }

    [Fact]
    public void Keeps_what_others_put_into_the_folder_and_removes_what_it_wrote_itself()
    {
        Publish();
        Directory.CreateDirectory(Path.Combine(Out, "mine"));
        File.WriteAllText(Path.Combine(Out, "mine", "notes.txt"), "keep");
        Write(World.Replace("low-mist", "high-mist", StringComparison.Ordinal));
        Publish();
        Assert.Equal("keep", File.ReadAllText(Path.Combine(Out, "mine", "notes.txt")));
        Assert.True(File.Exists(Path.Combine(Out, "titles", "high-mist.html")));
        Assert.False(File.Exists(Path.Combine(Out, "titles", "low-mist.html")));
    }

    [Fact]
    public void Refuses_a_folder_that_others_filled()
    {
        Directory.CreateDirectory(Out);
        File.WriteAllText(Path.Combine(Out, "index.html"), "somebody else's");
        var (code, _, messages) = Publish();
        Assert.Equal(ExitCode.Usage, code);
        Assert.EndsWith($"{Out} holds files that publish did not write. Name an empty folder, or one that it wrote before, with --out.\n", messages, StringComparison.Ordinal);
        Assert.Equal("somebody else's", File.ReadAllText(Path.Combine(Out, "index.html")));
    }

    [Fact]
    public void Writes_into_a_folder_that_only_an_ignore_file_keeps()
    {
        Directory.CreateDirectory(Out);
        File.WriteAllText(Path.Combine(Out, ".gitignore"), "*\n");
        Assert.Equal(ExitCode.Fine, Publish().Code);
        Assert.Equal("*\n", File.ReadAllText(Path.Combine(Out, ".gitignore")));
    }

    [Fact]
    public void Stopped_between_its_last_two_steps_brings_the_old_edition_back_first()
    {
        Publish();
        File.WriteAllText(Path.Combine(Out, "notes.txt"), "keep");
        Directory.Move(Out, Path.Combine(_folder, ".out.before"));
        Directory.CreateDirectory(Path.Combine(_folder, ".out.being-written"));
        Publish();
        Assert.Equal("keep", File.ReadAllText(Path.Combine(Out, "notes.txt")));
        Assert.False(Directory.Exists(Path.Combine(_folder, ".out.before")));
        Assert.False(Directory.Exists(Path.Combine(_folder, ".out.being-written")));
    }

    [Fact]
    public void Refuses_a_date_that_is_none()
    {
        var (code, _, messages) = Publish("--date", "14.3.2026");
        Assert.Equal(ExitCode.Usage, code);
        Assert.Equal("--date 14.3.2026: write it as year-month-day, for example 2026-03-14.\n", messages);
    }

    private void Write(string world)
    {
        var data = Directory.CreateDirectory(Path.Combine(_folder, "data")).FullName;
        File.WriteAllText(Path.Combine(data, "collection.yaml"), world);
    }

    private (int Code, string Results, string Messages) Publish(params string[] more)
    {
        using var results = new StringWriter { NewLine = "\n" };
        using var messages = new StringWriter { NewLine = "\n" };
        var code = Application.Run(["publish", Path.Combine(_folder, "data"), "--out", Out, .. more], new Terminal(results, messages, useColour: false));
        return (code, results.ToString(), messages.ToString());
    }

    private string Snapshot() => string.Join('\n', Directory.EnumerateFiles(Out, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .Select(file => $"{file} {Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file)))}"));
}
