using FeatureMatrix.Importing.Capabilities;
using FeatureMatrix.Importing.OpenGl;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Measuring;

/// <summary>
/// What a dump or report says in the words of the vocabulary. A feature that the interface cannot report has no
/// statement here, which is unknown and not absent (rule R2; FACTS section 0, trap 3).
/// </summary>
/// <param name="Statements">In the order of the vocabulary.</param>
/// <param name="Disputes">Where two interface generations contradict each other; nothing is stated of those steps.</param>
/// <param name="Unmapped">Public names that the card reports and no feature of the vocabulary knows, in order of report.</param>
/// <param name="Software">What gives a software renderer away; its statements are <see cref="Support.Emulated"/>.</param>
public sealed record MeasuredSupply(
    EquatableList<MeasuredStatement> Statements,
    EquatableList<MeasuredDispute> Disputes,
    EquatableList<string> Unmapped,
    SoftwareSign? Software)
{
    /// <summary>What an OpenGL report says of the features, and of OpenGL's own version where the vocabulary has it.</summary>
    /// <param name="report">The report.</param>
    /// <param name="vocabulary">Features and APIs.</param>
    public static MeasuredSupply Of(OpenGlReport report, IReadOnlyList<Feature> vocabulary) =>
        OpenGlMeasure.Of(report, vocabulary);

    /// <summary>
    /// What the Direct3D parts of a dump say of the features, and of Direct3D's own level where the vocabulary has it.
    /// Devices that do not draw in hardware do not count.
    /// </summary>
    /// <param name="dump">The dump.</param>
    /// <param name="vocabulary">Features and APIs.</param>
    /// <param name="drawDevice">The DirectDraw device; an add-in board without a desktop is one of its own.</param>
    /// <param name="adapter">The adapter of Direct3D 8 and 9.</param>
    public static MeasuredSupply Of(
        CapabilityDump dump, IReadOnlyList<Feature> vocabulary, uint drawDevice = 0, uint adapter = 0) =>
        Direct3DMeasure.Of(dump, vocabulary, drawDevice, adapter);
}

/// <summary>One statement of supply without the hardware and driver it is about, which the report does not name.</summary>
/// <param name="Api">The interface that was asked.</param>
/// <param name="Capability">The flag or level.</param>
/// <param name="Reach">How it speaks of the other levels.</param>
/// <param name="Support">Yes, no, or emulated for a software renderer.</param>
/// <param name="Signs">The public names that say so, for the source of the fact.</param>
public sealed record MeasuredStatement(
    Feature Api, Capability Capability, Reach Reach, Support Support, EquatableList<string> Signs)
{
    /// <summary>The statement as a fact of grade <see cref="Grade.Measured"/>.</summary>
    /// <param name="scope">The card, driver and operating system that were measured; the API is added.</param>
    /// <param name="source">The dump or report.</param>
    public SupplyFact ToFact(Scope scope, Source source)
    {
        ArgumentNullException.ThrowIfNull(scope);
        return new(scope with { Api = Api }, Capability, Reach, Support, new Evidence(Grade.Measured, source, Origin.None));
    }
}

/// <summary>Steps of a feature that one report claims and another denies.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="First">The lowest step in dispute.</param>
/// <param name="Last">The highest.</param>
/// <param name="Signs">The public names of both sides.</param>
public sealed record MeasuredDispute(Feature Feature, int First, int Last, EquatableList<string> Signs);
