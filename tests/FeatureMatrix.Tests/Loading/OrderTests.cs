using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

public sealed class The_order_of_files_and_the_ends_of_lines
{
    /// <summary>Two halves of one world, the first of which refers to the second.</summary>
    private static readonly SourceText[] Files =
    [
        new("vocabulary/v.yaml", Worlds.Vocabulary),
        new("a.yaml", "cards:\n  k2: {name: K2, chip: c, source: manual}\n  k1: {name: K1, chip: c, source: manual}\nfacts:\n  - {card: k2, source: manual, fog-table: yes}\n"),
        new("b.yaml", "chips:\n  c:\n    name: |\n      Two\n      lines\n    source: manual\n    supply: {tex-pal8: no}\n"),
    ];

    private static string Describe(LoadResult result)
    {
        var catalog = result.Catalog!;
        return string.Join('\n', catalog.Cards.Select(card => $"{card} {card.Chip.Name}"))
            + "\n" + string.Join('\n', catalog.Facts.Select(fact => $"{A_world_with_one_of_everything.Describe(fact)} {fact.Evidence.Origin}"));
    }

    [Fact]
    public void Do_not_change_the_catalog()
    {
        var first = Describe(CollectionLoader.Load(Files));

        Assert.Equal(first, Describe(CollectionLoader.Load([.. Files.Reverse()])));
        Assert.Equal(first, Describe(CollectionLoader.Load([.. Files.Select(file => file with { Text = file.Text.Replace("\n", "\r\n") })])));
        Assert.Equal(first, Describe(CollectionLoader.Load([.. Files.Select(file => file with { Text = file.Text.Replace("\n", "\r") })])));
        Assert.StartsWith("k1 Two\nlines\nk2 Two\nlines\n", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Do_not_change_the_faults()
    {
        SourceText[] faulty =
        [
            new("b.yaml", "chips:\n  c: {name: C, makr: M}\n  d: {}\n"), new("a.yaml", "cards: {k: {name: K, chip: x, yaer: 1}}"), new("c.yaml", "chips: {c: {name: C}}"),
        ];

        var found = string.Join('\n', CollectionLoader.Load(faulty).Faults);

        Assert.Equal(
            """
            a.yaml(1,9): warning FM201: card 'k': this statement names no source, so it counts as inferred at best
            a.yaml(1,28): error FM103: unknown chip 'x'; there is c, d
            a.yaml(1,31): error FM101: unknown key 'yaer' in card 'k'; did you mean 'year'?
            b.yaml(2,16): error FM101: unknown key 'makr' in chip 'c'; did you mean 'maker'?
            b.yaml(3,6): error FM102: chip 'd' needs the key 'name'
            c.yaml(1,9): error FM104: chip 'c' is defined a second time; the first is at b.yaml(2,3)
            """,
            found);
        Assert.Equal(found, string.Join('\n', CollectionLoader.Load([.. faulty.Reverse()]).Faults));
        Assert.Equal(found, string.Join('\n', CollectionLoader.Load([.. faulty.Select(f => f with { Text = f.Text.Replace("\n", "\r\n") })]).Faults));
    }
}
