using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving;

/// <summary>Rule R3: what chip and driver say together, each weighed apart.</summary>
internal static class ChipAndDriver
{
    /// <summary>
    /// The driver's answer replaces the chip's. A driver's "yes" that names no hardware only hands on what the chip has;
    /// one that names it, over a chip without, is emulation. What a driver offers as an API is its own to say.
    /// </summary>
    /// <example>Chip: no W-buffer. Driver for this chip: yes. Together: emulated, flagged.</example>
    public static Answer Combine(
        Capability capability, FactWeighing.Decision chip, FactWeighing.Decision driver, UnknownFact open)
    {
        if (driver.Reason == AnswerReason.Silent)
            return ToAnswer(chip.Claims, chip.Reason, chip.Grade, chip, driver, open);

        var handsOn = !capability.Feature.IsApi
            && !driver.Winners.Any(fact => fact.Scope.NamesHardware && fact.ClaimFor(capability) == Support.Yes);
        if (driver.IsSettled)
            return Settled(driver.Claims[0]);

        // The driver's facts disagree, or are hearsay: every state that one of them stands for, and for hearsay the
        // chip's own answer too, because hearsay overrides nothing.
        var states = driver.Claims.SelectMany(StatesBehind).ToHashSet();
        if (driver.Reason == AnswerReason.HearsayOnly)
            states.UnionWith(StatesOf(chip));
        var agreed = driver.Reason == AnswerReason.HearsayOnly && states.Count == 1;
        return agreed
            ? ToAnswer(chip.Claims, chip.Reason, chip.Grade, chip, driver, open)
            : ToAnswer([.. states.Order()], chip.Claims.Count > 0 ? AnswerReason.Conflict : driver.Reason, null, chip, driver, open);

        Answer Settled(Support said)
        {
            if (said != Support.Yes)
                return ToAnswer([said], AnswerReason.Stated, driver.Grade, Outranked(chip), driver, open);
            if (handsOn)
            {
                var reason = chip.IsSettled ? AnswerReason.PassedOn : chip.Reason;
                return ToAnswer(chip.Claims, reason, chip.Grade, chip, driver, open);
            }

            return OverChip() switch
            {
                [Support.Yes] => ToAnswer([Support.Yes], AnswerReason.Stated, driver.Grade, Outranked(chip), driver, open),
                [var emulated] => ToAnswer([emulated], AnswerReason.EmulatedOverChip, driver.Grade, chip, driver, open),
                var either => ToAnswer(either, AnswerReason.Conflict, null, chip, driver, open),
            };
        }

        IEnumerable<Support> StatesBehind(Support said)
        {
            if (said != Support.Yes)
                return [said];
            if (handsOn)
                return StatesOf(chip);
            return OverChip();
        }

        // A driver never creates hardware support: in a completion where the chip has none it emulates.
        List<Support> OverChip() => chip.Reason is AnswerReason.Silent or AnswerReason.HearsayOnly
            ? [Support.Yes]
            : chip.Claims.Select(state => state == Support.No ? Support.Emulated : Support.Yes).Distinct().Order().ToList();
    }

    /// <summary>The chip's facts where the driver's answer replaces them: kept and shown, but they decide nothing.</summary>
    private static FactWeighing.Decision Outranked(FactWeighing.Decision chip) =>
        chip with { Winners = [], Losers = [.. chip.Winners, .. chip.Losers] };

    private static IReadOnlyList<Support> StatesOf(FactWeighing.Decision decision) => decision.Reason switch
    {
        AnswerReason.Silent => [Support.No, Support.Yes],
        AnswerReason.HearsayOnly => WithSilence(decision.Claims),
        _ => decision.Claims,
    };

    private static List<Support> WithSilence(IReadOnlyList<Support> claims) =>
        claims.Union([Support.No, Support.Yes]).Order().ToList();

    private static Answer ToAnswer(
        IReadOnlyList<Support> states, AnswerReason reason, Grade? grade, FactWeighing.Decision chip, FactWeighing.Decision driver,
        UnknownFact open)
    {
        var settled = states.Count == 1 && reason is not AnswerReason.HearsayOnly;
        var possible = reason switch
        {
            AnswerReason.Silent or AnswerReason.HearsayOnly => WithSilence(states),
            _ => states,
        };
        return new Answer
        {
            Support = settled ? states[0] : Support.Unknown,
            Open = settled ? null : open,
            Possible = settled ? [] : possible,
            Grade = settled ? grade : null,
            Reason = reason,
            Facts = [.. driver.Winners, .. chip.Winners],
            Losing = [.. driver.Losers, .. chip.Losers],
        };
    }
}
