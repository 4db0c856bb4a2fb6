using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;

namespace FeatureMatrix.Loading;

/// <summary>
/// The folders of the collections that a collection builds on, as its <c>collection.yaml</c> names them. They are read before anything
/// is linked, because they decide which files there are.
/// </summary>
internal static class BaseFolders
{
    /// <summary>The key of the map <c>collection</c>.</summary>
    public const string Key = "builds-on";

    /// <summary>The file that may name them.</summary>
    public const string File = "collection.yaml";

    /// <summary>The words under the key in a file, with their places; none where it cannot be read, which the loader reports.</summary>
    public static IReadOnlyList<Scalar> In(SourceText file)
    {
        var faults = new FaultList();
        return NodeParser.Parse(file, faults) is Mapping root && Value(root, "collection") is Mapping collection
            ? Value(collection, Key) switch
            {
                Scalar { IsNothing: false } one => [one],
                Sequence list => [.. list.Items.OfType<Scalar>()],
                _ => [],
            }
            : [];
    }

    private static Node? Value(Mapping mapping, string key) => mapping.Entries.FirstOrDefault(entry => entry.Key?.Text == key).Value;
}
