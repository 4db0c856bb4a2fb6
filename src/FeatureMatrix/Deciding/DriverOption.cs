using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>One driver on one system for one card, and what it does for a library.</summary>
public sealed record DriverOption(Setup Setup, Holding Holding);
