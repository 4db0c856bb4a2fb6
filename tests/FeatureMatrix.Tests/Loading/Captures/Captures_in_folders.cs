using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Model;
using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.Captures.CaptureWorld;

namespace FeatureMatrix.Tests.Loading.Captures;

/// <summary>A shared collection with a pair, and one that builds on it.</summary>
public sealed class Captures_in_folders : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("captures-").FullName;

    public Captures_in_folders()
    {
        Write("words/words.yaml", Worlds.Vocabulary);
        Write("shared/collection.yaml", "collection: {name: Shared}\n" + Hardware);
        Write("shared/seen/ferry.yaml", $"captures:\n{Pair()}");
        Write("shared/seen/with.png", PictureMaker.Png(8, 6));
        Write("shared/seen/shots/without.png", PictureMaker.Png(8, 6, 2));
        Write("mine/collection.yaml", "collection: {name: Mine, builds-on: ../shared}");
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Bring_the_pictures_of_their_own_collection()
    {
        var captures = Load().Catalog!.Captures;
        Assert.Equal(["../shared/seen/with.png", "../shared/seen/shots/without.png"], captures.Select(capture => capture.Picture!.File));
    }

    [Fact]
    public void May_stand_on_a_baseline_of_a_collection_below()
    {
        Write("mine/mine.yaml", $"captures:\n  mine: {{{Usual}, driver: nl-9x 2.0, picture: MINE.PNG, loses: fog-table, baseline: with-fog}}");
        Write("mine/MINE.PNG", PictureMaker.Png(8, 6, 3));
        Assert.Equal("with-fog", Load().Catalog!.Captures[0].Baseline!.Id);
    }

    [Fact]
    public void Do_not_change_hands()
    {
        Write("mine/mine.yaml", "captures: {with-fog: {by: somebody}}");
        Assert.Contains("../shared/seen/ferry.yaml(2,3): error FM104: capture 'with-fog' is defined a second time; the first is at mine.yaml(1,12)", Faults());
    }

    [Fact]
    public void Reach_into_no_other_folder_by_links()
    {
        Write("elsewhere/secret.png", PictureMaker.Png(8, 6, 9));
        foreach (var (link, target) in (ReadOnlySpan<(string, string)>)[("with.png", "secret.png"), ("folder", ".")])
        {
            File.Delete(Path.Combine(_root, "shared/seen", link));
            File.CreateSymbolicLink(Path.Combine(_root, "shared/seen", link), Path.Combine(_root, "elsewhere", target));
        }

        Assert.Equal(
            ["../shared/seen/ferry.yaml(2,188): error FM103: there is no picture file '../shared/seen/with.png', links and hidden files left aside; there is ../shared/seen/shots/without.png"],
            Faults());
        Write("shared/seen/ferry.yaml", $"captures:\n{Pair().Replace("picture: with.png", "picture: folder/secret.png", StringComparison.Ordinal)}");
        Assert.Contains("there is no picture file '../shared/seen/folder/secret.png'", Assert.Single(Faults()), StringComparison.Ordinal);
    }

    private LoadResult Load()
    {
        var texts = CollectionFolder.Read(Path.Combine(_root, "mine"), Path.Combine(_root, "words"));
        return CollectionLoader.Load(texts.Files, texts.Faults, pictures: texts.Pictures);
    }

    private IEnumerable<string> Faults() => Load().Faults.Where(fault => fault.Severity == Severity.Error).Select(fault => fault.ToString());

    private void Write(string path, string text) => Write(path, System.Text.Encoding.UTF8.GetBytes(text));

    private void Write(string path, byte[] bytes)
    {
        var file = Path.Combine(_root, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllBytes(file, bytes);
    }
}
