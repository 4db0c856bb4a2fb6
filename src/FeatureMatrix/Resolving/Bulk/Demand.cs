using FeatureMatrix.Model;

namespace FeatureMatrix.Resolving.Bulk;

/// <summary>
/// One thing that routes ask of a setup. Titles share them: two demands are equal where their keys are, whatever the title. The
/// renderer is one that has the demand and stands for all.
/// </summary>
internal abstract record Demand(string Key, Renderer Renderer, WrapperVersion? Wrapper, Terms Terms)
{
    /// <summary>The wrapper version that it goes through, or the API.</summary>
    public object Through => (object?)Wrapper ?? Renderer.Api!.Value.Feature;

    /// <summary>What it asks, whichever way it is asked: what nobody knows of the title is one thing for all ways.</summary>
    public virtual string Question => Key;

    /// <summary>To be reached at all: renderer, operating system, install, runtime, API or wrapper.</summary>
    internal sealed record Access(string Key, Renderer Renderer, WrapperVersion? Wrapper, Terms Terms) : Demand(Key, Renderer, Wrapper, Terms);

    /// <summary>Room for the frame buffer and the textures.</summary>
    internal sealed record Room(string Key, Renderer Renderer, WrapperVersion? Wrapper, Terms Terms) : Demand(Key, Renderer, Wrapper, Terms);

    /// <summary>That a defect does not strike.</summary>
    internal sealed record Veto(string Key, Renderer Renderer, WrapperVersion? Wrapper, Terms Terms, Defect Defect) : Demand(Key, Renderer, Wrapper, Terms);

    /// <summary>Needs; several where one's capability implies another's, because such losses are counted once (rule R14).</summary>
    internal sealed record Needed(string Key, Renderer Renderer, WrapperVersion? Wrapper, Terms Terms, IReadOnlyList<Need> Needs)
        : Demand(Key, Renderer, Wrapper, Terms)
    {
        /// <inheritdoc/>
        public override string Question => Demands.Of(Needs);
    }
}

/// <summary>What the routes of a renderer ask for.</summary>
internal static class Demands
{
    /// <summary>The demands of one route.</summary>
    public static IEnumerable<Demand> Of(Renderer renderer, WrapperVersion? wrapper, Terms terms)
    {
        var through = wrapper?.Id ?? renderer.Api!.Value.Feature.Id;
        var room = Room(renderer.Memory, through);
        yield return new Demand.Access($"access {renderer.Api} {renderer.Runtime} {string.Join(',', renderer.Oses)} {through}", renderer, wrapper, terms);
        yield return new Demand.Room(room, renderer, wrapper, terms);
        foreach (var defect in renderer.Defects.Where(defect => defect.Wrapper == wrapper))
            yield return new Demand.Veto($"veto {defect.IfPresent} {Of(defect.Scope)} {defect.Evidence.Grade} {through}", renderer, wrapper, terms, defect);
        var draw = DrawMode.For(renderer.Memory, terms.Policy);
        foreach (var group in Together(renderer.Needs.Where(need => RouteBuilder.MayApply(need, draw))))
        {
            var preset = group.Exists(need => need.Condition is NeedCondition.AtPreset) ? $"{terms.Preset} {room}" : "";
            yield return new Demand.Needed($"needs {Of(group)} {through} {preset}", renderer, wrapper, terms, group);
        }
    }

    /// <summary>Needs in words.</summary>
    public static string Of(IReadOnlyList<Need> needs) => string.Join(", ", needs.Select(Of));

    /// <summary>Puts needs together whose capabilities imply each other.</summary>
    private static List<List<Need>> Together(IEnumerable<Need> needs)
    {
        var groups = new List<List<Need>>();
        foreach (var need in needs)
        {
            var related = groups.Where(group => group.Exists(other => AreRelated(need, other))).ToList();
            groups.RemoveAll(related.Contains);
            groups.Add([.. related.SelectMany(group => group), need]);
        }

        return groups;

        static bool AreRelated(Need need, Need other) =>
            need.Choices.Any(one => other.Choices.Any(two => one.Implies(two) || two.Implies(one)));
    }

    private static string Of(Need need)
    {
        var condition = need.Condition is NeedCondition.AtPreset at ? $" at {at.Preset}" : "";
        return $"{need.Strength}/{need.WhenBroken}{(need.HardwareOnly ? "!" : "")} {string.Join('|', need.Choices)}{condition}";
    }

    private static string Of(Scope scope) => $"[{scope.Chip} {scope.Card} {scope.Drivers?.Branch} {scope.Drivers?.First} {scope.Drivers?.Last} {scope.Os} {scope.Api}]";

    private static string Room(MemoryUse use, string through)
    {
        var presets = string.Join(',', use.Presets.Select(preset => $"{preset.Name} {preset.Bytes} {preset.Format} {preset.IsMeasured}"));
        // What happens to palettes and compressed textures depends on where the route leads.
        return $"room {use.LowestMode} {string.Join(',', use.Depths)} {use.BackBuffers} {use.DepthBits} {presets} {(presets.Length > 0 ? through : "")}";
    }
}
