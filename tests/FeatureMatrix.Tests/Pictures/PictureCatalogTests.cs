using FeatureMatrix.Pictures;
using FeatureMatrix.Tests.Vocabulary;

namespace FeatureMatrix.Tests.Pictures;

public sealed class PictureCatalogTests
{
    public static TheoryData<string> Ids => [.. PictureCatalog.All.Select(pair => pair.Id)];

    [Fact]
    public void Every_feature_that_has_a_picture_exists()
    {
        var vocabulary = VocabularyFixture.Features.Select(feature => feature.Id).ToHashSet();

        Assert.Subset(vocabulary, PictureCatalog.FeatureIds.ToHashSet());
        Assert.Contains("stencil-two-sided", vocabulary); // a feature without a picture, below
    }

    [Fact]
    public void Scenes_and_texts_belong_together_one_to_one() =>
        Assert.Equal(PictureCatalog.All.Select(pair => pair.Id).Order(), PictureTexts.Ids.Order());

    [Fact]
    public void A_feature_without_a_picture_has_none()
    {
        Assert.Null(PictureCatalog.For("stencil-two-sided"));
        Assert.Empty(PictureCatalog.AllFor("stencil-two-sided"));
    }

    [Fact]
    public void The_first_picture_of_a_feature_is_the_one_to_show() =>
        Assert.All(PictureCatalog.FeatureIds, id => Assert.Same(PictureCatalog.AllFor(id)[0], PictureCatalog.For(id)));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Words_are_complete_and_can_be_written_on_a_video_frame(string id)
    {
        var pair = Pair(id);

        Assert.InRange(pair.Title.Length, 3, 50);
        Assert.InRange(pair.With.Heading.Length, 3, 36);
        Assert.InRange(pair.Without.Heading.Length, 3, 36);
        Assert.InRange(VideoFrame.Lines(pair.LookFor, 100).Count, 1, 2);
        Assert.NotEmpty(pair.Assumptions);
        Assert.All([pair.LookFor, pair.With.AltText, pair.Without.AltText, .. pair.Assumptions], sentence => Assert.EndsWith(".", sentence));
        Assert.All([pair.Title, pair.LookFor, pair.With.Heading, pair.Without.Heading, IllustrationPair.Label],
            words => Assert.True(Glyphs.CanWrite(words), words));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Panes_are_of_the_stated_size_differ_visibly_and_come_out_the_same_again(string id)
    {
        var pair = Pair(id);
        var (with, without) = (pair.DrawWith(), pair.DrawWithout());

        Assert.Equal((480, 300, 480, 300), (with.Width, with.Height, without.Width, without.Height));
        Assert.InRange(ShareThatDiffers(with.Rgb, without.Rgb), 0.003, 1);
        Assert.True(with.ToPng().AsSpan().SequenceEqual(pair.DrawWith().ToPng()));
        Assert.True(without.ToPng().AsSpan().SequenceEqual(pair.DrawWithout().ToPng()));
    }

    [Fact]
    public void Keys_for_caching_are_all_different() =>
        Assert.Equal(PictureCatalog.All.Count, PictureCatalog.All.Select(pair => pair.ContentKey).Distinct().Count());

    [Fact]
    public void A_video_frame_holds_both_panes_at_twice_their_size()
    {
        var pair = PictureCatalog.All[0];
        var (with, without, frame) = (pair.DrawWith(), pair.DrawWithout(), pair.DrawForVideo());

        Assert.Equal((1920, 1080), (frame.Width, frame.Height));
        // Row 7 of each pane lies in rows 14 and 15 of the frame's panes, which begin in row 250.
        for (var x = 2; x < 478; x++)
        {
            Assert.Equal(At(with, x, 7), At(frame, 2 * x, 250 + 14));
            Assert.Equal(At(without, x, 7), At(frame, 960 + (2 * x) + 1, 250 + 15));
        }

        static (byte, byte, byte) At(Picture picture, int x, int y)
        {
            var at = ((y * picture.Width) + x) * 3;
            return (picture.Rgb[at], picture.Rgb[at + 1], picture.Rgb[at + 2]);
        }
    }

    /// <summary>Share of pixels with a channel more than 4 of 255 apart.</summary>
    private static double ShareThatDiffers(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        var differing = 0;
        for (var at = 0; at < one.Length; at += 3)
        {
            if (Math.Abs(one[at] - other[at]) > 4 || Math.Abs(one[at + 1] - other[at + 1]) > 4 || Math.Abs(one[at + 2] - other[at + 2]) > 4)
                differing++;
        }

        return differing * 3.0 / one.Length;
    }

    private static IllustrationPair Pair(string id) => PictureCatalog.All.Single(pair => pair.Id == id);
}
