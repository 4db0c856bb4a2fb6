using System.Globalization;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Faults;

/// <summary>
/// Every fault and its wording, in one place: facts first, no blame, then what may stand there. The codes are listed in
/// data/README.md. FM0xx: the file as such; FM1xx: errors in what it says; FM2xx: warnings.
/// </summary>
internal static partial class FaultTexts
{
    /// <summary>More words than these are not listed: nobody reads them.</summary>
    private const int MostListed = 24;

    // The file as such.
    public static Fault NotUtf8(Origin at) => Error("FM001", at, "is not UTF-8; save it as UTF-8");

    public static Fault IsUtf16(Origin at) => Error("FM001", at, "is UTF-16; save it as UTF-8");

    public static Fault HoldsNul(Origin at) => Error("FM001", at, "holds a NUL character, so it is no text; save it as UTF-8");

    public static Fault ControlCharacter(Origin at, char c) => Error(
        "FM001", at, string.Create(CultureInfo.InvariantCulture, $"holds the character U+{(int)c:X4}, which no output can show"));

    public static Fault FileTooLarge(Origin at) => Error("FM002", at, "is larger than 4 MiB; split it into several files");

    public static Fault TextTooLong(Origin at) => Error("FM002", at, "a text is longer than 65,536 characters");

    public static Fault TooDeep(Origin at) => Error("FM002", at, "is nested deeper than 32 levels; the format needs about ten");

    public static Fault TooManyFiles(Origin at) => Error("FM002", at, "holds more than 20,000 files; is this a collection's folder?");

    public static Fault TooMuchText(Origin at) => Error("FM002", at, "holds more than 128 MiB of text in all; is this a collection's folder?");

    public static Fault TabInIndent(Origin at) => Error("FM003", at, "a tab at the beginning of a line; YAML is indented with spaces");

    public static Fault NotYaml(Origin at, string reason) => Error("FM003", at, $"cannot be read as YAML: {OneLine(reason)}");

    public static Fault AnchorOrAlias(Origin at) => Error(
        "FM004", at, "uses an anchor or alias (& or *); the format shares by 'like', engines and inherited sources; a text that starts so needs quotes");

    public static Fault Tag(Origin at) => Error("FM004", at, "uses a tag (!); every value is text here; a text that starts so needs quotes");

    public static Fault SecondDocument(Origin at) => Error("FM004", at, "holds a second document (---); use a second file");

    public static Fault KeyIsNoText(Origin at) => Error("FM004", at, "a key is no text");

    public static Fault CannotRead(Origin at, string reason) => Error("FM005", at, $"cannot be read: {OneLine(reason)}");

    public static Fault BaseNotRelative(Origin at, string folder) => Error(
        "FM007", at, $"'{Cut(folder)}' is no relative folder; write the way from this collection to the other with /, such as ../shared");

    public static Fault NoBase(Origin at, string folder) => Error(
        "FM008", at, $"there is no collection in '{Cut(folder)}': that folder needs a collection.yaml");

    public static Fault BaseInCircle(Origin at, string folder) => Error(
        "FM009", at, $"'{Cut(folder)}' builds on what builds on it; one of the two has to stand alone");

    /// <summary>What 'needs' wants.</summary>
    public const string NeedsByStrength = "features under how badly it shows without them, such as {severe: [fog-table], cosmetic: [tex-pal8]}";

    /// <summary>What an entry of a list of needs wants.</summary>
    public const string OneNeed = "a feature, or a map with 'need' or 'any-of'";

    /// <summary>What stands under a feature among needs.</summary>
    public const string EffectOfANeed = "the effect in words, or a map of keys";

    // Keys and shapes.
    public static Fault UnknownKey(Origin at, string key, string label, IEnumerable<string> legal) =>
        Error("FM101", at, $"unknown key '{Cut(key)}' in {label}{MeantOr(key, legal, "it may have")}");

    public static Fault MissingKey(Origin at, string key, string label) => Error("FM102", at, $"{label} needs the key '{key}'");

    public static Fault Unknown(Origin at, string kind, string word, IEnumerable<string> legal) =>
        Error("FM103", at, $"unknown {kind} '{Cut(word)}'{MeantOr(word, legal, "there is")}");

    public static Fault VersionMissing(Origin at, string of, IEnumerable<string> versions) =>
        Error("FM103", at, $"{of} needs a version here; there is {string.Join(", ", versions)}");

    public static Fault DuplicateKey(Origin at, string key, Origin first) =>
        Error("FM104", at, $"key '{Cut(key)}' occurs a second time; the first is in line {Number(first.Line)}");

    public static Fault Twice(Origin at, string kind, string name, string label) =>
        Error("FM104", at, $"{kind} '{Cut(name)}' occurs a second time in {label}");

    public static Fault DuplicateId(Origin at, string kind, string id, Origin first) =>
        Error("FM104", at, $"{kind} '{id}' is defined a second time; the first is at {first.File}({Number(first.Line)},{Number(first.Column)})");

    public static Fault WrongShape(Origin at, string label, string wanted, string found) =>
        Error("FM105", at, $"{label} wants {wanted}, not {found}");

    public static Fault BadId(Origin at, string id) =>
        Error("FM106", at, $"'{Cut(id)}' is no id; an id has small letters, digits, hyphens and points, for example 'nl-4'");

    public static Fault LongId(Origin at, string id) =>
        Error("FM106", at, $"'{Cut(id)}' is longer than {Ids.Longest} characters; files are named after ids");

    public static Fault TakenId(Origin at, string id) =>
        Error("FM106", at, $"'{id}' cannot be an id: files are named after ids, and that name belongs to a device of Windows or to a list page; 'the-{id}' can");

    // Values.
    public static Fault NotOneOf(Origin at, string label, string word, IEnumerable<string> legal) =>
        Error("FM107", at, $"'{Cut(word)}' is no value of {label}: it is {OneOf(legal)}{Meant(word, legal)}");

    public static Fault NoSuchLevel(Origin at, Feature feature, string word) =>
        Error("FM108", at, $"'{Cut(word)}' is no level of {feature.Id}; its levels are {string.Join(", ", feature.Levels)}");

    public static Fault LevelMissing(Origin at, Feature feature) =>
        Error("FM108", at, $"{feature.Id} needs a level here; its levels are {string.Join(", ", feature.Levels)}");

    public static Fault FlagHasNoLevel(Origin at, Feature feature, string word) =>
        Error("FM108", at, $"{feature.Id} has no levels, so '{Cut(word)}' says nothing here");

    public static Fault WrongForm(Origin at, string label, string word, string wanted) =>
        Error("FM109", at, $"'{Cut(word)}' is no value of {label}; it wants {wanted}");

    public static Fault WrongUnit(Origin at, string label, string word, string wanted) =>
        Error("FM110", at, $"'{Cut(word)}' in {label} lacks one of the units known here; it wants {wanted}");

    // What cannot stand together; the rest of it is in FaultTexts.Exclusions.cs.
    public static Fault DeniedBelow(Origin at, Capability had, Capability denied, Origin other) => Error(
        "FM111", at, $"'{had}' is supplied here, and '{denied}', which it includes, is denied by the same source {Place(at, other)}");

    public static Fault SaidBothWays(Origin at, Capability capability, Origin other) => Error(
        "FM111", at, $"'{capability}' is stated a second time and differently by the same source; the first is {Place(at, other)}");

    public static Fault EmptyChoice(Origin at) => Error("FM112", at, "'any-of' lists nothing, so nothing could meet it");

    public static Fault ListsNoCard(Origin at, string label) => Error("FM113", at, $"{label} lists no card; name the cards in 'lists'");

    public static Fault Cycle(Origin at, string kind, string id, string key) =>
        Error("FM114", at, $"{kind} '{id}' leads back to itself through '{key}'");

    // Warnings.
    public static Fault Unsourced(Origin at, string label, int count) => Warning(
        "FM201", at, count == 1
            ? $"{label}: this statement names no source, so it counts as inferred at best"
            : $"{label}: {Number(count)} statements from here on name no source, so they count as inferred at best; 'source' written once for all covers them");

    public static Fault Unwitnessed(Origin at, string label) => Warning("FM201", at, $"{label} names neither who saw it ('by') nor a source");

    public static Fault AddInAlone(Origin at, string label) =>
        Warning("FM202", at, $"{label} is an add-in without a 'companion', so its 2D side is not known");

    private static Fault Error(string code, Origin at, string message) => new(code, Severity.Error, at, message);

    private static Fault Warning(string code, Origin at, string message) => new(code, Severity.Warning, at, message);

    private static string Place(Origin from, Origin to) => from.File == to.File
        ? $"in line {Number(to.Line)}"
        : $"at {to.File}({Number(to.Line)},{Number(to.Column)})";

    private static string Meant(string word, IEnumerable<string> legal) =>
        Nearest.To(word, legal) is { } near ? $"; did you mean '{near}'?" : "";

    private static string MeantOr(string word, IEnumerable<string> legal, string lead)
    {
        if (Nearest.To(word, legal) is { } near)
            return $"; did you mean '{near}'?";
        var all = legal.Order(StringComparer.Ordinal).ToList();
        return all.Count switch
        {
            0 => $"; {lead} none",
            > MostListed => Holding(word, all),
            _ => $"; {lead} {string.Join(", ", all)}",
        };
    }

    /// <summary>Names that hold a word, where there are some: <c>fog</c> is no feature, but six have it in their names.</summary>
    private static string Holding(string word, List<string> all)
    {
        var holding = word.Length > 2 ? all.Where(one => one.Contains(word, StringComparison.OrdinalIgnoreCase)).Take(MostListed).ToList() : [];
        return holding.Count > 0 ? $"; did you mean {OneOf(holding)}?" : "";
    }

    private static string OneOf(IEnumerable<string> legal)
    {
        var all = legal.ToList();
        return all.Count == 1 ? all[0] : $"{string.Join(", ", all.SkipLast(1))} or {all[^1]}";
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Keeps a message on one readable line whatever the file holds.</summary>
    private static string Cut(string text)
    {
        var line = OneLine(text);
        return line.Length <= 60 ? line : line[..57] + "...";
    }
}
