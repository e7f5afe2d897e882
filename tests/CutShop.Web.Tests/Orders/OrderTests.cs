using System.Globalization;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Orders;

public sealed class OrderTests(HeadlessBrowser browser)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_order_goes_from_questions_to_quote_to_job_to_the_shop_with_and_without_scripts(bool scripts)
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop, 820, 1180);
        if (!scripts)
            await page.TurnScriptsOffAsync();

        await page.GotoAsync("/prices/new");
        await page.Field("cut").FillAsync("4.50");
        await page.Field("packing").FillAsync("35");
        await page.Field("delivery").FillAsync("120");
        await page.Field("tax").FillAsync("6.25");
        await page.Field("ropes[0].diameter").FillAsync("1 1/2 in");
        await page.Field("ropes[0].foot").FillAsync("2.125");
        await page.Field("bores[0].upTo").FillAsync("2 1/4 in");
        await page.Field("bores[0].bore").FillAsync("4.25");
        await page.Button("Save this list").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 2 })).ToContainTextAsync("Today's prices");

        await page.StartDraftAsync();
        await Assertions.Expect(page.Locator("#standing")).ToHaveTextAsync("Ready");
        // The same figures by hand as in the tests of quotes: 281.76 and 17.61 tax.
        await Assertions.Expect(page.Locator("#preview")).ToContainTextAsync("$299.37");
        await page.Button("Make a quote").ClickAsync();
        await Assertions.Expect(page.Locator(".big-figure .figure")).ToHaveTextAsync("$299.37");
        await Assertions.Expect(page.Locator(".cautions")).ToContainTextAsync("not a guard");

        await page.Button("Accept: make job LQ-5001").ClickAsync();
        await page.WaitForURLAsync("**/jobs/LQ-5001");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Received. Not yet released to the shop.");
        await page.Button("Release to the shop").ClickAsync();
        await Assertions.Expect(page.Button("Release to the shop")).ToHaveCountAsync(0);
        await page.GotoAsync("/");
        await Assertions.Expect(page.GetByRole(AriaRole.Row, new() { Name = "LQ-5001" })).ToContainTextAsync("released");
    }

    [Fact]
    public async Task An_order_can_be_taken_with_the_keyboard_alone()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/drafts/new");
        foreach (var (field, text) in DeskSteps.FourPosts)
        {
            await TabToAsync(page, $"el.id === '{field}'");
            await page.Keyboard.PressAsync("Control+A");
            await page.Keyboard.TypeAsync(text);
        }
        await TabToAsync(page, "el.textContent.trim() === 'Make the draft'");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/drafts/1");

        await TabToAsync(page, "el.textContent.trim() === 'Add after A4'");
        await page.Keyboard.PressAsync("Enter");
        // The new post has the focus, ready to be typed over.
        await Assertions.Expect(page.Field("lines[0].posts[4].mark")).ToBeFocusedAsync();
        await Assertions.Expect(page.Field("lines[0].posts[4].mark")).ToHaveValueAsync("A5");
        await TabToAsync(page, "el.value === 'take-in'");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/jobs/LQ-5001");
        await TabToAsync(page, "el.textContent.trim() === 'Release to the shop'");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Button("Release to the shop")).ToHaveCountAsync(0);
        Assert.Equal(5, shop.Jobs.Find("LQ-5001")!.Takeoff.Job.Lines[0].Posts.Count);
    }

    [Fact]
    public async Task Enter_in_a_field_saves_and_checks_and_takes_no_other_step()
    {
        await using var shop = await RunningShop.StartAsync();
        var id = await shop.DraftAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"/drafts/{id}"));
        await page.Field("customer").FillAsync("Lantern Quay harbour");
        await page.RunAndWaitForResponseAsync(
            () => page.Keyboard.PressAsync("Enter"), answer => answer.Request.Method == "GET" && answer.Url.EndsWith($"/drafts/{id}", StringComparison.Ordinal));
        await page.WaitForLoadStateAsync();
        await Assertions.Expect(page.Field("customer")).ToHaveValueAsync("Lantern Quay harbour");
        await Assertions.Expect(page.Field("lines[0].posts[3].mark")).ToHaveValueAsync("A4");
        Assert.Null(shop.Jobs.Find("LQ-5001"));
    }

    [Fact]
    public async Task A_quote_s_pdf_is_a_pdf()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.KeepPricesAsync();
        var quote = await shop.QuoteAsync(await shop.DraftAsync());
        var bytes = await shop.Client.GetByteArrayAsync(new Uri($"/quotes/{quote}.pdf", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.True(bytes.AsSpan().StartsWith("%PDF-"u8));
    }

    /// <summary>Presses Tab until an element is focused that fits.</summary>
    private static async Task TabToAsync(IPage page, string fits)
    {
        for (var presses = 0; presses < 400; presses++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>($"(() => {{ const el = document.activeElement; return {fits}; }})()"))
                return;
        }
        Assert.Fail($"Nothing with {fits} can be reached with Tab.");
    }
}
