using System.Diagnostics;
using System.Globalization;
using FeatureMatrix.Rendering.Site;
using FeatureMatrix.Reports;
using FeatureMatrix.Reports.Pages;
using FeatureMatrix.Tests.Support;
using Microsoft.Playwright;

namespace FeatureMatrix.Browser;

/// <summary>2,000 titles against 100 setups: rows drawn as they come into view, everything still found and read.</summary>
public sealed class The_large_matrix(Site site, ITestOutputHelper output) : IClassFixture<Site>
{
    private const int Titles = 2_000;
    private const int Setups = 100;
    private const int HeaviestPage = 700 * 1024;
    private const int HeaviestCells = 1_500 * 1024;

    [Fact]
    public async Task Stays_within_its_weight_and_draws_rows_as_they_come_into_view()
    {
        var files = Write();
        Assert.InRange(files.Single(file => file.Path == "coverage/large.html").Bytes.Length, 1, HeaviestPage);
        Assert.InRange(files.Single(file => file.Path == "coverage/large.js").Bytes.Length, 1, HeaviestCells);
        var page = await site.Open("coverage/large.html");
        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("2000 of 2000 titles, 200000 of 200000 cells");
        await Assertions.Expect(page.Locator("#matrix tbody tr").First.Locator(".tile")).ToHaveCountAsync(Setups);
        Assert.InRange(await page.Locator("#matrix .tile").CountAsync(), Setups, 20_000);

        // Every row's head is there for the reader's find-in-page and for screen readers; its cells follow when it comes into view.
        Assert.Equal(Titles, await page.Locator("#matrix tbody th[scope=row]").CountAsync());
        var last = page.Locator("#matrix tbody tr").Last;
        Assert.Equal(0, await last.Locator(".tile").CountAsync());
        await last.Locator("th a").FocusAsync();
        await Assertions.Expect(last.Locator(".tile")).ToHaveCountAsync(Setups);
        Assert.Equal("title-1999/card-9.html#setup9", await last.Locator(".tile").Last.GetAttributeAsync("href"));
        output.WriteLine(await page.EvaluateAsync<string>(
            "() => 'first paint ' + Math.round(performance.getEntriesByName('first-contentful-paint')[0].startTime) + ' ms, loaded ' + Math.round(performance.getEntriesByType('navigation')[0].loadEventEnd) + ' ms'"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Filters_sorts_and_groups_all_its_cells()
    {
        var matrix = Matrix();
        Write();
        var page = await site.Open("coverage/large.html");
        var expected = matrix.Rows.Select(row => row.Tiles.Count(tile => tile.Tone == "severe")).ToList();
        var watch = Stopwatch.StartNew();
        await page.Locator("[name=tone]").SelectOptionAsync("severe");
        Assert.Equal(
            string.Create(CultureInfo.InvariantCulture, $"{expected.Count(count => count > 0)} of 2000 titles, {expected.Sum()} of 200000 cells"), await page.Locator("#count").TextContentAsync());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"filter, browser protocol included: {watch.ElapsedMilliseconds} ms"));
        await page.Locator("[name=words]").FillAsync("1997");
        await page.Locator("[name=tone]").SelectOptionAsync("");
        await page.Locator("[name=sort]").SelectOptionAsync("worst");
        var order = await page.Locator("#matrix tbody th a").AllTextContentsAsync();
        Assert.Equal(
            matrix.Rows.Where(row => row.Year == "1997" || row.Name == "Title 1997").OrderByDescending(row => row.Tiles.Sum(tile => tile.Order)).Take(5).Select(row => row.Name),
            order.Take(5));
        await page.Locator("[name=group]").SelectOptionAsync("engine");
        Assert.NotEqual(0, await page.Locator("#matrix .group").CountAsync());
        var filter = await page.EvaluateAsync<double>(
            """
            () => {
              const form = document.getElementById("filters");
              form.reset();
              const start = performance.now();
              form.elements.tone.value = "works";
              form.dispatchEvent(new Event("input"));
              document.body.getBoundingClientRect();
              return performance.now() - start;
            }
            """);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"filter with layout: {filter:0} ms"));
        await page.Context.CloseAsync();
        Assert.Empty(site.Complaints);
    }

    [Fact]
    public async Task Without_scripts_names_every_title_and_says_where_its_cells_are()
    {
        Write();
        var page = await site.Open("coverage/large.html", scripts: false);
        Assert.Equal(Titles, await page.Locator("#matrix tbody th a").CountAsync());
        Assert.Contains("each title's page has its row", await page.Locator("noscript").InnerTextAsync(), StringComparison.Ordinal);
        await page.Context.CloseAsync();
    }

    private IReadOnlyList<Rendering.OutputFile> Write()
    {
        var files = SiteRenderer.RenderMatrix(SiteReport.Of(SmallEdition.Plain()), SmallEdition.Templates(), "coverage/large.html", Matrix());
        SmallEdition.Write(files, site.Folder);
        return files;
    }

    private static MatrixReport Matrix()
    {
        var random = new Random(1);
        var drawn = SiteReport.Of(SmallEdition.Plain()).Matrix;
        var kinds = drawn.Rows.SelectMany(row => row.Tiles).ToList();
        // As many distinct drawings as a large collection has: every combination of the small one's with 40 features.
        var tiles = kinds.SelectMany(kind => Enumerable.Range(0, 40).Select(i => kind with { Features = [$"feature-{i}"] })).ToList();
        return drawn with
        {
            SystemId = "windows-98se",
            Columns = Enumerable.Range(0, Setups).Select(i => drawn.Columns[0] with { CardId = $"card-{i / 10}", SetupId = $"setup{i % 10}", Name = $"Card {i / 10}", Below = $"Driver {i % 10}" }).ToList(),
            Rows = Enumerable.Range(0, Titles).Select(i => drawn.Rows[0] with
            {
                Id = $"title-{i}",
                Name = $"Title {i}",
                Year = $"{1995 + (i % 10)}",
                Engine = $"Engine {i % 30}",
                Genre = "",
                Weight = i % 5,
                Tiles = Enumerable.Range(0, Setups).Select(_ => tiles[random.Next(tiles.Count)]).ToList(),
            }).ToList(),
            Features = Enumerable.Range(0, 40).Select(i => new Choosable($"feature-{i}", $"Feature {i}")).ToList(),
        };
    }
}
