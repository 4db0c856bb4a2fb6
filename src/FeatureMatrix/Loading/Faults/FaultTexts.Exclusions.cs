using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Faults;

/// <summary>Keys and entities that exclude each other, or of which exactly one has to be there.</summary>
internal static partial class FaultTexts
{
    public static Fault BiosIdTaken(Origin at, string label, string id) =>
        Exclusion(at, $"the BIOS of {label} is the driver '{id}', an id that another driver has");

    public static Fault CompanionOfNoAddIn(Origin at) =>
        Exclusion(at, "only an add-in has a companion; write 'add-in: yes' or drop it");

    public static Fault CompanionIsAddIn(Origin at, Card companion) =>
        Exclusion(at, $"the companion '{companion.Id}' is no 2D card but an add-in itself");

    public static Fault NeitherOnePoolNorTwo(Origin at) =>
        Exclusion(at, "'memory' is one pool ('unified') or two ('frame' and 'texture'), and always one of these");

    public static Fault NeitherSoldNorAsked(Origin at) =>
        Exclusion(at, "a price is either 'sold' (a sale was seen) or 'asked'");

    public static Fault NoNameOfALevel(Origin at, string level) =>
        Exclusion(at, $"'{level}' has a meaning of its own and cannot name a level");

    public static Fault CountsOnlyWith(Origin at, string key, string with) => Exclusion(at, $"'{key}' counts with '{with}' only");

    public static Fault NeitherOneNorSeveral(Origin at) =>
        Exclusion(at, "a need names one feature ('need') or several to choose from ('any-of')");

    public static Fault NeitherDepthNorPreset(Origin at) => Exclusion(at, "'when' names a 'depth' or a 'preset'");

    public static Fault NeitherApiNorSoftware(Origin at, string label) =>
        Exclusion(at, $"{label} draws through an 'api' or is 'software: yes', and always one of these");

    public static Fault SpecimenOfAnother(Origin at, Specimen specimen, Card card) =>
        Exclusion(at, $"specimen '{specimen.Id}' is a '{specimen.Card.Id}', not a '{card.Id}'");

    public static Fault SeenWithoutRunning(Origin at) =>
        Exclusion(at, "what does not run shows nothing; 'runs: no' and 'seen' exclude each other");

    public static Fault RangeWithoutDriver(Origin at) =>
        Exclusion(at, "'from' and 'to' are versions of a 'driver', and none is named");

    public static Fault RangeOfOneVersion(Origin at) =>
        Exclusion(at, "'driver' names one version here, so 'from' and 'to' say nothing");

    public static Fault RangeBackwards(Origin at, DriverBranch branch) =>
        Exclusion(at, $"'to' is an older version of driver {branch.Id} than 'from'");

    public static Fault DenialReachesUp(Origin at) =>
        Exclusion(at, "'is: no' speaks for its level and all above, so its 'reach' can only be 'at'");

    public static Fault CardOfAnotherChip(Origin at, Card card, Chip chip) =>
        Exclusion(at, $"card '{card.Id}' has the chip '{card.Chip.Id}', not '{chip.Id}'");

    public static Fault NeedsNoRuntime(Origin at, Feature api) =>
        Exclusion(at, $"{api.Id} needs no runtime of the operating system; it comes with driver or board");

    public static Fault SuppliedAndPassed(Origin at, Feature feature) =>
        Exclusion(at, $"{feature.Id} stands under 'supplies' and under 'passes'; a wrapper does one of the two");

    public static Fault OffersNoApi(Origin at, Feature feature) => Exclusion(at, $"{feature.Id} is no API, so it cannot be offered");

    public static Fault HalfAMode(Origin at) => Exclusion(at, "'width' and 'height' stand together or not at all");

    private static Fault Exclusion(Origin at, string what) => Error("FM111", at, what);
}
