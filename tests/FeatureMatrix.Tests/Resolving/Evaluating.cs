using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

using Support = FeatureMatrix.Model.Support;

/// <summary>Gates and needs made by hand, with answers that are settled or open.</summary>
internal static class Made
{
    public static readonly Renderer Renderer = new() { Id = "r", Title = new Title { Id = "bay", Name = "Bay", Evidence = Parts.Word }, Oses = [] };
    public static readonly Dictionary<UnknownFact, Support> Nothing = [];
    private static readonly Feature[] Features = [.. Enumerable.Range(0, 12).Select(i => new Feature { Id = $"f-{i:00}", Name = "F", Family = "f", Levels = ["1", "2", "3"], Evidence = Parts.Word })];

    public static Capability Level(int feature, int step = 1) => Features[feature].At(step);

    public static UnknownFact Unknown(Capability capability) =>
        new UnknownFact.Supply(capability, Parts.Heron, null, Parts.Steady.Versions[0], Parts.Win98, Parts.Direct3D);

    public static Answer Is(Support state) => new() { Support = state, Reason = AnswerReason.Stated };

    public static Answer Open(Capability capability, params Support[] possible) =>
        new() { Support = Support.Unknown, Open = Unknown(capability), Possible = possible.Length == 0 ? [Support.No, Support.Yes] : possible, Reason = AnswerReason.Silent };

    public static Choice Choice(Capability capability, Support? state = null) => new(capability, state is { } settled ? Is(settled) : Open(capability));

    public static NeedTerm Need(Strength strength, params Choice[] choices) => Need(strength, null, choices);

    public static NeedTerm Need(Strength strength, Strength? whenBroken, params Choice[] choices) => new()
    {
        Renderer = Renderer,
        Need = new Need { Choices = [.. choices.Select(choice => choice.Capability)], Strength = strength, WhenBroken = whenBroken, Evidence = Parts.Word },
        Choices = choices,
    };

    public static Gate Gate(Answer answer, bool opensWhenMissing = false, Answer? real = null) => new(new GateReason.DriverExists(), answer, opensWhenMissing, real);

    public static string Outcome(IReadOnlyList<Gate> gates, params NeedTerm[] needs)
    {
        var step = RouteEvaluation.Evaluate(gates, needs, Nothing);
        return step.Outcome?.ToString() ?? $"asks for {((UnknownFact.Supply)step.Ask!.Value.Unknown).Capability}";
    }
}

/// <summary>One completion of one route (rules R5, R6 and R14).</summary>
public sealed class A_route_is_evaluated
{
    [Fact]
    public void A_shut_gate_stops_it_whatever_else_is_open()
    {
        Assert.Equal("does not run", Made.Outcome([Made.Gate(Made.Open(Made.Level(0))), Made.Gate(Made.Is(Support.No))]));
        Assert.Equal("does not run", Made.Outcome([Made.Gate(Made.Is(Support.Broken))]));
        Assert.Equal("does not run", Made.Outcome([Made.Gate(Made.Is(Support.Broken), opensWhenMissing: true)]));
    }

    [Fact]
    public void A_gate_that_opens_either_way_is_not_asked_for()
    {
        Assert.Equal("runs", Made.Outcome([Made.Gate(Made.Open(Made.Level(0), Support.Emulated, Support.Yes)), Made.Gate(Made.Is(Support.Emulated))]));
        Assert.Empty(Made.Gate(Made.Open(Made.Level(0), Support.Emulated, Support.Yes)).Open);
        Assert.Equal([Made.Unknown(Made.Level(0))], Made.Gate(Made.Open(Made.Level(0))).Open);
    }

    [Fact]
    public void A_rumoured_defect_asks_for_its_cause_and_then_for_itself()
    {
        var gate = Made.Gate(Made.Open(Made.Level(0)), opensWhenMissing: true, real: Made.Open(Made.Level(1)));
        Assert.Equal([Made.Unknown(Made.Level(0)), Made.Unknown(Made.Level(1))], gate.Open);
        Assert.Equal("f-00 1: does not run; runs", Both(gate, Support.Yes));
        Assert.Equal("runs", RouteEvaluation.Evaluate([gate], [], new Dictionary<UnknownFact, Support> { [Made.Unknown(Made.Level(0))] = Support.No }).Outcome!.ToString());
        Assert.False(Made.Gate(Made.Is(Support.Yes), opensWhenMissing: true, real: Made.Open(Made.Level(1))).IsShut);

        static string Both(Gate gate, Support cause)
        {
            var settled = new Dictionary<UnknownFact, Support>();
            var first = (UnknownFact.Supply)RouteEvaluation.Evaluate([gate], [], settled).Ask!.Value.Unknown;
            settled[first] = cause;
            var second = RouteEvaluation.Evaluate([gate], [], settled).Ask!.Value.Unknown;
            settled[second] = Support.Yes;
            var real = RouteEvaluation.Evaluate([gate], [], settled).Outcome;
            settled[second] = Support.No;
            return $"{first.Capability}: {real}; {RouteEvaluation.Evaluate([gate], [], settled).Outcome}";
        }
    }

    [Fact]
    public void It_asks_for_the_first_thing_that_is_open()
    {
        Assert.Equal("asks for f-01 1", Made.Outcome([Made.Gate(Made.Open(Made.Level(1))), Made.Gate(Made.Open(Made.Level(0)))], Made.Need(Strength.Severe, Made.Choice(Made.Level(2)))));
        Assert.Equal("asks for f-02 1", Made.Outcome([], Made.Need(Strength.Severe, Made.Choice(Made.Level(2))), Made.Need(Strength.Severe, Made.Choice(Made.Level(1)))));
        Assert.Equal("does not run", Made.Outcome([], Made.Need(Strength.Severe, Made.Choice(Made.Level(2))), Made.Need(Strength.Must, Made.Choice(Made.Level(1), Support.No))));
    }

    [Fact]
    public void An_implied_loss_is_counted_once_at_the_graver_strength()
    {
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 3)]), (Strength.Severe, [Made.Level(0, 1)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1)]), (Strength.Severe, [Made.Level(0, 3)])));
        Assert.Equal("runs, Severe f-00 3 Missing", Losses((Strength.Severe, [Made.Level(0, 3)]), (Strength.Cosmetic, [Made.Level(0, 1)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Cosmetic, [Made.Level(0, 3)]), (Strength.Severe, [Made.Level(0, 1)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1)]), (Strength.Severe, [Made.Level(0, 1)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1)]), (Strength.Severe, [Made.Level(0, 2)]), (Strength.Severe, [Made.Level(0, 3)])));
        Assert.Equal("runs, Severe f-00 1 Missing, Severe f-01 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1)]), (Strength.Severe, [Made.Level(1, 1)])));
    }

    [Fact]
    public void A_loss_of_several_choices_follows_only_where_each_choice_does()
    {
        Assert.Equal("runs, Severe f-00 1 Missing, Severe f-00 2 Missing", Losses((Strength.Severe, [Made.Level(0, 1)]), (Strength.Severe, [Made.Level(0, 2), Made.Level(1)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1), Made.Level(1)]), (Strength.Severe, [Made.Level(0, 2)])));
        Assert.Equal("runs, Severe f-00 1 Missing", Losses((Strength.Severe, [Made.Level(0, 1), Made.Level(1)]), (Strength.Severe, [Made.Level(0, 2), Made.Level(1, 3)])));
    }

    [Fact]
    public void Of_two_losses_that_follow_from_each_other_the_first_is_counted()
    {
        var outcome = RouteEvaluation.Evaluate([], [Missing(Strength.Severe, [Made.Level(0), Made.Level(1)]), Missing(Strength.Severe, [Made.Level(1), Made.Level(0)])], Made.Nothing).Outcome!;
        Assert.Equal("f-00 1 or f-01 1", Assert.Single(outcome.Losses).Need.ToString());
    }

    [Fact]
    public void A_wrong_picture_neither_follows_nor_implies()
    {
        Assert.Equal(
            "runs, Severe f-00 1 WrongPicture, Severe f-00 2 Missing",
            Made.Outcome([], Made.Need(Strength.Severe, Made.Choice(Made.Level(0), Support.Broken)), Missing(Strength.Severe, [Made.Level(0, 2)])));
        Assert.Equal(
            "runs, Severe f-00 1 Missing, Severe f-00 2 WrongPicture",
            Made.Outcome([], Missing(Strength.Severe, [Made.Level(0)]), Made.Need(Strength.Severe, Made.Choice(Made.Level(0, 2), Support.Broken))));
    }

    private static string Losses(params (Strength Strength, Capability[] Choices)[] missing) => Made.Outcome([], [.. missing.Select(one => Missing(one.Strength, one.Choices))]);

    private static NeedTerm Missing(Strength strength, Capability[] choices) => Made.Need(strength, [.. choices.Select(choice => Made.Choice(choice, Support.No))]);
}

/// <summary>One need in one completion (rules R4, R5 and R15).</summary>
public sealed class A_need_is_evaluated
{
    [Theory]
    [InlineData(Strength.Bonus, null, Support.No, "runs")]
    [InlineData(Strength.Bonus, null, Support.Broken, "runs, Ungraded f-00 1 WrongPicture")]
    [InlineData(Strength.Cosmetic, null, Support.Broken, "runs, Cosmetic f-00 1 WrongPicture")]
    [InlineData(Strength.Severe, Strength.Bonus, Support.Broken, "runs")]
    [InlineData(Strength.Severe, Strength.Cosmetic, Support.Broken, "runs, Cosmetic f-00 1 WrongPicture")]
    [InlineData(Strength.Bonus, Strength.Must, Support.Broken, "does not run")]
    [InlineData(Strength.Must, null, Support.No, "does not run")]
    [InlineData(Strength.Must, null, Support.Emulated, "runs")]
    public void Costs_what_its_state_costs(Strength strength, Strength? whenBroken, Support state, string expected) =>
        Assert.Equal(expected, Made.Outcome([], Made.Need(strength, whenBroken, Made.Choice(Made.Level(0), state))));

    [Theory]
    [InlineData(Strength.Unknown, null, Support.No, "runs, Ungraded f-00 1 Missing")]
    [InlineData(Strength.Must, null, Support.Broken, "runs, Severe f-00 1 WrongPicture")]
    [InlineData(Strength.Unknown, null, Support.Broken, "runs, Ungraded f-00 1 WrongPicture")]
    [InlineData(Strength.Cosmetic, Strength.Unknown, Support.Broken, "runs, Ungraded f-00 1 WrongPicture")]
    public void Costs_a_loss_or_everything_where_nobody_knows_how_much_it_matters(Strength strength, Strength? whenBroken, Support state, string expected)
    {
        var need = Made.Need(strength, whenBroken, Made.Choice(Made.Level(0), state));
        var question = RouteEvaluation.Evaluate([], [need], Made.Nothing).Ask!.Value;
        Assert.Equal([Support.No, Support.Yes], question.Possible);
        Assert.Equal(state == Support.No ? typeof(UnknownFact.RunsWithout) : typeof(UnknownFact.RunsBroken), question.Unknown.GetType());
        Assert.Equal("does not run", RouteEvaluation.Evaluate([], [need], new Dictionary<UnknownFact, Support> { [question.Unknown] = Support.No }).Outcome!.ToString());
        Assert.Equal(expected, RouteEvaluation.Evaluate([], [need], new Dictionary<UnknownFact, Support> { [question.Unknown] = Support.Yes }).Outcome!.ToString());
        Assert.Equal(expected, Made.Outcome([], need with { WasSeenToRun = true }));
    }

    [Theory]
    [InlineData(null, Support.No, "runs")]
    [InlineData(Strength.Must, Support.Broken, "runs, Severe f-00 1 WrongPicture")]
    public void Cannot_stop_what_was_seen_to_run(Strength? whenBroken, Support state, string expected) =>
        Assert.Equal(expected, Made.Outcome([], Made.Need(Strength.Must, whenBroken, Made.Choice(Made.Level(0), state)) with { WasSeenToRun = true }));

    [Fact]
    public void Takes_the_first_choice_that_is_not_missing()
    {
        Assert.Equal("runs, Severe f-01 1 WrongPicture", Made.Outcome([], Made.Need(Strength.Severe, Made.Choice(Made.Level(1), Support.No), Made.Choice(Made.Level(0), Support.Broken), Made.Choice(Made.Level(2), Support.Yes))));
        Assert.Equal("runs", Made.Outcome([], Made.Need(Strength.Severe, Made.Choice(Made.Level(1), Support.No), Made.Choice(Made.Level(0), Support.Yes))));
        Assert.Equal("runs, Ungraded f-00 1 WrongPicture", Made.Outcome([], Made.Need(Strength.Bonus, Made.Choice(Made.Level(0), Support.No), Made.Choice(Made.Level(1), Support.Broken))));
        Assert.Equal("runs", Made.Outcome([], Made.Need(Strength.Bonus, Made.Choice(Made.Level(0)), Made.Choice(Made.Level(1)))));
    }

    [Theory]
    [InlineData(false, "runs")]
    [InlineData(true, "runs, Severe f-00 1 NotInHardware")]
    public void Is_met_by_emulation_unless_it_wants_hardware(bool hardware, string expected)
    {
        var choice = Made.Choice(Made.Level(0), Support.Emulated);
        var need = new NeedTerm { Renderer = Made.Renderer, Choices = [choice], Need = new Need { Choices = [Made.Level(0)], HardwareOnly = hardware, Strength = Strength.Severe, Evidence = Parts.Word } };
        Assert.Equal(expected, Made.Outcome([], need));
        Assert.Equal(hardware ? null : choice, need.CertainlyMetBy);
    }

    [Fact]
    public void Is_certainly_met_by_the_first_choice_that_is_there_behind_those_that_may_only_be_missing()
    {
        var (open, there, broken, perhaps) = (Made.Choice(Made.Level(0)), Made.Choice(Made.Level(1), Support.Yes), Made.Choice(Made.Level(2), Support.Broken),
            new Choice(Made.Level(3), Made.Open(Made.Level(3), Support.No, Support.Broken)));
        Assert.Equal(there, Made.Need(Strength.Severe, Made.Choice(Made.Level(4), Support.No), there).CertainlyMetBy);
        Assert.Equal(there, Made.Need(Strength.Severe, open, there).CertainlyMetBy);
        Assert.Null(Made.Need(Strength.Severe, perhaps, there).CertainlyMetBy);
        Assert.Null(Made.Need(Strength.Severe, broken, there).CertainlyMetBy);
        Assert.Null(Made.Need(Strength.Severe, open).CertainlyMetBy);
    }
}
