using FeatureMatrix.Tests.Support;
using static FeatureMatrix.Tests.Loading.FaultAssert;

namespace FeatureMatrix.Tests.Loading;

public sealed class Statements_that_one_source_cannot_mean
{
    [Fact]
    public void A_level_without_one_below_it() => Gives(
        "chips: {c: {name: C, source: manual, supply: {ps-version: [{level: '1.4', reach: at}, {is: no, level: '1.1'}]}}}",
        "world.yaml(1,60): error FM111: 'ps-version 1.4' is supplied here, and 'ps-version 1.1', which it includes, is denied by the same source in line 1");

    [Fact]
    public void Two_highest_levels() => Gives(
        "chips: {c: {name: C, source: manual, supply: {mt-units: ['2', '4']}}}",
        "world.yaml(1,63): error FM111: 'mt-units 4' is supplied here, and 'mt-units 3', which it includes, is denied by the same source in line 1");

    [Fact]
    public void A_feature_without_what_it_includes() => Gives(
        "chips:\n  c:\n    name: C\n    source: manual\n    supply:\n      tex-pal8: no\n      tex-pal-alpha: yes",
        "world.yaml(7,22): error FM111: 'tex-pal-alpha' is supplied here, and 'tex-pal8', which it includes, is denied by the same source in line 6");

    [Fact]
    public void Yes_and_no() => Gives(
        "chips: {c: {name: C, source: manual, supply: {fog-table: yes}}}\nfacts: [{chip: c, source: manual, fog-table: no}]",
        "world.yaml(2,46): error FM111: 'fog-table' is stated a second time and differently by the same source; the first is in line 1");

    [Theory]
    [InlineData("{source: notes, is: no}")]
    [InlineData("{source: readme, is: no}")]
    [InlineData("{os: dos, is: no}")]
    [InlineData("{api: opengl, is: no}")]
    public void Are_no_fault_with_another_grade_source_or_scope(string denial) => Gives(
        "chips: {c: {name: C, source: manual, supply: {tex-pal-alpha: yes, tex-pal8: DENIAL}}}".Replace("DENIAL", denial));

    [Fact]
    public void Are_found_in_what_a_wrapper_supplies() => Gives(
        "wrappers: {w: {name: W, source: manual, versions: [{version: '1', offers: {glide: '2'}, on: direct3d 6, supplies: {tex-pal8: no, tex-pal-alpha: emulated}}]}}",
        "world.yaml(1,145): error FM111: 'tex-pal-alpha' is supplied here, and 'tex-pal8', which it includes, is denied by the same source in line 1");

    [Fact]
    public void Are_found_in_copies_of_another_chip_too() => Gives(
        """
        chips:
          a: {name: A, source: manual, supply: {tex-pal8: yes, tex-pal-alpha: yes}}
          b: {name: B, source: manual, like: a, supply: {tex-pal8: no}}
        """,
        "world.yaml(2,71): error FM111: 'tex-pal-alpha' is supplied here, and 'tex-pal8', which it includes, is denied by the same source in line 3");
}

public sealed class Things_that_exclude_each_other
{
    private const string Hardware =
        """
        chips: {a: {name: A}, b: {name: B}}
        cards: {k: {name: K, chip: a, source: manual}, m: {name: M, chip: b, source: manual}}
        drivers: {d: {name: D, source: manual, os: [dos], lists: [k], versions: ["1", "2"]}}

        """;

    [Theory]
    [InlineData("cards: {n: {name: N, chip: a, source: manual, companion: k}}", 58, "only an add-in has a companion; write 'add-in: yes' or drop it")]
    [InlineData("cards: {n: {name: N, chip: a, source: manual, add-in: yes, companion: n}}", 71, "the companion 'n' is no 2D card but an add-in itself")]
    [InlineData("cards: {n: {name: N, chip: a, source: manual, prices: [{date: 2026-01-01}]}}", 56, "a price is either 'sold' (a sale was seen) or 'asked'")]
    [InlineData("facts: [{card: k, chip: b, source: manual, fog-table: yes}]", 10, "card 'k' has the chip 'a', not 'b'")]
    [InlineData("facts: [{driver: d, from: '2', to: '1', source: manual, fog-table: yes}]", 36, "'to' is an older version of driver d than 'from'")]
    [InlineData("facts: [{driver: d 1, to: '2', source: manual, fog-table: yes}]", 27, "'driver' names one version here, so 'from' and 'to' say nothing")]
    [InlineData("facts: [{chip: a, to: '2', source: manual, fog-table: yes}]", 23, "'from' and 'to' are versions of a 'driver', and none is named")]
    [InlineData("facts: [{chip: a, source: manual, ps-version: {is: no, level: '1.1', reach: up-to}}]", 70, "'is: no' speaks for its level and all above, so its 'reach' can only be 'at'")]
    [InlineData("titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga, needs: {must: [{need: fog-table, any-of: [tex-dxt1]}]}}}}}", 91, "a need names one feature ('need') or several to choose from ('any-of')")]
    [InlineData("titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga, needs: {must: [{need: fog-table, when: {}}]}}}}}", 115, "'when' names a 'depth' or a 'preset'")]
    [InlineData("titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga}}, hazards: [{kind: work-per-frame, highest-fps: 60, effect: E}]}}", 111, "'highest-fps' counts with 'follows: frame-rate' only")]
    [InlineData("wrappers: {w: {name: W, source: manual, versions: [{version: '1', offers: {glide: '2'}, on: direct3d 6, supplies: {fog-table: emulated}, passes: [fog-table]}]}}", 138, "fog-table stands under 'supplies' and under 'passes'; a wrapper does one of the two")]
    [InlineData("wrappers: {w: {name: W, source: manual, versions: [{version: '1', offers: {fog-table: yes}, on: direct3d 6}]}}", 67, "fog-table is no API, so it cannot be offered")]
    [InlineData("operating-systems: {s: {name: S, source: manual, runtimes: {glide: '2'}}}", 61, "glide needs no runtime of the operating system; it comes with driver or board")]
    [InlineData("observations: [{title: t, renderer: r, runs: no, seen: {fog-table: yes}, by: Ada}]\ntitles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga}}}}", 50, "what does not run shows nothing; 'runs: no' and 'seen' exclude each other")]
    [InlineData("observations: [{title: t, renderer: r, runs: yes, specimen: s, card: m, by: Ada}]\nspecimens: {s: {card: k}}\ntitles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga}}}}", 51, "specimen 's' is a 'k', not a 'm'")]
    [InlineData("libraries: {l: {name: L, titles: {t: {tolerance: severe}}}}\ntitles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga}}}}", 39, "'tolerance' counts with 'must: yes' only")]
    public void Are_named(string world, int column, string fault)
    {
        var files = new FeatureMatrix.Loading.Texts.SourceText[]
        {
            new("v.yaml", Worlds.Vocabulary), new("hardware.yaml", Hardware), new("world.yaml", world),
        };

        Assert.Equal(
            $"world.yaml(1,{column}): error FM111: {fault}",
            string.Join('\n', FeatureMatrix.Loading.CollectionLoader.Load(files).Faults));
    }

    [Fact]
    public void A_bios_and_a_driver_of_its_id_are_named() => Gives(
        """
        chips: {a: {name: A}}
        cards: {k: {name: K, chip: a, source: manual, bios: {version: "1"}}}
        drivers: {k-bios: {name: D, source: manual, os: [dos], lists: [k], versions: ["1"]}}
        """,
        "world.yaml(2,47): error FM111: the BIOS of card 'k' is the driver 'k-bios', an id that another driver has");
}

public sealed class A_driver_that_lists_no_card
{
    [Fact]
    public void Is_a_fault_for_every_version() => Gives(
        "drivers: {d: {name: D, source: manual, os: [dos], versions: ['1', {version: '2', lists: []}]}}",
        "world.yaml(1,62): error FM113: driver d@1 lists no card; name the cards in 'lists'",
        "world.yaml(1,67): error FM113: driver d@2 lists no card; name the cards in 'lists'");
}

public sealed class Any_of_nothing
{
    [Fact]
    public void Is_a_fault() => Gives(
        "titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga, needs: {must: [{any-of: []}]}}}}}",
        "world.yaml(1,92): error FM112: 'any-of' lists nothing, so nothing could meet it");
}

public sealed class A_chain_that_leads_back_to_itself
{
    [Fact]
    public void Is_a_fault_of_every_chip_on_it() => Gives(
        "chips: {a: {name: A, like: b}, b: {name: B, like: a}, c: {name: C, like: c}}",
        "world.yaml(1,22): error FM114: chip 'a' leads back to itself through 'like'",
        "world.yaml(1,45): error FM114: chip 'b' leads back to itself through 'like'",
        "world.yaml(1,68): error FM114: chip 'c' leads back to itself through 'like'");

    [Fact]
    public void Is_a_fault_of_implications() => Gives(
        """
        features:
          x: {name: X, family: f, source: manual, implies: [y]}
          y: {name: Y, family: f, source: manual, implies: [x, fog-table]}
          z: {name: Z, family: f, source: manual, implies: [x]}
        """,
        "world.yaml(2,43): error FM114: feature 'x' leads back to itself through 'implies'",
        "world.yaml(3,43): error FM114: feature 'y' leads back to itself through 'implies'");
}

public sealed class Warnings
{
    [Fact]
    public void Do_not_block() => Assert.NotNull(Worlds.Try("chips: {c: {name: C, supply: {fog-table: yes}}}").Catalog);

    [Fact]
    public void Name_statements_without_a_source_once_for_each_entity() => Gives(
        """
        chips:
          a: {name: A, supply: {fog-table: yes, tex-pal8: no, tex-dxt1: {is: no, source: manual}}}
          b: {name: B, supply: {fog-table: unknown}}
        """,
        "world.yaml(2,36): warning FM201: chip 'a': 2 statements from here on name no source, so they count as inferred at best; 'source' written once for all covers them");

    [Fact]
    public void Name_observations_and_facts_without_a_source() => Gives(
        """
        chips: {c: {name: C}}
        titles: {t: {name: T, source: manual, os: [dos], renderers: {r: {api: vga}}}}
        observations: [{title: t, runs: yes}]
        facts: [{chip: c, fog-table: yes}]
        """,
        "world.yaml(3,16): warning FM201: an observation names neither who saw it ('by') nor a source",
        "world.yaml(4,30): warning FM201: this fact: this statement names no source, so it counts as inferred at best");

    [Fact]
    public void Name_an_add_in_without_a_companion() => Gives(
        "chips: {c: {name: C}}\ncards: {k: {name: K, chip: c, source: manual, add-in: yes}}",
        "world.yaml(2,9): warning FM202: card 'k' is an add-in without a 'companion', so its 2D side is not known");
}
