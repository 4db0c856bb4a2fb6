using FeatureMatrix.Model;
using FeatureMatrix.Resolving;

namespace FeatureMatrix.Reports.Wording;

/// <summary>What stops a route, and what it passed on the way.</summary>
public static class GateWording
{
    /// <summary>Why a shut gate stops the route.</summary>
    /// <param name="gate">The gate.</param>
    /// <param name="route">The route, or one of several that the same gate stops.</param>
    /// <param name="systems">The operating systems on which it does.</param>
    public static string Stops(Gate gate, Route route, IReadOnlyList<string> systems) => gate.Reason switch
    {
        GateReason.RendererOnOs => $"{route.Renderer.Title.Name} has no {Names.Of(route.Renderer)} path on {Names.List(systems, "or")}",
        GateReason.Runtime runtime => $"{Names.List(systems)} cannot have the {Names.Api(runtime.Level)} runtime",
        GateReason.ApiOffered api => $"{Names.Of(route.Setup.Driver)} does not offer {Names.Api(api.Level)} on {route.Setup.Os.Name}",
        GateReason.CardOnOs => $"{route.Setup.Card.Name} does not work under {Names.List(systems, "or")}",
        GateReason.DriverExists => $"there is no driver for {route.Setup.Card.Name} under {route.Setup.Os.Name}",
        GateReason.ForcedInstall => $"{Names.Of(route.Setup.Driver)} cannot be forced onto {route.Setup.Card.Name}",
        GateReason.WrapperOffers api => $"{Wrapper(route)} does not offer {Names.Api(api.Level)}",
        GateReason.WrapperOnOs => $"{Wrapper(route)} does not run on {Names.List(systems, "or")}",
        GateReason.WrapperRuntime runtime => $"{Wrapper(route)} needs the {Names.Api(runtime.Level)} runtime, which {Names.List(systems)} cannot have",
        GateReason.WrapperTarget target => $"{Wrapper(route)} draws with {Names.Api(target.Level)}, which {Names.Of(route.Setup.Driver)} does not offer",
        GateReason.WrapperNeeds need => $"{Wrapper(route)} needs {Names.Of(need.Capability)}, which the card does not supply with {Names.Of(route.Setup.Driver)}",
        GateReason.WrapperMemory memory => $"{Wrapper(route)} needs {Names.Mebibytes(memory.Bytes)} of video memory",
        GateReason.FrameBuffer frame => FrameBuffer(frame),
        GateReason.Textures => "even the smallest textures do not fit, and the card cannot take them over the bus",
        GateReason.NoDefect defect => Defect(defect.Defect, route),
        GateReason.Watched => $"it was seen not to run: {Names.List(gate.Answer.Observations.Select(FactWording.Observation).ToList())}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>What an open gate says, for routes that run; null where there is nothing worth saying.</summary>
    public static string? Passes(Gate gate, Route route) => gate.Reason switch
    {
        GateReason.ApiOffered api => $"{Names.Of(route.Setup.Driver)} offers {Names.Api(api.Level)} on {route.Setup.Os.Name}",
        GateReason.Runtime runtime => $"{route.Setup.Os.Name} can have the {Names.Api(runtime.Level)} runtime",
        GateReason.ForcedInstall => $"{Names.Of(route.Setup.Driver)} does not list {route.Setup.Card.Name} and has to be forced",
        GateReason.WrapperOnOs => $"{Wrapper(route)} runs on {route.Setup.Os.Name}",
        GateReason.WrapperTarget target => $"{Wrapper(route)} draws with {Names.Api(target.Level)}, which {Names.Of(route.Setup.Driver)} offers",
        GateReason.WrapperNeeds need => $"{Wrapper(route)} needs {Names.Of(need.Capability)}, which is there",
        GateReason.FrameBuffer { Pool: { } pool } frame =>
            $"the frame buffer at {frame.Draw.Mode}, {frame.Draw.Depth} bit, takes at least {Names.Mebibytes(frame.Draw.FrameBytes)} of {Names.Mebibytes(pool)}",
        GateReason.Watched => $"it was seen to run: {Names.List(gate.Answer.Observations.Select(FactWording.Observation).ToList())}",
        _ => null,
    };

    /// <summary>Case 8: at which mode it does not fit, and up to which it does.</summary>
    public static string FrameBuffer(GateReason.FrameBuffer frame)
    {
        var worksTo = frame.WorksTo is { } mode ? $"; works to {mode}" : "";
        return $"the frame buffer at {frame.Draw.Mode}, {frame.Draw.Depth} bit, takes at least {Names.Mebibytes(frame.Draw.FrameBytes)}, and the card has {Names.Mebibytes(frame.Pool ?? 0)}{worksTo}";
    }

    private static string Defect(Defect defect, Route route)
    {
        var where = defect.Scope.NamesDriver ? $" with {Names.Of(route.Setup.Driver)}" : "";
        var because = defect.IfPresent is { } cause ? $" where {Names.Of(cause)} is present" : "";
        var effect = defect.Effect.Length > 0 ? $": {defect.Effect.TrimEnd('.')}" : "";
        return $"known defect{where}{because}{effect} ({FactWording.Evidence(defect.Evidence)})";
    }

    private static string Wrapper(Route route) => Names.Of(route.Wrapper!);
}
