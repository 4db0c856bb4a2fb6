using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>Rule R8: what a title gets through a wrapper version.</summary>
internal static class WrappedSupply
{
    /// <summary>
    /// The wrapper's own set replaces the card's; what it hands through is asked of card, driver and operating system at the
    /// target API; the rest is unknown, or missing where the version's list is declared complete.
    /// </summary>
    public static Answer Ask(Capability capability, WrapperVersion wrapper, Setup setup, SupplyTable supply) =>
        IsPassed(capability, wrapper)
            ? supply.Ask(capability, setup, wrapper.Target.Feature)
            : supply.Implications.Apply(capability, Stated(capability, wrapper, supply), other => Stated(other, wrapper, supply));

    /// <summary>True where the wrapper only hands it through.</summary>
    private static bool IsPassed(Capability capability, WrapperVersion wrapper) =>
        wrapper.Passes.Contains(capability.Feature) && wrapper.Supplies.All(fact => fact.ClaimFor(capability) == Support.Unknown);

    /// <summary>
    /// What the wrapper's own list says. What it hands through is left open here: implications hold within what one
    /// supplier has, or one wrapper's unknown would take other states on every card.
    /// </summary>
    private static Answer Stated(Capability capability, WrapperVersion wrapper, SupplyTable supply)
    {
        var open = new UnknownFact.WrapperSupply(capability, wrapper);
        var own = FactWeighing.Weigh(wrapper.Supplies, capability);
        if (own.Reason != AnswerReason.Silent)
            return ChipAndDriver.Combine(capability, own, FactWeighing.Decision.None, open);
        if (!wrapper.IsComplete || wrapper.Passes.Contains(capability.Feature))
            return Answer.YesOrNo(open);
        // What the list names may imply what it leaves out: 1.4 supplied is 1.1 supplied.
        var source = supply.Implications.StrongerThan(capability).Select(stronger => FactWeighing.Weigh(wrapper.Supplies, stronger))
            .FirstOrDefault(weighed => weighed.Claims.Count > 0 && weighed.Reason != AnswerReason.HearsayOnly && !weighed.Claims.Contains(Support.No));
        return source is null
            ? new Answer { Support = Support.No, Reason = AnswerReason.LeftOutOfCompleteList, Grade = wrapper.Evidence.Grade, Evidence = [wrapper.Evidence] }
            : new Answer { Support = Support.Yes, Reason = AnswerReason.Implied, Grade = source.Grade, Facts = source.Winners };
    }
}
