using System.Globalization;
using FeatureMatrix.Model;

namespace FeatureMatrix.Reports.Wording;

/// <summary>A policy in words; printed with every decision (rule R16).</summary>
public static class PolicyWording
{
    /// <summary>The policy in one paragraph.</summary>
    public static string Text(Policy policy) => string.Join("; ", Lines(policy).Select(line => $"{line.Name}: {line.Value}"));

    /// <summary>What sets the policy apart from the default terms; those in a sentence where nothing does.</summary>
    public static string Short(Policy policy) => Lines(policy).Except(Lines(Policy.Default)).ToList() is { Count: > 0 } own
        ? $"Terms: {string.Join("; ", own.Select(line => $"{line.Name}: {line.Value}"))}."
        : "Terms: any system and wrapper, no forced drivers, each title's lowest mode and depth.";

    /// <summary>The policy as names and values.</summary>
    public static IReadOnlyList<(string Name, string Value)> Lines(Policy policy) =>
    [
        .. policy.Name.Length > 0 ? [("from", policy.Name)] : ((string, string)[])[],
        ("operating systems", policy.Oses is { } oses ? Names.List(oses.Select(os => os.Name).ToList()) : "any"),
        ("wrappers", policy.Wrappers switch
        {
            null => "any",
            { Count: 0 } => "none",
            var wrappers => Names.List(wrappers.Select(wrapper => wrapper.Name).ToList()),
        }),
        ("forced drivers", policy.AllowForced ? "allowed" : "not allowed"),
        ("software rendering for must-haves", policy.AllowSoftware ? "allowed" : "not allowed"),
        ("one driver for each operating system", policy.OneDriverPerOs ? "yes" : "no"),
        ("mode", policy.Mode is { } mode ? mode.ToString() : "each title's lowest"),
        ("colour depth", policy.Depth is { } depth ? $"{Number(depth)} bit" : "each title's lowest"),
        ("samples a pixel", Number(policy.Samples)),
        ("speed floor", policy.FpsFloor is { } floor ? $"{Number(floor)} frames a second" : "none"),
        ("worth kept after a severe loss", Number(policy.SevereWorth)),
        ("worth kept after a cosmetic loss", Number(policy.CosmeticWorth)),
    ];

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
