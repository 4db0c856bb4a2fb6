using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.FaultAssert;

namespace FeatureMatrix.Tests.Loading;

public sealed class A_key_that_the_format_does_not_know
{
    [Fact]
    public void Names_the_nearest_legal_key() => Gives(
        "chips: {c: {name: C, makr: M}}",
        "world.yaml(1,22): error FM101: unknown key 'makr' in chip 'c'; did you mean 'maker'?");

    [Fact]
    public void Lists_the_legal_keys_where_none_is_near() => Gives(
        "chips: {c: {name: C, colour: green}}",
        "world.yaml(1,22): error FM101: unknown key 'colour' in chip 'c'; it may have generation, grade, like, maker, name, notes, source, supply, year");

    [Fact]
    public void Is_found_at_the_top_of_a_file() => Gives(
        "chip: {c: {name: C}}",
        "world.yaml(1,1): error FM101: unknown key 'chip' in a file; did you mean 'chips'?");

    [Fact]
    public void Is_found_inside_inner_maps() => Gives(
        """
        chips: {c: {name: C}}
        cards: {k: {name: K, chip: c, source: manual, clocks: {cor: 90 MHz}}}
        """,
        "world.yaml(2,56): error FM101: unknown key 'cor' in 'clocks' of card 'k'; did you mean 'core'?");

    [Fact]
    public void Is_found_in_a_long_statement() => Gives(
        "chips: {c: {name: C, source: manual, supply: {fog-table: {is: yes, form: '2.10'}}}}",
        "world.yaml(1,68): error FM101: unknown key 'form' in 'fog-table'; did you mean 'from'?");

    [Fact]
    public void Does_not_count_as_written_where_its_value_is_empty() =>
        Assert.Equal("", Worlds.Load("chips: {c: {name: C, maker: , notes: null}}").Chips[0].Maker);
}

public sealed class A_key_that_is_missing
{
    [Fact]
    public void Is_named() => Gives(
        """
        chips: {c: {maker: M}}
        cards: {k: {name: K, source: manual}}
        """,
        "world.yaml(1,12): error FM102: chip 'c' needs the key 'name'",
        "world.yaml(2,12): error FM102: card 'k' needs the key 'chip'");

    [Fact]
    public void Of_an_entity_that_could_not_be_made_brings_no_second_fault() => Gives(
        """
        cards: {k: {name: K, source: manual}}
        specimens: {s: {card: k}}
        """,
        "world.yaml(1,12): error FM102: card 'k' needs the key 'chip'");

    [Fact]
    public void Leaves_a_title_without_a_path_to_the_screen() => Gives(
        """
        titles:
          salt-marsh: {name: Salt Marsh, source: manual}
          dune: {name: Dune Walk, source: manual, os: [dos], renderers: {a: {}, b: {api: vga, software: yes}}}
          reed: {name: Reed Bank, source: manual, renderers: {a: {api: vga}}}
        """,
        "world.yaml(2,3): error FM102: title 'salt-marsh' needs the key 'renderers'",
        "world.yaml(3,66): error FM111: renderer 'a' of title 'dune' draws through an 'api' or is 'software: yes', and always one of these",
        "world.yaml(3,73): error FM111: renderer 'b' of title 'dune' draws through an 'api' or is 'software: yes', and always one of these",
        "world.yaml(4,55): error FM102: renderer 'a' of title 'reed' needs the key 'os'");
}

public sealed class Something_that_is_written_twice
{
    [Fact]
    public void Is_a_fault_as_a_key() => Gives(
        """
        chips:
          c: {name: C, year: 1998, name: D}
        """,
        "world.yaml(2,28): error FM104: key 'name' occurs a second time; the first is in line 2");

    [Fact]
    public void Is_a_fault_as_an_id_in_two_files()
    {
        var result = FeatureMatrix.Loading.CollectionLoader.Load(
            [new("b.yaml", "chips: {c: {name: C}}"), new("a.yaml", "chips:\n  c: {name: C}")]);

        Assert.Equal(
            "b.yaml(1,9): error FM104: chip 'c' is defined a second time; the first is at a.yaml(2,3)", string.Join('\n', result.Faults));
    }

    [Fact]
    public void Is_a_fault_as_a_feature_and_an_api() => Gives(
        "apis: {fog-table: {name: F, source: manual}}",
        "world.yaml(1,8): error FM104: feature 'fog-table' is defined a second time; the first is at vocabulary/test.yaml(8,3)");

    [Fact]
    public void Is_a_fault_as_a_version() => Gives(
        """
        chips: {c: {name: C}}
        cards: {k: {name: K, chip: c, source: manual}}
        drivers: {d: {name: D, source: manual, os: [dos], lists: [k], versions: ["1.0", "1.0"]}}
        wrappers: {w: {name: W, source: manual, versions: [{version: "1", offers: {glide: "2"}, on: vga}, {version: "1", offers: {glide: "2"}, on: vga}]}}
        """,
        "world.yaml(3,81): error FM104: version '1.0' occurs a second time in driver 'd'",
        "world.yaml(4,99): error FM104: version '1' occurs a second time in wrapper 'w'");

    [Fact]
    public void Is_a_fault_as_a_need() => Gives(
        """
        titles:
          t: {name: T, source: manual, os: [dos], renderers: {a: {api: vga, needs: {must: [fog-table], cosmetic: [fog-table]}}}}
        """,
        "world.yaml(2,107): error FM104: need 'fog-table' occurs a second time in 'needs' of renderer 'a' of title 't'");

    [Fact]
    public void Is_a_fault_as_a_preset() => Gives(
        "titles: {t: {name: T, source: manual, os: [dos], renderers: {a: {api: vga, memory: {presets: [{name: p, textures: 1 MiB}, {name: p, textures: 2 MiB}]}}}}}",
        "world.yaml(1,123): error FM104: preset 'p' occurs a second time in 'memory' of renderer 'a' of title 't'");

    [Fact]
    public void Is_a_fault_as_the_name_of_the_collection() => Gives(
        "collection: {name: A}\ncollection: {name: B}",
        "world.yaml(2,1): error FM104: key 'collection' occurs a second time; the first is in line 1");
}

public sealed class A_value_of_the_wrong_shape
{
    [Fact]
    public void Is_named_with_what_is_wanted() => Gives(
        """
        chips: {c: {name: [C], supply: [fog-table]}}
        cards: [k]
        titles: {t: Salt Marsh}
        observations: {title: t}
        """,
        "world.yaml(1,19): error FM105: 'name' wants a text, not a list",
        "world.yaml(1,32): error FM105: 'supply' wants a map of keys, not a list",
        "world.yaml(2,8): error FM105: 'cards' wants a map of keys, not a list",
        "world.yaml(3,13): error FM105: title 't' wants a map of keys, not a text",
        "world.yaml(4,15): error FM105: 'observations' wants a list, not a map of keys");

    [Fact]
    public void Is_named_with_an_example_among_needs() => Gives(
        """
        titles:
          a: {name: A, source: manual, os: [dos], renderers: {r: {api: vga, needs: [fog-table]}}}
          b: {name: B, source: manual, os: [dos], renderers: {r: {api: vga, needs: {must: [[fog-table]], severe: {tex-pal8: [x]}}}}}
        """,
        "world.yaml(2,76): error FM105: 'needs' of renderer 'r' of title 'a' wants features under how badly it shows without them, such as {severe: [fog-table], cosmetic: [tex-pal8]}, not a list",
        "world.yaml(3,84): error FM105: a need wants a feature, or a map with 'need' or 'any-of', not a list",
        "world.yaml(3,117): error FM105: 'tex-pal8' wants the effect in words, or a map of keys, not a list");

    [Fact]
    public void Is_found_in_a_file_that_is_a_list() => Gives(
        "- chips", "world.yaml(1,1): error FM105: a file wants a map of keys, not a list");

    [Fact]
    public void Is_found_in_a_statement() => Gives(
        "chips: {c: {name: C, source: manual, supply: {fog-table: [[yes]]}}}",
        "world.yaml(1,59): error FM105: 'fog-table' wants a text or a map of keys, not a list");

    [Fact]
    public void May_be_one_text_where_a_list_is_wanted()
    {
        var catalog = Worlds.Load(
            """
            chips: {c: {name: C}}
            cards: {k: {name: K, chip: c, source: manual}}
            drivers: {d: {name: D, source: manual, os: dos, lists: k, versions: ["1"]}}
            """);

        Assert.Equal(("dos", "k"), (catalog.Drivers.Single().Oses.Single().Id, catalog.Drivers.Single().Lists.Single().Id));
    }
}

public sealed class An_id_that_is_none
{
    [Theory]
    [InlineData("Salt Marsh")]
    [InlineData("salt_marsh")]
    [InlineData("salt@marsh")]
    [InlineData("-salt")]
    public void Is_a_fault(string id) => Gives(
        $"chips: {{'{id}': {{name: C}}}}",
        $"world.yaml(1,9): error FM106: '{id}' is no id; an id has small letters, digits, hyphens and points, for example 'nl-4'");

    [Fact]
    public void Is_a_fault_for_renderers_too() => Gives(
        "titles: {t: {name: T, source: manual, os: [dos], renderers: {Main One: {api: vga}}}}",
        "world.yaml(1,62): error FM106: 'Main One' is no id; an id has small letters, digits, hyphens and points, for example 'nl-4'");
}
