namespace FeatureMatrix.Reports.Advice;

/// <summary>A decision as every format shows it: one sentence, the policy it rests on, cautions, then tables.</summary>
/// <param name="Title">What was asked.</param>
/// <param name="Headline">The answer in a sentence or two, as a practitioner would write it.</param>
/// <param name="PolicyText">The policy in words.</param>
/// <param name="Cautions">What to mind before acting on it; may be empty.</param>
/// <param name="Tables">What the answer rests on.</param>
public sealed record DecisionReport(
    string Title, string Headline, string PolicyText, IReadOnlyList<string> Cautions, IReadOnlyList<Table> Tables);
