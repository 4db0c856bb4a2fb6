using System.Text;
using FeatureMatrix.Cli;
using FeatureMatrix.Cli.Files;
using FeatureMatrix.Rendering;

namespace FeatureMatrix.Tests.Cli;

/// <summary>The folder of editions when publishing is stopped, hindered, or done twice at once.</summary>
public sealed class Stopped_publishing : IDisposable
{
    private static readonly OutputFile[] First = [File_("index.html", "first"), File_("cards/dune.html", "first dune"), File_("cards/silt.html", "first silt")];
    private static readonly OutputFile[] Second = [File_("index.html", "second"), File_("cards/dune.html", "second dune"), File_("titles/low-mist.html", "second mist")];

    private readonly string _folder = Directory.CreateTempSubdirectory("stopped").FullName;

    private string Out => Path.Combine(_folder, "out");

    public void Dispose()
    {
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(_folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void Leaves_a_whole_edition_and_all_foreign_files_after_any_number_of_steps()
    {
        var count = StepCount();
        Assert.True(count > 10);
        for (var stopAfter = 0; stopAfter <= count; stopAfter++)
        {
            Prepare();
            foreach (var step in new OutputFolder(Out).Steps(Second).Take(stopAfter))
                step();
            var ours = Ours();
            Assert.True(ours == Content(First) || ours == Content(Second), $"after {stopAfter} steps: {ours}");
            AssertForeignFilesAreThere();

            Assert.Null(new OutputFolder(Out).Replace(Second));
            Assert.Equal(Content(Second), Ours());
            AssertForeignFilesAreThere();
            Assert.Equal([Out], Directory.GetFileSystemEntries(_folder));
        }
    }

    [Fact]
    public void Keeps_what_somebody_adds_or_changes_while_it_writes()
    {
        var count = StepCount();
        for (var at = 0; at <= count; at++)
        {
            Prepare();
            var done = 0;
            foreach (var step in new OutputFolder(Out).Steps(Second))
            {
                if (done++ == at)
                {
                    File.WriteAllText(Path.Combine(Out, "mine", "notes.txt"), "changed");
                    File.SetLastWriteTimeUtc(Path.Combine(Out, "mine", "notes.txt"), DateTime.UtcNow.AddMinutes(1));
                    File.WriteAllText(Path.Combine(Out, "added.txt"), "added");
                }

                step();
            }

            if (at < count)
                Assert.Equal(("changed", "added"), (File.ReadAllText(Path.Combine(Out, "mine", "notes.txt")), File.ReadAllText(Path.Combine(Out, "added.txt"))));
            Assert.Equal(Content(Second), Ours());
        }
    }

    [Fact]
    public void Never_follows_a_link_in_the_folder()
    {
        var elsewhere = Directory.CreateDirectory(Path.Combine(_folder, "elsewhere")).FullName;
        File.WriteAllText(Path.Combine(elsewhere, "precious.txt"), "precious");
        Prepare();
        Directory.CreateSymbolicLink(Path.Combine(Out, "shortcut"), elsewhere);
        File.CreateSymbolicLink(Path.Combine(Out, "lost"), Path.Combine(_folder, "nowhere"));
        Assert.Null(new OutputFolder(Out).Replace(Second));
        Assert.Equal((elsewhere, Path.Combine(_folder, "nowhere")), (new DirectoryInfo(Path.Combine(Out, "shortcut")).LinkTarget, new FileInfo(Path.Combine(Out, "lost")).LinkTarget));
        Assert.Equal(["precious.txt"], Directory.GetFileSystemEntries(elsewhere).Select(Path.GetFileName));
        Assert.Equal(Content(Second), Ours());
    }

    [Fact]
    public void Through_a_link_to_the_folder_keeps_the_link()
    {
        Prepare();
        var link = Path.Combine(_folder, "link");
        Directory.CreateSymbolicLink(link, Out);
        Assert.Null(new OutputFolder(link).Replace(Second));
        Assert.Equal((Out, Content(Second)), (new DirectoryInfo(link).LinkTarget, Ours()));
    }

    [Fact]
    public void A_list_of_our_files_that_names_others_outside_removes_nothing_there()
    {
        Prepare();
        var outside = Path.Combine(_folder, "outside.txt");
        File.WriteAllText(outside, "x");
        File.AppendAllText(Path.Combine(Out, OutputFolder.ManifestName), "../outside.txt\n" + outside + "\n");
        Assert.Null(new OutputFolder(Out).Replace(Second));
        Assert.True(File.Exists(outside));
    }

    [Theory]
    [InlineData("titles", "a file where the edition has a folder")]
    [InlineData("Index.HTML", "a name that differs in case only")]
    [InlineData("titles/low-mist.html/notes.txt", "a folder where the edition has a file")]
    public void A_foreign_file_in_the_way_stops_it_before_anything_changes(string name, string why)
    {
        Assert.NotEmpty(why);
        Prepare();
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(Out, name))!);
        File.WriteAllText(Path.Combine(Out, name), "mine");
        if (name == "Index.HTML" && File.ReadAllText(Path.Combine(Out, "index.html")) == "mine")
            return; // A file system that takes both for one name has no clash.
        var problem = Assert.Throws<UsageException>(() => new OutputFolder(Out).Replace(Second));
        Assert.Equal($"{Path.Combine(Out, name)} was not written by publish, and the new edition has a file of that name. Move it away first.", problem.Message);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(Out, name)));
    }

    [Fact]
    public void Two_at_once_do_not_mix()
    {
        Prepare();
        using (FileLock.Take(Path.Combine(_folder, ".out.locked"), "held"))
        {
            var problem = Assert.ThrowsAny<IOException>(() => new OutputFolder(Out).Replace(Second));
            Assert.Equal($"Another publish is writing to {Out}. Wait until it has finished", problem.Message);
        }

        Assert.Equal(Content(First), Ours());
        Parallel.For(0, 20, i =>
        {
            try
            {
                new OutputFolder(Out).Replace(i % 2 == 0 ? First : Second);
            }
            catch (IOException held) when (held.Message.StartsWith("Another publish", StringComparison.Ordinal))
            {
                // One of two is told to wait.
            }
        });
        Assert.Contains(Ours(), new[] { Content(First), Content(Second) });
        AssertForeignFilesAreThere();
        Assert.Equal([Out], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_failed_write_leaves_the_last_edition_and_takes_its_half_away()
    {
        Prepare();
        // A name that no file system takes stands in for a disk that is full at that file.
        OutputFile[] unwritable = [.. Second, File_($"titles/{new string('x', 300)}.html", "x")];
        var problem = Assert.Throws<IOException>(() => new OutputFolder(Out).Replace(unwritable));
        Assert.StartsWith($"The edition could not be written to {Out}: ", problem.Message, StringComparison.Ordinal);
        Assert.EndsWith("The last edition there is as it was. Free some space, mend the permissions of the folder and of the one that holds it, or name another folder with --out", problem.Message, StringComparison.Ordinal);
        Assert.Equal(Content(First), Ours());
        Assert.Equal([Out], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_file_in_place_of_the_folder_is_refused()
    {
        File.WriteAllText(Out, "x");
        Assert.Equal($"{Out} is a file. Name a folder with --out.", Assert.Throws<UsageException>(() => new OutputFolder(Out)).Message);
    }

    /// <summary>How many steps the second edition takes after the first with foreign files.</summary>
    private int StepCount()
    {
        Prepare();
        var count = 0;
        foreach (var step in new OutputFolder(Out).Steps(Second))
        {
            step();
            count++;
        }

        return count;
    }

    private void Prepare()
    {
        if (Directory.Exists(Out))
            Directory.Delete(Out, recursive: true);
        new OutputFolder(Out).Replace(First);
        Directory.CreateDirectory(Path.Combine(Out, "mine", "empty"));
        File.WriteAllText(Path.Combine(Out, "mine", "notes.txt"), "keep");
        File.WriteAllText(Path.Combine(Out, "cards", "photo.png"), "keep too");
    }

    private void AssertForeignFilesAreThere()
    {
        Assert.Equal(("keep", "keep too"), (File.ReadAllText(Path.Combine(Out, "mine", "notes.txt")), File.ReadAllText(Path.Combine(Out, "cards", "photo.png"))));
        Assert.True(Directory.Exists(Path.Combine(Out, "mine", "empty")));
    }

    private string Ours() => string.Join('\n', Directory.EnumerateFiles(Out, "*.html", SearchOption.AllDirectories)
        .Select(file => $"{Path.GetRelativePath(Out, file).Replace('\\', '/')} {File.ReadAllText(file)}").Order(StringComparer.Ordinal));

    private static string Content(OutputFile[] files) =>
        string.Join('\n', files.Select(file => $"{file.Path} {Encoding.UTF8.GetString(file.Bytes)}").Order(StringComparer.Ordinal));

    private static OutputFile File_(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));
}
