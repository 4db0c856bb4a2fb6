using FeatureMatrix.Model;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;

namespace FeatureMatrix.Reports.Subjects;

/// <summary>What a card supplies of a feature.</summary>
public sealed record SuppliedBy(string CardId, string CardName, string Text);

/// <summary>A title's path that asks for a feature.</summary>
public sealed record NeededBy(string TitleId, string TitleName, string RendererName, string Name, string Strength, string Effect);

/// <summary>A card and title where it is lost.</summary>
public sealed record LostOn(string CardId, string CardName, IReadOnlyList<Tile> Tiles);

/// <summary>Everything about one feature.</summary>
public sealed record FeatureReport
{
    /// <summary>The feature.</summary>
    public required string Id { get; init; }

    /// <summary>The trade's name for it.</summary>
    public required string Name { get; init; }

    /// <summary>The group it is shown in.</summary>
    public required string Family { get; init; }

    /// <summary>What it is.</summary>
    public required string Meaning { get; init; }

    /// <summary>What a viewer sees when it is missing.</summary>
    public required string SeenWhenMissing { get; init; }

    /// <summary>The levels, lowest first; empty for a flag.</summary>
    public required string Levels { get; init; }

    /// <summary>How imports find it, line by line.</summary>
    public required IReadOnlyList<NamedText> Detection { get; init; }

    /// <summary>What each card supplies.</summary>
    public required IReadOnlyList<SuppliedBy> Supply { get; init; }

    /// <summary>Who asks for it.</summary>
    public required IReadOnlyList<NeededBy> Needs { get; init; }

    /// <summary>Where it is lost or not known, card by card.</summary>
    public required IReadOnlyList<LostOn> Lost { get; init; }

    /// <summary>What a card's page and the list of features say of it in one line.</summary>
    public required string Line { get; init; }

    /// <summary>Who says that the trade knows it.</summary>
    public required string EvidenceText { get; init; }

    /// <summary>The report of a feature.</summary>
    public static FeatureReport Of(Decisions decisions, Feature feature, IReadOnlyList<SupplyCell> supply)
    {
        var needs = decisions.Titles.SelectMany(title => title.Renderers).SelectMany(renderer => renderer.Needs
            .SelectMany(need => need.Choices.Where(choice => choice.Feature == feature).Take(1)
                .Select(choice => new NeededBy(
                    renderer.Title.Id, renderer.Title.Name, Names.Of(renderer), Names.Sentence(Names.Of(need.Choices)), Names.Of(need.Strength),
                    need.Effect.Length > 0 ? need.Effect : feature.SeenWhenMissing)))).ToList();
        var lost = decisions.Catalog.Cards
            .Select(card => new LostOn(card.Id, card.Name, decisions.Titles.Select(title => decisions.CellOn(title, card).Tile)
                .Where(tile => tile.Features.Contains(feature.Id, StringComparer.Ordinal)).ToList()))
            .Where(row => row.Tiles.Count > 0).ToList();
        return new FeatureReport
        {
            Id = feature.Id,
            Name = Names.Sentence(feature.Name),
            Family = Names.Sentence(feature.Family),
            Meaning = feature.Meaning,
            SeenWhenMissing = feature.SeenWhenMissing,
            Levels = string.Join(", ", feature.Levels) + (feature.Unit.Length > 0 ? $" {feature.Unit}" : ""),
            Detection = DetectionOf(feature.Detection),
            Supply = supply.Select(cell => new SuppliedBy(cell.Card.Id, cell.Card.Name, cell.Text)).ToList(),
            Needs = needs,
            Lost = lost,
            Line = $"asked for by {Names.Count(needs.Select(need => need.TitleId).Distinct(StringComparer.Ordinal).Count(), "title")}; "
                + $"lost or not known on {Names.Count(lost.Count, "card")}",
            EvidenceText = Names.Sentence(FactWording.Evidence(feature.Evidence)),
        };
    }

    private static List<NamedText> DetectionOf(Detection detection)
    {
        var lines = new List<NamedText>();
        if (detection.OpenGlExtensions.Count > 0)
            lines.Add(new NamedText("OpenGL extension", Names.List(detection.OpenGlExtensions, "or")));
        if (detection.OpenGlCore is { } core)
            lines.Add(new NamedText("OpenGL version", core));
        if (detection.OpenGlLimit is { } limit)
            lines.Add(new NamedText("OpenGL limit", limit));
        lines.AddRange(detection.Direct3D.GroupBy(sign => sign.Generation).OrderBy(group => group.Key)
            .Select(group => new NamedText(
                $"Direct3D {group.Key.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
                Names.List(group.Select(sign => sign.Constant.Length > 0 ? $"{sign.Field} {sign.Constant}" : sign.Field).ToList(), "or"))));
        return lines;
    }
}
