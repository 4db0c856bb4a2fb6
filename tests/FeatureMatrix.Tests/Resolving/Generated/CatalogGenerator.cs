using CsCheck;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Resolving.Generated;

using Support = FeatureMatrix.Model.Support;

/// <summary>
/// Draws small catalogs of realistic shape: most of what a collection says is known, well graded and agrees; every rule's
/// odd corner turns up in at least one catalog of a hundred (<see cref="GeneratorCoverage"/> counts).
/// </summary>
internal static class CatalogGenerator
{
    private static readonly Gen<Grade> SomeGrade = Gen.Frequency(
        (12, Gen.Const(Grade.Hearsay)), (13, Gen.Const(Grade.Inferred)), (50, Gen.Const(Grade.Documented)), (25, Gen.Const(Grade.Measured)));

    private static readonly Gen<Support> SomeSupport = Gen.Frequency(
        (55, Gen.Const(Support.Yes)), (25, Gen.Const(Support.No)), (12, Gen.Const(Support.Broken)), (8, Gen.Const(Support.Emulated)));

    private static readonly Gen<Reach> SomeReach = OneOf(Reach.UpTo, Reach.UpTo, Reach.AtLeast, Reach.At);

    private static readonly Gen<CapabilityPlan> SomeCapability =
        from feature in Gen.Int[0, CatalogBuilder.FeatureCount - 1]
        from step in Gen.Int[0, 2]
        select new CapabilityPlan(feature, step);

    private static readonly Gen<ScopePlan> SomeScope =
        from hardware in Gen.Int[0, 11]
        from chip in Gen.Int[0, 1]
        from card in Gen.Int[0, 2]
        from branch in Optional(45, 1)
        from first in Gen.Int[0, 1]
        from span in Gen.Int[0, 1]
        from os in Optional(20, 2)
        from api in Optional(15, 1)
        select new ScopePlan(hardware is >= 4 and < 9 or 11 ? chip : -1, hardware >= 9 ? card : -1, branch, first, span, os, api);

    private static readonly Gen<FactPlan> ExtraFact =
        from scope in SomeScope
        from capability in Gen.Frequency((85, SomeCapability), (15, Gen.Select(Gen.Int[CatalogBuilder.FeatureCount, CatalogBuilder.FeatureCount + 1], Gen.Int[0, 2], (f, s) => new CapabilityPlan(f, s))))
        from reach in SomeReach
        from support in SomeSupport
        from grade in SomeGrade
        select new FactPlan(scope, capability, reach, support, grade);

    /// <summary>One statement about a chip and a feature, as a collection's chip file would hold.</summary>
    private static readonly Gen<FactPlan> ChipFact =
        from chip in Gen.Int[0, 1]
        from capability in SomeCapability
        from reach in SomeReach
        from support in SomeSupport
        from grade in OneOf(Grade.Documented, Grade.Documented, Grade.Measured)
        select new FactPlan(ScopePlan.Everything with { Chip = chip }, capability, reach, support, grade);

    /// <summary>One statement about an API that the drivers of a branch offer.</summary>
    private static readonly Gen<FactPlan> ApiFact =
        from branch in Gen.Int[0, 1]
        from whole in Gen.Bool
        from version in Gen.Int[0, 1]
        from api in Gen.Int[0, 1]
        from step in OneOf(2, 2, 2, 1, 0)
        from reach in OneOf(Reach.UpTo, Reach.UpTo, Reach.UpTo, Reach.AtLeast, Reach.At)
        from support in OneOf(Support.Yes, Support.Yes, Support.Yes, Support.Yes, Support.Yes, Support.Yes, Support.No, Support.Emulated)
        select new FactPlan(
            ScopePlan.Everything with { Branch = branch, First = whole ? 0 : version, Span = whole ? 1 : 0 }, new CapabilityPlan(CatalogBuilder.FeatureCount + api, step), reach,
            support, Grade.Documented);

    private static readonly Gen<OsSupportPlan> SomeOsSupport =
        from os in Gen.Int[0, 2]
        from works in Gen.Frequency((70, Gen.Const(true)), (30, Gen.Const(false)))
        from grade in SomeGrade
        select new OsSupportPlan(os, works, grade);

    private static readonly Gen<CardPlan> SomeCard =
        from chip in Gen.Int[0, 1]
        from memory in OneOf(-1, 0, 1, 2, 2, 3, 3, 3, 3, 4, 5, 5)
        from textures in Gen.Int[-1, 1]
        from complete in OneOf(7, 7, 7, 7, 7, 3, 5, 6)
        from support in Few(SomeOsSupport, 15)
        select new CardPlan(chip, memory, textures, complete, support);

    private static readonly Gen<OsPlan> SomeOs =
        from certain in OneOf(3, 3, 3, 3, 2, 1, 0)
        from rest in Few(Gen.Select(Gen.Int[0, 3], SomeGrade, (highest, grade) => new RuntimePlan(highest, grade)), 25)
        from silent in Gen.Int[0, 9]
        select new OsPlan([.. silent == 0 ? [] : new[] { new RuntimePlan(certain, Grade.Documented) }, .. rest]);

    private static readonly Gen<ForcedPlan> SomeForced =
        from card in Gen.Int[0, 2]
        from works in OneOf(Support.Yes, Support.No, Support.Unknown)
        from grade in SomeGrade
        select new ForcedPlan(card, works, grade);

    private static readonly Gen<VersionPlan> SomeVersion =
        from oses in Gen.Int[1, 3]
        from lists in Gen.Int[1, 7]
        from forced in Few(SomeForced, 25)
        select new VersionPlan(oses, lists, forced);

    private static readonly Gen<WrapperVersionPlan> SomeWrapperVersion =
        from swapped in Gen.Bool
        from offer in OneOf(2, 2, 2, 1, 0)
        from target in OneOf(0, 0, 0, 1, 2)
        from runtime in Optional(20, 2)
        from passes in Gen.Int[0, 31]
        from complete in Gen.Bool
        from memory in OneOf(0, 0, 0, 0, 0, 4, 8)
        from supplies in Few(ExtraFact, 70, 3)
        from needs in Few(SomeCapability, 12)
        from oses in Gen.Select(SomeOsSupport, SomeOsSupport, Gen.Int[0, 9], (one, two, n) => (IReadOnlyList<OsSupportPlan>)(n < 2 ? [one] : [one with { Os = 0 }, two with { Os = 1 }]))
        select new WrapperVersionPlan(swapped, offer, target, runtime, passes, complete, memory, supplies, needs, oses);

    private static readonly Gen<NeedPlan> SomeNeed =
        from first in SomeCapability
        from second in SomeCapability
        from anyOf in Gen.Int[0, 4]
        from hardware in Gen.Int[0, 7]
        from strength in OneOf(
            Strength.Bonus, Strength.Cosmetic, Strength.Cosmetic, Strength.Ungraded, Strength.Severe, Strength.Severe, Strength.Must, Strength.Must, Strength.Unknown)
        from broken in Optional(20, (int)Strength.Unknown)
        from condition in Optional(15, 2)
        select new NeedPlan(anyOf == 0 ? [first, second] : [first], hardware == 0, strength, broken, condition);

    private static readonly Gen<DefectPlan> SomeDefect =
        from present in SomeCapability
        from conditional in OneOf(true, true, true, false)
        from scope in SomeScope
        from wrapper in Optional(30, 3)
        from grade in SomeGrade
        select new DefectPlan(conditional ? present : null, scope with { Api = -1 }, wrapper, grade);

    private static readonly Gen<MemoryPlan> SomeMemory =
        from mode in OneOf(0, 0, 0, 0, 0, 0, 1, 2)
        from deep in Gen.Bool
        from back in Gen.Int[1, 2]
        from depth in OneOf(-1, -1, 0, 16, 24, 32)
        from presets in OneOf(0, 0, 0, 1, 2)
        from format in Gen.Enum<TextureFormat>()
        select new MemoryPlan(mode, deep, back, depth, presets, format);

    private static readonly Gen<RendererPlan> SomeRenderer =
        from api in OneOf(0, 0, 0, 0, 1, 1, 1, 1, -1)
        from step in OneOf(0, 0, 0, 0, 1, 2)
        from runtime in Optional(10, 2)
        from oses in OneOf(7, 7, 7, 7, 7, 1, 2)
        from needs in SomeNeed.List[0, 3]
        from defects in Few(SomeDefect, 20)
        from memory in SomeMemory
        select new RendererPlan(api, step, runtime, oses, needs, defects, memory);

    private static readonly Gen<ObservationPlan> SomeObservation =
        from renderer in Gen.Int[0, 3]
        from card in Optional(85, 2)
        from driver in Optional(70, 3)
        from os in Optional(70, 2)
        from wrapper in OneOf(-2, -1, -1, -1, 0, 1)
        from depth in OneOf(-1, -1, -1, 16, 32)
        from runs in OneOf(1, 1, 0, -1)
        from seen in Few(Gen.Select(SomeCapability, OneOf(Support.Yes, Support.No, Support.Broken), (c, s) => new SeenPlan(c, s)), 60, 2)
        from grade in OneOf(Grade.Measured, Grade.Measured, Grade.Documented, Grade.Hearsay)
        select new ObservationPlan(renderer, card, driver, os, wrapper, depth, runs, seen, grade);

    private static readonly Gen<TermsPlan> SomeTerms =
        from forced in Gen.Bool
        from oses in OneOf(-1, -1, -1, -1, -1, 1, 2)
        from wrappers in Gen.Frequency((85, Gen.Const(true)), (15, Gen.Const(false)))
        from mode in Optional(12, 2)
        from deep in Gen.Frequency((75, Gen.Const(false)), (25, Gen.Const(true)))
        from samples in OneOf(1, 1, 1, 1, 1, 1, 1, 2)
        from preset in Optional(20, 1)
        select new TermsPlan(forced, oses, wrappers, mode, deep, samples, preset);

    /// <summary>Two renderers of which one needs what breaks the other (DESIGN case 16).</summary>
    private static readonly Gen<List<RendererPlan>> Rivals =
        from cause in SomeCapability
        from first in SomeRenderer
        from second in SomeRenderer
        select new List<RendererPlan>
        {
            first with { Api = 0, Step = 0, Runtime = -1, Oses = 7, Needs = [], Defects = [new DefectPlan(cause, ScopePlan.Everything, -1, Grade.Documented)] },
            second with { Api = 0, Step = 0, Runtime = -1, Oses = 7, Needs = [new NeedPlan([cause], false, Strength.Must, -1, -1)], Defects = [] },
        };

    private static readonly Gen<TitlePlan> SomeTitle =
        from hazard in Optional(10, (int)TimingHazardKind.UnsynchronisedCores)
        from renderers in Gen.Frequency((88, SomeRenderer.List[1, 3]), (12, Rivals))
        select new TitlePlan(hazard, renderers);

    /// <summary>Plans of catalogs.</summary>
    public static Gen<CatalogPlan> Plans { get; } = Gen.Select(Gen.Int[0, 19], AnyPlan(), (n, plan) => n switch { 0 => RescuedByWrapper(plan), 1 => OnlyElsewhereNative(plan), _ => plan });

    /// <summary>Plans that are the same in every run.</summary>
    /// <param name="first">The number of the first; each number has a plan of its own.</param>
    /// <param name="count">How many.</param>
    public static IEnumerable<CatalogPlan> Fixed(uint first, uint count)
    {
        for (var number = first; number < first + count; number++)
            yield return Plans.Generate(new PCG(number, seed: number + 1), null, out _);
    }

    /// <summary>As <see cref="Fixed"/>, each with three to eight sightings that name fewer keys than usual, so that they meet on routes.</summary>
    public static IEnumerable<CatalogPlan> FixedWithSightings(uint first, uint count)
    {
        var sightings = SomeObservation.Select(Gen.Int[0, 2], (seen, keys) => keys == 0 ? seen : seen with { Card = -1, Driver = -1, Os = -1, Wrapper = keys == 1 ? -2 : seen.Wrapper }).List[3, 8];
        return Fixed(first, count).Where(plan => plan.Titles.Any(title => title.Renderers.Any(renderer => renderer.Api >= 0)))
            .Select((plan, i) => plan with { Observations = sightings.Generate(new PCG(first + (uint)i, seed: 7), null, out _) });
    }

    private static Gen<CatalogPlan> AnyPlan() =>
        from cards in SomeCard.List[1, 3]
        from oses in SomeOs.List[2, 3]
        from branches in SomeVersion.List[1, 2].Select(versions => new BranchPlan(versions)).List[1, 2]
        from chipFacts in ChipFact.List[4, 14]
        from apiFacts in ApiFact.List[2, 6]
        from extraFacts in ExtraFact.List[0, 4]
        from wrappers in SomeWrapperVersion.List[1, 2].Select(versions => new WrapperPlan(versions)).List[0, 2]
        from titles in SomeTitle.List[1, 2]
        from observations in Few(SomeObservation, 45, 2)
        from terms in SomeTerms
        select new CatalogPlan(
            cards, oses, branches, [.. chipFacts, .. apiFacts, .. extraFacts], wrappers, titles,
            titles.Any(title => title.Renderers.Any(renderer => renderer.Api >= 0)) ? observations : [], terms);

    /// <summary>
    /// The same collection where drivers list the first card only, and a title loses something that a wrapper supplies: on the
    /// second card a wrapped route is better than native ones, which are all forced.
    /// </summary>
    private static CatalogPlan RescuedByWrapper(CatalogPlan plan)
    {
        var lost = new CapabilityPlan(CatalogBuilder.FeatureCount - 1, 0);
        var said = new FactPlan(ScopePlan.Everything, lost, Reach.At, Support.No, Grade.Measured);
        OsSupportPlan[] runsOn = [new(0, true, Grade.Documented), new(1, true, Grade.Documented)];
        var wrapper = new WrapperVersionPlan(false, 2, 0, -1, 15, true, 0, [said with { Support = Support.Yes }], [], runsOn);
        var renderer = new RendererPlan(0, 0, -1, 7, [new NeedPlan([lost], false, Strength.Severe, -1, -1)], [], new MemoryPlan(0, false, 1, -1, 0, TextureFormat.Bits16));
        return plan with
        {
            Cards = [plan.Cards[0], plan.Cards[0]],
            Branches = [.. plan.Branches.Select(branch => new BranchPlan([.. branch.Versions.Select(version => version with { Lists = 1, Forced = [] })]))],
            Facts =
            [
                .. plan.Facts, said, said with { Capability = new CapabilityPlan(CatalogBuilder.FeatureCount, 2), Reach = Reach.UpTo, Support = Support.Yes },
                said with { Capability = new CapabilityPlan(CatalogBuilder.FeatureCount + 1, 1), Reach = Reach.UpTo, Support = Support.Yes },
            ],
            Wrappers = [new WrapperPlan([wrapper])],
            Titles = [.. plan.Titles, new TitlePlan(-1, [renderer])],
            Terms = plan.Terms with { AllowForced = true, AllowWrappers = true },
        };
    }

    /// <summary>
    /// The same collection where only the first system's drivers offer Direct3D and only the second system is permitted, where a
    /// wrapper helps; and a title that loses one severe and a cosmetic thing by one renderer, two severe ones by the other.
    /// </summary>
    private static CatalogPlan OnlyElsewhereNative(CatalogPlan plan)
    {
        var rescued = RescuedByWrapper(plan);
        var needs = rescued.Titles[^1].Renderers[0].Needs;
        var fog = needs[0] with { Choices = [new CapabilityPlan(0, 0)] };
        var noFog = new FactPlan(ScopePlan.Everything, new CapabilityPlan(0, 0), Reach.At, Support.No, Grade.Measured);
        var renderer = rescued.Titles[^1].Renderers[0] with { Needs = [.. needs, fog with { Strength = Strength.Cosmetic }] };
        return rescued with
        {
            Cards = [rescued.Cards[0] with { Memory = 3, Complete = 7, OsSupport = [] }],
            Branches = [new BranchPlan([new VersionPlan(3, 1, [])])],
            Oses = [new OsPlan([new RuntimePlan(3, Grade.Documented)]), new OsPlan([new RuntimePlan(3, Grade.Documented)])],
            Facts =
            [
                .. rescued.Facts, noFog,
                noFog with { Scope = ScopePlan.Everything with { Branch = 0, Os = 1 }, Capability = new CapabilityPlan(CatalogBuilder.FeatureCount, 0) },
            ],
            Titles = [new TitlePlan(-1, [renderer, renderer with { Needs = [.. needs, fog] }])],
            Observations = [],
            Terms = rescued.Terms with { Oses = 2, Mode = -1 },
        };
    }

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<int> Optional(int percent, int highest) =>
        Gen.Frequency((100 - percent, Gen.Const(-1)), (percent, Gen.Int[0, highest]));

    private static Gen<IReadOnlyList<T>> Few<T>(Gen<T> item, int percent, int most = 1) =>
        Gen.Frequency((100 - percent, Gen.Const((IReadOnlyList<T>)[])), (percent, item.List[1, most].Select(list => (IReadOnlyList<T>)list)));
}
