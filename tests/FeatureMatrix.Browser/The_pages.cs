using Deque.AxeCore.Commons;
using FeatureMatrix.Tests.Support;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>Explanations in place, copies, keys, and what a page offers to everybody.</summary>
public sealed class The_pages(Site site) : IClassFixture<Site>
{
    public static TheoryData<string> Kinds => new(
        "index.html", "coverage.html", "systems/windows-98se.html", "cards/index.html", "cards/dune.html", "titles/index.html", "titles/low-mist.html",
        "features/index.html", "features/fog-table.html", "wrappers/index.html", "wrappers/lens.html", "drivers/index.html", "drivers/sand-9x.html",
        "rigs/index.html", "rigs/bench.html", "cells/low-mist/dune.html", "bench.html", "sources.html", "about.html");

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Are_without_a_finding_of_axe_in_light_and_dark(string path)
    {
        foreach (var dark in new[] { false, true })
        {
            var page = await site.Open(path, dark: dark);
            await page.EvaluateAsync(new BundledAxeScriptProvider().GetScript());
            var found = await page.EvaluateAsync<string[]>(
                "async () => (await axe.run(document, {resultTypes: ['violations'], preload: false})).violations.map(one => one.id + ': ' + one.nodes.map(node => node.target.join(' ')).join(' | '))");
            Assert.Empty(found);
            await page.Context.CloseAsync();
        }

        Assert.Empty(site.Complaints);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Do_not_scroll_sideways_on_a_phone(string path)
    {
        var page = await site.Open(path, width: 360);
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= 360"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Open_a_cells_explanation_in_place_by_mouse_and_close_it_by_key()
    {
        var page = await site.Open("coverage.html");
        await page.Locator(".tile").First.ClickAsync();
        var inside = page.FrameLocator("dialog iframe");
        await Assertions.Expect(inside.Locator("h1")).ToHaveTextAsync("Copper Gate on Delta");
        await Assertions.Expect(inside.Locator(".top")).ToBeHiddenAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("dialog")).ToBeHiddenAsync();
        Assert.Contains("coverage.html", page.Url, StringComparison.Ordinal);
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Open_a_cells_explanation_by_keyboard_and_give_the_focus_back()
    {
        var page = await site.Open("coverage.html");
        await page.Locator(".tile").Nth(1).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("dialog button")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("dialog")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator(".tile").Nth(1)).ToBeFocusedAsync();
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Close_an_explanation_by_the_key_pressed_inside_it()
    {
        var page = await site.Open("coverage.html");
        await page.Locator(".tile").First.ClickAsync();
        var link = page.FrameLocator("dialog iframe").Locator("main a").Nth(1);
        await link.FocusAsync();
        await link.PressAsync("Escape");
        await Assertions.Expect(page.Locator("dialog")).ToBeHiddenAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_scripts_still_have_every_cell_and_lead_to_its_explanation()
    {
        var page = await site.Open("coverage.html", scripts: false);
        Assert.Equal(10, await page.Locator("#matrix .tile").CountAsync());
        await Assertions.Expect(page.Locator("#filters")).ToBeHiddenAsync();
        await page.Locator(".tile").First.ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Copper Gate on Delta");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Open_the_setup_that_a_link_means()
    {
        var page = await site.Open("systems/windows-98se.html");
        var tile = page.Locator(".tile").Last;
        var id = (await tile.GetAttributeAsync("href"))!.Split('#')[1];
        await tile.ClickAsync();
        await Assertions.Expect(page.FrameLocator("dialog iframe").Locator($"details[id='{id}']")).ToHaveAttributeAsync("open", "");
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Theory]
    [InlineData("Markdown", "md")]
    [InlineData("forum text", "bbcode")]
    [InlineData("CSV", "csv")]
    [InlineData("JSON", "json")]
    [InlineData("plain text", "txt")]
    public async Task Copy_their_table_in_every_format(string name, string ending)
    {
        var page = await site.Open("coverage.html");
        await page.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        await page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[role=status]").Last).ToHaveTextAsync($"Copied as {name}.");
        var expected = SmallEdition.Site(SmallEdition.Plain()).Single(file => file.Path == $"tables/coverage.{ending}");
        Assert.Equal(System.Text.Encoding.UTF8.GetString(expected.Bytes), await page.EvaluateAsync<string>("() => navigator.clipboard.readText()"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Let_the_keyboard_skip_to_the_content()
    {
        var page = await site.Open("index.html");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        Assert.EndsWith("#main", page.Url, StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }
}
