using System.Text;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Resolving.Generated;

/// <summary>A catalog in lines that a person can read; for messages of failed tests.</summary>
internal static class CatalogDump
{
    public static string Of(GeneratedCatalog generated)
    {
        var (catalog, terms) = (generated.Catalog, generated.Terms);
        var text = new StringBuilder();
        foreach (var os in catalog.Oses)
            text.AppendLine($"{os.Id}: {string.Join("; ", os.Runtimes.Select(r => $"{r.Api} up to step {r.Highest} ({r.Evidence.Grade})"))}");
        foreach (var card in catalog.Cards)
            text.AppendLine($"{card.Id} = {card.Chip}, {card.Memory}, complete for [{Ids(card.DriversCompleteFor)}], {Oses(card.OsSupport)}");
        foreach (var driver in catalog.Drivers)
            text.AppendLine($"{driver.Id} on [{Ids(driver.Oses)}] lists [{Ids(driver.Lists)}] {string.Join("; ", driver.Forced.Select(f => $"forced on {f.Card} {f.Works} ({f.Evidence.Grade})"))}");
        foreach (var fact in catalog.Facts)
            text.AppendLine($"fact {Of(fact.Scope)}: {Of(fact)}");
        foreach (var version in catalog.WrapperVersions)
        {
            text.AppendLine($"{version.Id} offers [{Ids(version.Offers)}] on {version.Target}, runtime {version.Runtime}, passes [{Ids(version.Passes)}]{(version.IsComplete ? ", complete" : "")}, needs [{Ids(version.Needs.Select(n => n.Capability))}], {version.VideoMemoryBytes} B, {Oses(version.Oses)}");
            foreach (var fact in version.Supplies)
                text.AppendLine($"  supplies {Of(fact)}");
        }

        foreach (var renderer in catalog.Titles.SelectMany(title => title.Renderers))
        {
            text.AppendLine($"{renderer} on {renderer.Api}, runtime {renderer.Runtime}, [{Ids(renderer.Oses)}], {Of(renderer.Memory)}");
            foreach (var need in renderer.Needs)
                text.AppendLine($"  needs {need}{(need.HardwareOnly ? " in hardware" : "")}: {need.Strength}, broken {need.WhenBroken?.ToString() ?? "-"} {need.Condition}");
            foreach (var defect in renderer.Defects)
                text.AppendLine($"  defect {defect.IfPresent} {Of(defect.Scope)} wrapper {defect.Wrapper?.Id ?? "-"} ({defect.Evidence.Grade})");
        }

        foreach (var seen in catalog.Observations)
            text.AppendLine($"seen {seen.Renderer} {seen.Card} {seen.Driver} {seen.Os} {seen.Wrapper.GetType().Name} {(seen.Wrapper as ObservedWrapper.Version)?.Used} depth {seen.Depth} runs {seen.Runs} [{string.Join("; ", seen.Seen.Select(s => $"{s.Capability} {s.Seen}"))}] ({seen.Evidence.Grade})");
        var policy = terms.Policy;
        return text.AppendLine($"terms: forced {policy.AllowForced}, oses [{(policy.Oses is null ? "any" : Ids(policy.Oses))}], wrappers {(policy.Wrappers is null ? "any" : "none")}, mode {policy.Mode}, depth {policy.Depth}, samples {policy.Samples}, preset '{terms.Preset}'")
            .ToString();
    }

    private static string Ids<T>(IEnumerable<T> things) => string.Join(", ", things);

    private static string Oses(IEnumerable<OsSupport> statements) => string.Join("; ", statements.Select(s => $"{s.Os} {s.Support} ({s.Evidence.Grade})"));

    private static string Of(SupplyFact fact) => $"{fact.Capability} {fact.Reach} {fact.Support} ({fact.Evidence.Grade})";

    private static string Of(Scope scope) => string.Join(" + ", new[]
    {
        scope.Chip?.Id, scope.Card?.Id, scope.Drivers is { } range ? $"{range.Branch}@{range.First + 1}..{range.Last + 1}" : null, scope.Os?.Id, scope.Api is { } api ? $"under {api}" : null,
    }.Where(part => part is not null).DefaultIfEmpty("everywhere"));

    private static string Of(MemoryUse use) =>
        $"{use.LowestMode} depths [{Ids(use.Depths)}] back {use.BackBuffers} z {use.DepthBits?.ToString() ?? "as colour"} presets [{string.Join("; ", use.Presets.Select(p => $"{p.Name} {p.Bytes} {p.Format} {(p.IsMeasured ? "measured" : "estimated")}"))}]";
}
