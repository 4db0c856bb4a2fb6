using Deque.AxeCore.Commons;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Rendering.Tables;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Support;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>Explanations in place, copies, keys, and what a page offers to everybody.</summary>
public sealed class The_pages(Site site) : IClassFixture<Site>
{
    public static TheoryData<string> Kinds => new(
        "index.html", "coverage/index.html", "coverage/windows-98se.html", "cards/index.html", "cards/dune.html", "titles/index.html", "titles/low-mist.html",
        "features/index.html", "features/fog-table.html", "wrappers/index.html", "wrappers/lens.html", "drivers/index.html", "drivers/sand-9x.html",
        "rigs/index.html", "rigs/bench.html", "coverage/low-mist/dune.html", "bench.html", "compare/index.html", "compare/delta/dune.html", "plan.html", "worth/dune.html", "installs/dune.html", "sources.html", "about.html", "editions.html");

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
    public async Task Lay_captures_one_over_the_other_at_their_own_size_and_move_between_them_by_keyboard()
    {
        var page = await site.Open("features/fog-table.html");
        var figure = page.Locator(".own").First;
        await figure.ScrollIntoViewIfNeededAsync();
        var slider = figure.Locator(".slider input");
        Assert.Equal("Move between With table fog: Dune and Without table fog: Delta", await slider.GetAttributeAsync("aria-label"));
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        Assert.Equal("inset(0px 100% 0px 0px)", await figure.Locator("img").First.EvaluateAsync<string>("pane => getComputedStyle(pane).clipPath.replace('calc(100%)', '100%')"));
        var boxes = await figure.Locator("img").EvaluateAllAsync<double[][]>("images => images.map(image => { const box = image.getBoundingClientRect(); return [box.x, box.y, box.width, box.height]; })");
        Assert.Equal(boxes[0], boxes[1]);
        Assert.Equal([64.0, 48.0], boxes[0][2..]);
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.False(await slider.IsVisibleAsync());
        var printed = await figure.Locator("img").EvaluateAllAsync<double[]>("images => images.map(image => image.getBoundingClientRect().x)");
        Assert.True(printed[1] >= printed[0] + 64);
        Assert.Equal("none", await figure.Locator("img").First.EvaluateAsync<string>("pane => getComputedStyle(pane).clipPath"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Open_a_cells_explanation_in_place_by_mouse_and_close_it_by_key()
    {
        var page = await site.Open("coverage/index.html");
        await page.Locator(".tile").First.ClickAsync();
        var inside = page.FrameLocator("dialog iframe");
        await Assertions.Expect(inside.Locator("h1")).ToHaveTextAsync("Copper Gate on Delta");
        await Assertions.Expect(inside.Locator(".top")).ToBeHiddenAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("dialog")).ToBeHiddenAsync();
        Assert.Contains("coverage/index.html", page.Url, StringComparison.Ordinal);
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Open_a_cells_explanation_by_keyboard_and_give_the_focus_back()
    {
        var page = await site.Open("coverage/index.html");
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
        var page = await site.Open("coverage/index.html");
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
        var page = await site.Open("coverage/index.html", scripts: false);
        Assert.Equal(10, await page.Locator("#matrix .tile").CountAsync());
        await Assertions.Expect(page.Locator("#filters")).ToBeHiddenAsync();
        await page.Locator(".tile").First.ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Copper Gate on Delta");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Open_the_setup_that_a_link_means()
    {
        var page = await site.Open("coverage/windows-98se.html");
        var tile = page.Locator(".tile").Last;
        var id = (await tile.GetAttributeAsync("href"))!.Split('#')[1];
        await tile.ClickAsync();
        await Assertions.Expect(page.FrameLocator("dialog iframe").Locator($"details:is([id='{id}'], :has([id='{id}']))")).ToHaveAttributeAsync("open", "");
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Theory]
    [InlineData("Markdown", TableFormat.Markdown)]
    [InlineData("forum text", TableFormat.Forum)]
    [InlineData("CSV", TableFormat.Csv)]
    [InlineData("JSON", TableFormat.Json)]
    [InlineData("plain text", TableFormat.Text)]
    public async Task Copy_their_table_in_every_format(string name, TableFormat format)
    {
        var page = await site.Open("coverage/index.html");
        await page.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        await page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".copies [role=status]")).ToHaveTextAsync($"Copied as {name}.");
        var expected = TableWriter.Write(SiteReport.Of(SmallEdition.Plain()).Matrix.Table, format);
        Assert.Equal(expected, await page.EvaluateAsync<string>("() => navigator.clipboard.readText()"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Theory]
    [InlineData("md", TableFormat.Markdown)]
    [InlineData("bbcode", TableFormat.Forum)]
    [InlineData("csv", TableFormat.Csv)]
    [InlineData("json", TableFormat.Json)]
    [InlineData("txt", TableFormat.Text)]
    public async Task Make_the_same_text_of_an_awkward_table_as_the_commands(string ending, TableFormat format)
    {
        var odd = new Table(
            "Odd [b]names[/b] \u2013 é\U0001f600", "A note, \"quoted\",\nand broken\u0085here", [new("<b>&'"), new("Share |*_`#!~\\", true), new("Long")],
            [
                [new("=1+1"), new("1.76 MiB", 1845493.76), new(string.Concat(Enumerable.Repeat("far too long to fit ", 9)))],
                [new("-x\ty"), new("0", 0), new(new string('w', 150))],
                [new("a,b\r\nc\u001f\u007f"), new("−12½", -12.5), new("")],
                [new("@name"), new("none"), new("\u2028 «so» \ud83d\ude00")],
            ]);
        await File.WriteAllBytesAsync(Path.Combine(site.Folder, "tables", "odd.js"), TableFiles.Of("tables/odd.js", [new NamedTable("odd", "tables/odd.js", odd)]).Bytes, TestContext.Current.CancellationToken);
        var page = await site.Open("coverage/index.html");
        await page.AddScriptTagAsync(new() { Url = new Uri(Path.Combine(site.Folder, "tables", "odd.js")).AbsoluteUri });
        Assert.Equal(TableWriter.Write(odd, format), await page.EvaluateAsync<string>("ending => featureMatrixFormats[ending](featureMatrixData.get('odd'))", ending));
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
