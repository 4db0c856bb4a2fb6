using FeatureMatrix.Importing.Measuring;
using FeatureMatrix.Loading.Writing;
using FeatureMatrix.Model;

namespace FeatureMatrix.Importing.Records;

/// <summary>What a report or dump says of a card with a driver, as one entry among the collection's facts.</summary>
public static class MeasuredRecord
{
    private static readonly string[] FurtherScope = ["chip", "from", "to", "os", "api"];

    /// <summary>
    /// The entry. A feature of the vocabulary that the report does not speak of any more is taken out of it, unless a person
    /// gave it a form of its own.
    /// </summary>
    /// <param name="supply">What the report says.</param>
    /// <param name="target">Whose report it is.</param>
    /// <param name="api">The API whose report it is.</param>
    public static RecordChange Of(MeasuredSupply supply, ReportTarget target, string api)
    {
        ArgumentNullException.ThrowIfNull(supply);
        ArgumentNullException.ThrowIfNull(target);
        List<(string Key, string Value)> identity = [("card", target.Card), ("driver", $"{target.Branch} {target.Version}")];
        if (target is { Os: { } os, KnownDriver.Oses.Count: > 1 })
            identity.Add(("os", os.Id));
        identity.Add(("api", api));
        identity.Add(("source", target.Source));
        var said = supply.Statements.GroupBy(statement => statement.Capability.Feature).ToDictionary(group => group.Key, group => group.ToList());
        return new RecordChange(
            [new Step.Key("facts"), new Step.Item(identity, [.. FurtherScope.Except(identity.Select(pair => pair.Key))])],
            $"measured/{target.Card}.yaml",
            [
                .. target.Catalog.Features.Select(feature => said.TryGetValue(feature, out var statements)
                    ? new KeyChange(feature.Id, Value(statements), KeyRule.Replace)
                    : new KeyChange(feature.Id, new YamlValue.Text(""), KeyRule.Remove)),
            ]);
    }

    private static YamlValue Value(IReadOnlyList<MeasuredStatement> statements) =>
        statements is [var only] ? Value(only) : new YamlValue.List([.. statements.Select(Value)]);

    /// <summary>A statement in the short form where the format has one for it (data/README.md, "Supply").</summary>
    private static YamlValue Value(MeasuredStatement statement)
    {
        var (feature, level) = (statement.Capability.Feature, statement.Capability.Level);
        return (statement.Support, statement.Reach) switch
        {
            var (support, _) when !feature.HasLevels => new YamlValue.Text(Word(support)),
            (Support.Yes, Reach.UpTo) => new YamlValue.Text(level),
            (Support.Yes, Reach.AtLeast) => new YamlValue.Text(level + "+"),
            (Support.No, _) when statement.Capability.Step == 1 => new YamlValue.Text("none"),
            (Support.No, _) => Long(statement, null),
            (_, Reach.UpTo) => Long(statement, "up-to"),
            (_, Reach.AtLeast) => Long(statement, "at-least"),
            (_, Reach.At) => Long(statement, "at"),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static YamlValue.Map Long(MeasuredStatement statement, string? reach)
    {
        List<(string, YamlValue)> entries =
            [("is", new YamlValue.Text(Word(statement.Support))), ("level", new YamlValue.Text(statement.Capability.Level))];
        if (reach is not null)
            entries.Add(("reach", new YamlValue.Text(reach)));
        return new YamlValue.Map(entries);
    }

    private static string Word(Support support) => support switch
    {
        Support.Yes => "yes",
        Support.No => "no",
        Support.Emulated => "emulated",
        Support.Broken => "broken",
        Support.Unknown => "unknown",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
