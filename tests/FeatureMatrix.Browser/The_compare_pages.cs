using System.Globalization;
using FeatureMatrix.Deciding;
using FeatureMatrix.Model;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Editions;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Reports.Wording;
using FeatureMatrix.Tests.Deciding.Generated;
using FeatureMatrix.Tests.Support;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>Two cards on a page: the verdict follows the terms and is the one the command gives.</summary>
public sealed class The_compare_pages(Site site) : IClassFixture<Site>
{
    private const string WeighInPage =
        """
        sets => sets.map((set) => {
          const form = document.getElementById("terms");
          for (const [name, value] of Object.entries(set)) form.elements[name].value = value;
          form.elements.severe.dispatchEvent(new Event("input", { bubbles: true }));
          const read = (selector) => [...document.querySelectorAll(selector)].map((cell) => cell.textContent);
          return [...["verdict", "difference", "first", "second"].flatMap((name) => read(`[data-live=${name}]`)), ...read("[data-swing]"), ...read("[data-even]")].join(" | ");
        })
        """;

    [Theory]
    [InlineData(1, 3)]
    [InlineData(2, 3)]
    [InlineData(3, 4)]
    [InlineData(4, 4)]
    [InlineData(5, 5)]
    [InlineData(6, 5)]
    [InlineData(7, 6)]
    [InlineData(8, 6)]
    public async Task Say_for_random_weights_worths_and_prices_what_the_command_says(int seed, int titles)
    {
        var world = new SmallLibrary(seed, titles);
        var library = seed % 2 == 0 ? world.Library : AtFloor(world.Library);
        var edition = EditionReport.Of(new Decisions(world.Catalog, library));
        SmallEdition.Write(SmallEdition.Site(edition), Path.Combine(site.Folder, $"seed-{seed}"));
        var random = new Random(seed);
        foreach (var pair in SiteReport.Of(edition).Compare.Pairs)
        {
            var sets = Enumerable.Range(0, 25).Select(_ => Terms(random, pair)).ToList();
            var page = await site.Open($"seed-{seed}/compare/{pair.FirstId}/{pair.SecondId}.html");
            var said = await page.EvaluateAsync<string[]>(WeighInPage, sets);
            Assert.Equal(sets.Select(set => Expected(pair, set)), said);
            await page.Context.CloseAsync();
        }

        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Give_the_librarys_own_answer_back_and_keep_terms_in_the_address()
    {
        var page = await site.Open("compare/delta/dune.html");
        var own = await page.Locator(".verdicts").InnerTextAsync();
        await page.GetByLabel("Weight of Long Shade").FillAsync("0.25");
        await page.GetByLabel("What one severe loss leaves").FillAsync("0.9");
        await Assertions.Expect(page.Locator("#terms-now")).ToContainTextAsync("On your terms, not the library's.");
        Assert.EndsWith("#severe=0.9&w.long-shade=0.25", page.Url, StringComparison.Ordinal);
        var changed = await page.Locator(".verdicts").InnerTextAsync();
        Assert.NotEqual(own, changed);

        var again = await site.Open("compare/delta/dune.html#severe=0.9&w.long-shade=0.25");
        Assert.Equal(changed, await again.Locator(".verdicts").InnerTextAsync());
        await again.GetByRole(AriaRole.Button, new() { Name = "The library's own terms" }).ClickAsync();
        await Assertions.Expect(again.Locator("#terms-now")).ToHaveTextAsync("On the library's own weights and worths.");
        Assert.Equal(own, await again.Locator(".verdicts").InnerTextAsync());
        await page.Context.CloseAsync();
        await again.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Theory]
    [InlineData("severe", "1.5")]
    [InlineData("severe", "")]
    [InlineData("w.long-shade", "-2")]
    public async Task Mark_a_value_that_cannot_be_and_keep_the_librarys(string field, string value)
    {
        var page = await site.Open("compare/delta/dune.html");
        var own = await page.Locator(".verdicts").InnerTextAsync();
        await page.Locator($"[name='{field}']").FillAsync(value);
        Assert.Equal("true", await page.Locator($"[name='{field}']").GetAttributeAsync("aria-invalid"));
        Assert.Equal(own, await page.Locator(".verdicts").InnerTextAsync());
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Are_reached_by_choosing_any_two_cards_in_either_order()
    {
        var page = await site.Open("compare/index.html");
        await page.GetByLabel("This card").SelectOptionAsync("dune");
        await page.GetByLabel("or this one").SelectOptionAsync("dune");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        await Assertions.Expect(page.Locator("#chooser [role=status]")).ToHaveTextAsync("Choose two different cards.");
        await page.GetByLabel("or this one").SelectOptionAsync("delta");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        await page.WaitForURLAsync("**/compare/delta/dune.html");
        await page.GetByLabel("This card").SelectOptionAsync("delta");
        await page.GetByLabel("or this one").SelectOptionAsync("dune");
        await page.GetByLabel("Weight of Long Shade").FillAsync("9");
        await page.GetByRole(AriaRole.Button, new() { Name = "Compare" }).ClickAsync();
        await page.WaitForURLAsync("**/compare/delta/dune.html#w.long-shade=9");
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Lay_pictures_one_over_the_other_and_move_between_them_by_keyboard()
    {
        var page = await site.Open("compare/delta/dune.html");
        var slider = page.Locator(".slider input").First;
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal("51", await slider.InputValueAsync());
        await page.Keyboard.PressAsync("End");
        Assert.Contains("100 % ", await slider.GetAttributeAsync("aria-valuetext"), StringComparison.Ordinal);
        Assert.Equal("inset(0px 0% 0px 0px)", await page.Locator(".split .panes img").First.EvaluateAsync<string>("pane => getComputedStyle(pane).clipPath.replace('calc(0%)', '0%')"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Without_scripts_hold_the_static_comparison_and_both_pictures()
    {
        var page = await site.Open("compare/index.html", scripts: false);
        await page.Locator(".against td a").First.ClickAsync();
        await Assertions.Expect(page.Locator("#terms")).ToBeHiddenAsync();
        Assert.Equal(SiteReport.Of(SmallEdition.Plain()).Compare.Pairs[0].Report.Headline, await page.Locator(".lead").InnerTextAsync());
        Assert.Equal(0, await page.Locator("input:visible").CountAsync());
        Assert.True(await page.Locator(".panes img").First.IsVisibleAsync());
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    private static Library AtFloor(Library library) =>
        new() { Id = library.Id, Name = library.Name, Entries = library.Entries, Policy = library.Policy with { FpsFloor = 30 } };

    private static Dictionary<string, string> Terms(Random random, ComparePage pair)
    {
        var terms = pair.Order.ToDictionary(title => $"w.{title.Id}", _ => Text(random.Next(6) == 0 ? 0 : random.Next(0, 400) / 100m));
        terms["severe"] = Text(random.Next(1, 100) / 100m);
        terms["cosmetic"] = Text(random.Next(1, 1000) / 1000m);
        foreach (var side in (string[])["first", "second"])
        {
            var low = random.Next(0, 90);
            terms[$"{side}-low"] = Text(low);
            terms[$"{side}-high"] = Text(low + random.Next(0, 40));
        }

        return terms;
    }

    private static string Text(decimal number) => number.ToString("0.###", CultureInfo.InvariantCulture);

    private static decimal Number(Dictionary<string, string> set, string name) => decimal.Parse(set[name], CultureInfo.InvariantCulture);

    private static string Expected(ComparePage pair, Dictionary<string, string> set)
    {
        var views = pair.Views.Select(view => view.Comparison.With(
            new WorthScale(Number(set, "severe"), Number(set, "cosmetic")), entry => (double)Number(set, $"w.{entry.Title.Id}"))).ToList();
        var picture = views[0];
        return string.Join(" | ", (IEnumerable<string>)
        [
            .. views.Select(view => DecisionWording.Of(view.Winner, view.First, view.Second)),
            .. views.Select(view => DecisionWording.Difference(view.Difference)),
            .. views.Select(view => DecisionWording.Interval(view.FirstScore)),
            .. views.Select(view => DecisionWording.Interval(view.SecondScore)),
            .. pair.Swing.Select(title => DecisionWording.Difference(picture.Titles.Single(one => one.Entry.Title.Id == title.Id).Difference)),
            Even(picture.FirstScore, picture.SecondScore, "second"),
            Even(picture.SecondScore, picture.FirstScore, "first"),
        ]);

        string Even(ScoreInterval own, ScoreInterval other, string side) =>
            PriceRange.BreakEven(own, other, new PriceRange(Number(set, $"{side}-low"), Number(set, $"{side}-high"), "EUR", true)) is { } even
                ? DecisionWording.Amount(even)
                : "not known";
    }
}
