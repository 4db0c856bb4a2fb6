using FeatureMatrix.Loading;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Tests.Loading.Schema;
using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.FaultAssert;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_reference_that_leads_nowhere
{
    private const string Hardware =
        """
        chips: {nl-4: {name: NL-4}}
        cards: {nl4-retail: {name: Ostrelmark 4, chip: nl-4, source: manual}}
        drivers: {nl-9x: {name: For 9x, source: manual, os: [windows-98se], lists: [nl4-retail], versions: ["1.02", "2.10"]}}
        wrappers: {duskglass: {name: Duskglass, source: manual, versions: [{version: "1.4", offers: {glide: "2"}, on: direct3d 6}]}}
        titles: {salt-marsh: {name: Salt Marsh, source: manual, os: [windows-98se], renderers: {direct3d: {api: direct3d 6}, glide: {api: glide 2}}}}

        """;

    [Fact]
    public void Names_the_nearest_feature_also_where_words_changed_places() => Gives(
        "chips: {c: {name: C, source: manual, supply: {table-fogg: yes}}}",
        "world.yaml(1,47): error FM103: unknown feature 'table-fogg'; did you mean 'fog-table'?");

    [Fact]
    public void Lists_the_features_that_hold_the_word() => Assert.Contains(
        "x.yaml(1,67): error FM103: unknown feature 'fog'; did you mean fog-coord, fog-range, fog-table, fog-vertex, fog-w or fog-z?",
        CollectionLoader.Load([.. SchemaFile.VocabularyFiles, new SourceText("x.yaml", "chips: {c: {name: C, source: {text: T, grade: measured}, supply: {fog: yes}}}")]).Faults.Select(fault => fault.ToString()));

    [Fact]
    public void Lists_what_there_is_where_nothing_is_near() => Gives(
        "chips: {c: {name: C}}\ncards: {k: {name: K, chip: other, source: manual}}",
        "world.yaml(2,28): error FM103: unknown chip 'other'; there is c");

    [Fact]
    public void Says_so_where_there_is_nothing_at_all() => Gives(
        "specimens: {s: {card: nl4-retail}}",
        "world.yaml(1,23): error FM103: unknown card 'nl4-retail'; there is none");

    [Fact]
    public void Is_a_fault_for_every_kind() => Gives(
        Hardware +
        """
        observations:
          - {title: salt-mash, renderer: direct3d, runs: yes, by: Ada}
          - {title: salt-marsh, renderer: direct3, runs: yes, by: Ada}
          - {title: salt-marsh, runs: yes, by: Ada}
          - {title: salt-marsh, renderer: glide, runs: yes, by: Ada, card: nl4-retal, os: windows-98, rig: bench}
          - {title: salt-marsh, renderer: glide, runs: yes, by: Ada, driver: nl-9x 2.1, wrapper: duskglass@1.3}
          - {title: salt-marsh, renderer: glide, runs: yes, by: Ada, driver: nl-9, wrapper: duskglas}
          - {title: salt-marsh, renderer: glide, runs: yes, by: Ada, driver: nl-9x, specimen: a}
        """,
        "world.yaml(7,13): error FM103: unknown title 'salt-mash'; did you mean 'salt-marsh'?",
        "world.yaml(8,35): error FM103: unknown renderer of title 'salt-marsh' 'direct3'; did you mean 'direct3d'?",
        "world.yaml(9,5): error FM102: an observation needs the key 'renderer'",
        "world.yaml(10,68): error FM103: unknown card 'nl4-retal'; did you mean 'nl4-retail'?",
        "world.yaml(10,83): error FM103: unknown operating system 'windows-98'; did you mean 'windows-95'?",
        "world.yaml(10,100): error FM103: unknown rig 'bench'; there is none",
        "world.yaml(11,70): error FM103: unknown version of driver nl-9x '2.1'; did you mean '2.10'?",
        "world.yaml(11,90): error FM103: unknown version of wrapper duskglass '1.3'; did you mean '1.4'?",
        "world.yaml(12,70): error FM103: unknown driver 'nl-9'; did you mean 'nl-9x'?",
        "world.yaml(12,85): error FM103: unknown wrapper 'duskglas'; did you mean 'duskglass'?",
        "world.yaml(13,70): error FM103: driver 'nl-9x' needs a version here; there is 1.02, 2.10",
        "world.yaml(13,87): error FM103: unknown specimen 'a'; there is none");

    [Fact]
    public void Is_a_fault_for_an_api_that_is_a_feature() => Gives(
        "titles: {t: {name: T, source: manual, os: [dos], renderers: {a: {api: fog-table}}}}",
        "world.yaml(1,71): error FM103: unknown API 'fog-table'; there is direct3d, directdraw, glide, opengl, vesa, vga");

    [Fact]
    public void Is_a_fault_for_a_source_in_one_word() => Gives(
        "chips: {c: {name: C, source: manul, supply: {fog-table: yes}}}",
        "world.yaml(1,30): error FM103: unknown source 'manul'; did you mean 'manual'?",
        "world.yaml(1,57): warning FM201: chip 'c': this statement names no source, so it counts as inferred at best");

    [Fact]
    public void Is_a_fault_for_a_preset() => Gives(
        """
        titles:
          t: {name: T, source: manual, os: [dos], renderers: {a: {api: vga, needs: {must: [{need: tex-8888, when: {preset: hgih}}]}, memory: {presets: [{name: high, textures: 4 MiB}]}}}}
        libraries: {l: {name: L, titles: {t: {preset: low}}}}
        """,
        "world.yaml(2,84): error FM103: unknown preset of renderer 't/a' 'hgih'; did you mean 'high'?",
        "world.yaml(3,39): error FM103: unknown preset of title 't' 'low'; there is high");

    [Fact]
    public void Is_not_reported_where_a_file_could_not_be_read()
    {
        var result = CollectionLoader.Load(
        [
            new("v.yaml", Worlds.Vocabulary), new("a.yaml", "cards: {k: {name: K, chip: c, source: manual, makre: M}}"), new("b.yaml", "chips: {c: {name: C}"),
        ]);

        Assert.Equal(
            [
                "a.yaml(1,47): error FM101: unknown key 'makre' in card 'k'; did you mean 'maker'?",
                "b.yaml(2,1): error FM003: cannot be read as YAML: While parsing a flow mapping, did not find expected ',' or '}'.",
            ],
            result.Faults.Select(fault => fault.ToString()));
    }
}

public sealed class The_nearest_word
{
    [Theory]
    [InlineData("fog-tabel", "fog-table")]
    [InlineData("table-fog", "fog-table")]
    [InlineData("Fog-Table", "fog-table")]
    [InlineData("tex-pal", "tex-pal8")]
    [InlineData("xyz", null)]
    [InlineData("", null)]
    public void Differs_in_a_third_at_most(string word, string? near) =>
        Assert.Equal(near, Nearest.To(word, ["fog-table", "tex-pal8", "mt-units"]));

    [Fact]
    public void Is_the_first_by_name_among_equals() => Assert.Equal("fog-b", Nearest.To("fog-a", ["fog-c", "fog-b"]));

    [Fact]
    public void Is_not_looked_for_in_very_long_words() =>
        Assert.Null(Nearest.To(new string('a', 65), [new string('a', 64)]));
}
