using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>Filters, sorting, grouping, turning and the address of the coverage matrix.</summary>
public sealed class The_matrix(Site site) : IClassFixture<Site>
{
    [Theory]
    [InlineData("words", "copper", "1 of 5 titles, 2 of 10 cells")]
    [InlineData("words", "dune mist", "1 of 5 titles, 1 of 10 cells")]
    [InlineData("words", "racing", "1 of 5 titles, 2 of 10 cells")]
    [InlineData("words", "nothing", "0 of 5 titles, 0 of 10 cells")]
    public async Task Filters_by_words(string field, string text, string count)
    {
        var page = await site.Open("coverage/index.html");
        await page.Locator($"[name={field}]").FillAsync(text);
        Assert.Equal(count, await page.Locator("#count").TextContentAsync());
        Assert.Equal(await Shown(page), await page.Locator("#matrix td:not(.off) .tile").CountAsync());
        await Quiet(page);
    }

    [Theory]
    [InlineData("system")]
    [InlineData("feature")]
    [InlineData("tone")]
    [InlineData("mark")]
    [InlineData("evidence")]
    public async Task Filters_by_every_choice(string field)
    {
        var page = await site.Open("coverage/index.html");
        var options = await page.Locator($"[name={field}] option").EvaluateAllAsync<string[]>("all => all.map(one => one.value).filter(Boolean)");
        Assert.NotEmpty(options);
        foreach (var option in options)
        {
            await page.Locator($"[name={field}]").SelectOptionAsync(option);
            var shown = await Shown(page);
            Assert.InRange(shown, 1, 10);
            Assert.Equal(shown, await page.Locator("#matrix td:not(.off) .tile").CountAsync());
            Assert.Contains($"{field}={option}", page.Url, StringComparison.Ordinal);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Show everything" }).ClickAsync();
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("5 of 5 titles, 10 of 10 cells");
        await Quiet(page);
    }

    [Theory]
    [InlineData("", "Copper Gate, Long Shade, Low Mist, Old Lock, Tow Path")]
    [InlineData("year", "Low Mist, Tow Path, Copper Gate, Long Shade, Old Lock")]
    [InlineData("weight", "Low Mist, Long Shade, Copper Gate, Old Lock, Tow Path")]
    public async Task Sorts(string by, string order)
    {
        var page = await site.Open("coverage/index.html");
        await page.Locator("[name=sort]").SelectOptionAsync(by);
        Assert.Equal(order, string.Join(", ", await page.Locator("#matrix tbody th a").AllTextContentsAsync()));
        await Quiet(page);
    }

    [Fact]
    public async Task Sorts_by_a_column_from_its_heading()
    {
        var page = await site.Open("coverage/index.html");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sort by Delta" }).ClickAsync();
        var tones = await page.Locator("#matrix tbody tr td:nth-of-type(1) .tile").EvaluateAllAsync<string[]>("all => all.map(one => one.classList[1])");
        var order = await page.Locator("[name=tone] option").EvaluateAllAsync<string[]>("all => all.map(one => one.value)");
        Assert.Equal(tones.OrderBy(tone => Array.IndexOf(order, tone)), tones);
        await Quiet(page);
    }

    [Theory]
    [InlineData("engine", "Fen, none")]
    [InlineData("year", "1998, 1999, none")]
    public async Task Groups(string by, string groups)
    {
        var page = await site.Open("coverage/index.html");
        await page.Locator("[name=group]").SelectOptionAsync(by);
        Assert.Equal(groups, string.Join(", ", await page.Locator("#matrix .group th").AllTextContentsAsync()));
        Assert.Equal(10, await page.Locator("#matrix .tile").CountAsync());
        await Quiet(page);
    }

    [Fact]
    public async Task Turns()
    {
        var page = await site.Open("coverage/index.html");
        await page.GetByLabel("Cards down, titles across").CheckAsync();
        Assert.Equal(2, await page.Locator("#matrix tbody tr").CountAsync());
        Assert.Equal("row", await page.Locator("#matrix tbody th").First.GetAttributeAsync("scope"));
        Assert.Equal(6, await page.Locator("#matrix thead th").CountAsync());
        await Quiet(page);
    }

    [Fact]
    public async Task Takes_its_state_from_the_address_and_hands_it_to_other_views()
    {
        var page = await site.Open("coverage/index.html#words=mist&turn=yes");
        Assert.Equal("1 of 5 titles, 2 of 10 cells", await page.Locator("#count").TextContentAsync());
        Assert.Equal("mist", await page.Locator("[name=words]").InputValueAsync());
        await page.GetByRole(AriaRole.Link, new() { Name = "setups under Windows 98 SE" }).ClickAsync();
        await page.WaitForURLAsync("**/coverage/windows-98se.html#words=mist&turn=yes");
        Assert.StartsWith("1 of 5 titles", await page.Locator("#count").TextContentAsync(), StringComparison.Ordinal);
        await Quiet(page);
    }

    private static async Task<int> Shown(IPage page)
    {
        var words = (await page.Locator("#count").TextContentAsync())!.Split(' ');
        return int.Parse(words[4], System.Globalization.CultureInfo.InvariantCulture);
    }

    private async Task Quiet(IPage page)
    {
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }
}
