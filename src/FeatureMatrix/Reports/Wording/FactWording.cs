using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>Facts and answers in sentences, each with its grade and source.</summary>
public static class FactWording
{
    /// <summary>A fact: what it says, about what, how good, and who says so.</summary>
    public static string Fact(SupplyFact fact) => $"{About(fact)} {Names.Of(fact.Support)} ({Evidence(fact.Evidence)})";

    /// <summary>What a fact is about: its scope and the capability.</summary>
    public static string About(SupplyFact fact)
    {
        var level = fact.Reach switch
        {
            Reach.UpTo when fact.Capability.Feature.HasLevels => "up to ",
            Reach.AtLeast when fact.Capability.Feature.HasLevels => "at least ",
            _ => "",
        };
        var subject = fact.Capability.Feature.IsApi ? Names.Api(fact.Capability) : Names.Of(fact.Capability);
        return $"{Scope(fact.Scope)}: {level}{subject}";
    }

    /// <summary>Grade and source: <c>measured: own bench, March</c>.</summary>
    public static string Evidence(Evidence evidence) =>
        evidence.Source is { } source ? $"{Names.Of(evidence.Grade)}: {source.Whole}" : $"{Names.Of(evidence.Grade)}, no source";

    /// <summary>What a statement is about.</summary>
    public static string Scope(Scope scope)
    {
        var parts = new List<string>();
        if (scope.Card is { } card)
            parts.Add(card.Name);
        else if (scope.Chip is { } chip)
            parts.Add(chip.Name);
        if (scope.Drivers is { } drivers)
            parts.Add(Range(drivers));
        if (scope.Os is { } os)
            parts.Add(os.Name);
        if (scope.Api is { } api)
            parts.Add(api.Name);
        return parts.Count == 0 ? "the wrapper itself" : string.Join(", ", parts);
    }

    /// <summary>Versions: <c>Heron 9x 2.10 and later</c>.</summary>
    public static string Range(DriverRange drivers)
    {
        var versions = drivers.Branch.Versions;
        var last = drivers.Last == versions.Count - 1;
        if (drivers.First == drivers.Last)
            return Names.Of(versions[drivers.First]);
        if (drivers.First == 0 && last)
            return $"{drivers.Branch.Name}, all versions";
        if (last)
            return $"{drivers.Branch.Name} {versions[drivers.First].Version} and later";
        return drivers.First == 0
            ? $"{drivers.Branch.Name} up to {versions[drivers.Last].Version}"
            : $"{drivers.Branch.Name} {versions[drivers.First].Version} to {versions[drivers.Last].Version}";
    }

    /// <summary>Why an answer is what it is.</summary>
    public static string Reason(Answer answer) => answer.Reason switch
    {
        AnswerReason.Silent => "nobody recorded it",
        AnswerReason.Stated => "recorded",
        AnswerReason.Conflict => $"the records disagree ({Names.List(answer.Possible.Select(Names.Of).ToList(), "or")})",
        AnswerReason.HearsayOnly => "only hearsay, which decides nothing for certain",
        AnswerReason.PassedOn => "the driver hands on what the chip has",
        AnswerReason.EmulatedOverChip => "the driver claims it although the chip has none, so it counts as emulated",
        AnswerReason.Implied => "follows from what is recorded of a related capability",
        AnswerReason.LeftOutOfCompleteList => "the wrapper's list is declared complete and does not have it",
        AnswerReason.Structure => "follows from the records",
        AnswerReason.Arithmetic => "worked out from recorded sizes",
        AnswerReason.Observed => "seen on this very route",
        AnswerReason.ObservationsDisagree => "observations of this route disagree",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>An observation: what was seen, where and by whom.</summary>
    public static string Observation(Observation observation)
    {
        var saw = new List<string>();
        if (observation.Runs is { } runs)
            saw.Add(runs ? "runs" : "does not run");
        saw.AddRange(observation.Seen.Select(seen => $"{Names.Of(seen.Capability)} {Seen(seen.Seen)}"));
        var with = new List<string>();
        if (observation.Card is { } card)
            with.Add(card.Name);
        if (observation.Driver is { } driver)
            with.Add(Names.Of(driver));
        if (observation.Os is { } os)
            with.Add(os.Name);
        switch (observation.Wrapper)
        {
            case ObservedWrapper.NotStated: break;
            case ObservedWrapper.None: with.Add("no wrapper"); break;
            case ObservedWrapper.Version version: with.Add(Names.Of(version.Used)); break;
            default: throw new System.Diagnostics.UnreachableException();
        }

        var date = observation.Date is { } day ? $", {day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}" : "";
        return $"{string.Join("; ", saw)} with {string.Join(", ", with)} ({Evidence(observation.Evidence)}{date})";
    }

    private static string Seen(Support support) => support switch
    {
        Support.Yes => "seen",
        Support.Emulated => "seen, emulated",
        Support.Broken => "wrong picture",
        Support.No => "missing",
        Support.Unknown => "not clear",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
