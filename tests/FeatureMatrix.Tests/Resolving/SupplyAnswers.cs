using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>
/// Whole answers to "has this setup paletted textures?": the state or the states it may have, why, the grade, what decides and what
/// is outranked (rules R1 and R3). The base is that of RULES.md, whose chip says nothing of them.
/// </summary>
public sealed class What_facts_come_to
{
    private static readonly string Base = WorkedExamples.Base("/src/FeatureMatrix/Resolving/RULES.md");

    [Fact]
    public void Is_open_between_no_and_yes_where_there_is_none() => Assert.Equal("No or Yes (Silent, no grade); by nothing; over nothing", Answer());

    [Fact]
    public void Is_what_a_single_one_states() => Assert.Equal(
        "Yes (Stated, Documented); by Documented Yes; over nothing", Answer("{chip: heron, tex-pal8: yes, source: manual}"));

    [Theory]
    [InlineData("yes", "No or Yes (HearsayOnly, no grade); by Hearsay Yes; over nothing")]
    [InlineData("broken", "No or Broken or Yes (HearsayOnly, no grade); by Hearsay Broken; over nothing")]
    public void Is_open_where_only_hearsay_speaks_of_the_chip_or_of_the_driver(string state, string expected)
    {
        Assert.Equal(expected, Answer($"{{chip: heron, tex-pal8: {state}, source: rumour}}"));
        Assert.Equal(expected, Answer($"{{driver: heron-9x, tex-pal8: {state}, source: rumour}}"));
    }

    [Fact]
    public void Is_open_and_has_no_grade_where_equal_ones_disagree() => Assert.Equal(
        "No or Yes (Conflict, no grade); by Documented Yes, Documented No; over nothing",
        Answer("{chip: heron, tex-pal8: yes, source: manual}", "{chip: heron, tex-pal8: no, source: readme}"));

    [Fact]
    public void Is_undisturbed_by_hearsay_about_the_card_that_agrees() => Assert.Equal(
        "Yes (Stated, Documented); by Documented Yes; over Hearsay Yes",
        Answer("{chip: heron, tex-pal8: yes, source: manual}", "{card: heron-16, tex-pal8: yes, source: rumour}"));

    [Fact]
    public void Is_the_chips_where_hearsay_about_the_driver_agrees() => Assert.Equal(
        "No (Stated, Documented); by Hearsay No, Documented No; over nothing",
        Answer("{chip: heron, tex-pal8: no, source: manual}", "{driver: heron-9x, tex-pal8: no, source: rumour}"));

    [Fact]
    public void Is_a_conflict_where_hearsay_about_the_driver_disagrees_with_the_chip() => Assert.Equal(
        "No or Yes (Conflict, no grade); by Hearsay No, Documented Yes; over nothing",
        Answer("{chip: heron, tex-pal8: yes, source: manual}", "{driver: heron-9x, tex-pal8: no, source: rumour}"));

    [Fact]
    public void Is_handed_on_with_the_chips_grade() => Assert.Equal(
        "Yes (PassedOn, Measured); by Documented Yes, Measured Yes; over nothing",
        Answer("{chip: heron, tex-pal8: yes, source: bench}", "{driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_handed_on_unknown_as_the_chips_disagree() => Assert.Equal(
        "No or Yes (Conflict, no grade); by Documented Yes, Documented Yes, Documented No; over nothing",
        Answer("{chip: heron, tex-pal8: yes, source: manual}", "{chip: heron, tex-pal8: no, source: readme}", "{driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_what_the_driver_says_instead_of_the_chip() => Assert.Equal(
        "Broken (Stated, Inferred); by Inferred Broken; over Measured Yes",
        Answer("{chip: heron, tex-pal8: yes, source: bench}", "{driver: heron-9x, tex-pal8: broken, source: notes}"));

    [Fact]
    public void Is_in_hardware_where_the_driver_names_a_chip_that_has_it() => Assert.Equal(
        "Yes (Stated, Documented); by Documented Yes; over Measured Yes",
        Answer("{chip: heron, tex-pal8: yes, source: bench}", "{chip: heron, driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_emulated_where_the_driver_names_a_chip_that_has_none() => Assert.Equal(
        "Emulated (EmulatedOverChip, Documented); by Documented Yes, Measured No; over nothing",
        Answer("{chip: heron, tex-pal8: no, source: bench}", "{chip: heron, driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_emulated_or_in_hardware_where_the_driver_names_a_chip_that_may_have_none() => Assert.Equal(
        "Emulated or Yes (Conflict, no grade); by Documented Yes, Documented No, Documented Yes; over nothing",
        Answer("{chip: heron, tex-pal8: no, source: manual}", "{chip: heron, tex-pal8: yes, source: readme}", "{chip: heron, driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_settled_without_a_grade_where_the_drivers_disagree_and_come_to_the_same() => Assert.Equal(
        "Broken (Conflict, no grade); by Documented Broken, Documented Yes, Measured Broken; over nothing",
        Answer("{chip: heron, tex-pal8: broken, source: bench}", "{driver: heron-9x, tex-pal8: broken, source: readme}", "{driver: heron-9x, tex-pal8: yes, source: manual}"));

    [Fact]
    public void Is_emulated_where_one_of_two_facts_about_the_driver_names_the_chip_that_has_none() => Assert.Equal(
        "Emulated (EmulatedOverChip, Documented); by Documented Yes, Documented Yes, Measured No; over nothing",
        Answer(
            "{chip: heron, tex-pal8: no, source: bench}", "{driver: heron-9x, from: \"2.0\", tex-pal8: yes, source: readme}",
            "{chip: heron, driver: heron-9x, tex-pal8: yes, source: readme}"));

    [Fact]
    public void Is_asked_of_the_chip_where_the_card_is_only_spoken_of_under_another_system()
    {
        Assert.Equal("chip", OpenFor("{card: heron-16, os: windows-2000, tex-pal8: yes, source: manual}"));
        Assert.Equal("card", OpenFor("{card: heron-16, tex-pal8: yes, source: rumour}"));
        Assert.Equal("chip", OpenFor("{card: heron-16, tex-dxt1: yes, source: manual}"));

        static string OpenFor(string fact) => ((UnknownFact.Supply)Ask("facts: [" + fact + "]").Open!).Card is null ? "chip" : "card";
    }

    [Fact]
    public void Is_the_same_answer_where_its_grade_is_no_better_than_a_limit()
    {
        var answer = Ask("facts: [{chip: heron, tex-pal8: yes, source: manual}]");
        Assert.Same(answer, answer.AtMost(Grade.Documented));
        Assert.Equal(Grade.Inferred, answer.AtMost(Grade.Inferred).Grade);
    }

    private static Answer Ask(string world)
    {
        var catalog = Worlds.Load(Base, world);
        var resolver = new Resolver(catalog);
        var setup = resolver.SetupsOf(catalog.Cards.Single()).Single(setup => setup.Driver.Id == "heron-9x@2.0");
        Assert.Null(resolver.Supply.Feature("nothing-like-it"));
        return resolver.Supply.Ask(resolver.Supply.Feature("tex-pal8")!.At(1), setup, resolver.Supply.Feature("direct3d")!);
    }

    private static string Answer(params string[] facts)
    {
        var answer = Ask(facts.Length == 0 ? "" : "facts:\n" + string.Join('\n', facts.Select(fact => "  - " + fact)));
        var states = answer.IsSettled ? [answer.Support, .. answer.Possible] : answer.Possible;
        return $"{string.Join(" or ", states)} ({answer.Reason}, {answer.Grade?.ToString() ?? "no grade"}); by {Facts(answer.Facts)}; over {Facts(answer.Losing)}";

        static string Facts(IReadOnlyList<SupplyFact> facts) =>
            facts.Count == 0 ? "nothing" : string.Join(", ", facts.Select(fact => $"{fact.Evidence.Grade} {fact.Support}"));
    }
}
