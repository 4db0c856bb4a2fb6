using FeatureMatrix.Model;
using FeatureMatrix.Resolving;
using FeatureMatrix.Tests.Model;

namespace FeatureMatrix.Tests.Resolving;

/// <summary>Timing hazards on a rig (rule R12), of a title that was seen to work up to 1000 MHz and to fail from 2400 MHz.</summary>
public sealed class A_title_that_a_fast_machine_breaks
{
    private static readonly TimingSighting[] Seen =
    [
        new("p6", 700, true, Parts.Word), new("p6", 1000, true, Parts.Word), new("p6", 2400, false, Parts.Word), new("p6", 3000, false, Parts.Word),
        new("k7", 1200, false, Parts.Word), new("p6", 2000, true, Parts.Word with { Grade = Grade.Hearsay }), new("p6", 1100, false, Parts.Word with { Grade = Grade.Hearsay }),
    ];

    [Fact]
    public void Has_a_threshold_between_the_fastest_that_worked_and_the_slowest_that_failed_of_each_family()
    {
        Assert.Equal(new TimingThreshold(1000, 2400), TimingRule.Threshold(Hazard(Seen), "p6"));
        Assert.Equal(new TimingThreshold(null, 1200), TimingRule.Threshold(Hazard(Seen), "k7"));
        Assert.Equal(new TimingThreshold(null, null), TimingRule.Threshold(Hazard(Seen), "k6"));
    }

    [Theory]
    [InlineData(999.0, TimingState.SeenToWork)]
    [InlineData(1000.0, TimingState.SeenToWork)]
    [InlineData(1001.0, TimingState.NotKnown)]
    [InlineData(2399.0, TimingState.NotKnown)]
    [InlineData(2400.0, TimingState.Fails)]
    [InlineData(2401.0, TimingState.Fails)]
    [InlineData(null, TimingState.NotKnown)]
    public void Is_judged_by_the_rigs_clock(double? clock, TimingState expected) => Assert.Equal(expected, StateOf(Hazard(Seen), clock));

    [Theory]
    [InlineData(1000.0, 1000.0, TimingState.Conflict)]
    [InlineData(1200.0, 1000.0, TimingState.Conflict)]
    [InlineData(999.0, 1000.0, TimingState.SeenToWork)]
    public void Is_in_conflict_where_it_worked_as_fast_as_it_failed(double works, double fails, TimingState expected) =>
        Assert.Equal(expected, StateOf(Hazard(new TimingSighting("p6", works, true, Parts.Word), new TimingSighting("p6", fails, false, Parts.Word)), 900));

    [Theory]
    [InlineData(1, TimingState.SeenToWork)]
    [InlineData(2, TimingState.Fails)]
    [InlineData(null, TimingState.Fails)]
    public void Needs_several_cores_to_be_out_of_step(int? cores, TimingState expected) =>
        Assert.Equal(expected, StateOf(Hazard(Seen) with { Kind = TimingHazardKind.UnsynchronisedCores }, 3000, cores));

    [Fact]
    public void Works_on_one_core_only_where_cores_are_the_hazard() => Assert.Equal(TimingState.Fails, StateOf(Hazard(Seen), 3000, 1));

    [Fact]
    public void Follows_the_frame_rate_whatever_the_clock() => Assert.Equal(TimingState.FollowsFrameRate, StateOf(Hazard(Seen) with { FollowsFrameRate = true }, 700));

    private static TimingHazard Hazard(params TimingSighting[] sightings) => new(TimingHazardKind.LoopCalibration, false, null, "It stops", "", sightings, Parts.Word);

    private static TimingState StateOf(TimingHazard hazard, double? clock, int? cores = null)
    {
        var title = new Title { Id = "bay", Name = "Bay", Hazards = [hazard], Evidence = Parts.Word };
        return Assert.Single(TimingRule.On(title, new Rig { Id = "rig", Name = "Rig", ProcessorFamily = "p6", Megahertz = clock, Cores = cores })).State;
    }
}
