using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>What nobody knows, and how to find out.</summary>
public static class UnknownWording
{
    /// <summary>The subjects of several unknowns, for a label.</summary>
    public static string Short(IReadOnlyList<UnknownFact> unknowns)
    {
        var subjects = unknowns.Select(Subject).Distinct(StringComparer.Ordinal).ToList();
        return subjects.Count <= 3
            ? Names.List(subjects)
            : $"{subjects[0]}, {subjects[1]} and {Names.Count(subjects.Count - 2, "more thing")}";
    }

    /// <summary>What an unknown is about, in a word or two.</summary>
    public static string Subject(UnknownFact unknown) => unknown switch
    {
        UnknownFact.Supply supply => supply.Capability.Feature.IsApi ? Names.Api(supply.Capability) : Names.Of(supply.Capability),
        UnknownFact.WrapperSupply supply => Names.Of(supply.Capability),
        UnknownFact.WrapperOs wrapper => $"{Names.Of(wrapper.Wrapper)} on {wrapper.Os.Name}",
        UnknownFact.Runtime runtime => $"the {Names.Api(runtime.Level)} runtime on {runtime.Os.Name}",
        UnknownFact.CardOs card => $"{card.Card.Name} under {card.Os.Name}",
        UnknownFact.DriverExists driver => $"a driver for {driver.Chip.Name} under {driver.Os.Name}",
        UnknownFact.ForcedInstall forced => $"forcing {Names.Of(forced.Driver)}",
        UnknownFact.FrameBuffer => "video memory",
        UnknownFact.Textures => "texture memory",
        UnknownFact.Preset preset => $"the texture preset {preset.Name}",
        UnknownFact.RunsWithout without => $"running without {Names.Of(without.Need.Choices)}",
        UnknownFact.RunsBroken broken => $"running with broken {Names.Of(broken.Need.Choices)}",
        UnknownFact.DefectIsReal => "a defect known from hearsay",
        UnknownFact.ObservedRun => "running, where observations disagree,",
        UnknownFact.ObservedFeature feature => $"{Names.Of(feature.Capability)}, where observations disagree,",
        UnknownFact.LossIsCosmetic loss => $"how badly the loss of {Names.Of(loss.Need.Choices)} shows in {loss.Renderer.Title.Name}",
        UnknownFact.ReachesFloor speed => $"the speed of {speed.Renderer.Title.Name} on {speed.Setup.Card.Name}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The question in a sentence.</summary>
    public static string Question(UnknownFact unknown) => unknown switch
    {
        UnknownFact.Supply supply when supply.Capability.Feature.IsApi =>
            $"Does {Names.Of(supply.Driver)} offer {Names.Api(supply.Capability)} on {supply.Os.Name}?",
        UnknownFact.Supply supply =>
            $"Does {supply.Card?.Name ?? supply.Chip.Name} supply {Names.Of(supply.Capability)} under {supply.Api.Name} with {Names.Of(supply.Driver)} on {supply.Os.Name}?",
        UnknownFact.WrapperSupply supply => $"Does {Names.Of(supply.Wrapper)} supply {Names.Of(supply.Capability)}?",
        UnknownFact.WrapperOs wrapper => $"Does {Names.Of(wrapper.Wrapper)} run on {wrapper.Os.Name}?",
        UnknownFact.Runtime runtime => $"Can {runtime.Os.Name} have the {Names.Api(runtime.Level)} runtime?",
        UnknownFact.CardOs card => $"Does {card.Card.Name} work under {card.Os.Name}?",
        UnknownFact.DriverExists driver => $"Is there a driver for {driver.Chip.Name} under {driver.Os.Name}?",
        UnknownFact.ForcedInstall forced => $"Can {Names.Of(forced.Driver)} be forced onto {forced.Card.Name}?",
        UnknownFact.FrameBuffer frame => $"Does {frame.Card.Name} have {Names.Mebibytes(frame.Bytes)} for the frame buffer?",
        UnknownFact.Textures textures => $"Do the smallest textures of {textures.Renderer.Title.Name} fit on {textures.Card.Name}?",
        UnknownFact.Preset preset => $"Does {preset.Renderer.Title.Name} reach the texture preset {preset.Name} on {preset.Card.Name}?",
        UnknownFact.RunsWithout without => $"Does {without.Renderer.Title.Name} run without {Names.Of(without.Need.Choices)}?",
        UnknownFact.RunsBroken broken => $"Does {broken.Renderer.Title.Name} run where {Names.Of(broken.Need.Choices)} is broken?",
        UnknownFact.DefectIsReal defect => $"Is it true of {defect.Renderer.Title.Name} that {defect.Defect.Effect.TrimEnd('.')}?",
        UnknownFact.ObservedRun run => $"Does {run.Renderer.Title.Name} run by {Names.Of(new Route(run.Renderer, run.Setup, run.Wrapper))}? Observations disagree.",
        UnknownFact.ObservedFeature seen =>
            $"Does {Names.Of(seen.Capability)} show in {seen.Renderer.Title.Name} by {Names.Of(new Route(seen.Renderer, seen.Setup, seen.Wrapper))}? Observations disagree.",
        UnknownFact.LossIsCosmetic loss =>
            $"Is {(loss.WhenBroken ? "broken" : "missing")} {Names.Of(loss.Need.Choices)} only cosmetic in {loss.Renderer.Title.Name}?",
        UnknownFact.ReachesFloor speed =>
            $"Does {speed.Renderer.Title.Name} reach the speed floor on {speed.Setup.Card.Name} by {Names.Of(new Route(speed.Renderer, speed.Setup, speed.Wrapper))}?",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What would settle it.</summary>
    public static string HowToSettle(UnknownFact unknown) => unknown switch
    {
        UnknownFact.Supply supply when supply.Driver.Kind == DriverKind.Unrecorded =>
            $"Record the drivers for {supply.Os.Name}, or declare the list complete.",
        UnknownFact.Supply { Capability.Feature.IsApi: true } => "Import a capability report made with this driver, or read its release notes.",
        UnknownFact.Supply => "Import a capability report made with this driver, or look at a title that shows it and record what was seen.",
        UnknownFact.WrapperSupply => "Read the wrapper's notes for this version, or look at a title that shows it.",
        UnknownFact.WrapperOs => "Start the wrapper there once, or read its requirements.",
        UnknownFact.Runtime => "Find the runtime's own statement of supported systems.",
        UnknownFact.CardOs or UnknownFact.DriverExists => "Record the drivers for this system, or declare the list complete.",
        UnknownFact.ForcedInstall => "Try it only on a system that you have imaged and can boot for recovery, and record what happened.",
        UnknownFact.FrameBuffer or UnknownFact.Preset => "Record the card's memory.",
        UnknownFact.Textures => "Measure the title's texture memory, or try it and record what was seen.",
        UnknownFact.RunsWithout or UnknownFact.RunsBroken => "Start the title on a card without it and record what was seen.",
        UnknownFact.DefectIsReal => "Try this title with this driver and record what was seen.",
        UnknownFact.ObservedRun or UnknownFact.ObservedFeature => "Repeat the observation and record driver, system and settings.",
        UnknownFact.LossIsCosmetic => "Look at the title without it and grade what you see.",
        UnknownFact.ReachesFloor => "Measure the title there, at least three runs.",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
