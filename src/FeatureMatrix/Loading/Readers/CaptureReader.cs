using System.Security.Cryptography;
using FeatureMatrix.Loading.Captures;
using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Captures, with the picture files that they name.</summary>
internal sealed class CaptureReader(Draft draft, IReadOnlyList<SourcePicture>? pictures)
{
    private readonly Dictionary<string, SourcePicture>? _pictures = pictures?.ToDictionary(picture => picture.Path, StringComparer.Ordinal);

    /// <summary>The capture that has each picture, by the digest of its pixels and of what says how they are shown.</summary>
    private readonly Dictionary<string, string> _owners = [];

    /// <summary>The ids that captures name as their baseline.</summary>
    private readonly HashSet<string> _baselines = new(StringComparer.Ordinal);

    private long _bytes;

    private FaultList Faults => draft.Faults;

    /// <summary>One capture, not yet paired; null where too much is missing.</summary>
    public Capture? Build(Shelf<Capture>.Item item)
    {
        var fields = item.Fields;
        if (fields.Word("baseline") is { } named)
            _baselines.Add(named.Text.Trim());
        var evidence = Provenance.Of(item, draft).Seen(draft.Sources.By(fields), fields.Origin);
        var route = StatedRoute.Read(fields, draft);
        var (scene, alt) = (fields.RequiredText("scene"), fields.RequiredText("alt"));
        var kind = fields.RequiredWord("kind") is { } word ? Words.Read(word, "'kind'", Words.CaptureKinds, Faults) : null;
        var date = fields.RequiredWord("date") is { } day ? Quantities.Date(day, "'date'", Faults) : null;
        IReadOnlyList<Capability> loses = [.. fields.List("loses").Select(draft.References.Capability).OfType<Capability>()];
        var note = fields.Text("note");
        var picture = Picture(item);
        var setup = SetupOf(fields, route);
        if (fields.Has("loses") != fields.Has("baseline"))
        {
            Faults.Add(fields.Has("loses")
                ? FaultTexts.MissingKey(fields.Origin, "baseline", fields.Label)
                : FaultTexts.CountsOnlyWith(fields.OriginOf("baseline"), "baseline", "loses"));
        }

        if (route.Renderer is null || setup is null || kind is null || date is null)
            return null;
        return new Capture
        {
            Id = item.Id,
            Renderer = route.Renderer,
            Scene = scene,
            Setup = setup,
            Specimen = route.Specimen,
            Wrapper = route.Wrapper,
            Mode = route.Mode,
            Depth = route.Depth,
            Rig = route.Rig,
            Kind = kind.Value,
            Loses = loses,
            AltText = alt,
            Date = date.Value,
            Note = note,
            Picture = picture,
            Evidence = evidence,
        };
    }

    /// <summary>Links each capture that shows a loss to its baseline, once all are made.</summary>
    public void Pair()
    {
        foreach (var (item, capture) in draft.Captures.Made)
        {
            if (item.Fields.Word("baseline") is not { } word || draft.Captures.Find(word, Faults) is not { } baseline)
                continue;
            if (Mismatch(word.Origin, capture, baseline) is { } fault)
                Faults.Add(fault);
            else
                capture.Link(baseline);
        }

        foreach (var (item, capture) in draft.Captures.Made.Where(made => !made.Item.Fields.Has("loses") && !made.Item.Fields.Has("baseline") && !_baselines.Contains(made.Item.Id)))
            Faults.Add(FaultTexts.Unused(item.Origin, $"capture '{capture.Id}'"));
    }

    private static Fault? Mismatch(Origin at, Capture capture, Capture baseline)
    {
        if (baseline.Loses.Count > 0)
            return FaultTexts.BaselineLoses(at, baseline);
        if (baseline.Renderer.Title != capture.Renderer.Title)
            return FaultTexts.OtherTitle(at, capture, baseline);
        if (baseline.Scene != capture.Scene)
            return FaultTexts.OtherScene(at, capture, baseline);
        return capture.Picture is { } own && baseline.Picture is { } other && (own.Width, own.Height) != (other.Width, other.Height)
            ? FaultTexts.OtherSize(at, own, baseline)
            : null;
    }

    /// <summary>The setup; null and faults where a part is missing or the driver is not one of the card or system.</summary>
    private Setup? SetupOf(Fields fields, StatedRoute route)
    {
        foreach (var key in (ReadOnlySpan<string>)["driver", "os"])
        {
            if (!fields.Has(key))
                Faults.Add(FaultTexts.MissingKey(fields.Origin, key, fields.Label));
        }

        if (!fields.Has("card") && !fields.Has("specimen"))
            Faults.Add(FaultTexts.MissingKey(fields.Origin, "card", fields.Label));
        if (route is not { Card: { } card, Driver: { } driver, Os: { } os })
            return null;
        var isListed = driver.Lists.Contains(card);
        if (!isListed && !(driver.Kind == DriverKind.Package && driver.Lists.Any(other => other.Chip == card.Chip)))
            Faults.Add(FaultTexts.DriverOfAnother(fields.OriginOf("driver"), driver, card));
        if (!driver.Oses.Contains(os))
            Faults.Add(FaultTexts.DriverElsewhere(fields.OriginOf("os"), driver, os));
        return new Setup(card, driver, os, isListed ? Install.Listed : Install.Forced);
    }

    /// <summary>The clean picture; null where nobody looks at pictures, and where there is none, which is a fault.</summary>
    private CapturePicture? Picture(Shelf<Capture>.Item item)
    {
        if (item.Fields.RequiredWord("picture") is not { } word)
            return null;
        var way = word.Text.Trim();
        if (way.Length == 0 || way.Contains('\\', StringComparison.Ordinal) || way.Contains(':', StringComparison.Ordinal)
            || way.Split('/').Any(part => part is "" or "." or ".."))
        {
            Faults.Add(FaultTexts.NoWayToAPicture(word.Origin, way));
            return null;
        }

        if (_pictures is null)
            return null;
        var path = word.Origin.File[..(word.Origin.File.LastIndexOf('/') + 1)] + way;
        if (!_pictures.TryGetValue(path, out var picture))
        {
            Faults.Add(FaultTexts.NoPicture(word.Origin, path, _pictures.Keys));
            return null;
        }

        return Clean(word.Origin, picture, item.Id);
    }

    private CapturePicture? Clean(Origin at, SourcePicture picture, string owner)
    {
        try
        {
            var bytes = picture.Read(PictureCleaner.LargestFile + 1);
            if (bytes.Length > PictureCleaner.LargestFile)
                return Refuse(FaultTexts.PictureTooLarge(at, picture.Path));
            if ((_bytes += bytes.Length) > PictureCleaner.MostBytes)
                return Refuse(FaultTexts.TooManyPictures(at));
            var clean = PictureCleaner.Clean(picture.Path, bytes);
            var digest = Convert.ToHexStringLower(SHA256.HashData(clean.Bytes.Span));
            return _owners.TryAdd(digest, owner) ? clean : Refuse(FaultTexts.SamePicture(at, picture.Path, _owners[digest]));
        }
        catch (DamagedPictureException problem)
        {
            return Refuse(FaultTexts.DamagedPicture(at, picture.Path, problem.Message));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return Refuse(FaultTexts.UnreadPicture(at, picture.Path, problem.Message));
        }

        CapturePicture? Refuse(Fault fault)
        {
            Faults.Add(fault);
            return null;
        }
    }
}
