using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Support;

/// <summary>Ten-line worlds with a bench log, which is the file <c>runs/log.csv</c>.</summary>
internal static class BenchWorlds
{
    public static Catalog Load(string yaml, string log, params (string Path, string Text)[] more)
    {
        var result = Try(yaml, log, more);
        return result.Catalog ?? throw new InvalidOperationException(string.Join('\n', result.Faults));
    }

    public static LoadResult Try(string yaml, string log, params (string Path, string Text)[] more) => CollectionLoader.Load(
    [
        new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("world.yaml", yaml), new SourceText("runs/log.csv", log),
        .. more.Select(file => new SourceText(file.Path, file.Text)),
    ]);
}
