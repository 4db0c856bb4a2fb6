using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading.Captures;

/// <summary>Two boards of one chip, a title whose ferry scene shows table fog, and captures of it as a test wants them.</summary>
internal static class CaptureWorld
{
    public const string Hardware =
        """
        people: {lantern: {name: Ida Quill}, ferryman: {name: Tam Brody, name-may-be-shown: yes}}
        chips:
          heron: {name: Heron, source: manual, supply: {fog-table: yes}}
          coot: {name: Coot, source: manual}
        cards:
          heron-16: {name: Heron 16, chip: heron, source: manual}
          heron-32: {name: Heron 32, chip: heron, source: manual}
          coot-8: {name: Coot 8, chip: coot, source: manual}
        specimens:
          heron-a: {card: heron-16}
        drivers:
          nl-9x:
            name: NL 9x
            os: windows-98se
            lists: [heron-16]
            offers: {direct3d: "6"}
            source: readme
            versions: [{version: "1.0"}, {version: "2.0", supply: {fog-table: no}}]
        titles:
          gravel-tide:
            name: Gravel Tide
            os: windows-98se
            source: notes
            renderers: {d3d: {api: direct3d 6, needs: {severe: {fog-table: The far shore shows}}}}
          mole-harbour: {name: Mole Harbour, os: windows-98se, source: notes, renderers: {d3d: {api: direct3d 6}}}

        """;

    /// <summary>What both pictures of a pair state, but for what a test changes.</summary>
    public const string Usual = "title: gravel-tide, scene: ferry, card: heron-16, os: windows-98se, wrapper: none, kind: frame-grab, date: 2026-03-01, by: lantern, alt: A ferry";

    /// <summary>A collection with these captures and the picture files that they name.</summary>
    public static LoadResult Load(string captures, params (string Path, byte[] Bytes)[] pictures) => CollectionLoader.Load(
        [new SourceText("vocabulary/test.yaml", Worlds.Vocabulary), new SourceText("hardware.yaml", Hardware), new SourceText("seen/ferry.yaml", $"captures:\n{captures}")],
        pictures: [.. pictures.Select(picture => new SourcePicture(picture.Path, most => picture.Bytes[..Math.Min(most, picture.Bytes.Length)]))]);

    /// <summary>A pair: the later driver loses what the earlier one shows.</summary>
    public static string Pair(string with = Usual, string without = Usual, string others = "") =>
        $$"""
          with-fog: {{{with}}, driver: nl-9x 1.0, picture: with.png}
          without-fog: {{{without}}, driver: nl-9x 2.0, picture: shots/without.png, loses: fog-table, baseline: with-fog}
        {{others}}
        """;
}
