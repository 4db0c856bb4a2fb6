using System.Text;
using FeatureMatrix.Model;
using FeatureMatrix.Reports.Subjects;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Imports;

/// <summary>What newly recorded observations decide: which verdicts change, which are confirmed, and which of them decide nothing.</summary>
public static class SightingsReport
{
    private const int MostLines = 20;

    /// <summary>A line for each changed verdict and each observation that decides nothing, and a count of the rest. Empty where none is new.</summary>
    /// <param name="before">The collection without them.</param>
    /// <param name="after">The collection with them.</param>
    public static string Of(Catalog before, Catalog after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var known = before.Observations.Select(Key).ToHashSet(StringComparer.Ordinal);
        var added = after.Observations.Where(observation => !known.Contains(Key(observation))).ToList();
        if (added.Count == 0)
            return "";
        var idle = new IdleObservations(new Decisions(after, null));
        var reasons = added.Select(observation => (observation, reason: idle.Reason(observation))).ToList();
        var changes = Changes(before, after, added).ToList();
        var lines = changes.Concat(reasons.Where(pair => pair.reason is not null)
            .Select(pair => $"Recorded, decides nothing: {pair.observation.Renderer.Title.Name} {FactWording.Observation(pair.observation)}: {pair.reason}.")).ToList();
        var text = new StringBuilder("What it decides:\n");
        foreach (var line in lines.Take(MostLines))
            text.Append("  ").Append(line).Append('\n');
        if (lines.Count > MostLines)
            text.Append("  and ").Append(Names.Count(lines.Count - MostLines, "more line")).Append('\n');
        if (changes.Count == 0)
            text.Append(reasons.Exists(pair => pair.reason is null) ? "  No verdict changes; what was seen confirms it.\n" : "  No verdict changes.\n");
        return text.ToString();
    }

    /// <summary>The cells whose label changes, on the default terms; where it does not change there, on the first library's on which it does.</summary>
    private static IEnumerable<string> Changes(Catalog before, Catalog after, List<Observation> added)
    {
        var terms = after.Libraries.Select(library => (
                name: $", for {Names.InMiddle(library.Name)}", now: new Decisions(after, library), old: Old(library)))
            .Prepend((name: "", now: new Decisions(after, null), old: new Decisions(before, null))).Where(one => one.old is not null).ToList();
        foreach (var (title, card) in added.SelectMany(seen => (seen.Card is { } card ? [card] : after.Cards).Select(one => (seen.Renderer.Title, one))).Distinct())
        {
            if (before.Titles.FirstOrDefault(one => one.Id == title.Id) is not { } oldTitle || before.Cards.FirstOrDefault(one => one.Id == card.Id) is not { } oldCard)
                continue;
            var change = terms.Select(one => (one.name, now: one.now.CellOn(title, card).Label, old: one.old!.CellOn(oldTitle, oldCard).Label)).FirstOrDefault(one => one.now != one.old);
            if (change.now is not null)
                yield return $"{title.Name} on {card.Name}{change.name}: {change.now}; before: {change.old}.";
        }

        Decisions? Old(Library library) => before.Libraries.FirstOrDefault(one => one.Id == library.Id) is { } same ? new Decisions(before, same) : null;
    }

    private static string Key(Observation seen) =>
        $"{seen.Renderer.Title.Id} {seen.Renderer.Id} {seen.Specimen?.Id} {seen.Mode} {seen.Depth} {seen.Rig?.Id} {seen.Note} {FactWording.Observation(seen)}";
}
