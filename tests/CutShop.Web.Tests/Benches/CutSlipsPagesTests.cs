using System.Text.Json;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

/// <summary>A finger or a scanner slips at the cut bench's pages.</summary>
public sealed class CutSlipsPagesTests(HeadlessBrowser browser)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_figure_in_millimetres_typed_as_inches_is_shown_as_read_and_offered_as_millimetres()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var (page, bench, code) = await AtTheMeasureAsync(shop);
        var millimetres = bench.Find(code)!.Cut.Nanometres / 1_000_000;
        await TypeAsync(page, $"{millimetres}");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "More than coil" })).ToContainTextAsync($"You typed {millimetres}, which was read as ");
        Assert.Equal((null, null), (bench.Find(code)!.Longest, bench.Find(code)!.Measured));
        await page.Locator(".note button", new() { HasText = "It is " }).TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: label, coil and tie" })).ToBeVisibleAsync();
        Assert.Equal(Length.Millimetre * millimetres, bench.Find(code)!.Measured);
    }

    [Fact]
    public async Task A_slip_of_ten_feet_is_asked_about_and_what_was_confirmed_is_taken_back()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var (page, bench, code) = await AtTheMeasureAsync(shop);
        var cut = bench.Find(code)!.Cut;
        var slip = cut + Length.Foot * 10;
        await TypeAsync(page, $"{slip}");
        await Assertions.Expect(page.GetByText("Far from the cut length")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Type it again" }).TapAsync();
        await Assertions.Expect(page.GetByText("Far from the cut length")).ToHaveCountAsync(0);
        await TypeAsync(page, $"{slip}");
        await page.TouchAsync("Yes, that is what I measured");
        await page.TouchAsync("Take this length back");
        await Assertions.Expect(page.GetByText("Too long:")).ToHaveCountAsync(0);
        Assert.Null(bench.Find(code)!.Longest);
        await page.Locator(".measures button.main").TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: label, coil and tie" })).ToBeVisibleAsync();
        await page.TouchAsync("Undo this step");
        await Assertions.Expect(page.GetByText("What does the tape say?")).ToBeVisibleAsync();
        Assert.Equal((null, 2L), (bench.Find(code)!.Measured, bench.Find(code)!.Steps));
    }

    [Fact]
    public async Task A_length_that_is_short_tells_the_true_refusal_once_it_is_confirmed()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var (page, bench, code) = await AtTheMeasureAsync(shop);
        await shop.Database.WriteAsync(session => session.Execute("UPDATE coils SET state = 'retired'"), Cancel);
        await TypeAsync(page, "60 in");
        await page.TouchAsync("It is too short: put it aside");
        await Assertions.Expect(page.GetByText($"Coil {bench.Find(code)!.Coil} is retired")).ToBeVisibleAsync();
        // There is a way on: undo, and hand it back.
        await page.TouchAsync("Undo this step");
        await page.TouchAsync("Hand it back");
        await page.WaitForURLAsync("**/cut");
        Assert.Equal("waiting", bench.Find(code)!.State);
    }

    [Fact]
    public async Task A_wrong_scan_says_what_it_is_and_what_was_wanted_and_the_right_label_ends_the_piece_and_gives_the_next_in_three_taps_and_a_scan()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        var bench = new CutBench(shop.Database);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        // As a browser without the script shows it.
        await page.RouteAsync("**/bench.js", route => route.AbortAsync());
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        var work = bench.Find(PieceCode.Parse(page.Url[^12..]).OrThrow())!;
        var other = job.Pieces.First(piece => piece.Code != work.Code);
        await ScanAsync(page, "K0009");
        await Assertions.Expect(page.Locator(".verdict.wrong")).ToContainTextAsync($"Wanted: coil {work.Coil}");
        await ScanAsync(page, work.Coil!);
        await Assertions.Expect(page.Locator(".verdict.right")).ToContainTextAsync($"Coil {work.Coil} is the right one");

        await page.TouchAsync("Done: pull and mark");
        await page.TouchAsync("Done: prepare the ends and cut hot");
        await page.Locator(".measures button.main").TapAsync();
        await ScanAsync(page, $"HTTPS://SHOP.EXAMPLE/P/{other.Code.Plain}");
        await Assertions.Expect(page.Locator(".verdict.wrong")).ToContainTextAsync($"Wrong label: this is {job.Number} {other.Run}");
        await Assertions.Expect(page.Locator(".verdict.wrong")).ToContainTextAsync($"Wanted: the label of {work.Job} {work.Run}, code {work.Code}");
        Assert.Equal("at the bench", bench.Find(work.Code)!.State);
        await ScanAsync(page, $"HTTPS://SHOP.EXAMPLE/P/{work.Code.Plain}");
        await Assertions.Expect(page.Locator(".verdict.right")).ToContainTextAsync("The right label");
        Assert.Equal("cut", bench.Find(work.Code)!.State);
        Assert.NotNull(bench.Of(RunningShop.NameOf(Role.Cutter)));
    }

    [Fact]
    public async Task The_script_is_told_the_verdict_and_the_page_of_the_next_piece()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.PlanDemoAsync()).Codes[0];
        using var cutter = await shop.SignInAsync(Role.Cutter);
        var (bench, name) = (new CutBench(shop.Database), RunningShop.NameOf(Role.Cutter));
        await bench.TakeAsync(code, name, "take", Cancel);
        foreach (var step in new[] { CutStep.Mark, CutStep.Cut })
            await bench.TickAsync(code, step, name, $"{step}", Cancel);
        await bench.MeasureAsync(code, bench.Find(code)!.Cut, isSure: false, name, "measure", Cancel);
        cutter.DefaultRequestHeaders.Add(BenchPage.SentByScript, "1");
        foreach (var (key, text, isRight, to) in new[] { ("a", "nonsense", false, $"/cut/{code.Plain}"), ("b", code.ToString(), true, ""), ("b", code.ToString(), true, "") })
        {
            using var answer = await cutter.SendFormAsync($"/cut/{code.Plain}?handler=Scan", ("key", key), ("text", text));
            using var json = JsonDocument.Parse(await answer.TextAsync());
            Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("problem").ValueKind);
            Assert.Equal(isRight, json.RootElement.GetProperty("verdict").GetProperty("isRight").GetBoolean());
            Assert.Equal(to.Length > 0 ? to : $"/cut/{bench.Of(name)!.Code.Plain}?done={code.Plain}", json.RootElement.GetProperty("to").GetString());
        }
    }

    [Fact]
    public async Task A_coil_that_ends_gives_the_next_piece_from_another_coil_by_one_tap_and_a_slip_is_taken_back_by_another()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var bench = new CutBench(shop.Database);
        var page = await browser.OpenAsync(shop, 820, 1180, touch: true, role: Role.Cutter);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        var coil = bench.Of(RunningShop.NameOf(Role.Cutter))!.Coil!;
        var stock = new CoilShelf(shop.Database);
        var left = stock.Find(coil)!.Left;
        foreach (var slip in new[] { true, false })
        {
            await page.TouchAsync("The coil ends here: nothing is left that is worth keeping");
            await page.WaitForURLAsync($"**/cut/*?coil={coil}");
            if (!slip)
                break;
            await page.TouchAsync("That was a slip: take it back");
            await Assertions.Expect(page.GetByText($"Coil {coil} is in stock")).ToBeVisibleAsync();
            Assert.Equal(("in stock", left), (stock.Find(coil)!.State, stock.Find(coil)!.Left));
            // The piece given meanwhile goes back, so that the next is from the coil again.
            await page.TouchAsync("Hand it back");
            await page.WaitForURLAsync("**/cut");
            await page.TouchAsync("Next piece");
            await page.WaitForURLAsync("**/cut/*");
            coil = bench.Of(RunningShop.NameOf(Role.Cutter))!.Coil!;
        }
        await Assertions.Expect(page.GetByText($"Coil {coil} is used up")).ToBeVisibleAsync();
        var next = bench.Of(RunningShop.NameOf(Role.Cutter))!;
        Assert.NotEqual(coil, next.Coil);
        // A bad stretch is asked about before it is scrap.
        await page.Locator("summary", new() { HasText = "Another length of bad rope" }).TapAsync();
        await page.Locator("#bad").FillAsync("3 ft");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByText($"3' 0\" (914.4 mm) of coil {next.Coil} becomes scrap.")).ToBeVisibleAsync();
        var before = new CoilShelf(shop.Database).Find(next.Coil!)!.Left;
        await page.TouchAsync("Yes, cut it out");
        await Assertions.Expect(page.GetByText($"Coil {next.Coil} is in stock")).ToBeVisibleAsync();
        Assert.Equal(before - Length.Foot * 3, new CoilShelf(shop.Database).Find(next.Coil!)!.Left);
        await page.TouchAsync("3' 0\"");
        // The page said so of the stretch before, so only what is left tells that this one is out too.
        await Assertions.Expect(page.Locator(".note.good")).ToContainTextAsync(LengthText.FeetInches(before - Length.Foot * 6));
        Assert.Equal(before - Length.Foot * 6, new CoilShelf(shop.Database).Find(next.Coil!)!.Left);
        await page.TouchAsync("Coil not found");
        await Assertions.Expect(page.GetByText($"Coil {next.Coil} is retired")).ToBeVisibleAsync();
        await page.GotoAsync($"/stock/{next.Coil}");
        await page.GetByRole(AriaRole.Button, new() { Name = $"Coil {next.Coil} is on the rack again" }).TapAsync();
        await Assertions.Expect(page.GetByText("Correct what is left")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_scan_that_a_length_field_took_is_read_as_a_scan()
    {
        await using var shop = await RunningShop.StartAsync();
        var codes = (await shop.PlanDemoAsync()).Codes;
        var (page, bench, code) = await AtTheMeasureAsync(shop);
        var other = codes.First(other => other != code);
        // A label's address, behind what was typed before; then a code and a coil's mark, which have no address.
        foreach (var (scan, said) in new[]
        {
            ($"39' HTTPS://SHOP.EXAMPLE/P/{other.Plain}", "Wrong label: this is "),
            (other.ToString(), "Wrong label: this is "),
            ("nonsense", "nonsense"),
            ($"https://shop.example/stock/{bench.Find(code)!.Coil}", $"Coil {bench.Find(code)!.Coil} is the right one"),
        })
        {
            await TypeAsync(page, scan);
            await Assertions.Expect(page.Locator(scan == said ? "#refused" : ".verdict")).ToContainTextAsync(said);
            await page.Keyboard.PressAsync("Escape");
            await Assertions.Expect(page.Locator(".verdict")).ToHaveCountAsync(0);
        }
        Assert.Equal((null, null, 2L), (bench.Find(code)!.Longest, bench.Find(code)!.Measured, bench.Find(code)!.Steps));
    }

    [Fact]
    public async Task A_scan_that_a_field_took_is_read_as_a_scan_without_scripts()
    {
        await using var shop = await RunningShop.StartAsync();
        var codes = (await shop.PlanDemoAsync()).Codes;
        using var cutter = await shop.SignInAsync(Role.Cutter);
        var (bench, name) = (new CutBench(shop.Database), RunningShop.NameOf(Role.Cutter));
        await bench.TakeAsync(codes[0], name, "take", Cancel);
        var at = $"/cut/{codes[0].Plain}";
        foreach (var (handler, field) in new[] { ("CoilEnds", "left"), ("BadStretch", "bad"), ("Measure", "measured"), ("Undo", "reason") })
        {
            using var answer = await cutter.SendFormAsync($"{at}?handler={handler}", ("key", handler), (field, $"HTTPS://SHOP.EXAMPLE/P/{codes[1].Plain}"));
            Assert.Contains("Wrong label: this is ", await answer.TextAsync(), StringComparison.Ordinal);
        }
        Assert.Equal(("at the bench", 0L), (bench.Find(codes[0])!.State, bench.Find(codes[0])!.Steps));
        // A piece that nobody has takes no scan: what was scanned is opened.
        cutter.DefaultRequestHeaders.Add(BenchPage.SentByScript, "1");
        using var elsewhere = await cutter.SendFormAsync($"/cut/{codes[1].Plain}?handler=Reject", ("key", "elsewhere"), ("reason", codes[0].ToString()));
        Assert.Contains($"\"to\":\"/scan?text={codes[0]}\\u0026at=cut\"", await elsewhere.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coil_has_a_label_and_its_scan_leads_to_its_page()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        foreach (var address in new[] { "/stock/K0001/label.pdf", "/stock/labels.pdf" })
        {
            var pdf = await shop.Client.GetByteArrayAsync(new Uri(address, UriKind.Relative), Cancel);
            Assert.Equal("%PDF"u8, pdf.AsSpan(0, 4));
        }
        using var scan = await shop.NewClient(shop.OwnersCookies).AskAsync("/scan?text=HTTPS://SHOP.EXAMPLE/STOCK/K0001&at=cut");
        Assert.Equal("/stock/K0001", scan.Headers.Location!.OriginalString);
        using var none = await shop.Client.AskAsync("/stock/K0099/label.pdf");
        Assert.Equal(System.Net.HttpStatusCode.NotFound, none.StatusCode);
    }

    private static async Task TypeAsync(IPage page, string length)
    {
        await page.Locator("#measured").FillAsync(length);
        await page.Keyboard.PressAsync("Enter");
    }

    private static async Task ScanAsync(IPage page, string text)
    {
        // As a scanner that types: its first character closes what came of the scan before.
        await Assertions.Expect(page.Locator("main [data-scan]")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync(text);
        await page.Keyboard.PressAsync("Enter");
    }

    private async Task<(IPage Page, CutBench Bench, PieceCode Code)> AtTheMeasureAsync(RunningShop shop)
    {
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.TouchAsync("Done: pull and mark");
        await page.TouchAsync("Done: prepare the ends and cut hot");
        await Assertions.Expect(page.GetByText("What does the tape say?")).ToBeVisibleAsync();
        var bench = new CutBench(shop.Database);
        return (page, bench, bench.Of(RunningShop.NameOf(Role.Cutter))!.Code);
    }
}
