namespace FeatureMatrix.Pictures;

/// <summary>The words of one illustration.</summary>
internal sealed record PictureText(string Title, string LookFor, PaneText With, PaneText Without, params IReadOnlyList<string> Assumptions);

/// <summary>Every sentence that belongs to a picture. Nothing else in this folder carries user wording.</summary>
internal static class PictureTexts
{
    public const string Label = "Computed illustration, not a screenshot";

    private static readonly Dictionary<string, PictureText> Texts = new()
    {
        ["fog-table-none"] = new("Table fog",
            "Look at the far shore: haze lets it fade out; without it the land stops at a hard edge.",
            new("with table fog", "A lake between hills; the far hills fade softly into a pale sky."),
            new("without fog", "The same lake; the far hills are clear and end at a hard straight edge against the sky."),
            "Linear fog worked out at every pixel; the title draws nothing beyond the distance where fog is complete."),
        ["fog-table-vertex"] = new("Table fog against vertex fog",
            "Same fog settings. Worked out only at the corners of large polygons, the haze misses what lies between.",
            new("fog at every pixel", "A long road and wall fade evenly into haze."),
            new("fog at corners only", "The same road and wall stay clear far into the distance, with visible jumps between polygons."),
            "Linear fog from 15 to 90 units; ground and wall are built of few, very long polygons, as many titles did."),
    };

    public static IReadOnlyCollection<string> Ids => Texts.Keys;

    public static PictureText For(string id) => Texts[id];
}
