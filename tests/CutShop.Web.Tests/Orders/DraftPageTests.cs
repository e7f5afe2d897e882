using System.Globalization;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Orders;

public sealed class DraftPageTests(HeadlessBrowser browser)
{
    [Fact]
    public async Task What_is_typed_is_read_and_kept_while_it_is_typed()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop);
        await page.Field("lines[0].posts[1].across").FillAsync("wide");
        await Assertions.Expect(page.Locator("#standing")).ToHaveTextAsync("1 error");
        await Assertions.Expect(page.Locator("[id='lines[0].posts[1].across-note']")).ToContainTextAsync("number is missing");
        await Assertions.Expect(page.Field("lines[0].posts[1].across")).ToHaveAttributeAsync("aria-invalid", "true");
        await page.Field("lines[0].posts[1].across").FillAsync("150 mm");
        await Assertions.Expect(page.Locator("#standing")).ToHaveTextAsync("Ready");
        await Assertions.Expect(page.Locator("[id='lines[0].posts[1].across-note']")).ToHaveTextAsync("150 mm ≈ 5 7/8\"");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.Locator("#saved")).ToHaveTextAsync("Saved");
        await page.ReloadAsync();
        await Assertions.Expect(page.Field("lines[0].posts[1].across")).ToHaveValueAsync("150 mm");
    }

    [Fact]
    public async Task A_preview_sends_what_was_typed_and_puts_right_the_notes_of_other_fields_and_the_totals_in_view()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop);
        await page.SetViewportSizeAsync(820, 1180);
        await Assertions.Expect(page.Locator("#totals")).ToContainTextAsync("2\u00A0pieces");
        var previews = new List<string>();
        page.Request += (_, request) =>
        {
            if (request.Url.EndsWith("/preview", StringComparison.Ordinal))
                previews.Add(Uri.UnescapeDataString(request.PostData!));
        };
        var rowNote = page.Locator("[id='lines[0].rows[0].height-note']");
        await page.Field("lines[0].posts[1].height").FillAsync("30");
        await Assertions.Expect(rowNote).ToContainTextAsync("Not below the top of post A2");
        await Assertions.Expect(page.Locator("#totals").GetByRole(AriaRole.Link)).ToHaveTextAsync("Line A, row top, height");
        await page.Field("lines[0].posts[1].height").FillAsync("48");
        await Assertions.Expect(rowNote).ToHaveTextAsync("inches: 3' 0\" = 914.4 mm");
        await Assertions.Expect(page.Field("lines[0].rows[0].height")).Not.ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(page.Locator("[id='lines[0].posts[1].height-note']")).ToContainTextAsync("4' 0\"");
        await page.Field("lines[0].posts[3].height").ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(page.Locator("#totals")).ToBeInViewportAsync();
        await Assertions.Expect(page.Locator("#totals")).ToContainTextAsync("2\u00A0pieces");
        Assert.All(previews, sent => Assert.DoesNotContain("customer", sent, StringComparison.Ordinal));
        Assert.All(previews, sent => Assert.Contains("lines[0].posts[1].height", sent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_long_draft_is_drawn_where_somebody_types_or_looks()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop, id: await LongDraftAsync(shop));
        var (drawn, stretch) = (page.Locator("#preview figure"), page.Field("at"));
        await Assertions.Expect(drawn).ToContainTextAsync("Line A, elevation, part 1 of 10");
        await Assertions.Expect(page.Button("Save and show it")).ToHaveCountAsync(0);
        await page.Field("lines[0].posts[20].across").FillAsync("wide");
        await Assertions.Expect(drawn).ToHaveCountAsync(0);
        await page.Field("lines[0].posts[20].across").FillAsync("7 1/2");
        await Assertions.Expect(drawn).ToContainTextAsync("part 7 of 10");
        await Assertions.Expect(drawn).ToContainTextAsync("A22");
        await Assertions.Expect(stretch.Locator("option:checked")).ToHaveTextAsync("Line A, post A19 to A22");
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Sag and slack" })).ToContainTextAsync("A20 – A21");
        await page.Field("lines[0].rows[0].sag").FillAsync("5");
        await Assertions.Expect(page.GetByRole(AriaRole.Region, new() { Name = "Sag and slack" })).ToContainTextAsync("5\"");
        await Assertions.Expect(drawn).ToContainTextAsync("part 7 of 10");
        await stretch.FocusAsync();
        await stretch.SelectOptionAsync(new SelectOptionValue { Label = "Line A, post A4 to A7" });
        await Assertions.Expect(drawn).ToContainTextAsync("part 2 of 10");
        await Assertions.Expect(stretch).ToBeFocusedAsync();
        // The plan is whole, and follows what is typed.
        await Assertions.Expect(page.Locator("#plan")).ToContainTextAsync("A30");
        await page.Field("lines[0].posts[29].mark").FillAsync("Gate");
        await Assertions.Expect(page.Locator("#plan")).ToContainTextAsync("Gate");
    }

    [Fact]
    public async Task Another_stretch_is_looked_at_without_scripts_and_nothing_typed_is_lost()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop, scripts: false, await LongDraftAsync(shop));
        await page.Field("customer").FillAsync("Lantern Quay harbour");
        await page.Field("at").SelectOptionAsync(new SelectOptionValue { Label = "Line A, post A28 to A30" });
        await page.Button("Save and show it").ClickAsync();
        await Assertions.Expect(page.Field("at").Locator("option:checked")).ToHaveTextAsync("Line A, post A28 to A30");
        await Assertions.Expect(page.Locator("#preview figure")).ToContainTextAsync("A29");
        await Assertions.Expect(page.Field("customer")).ToHaveValueAsync("Lantern Quay harbour");
    }

    [Fact]
    public async Task A_wrong_answer_to_a_question_is_said_once_and_the_others_are_kept()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/drafts/new");
        foreach (var (name, answer) in new[] { ("posts", "12"), ("across", "wide"), ("postHeight", "42"), ("width", "6'"), ("rows", "36, 18"), ("diameter", "1 1/2") })
            await page.Field(name).FillAsync(answer);
        await page.Button("Make the draft").ClickAsync();
        await Assertions.Expect(page.Locator(".error")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("[id='across-note']")).ToContainTextAsync("number is missing");
        await Assertions.Expect(page.Field("rows")).ToHaveValueAsync("36, 18");
        Assert.Empty(new DraftShelf(shop.Database).Open());
        await page.Field("across").FillAsync("5 1/2");
        await page.Button("Make the draft").ClickAsync();
        await page.WaitForURLAsync("**/drafts/1");
    }

    [Fact]
    public async Task A_half_filled_form_is_kept_with_its_errors_beside_the_fields_without_scripts()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop, scripts: false);
        await page.Field("number").FillAsync("");
        await page.Field("lines[0].rows[0].height").FillAsync("3 cubits");
        await page.Button("Save and check").ClickAsync();
        await Assertions.Expect(page.Field("lines[0].rows[0].height")).ToHaveValueAsync("3 cubits");
        await Assertions.Expect(page.Locator("[id='lines[0].rows[0].height-note']")).ToContainTextAsync("'cubits' is not a unit of length");
        await Assertions.Expect(page.Locator("[id='number-note']")).ToContainTextAsync("Missing");
        await page.Button("Take in without a quote").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("The draft has errors. Fix them first.");
        await Assertions.Expect(page.Field("lines[0].rows[0].height")).ToHaveValueAsync("3 cubits");
    }

    [Fact]
    public async Task Lines_are_duplicated_pasted_into_and_removed()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop, scripts: false);
        await page.Button("Duplicate line A").ClickAsync();
        await Assertions.Expect(page.Field("lines[1].posts[0].mark")).ToHaveValueAsync("B1");
        await page.GetByText("Paste posts of line B").ClickAsync();
        await page.Locator("#paste-1").FillAsync("P1\tround\t9 1/2\t48\t\t96\nP2\tround\t9 1/2\t48");
        await page.Button("Replace the posts of line B").ClickAsync();
        await Assertions.Expect(page.Field("lines[1].posts[1].mark")).ToHaveValueAsync("P2");
        await Assertions.Expect(page.Field("lines[1].sections[0].width")).ToHaveValueAsync("96");
        await page.Button("Remove line A").ClickAsync();
        await Assertions.Expect(page.Field("lines[0].mark")).ToHaveValueAsync("B");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_second_of_two_people_sees_the_first_one_s_change_and_chooses_field_by_field(bool scripts)
    {
        await using var shop = await RunningShop.StartAsync();
        var id = await shop.DraftAsync();
        var (first, second) = (await OpenDraftAsync(shop, scripts, id), await OpenDraftAsync(shop, scripts, id));
        await first.Field("customer").FillAsync("Lantern Quay harbour");
        await first.Field("rope.diameter").FillAsync("2");
        await first.Button("Save and check").ClickAsync();
        await Assertions.Expect(first.Locator("[id='rope.diameter-note']")).ToContainTextAsync("inches: 2\"");

        await second.Field("customer").FillAsync("Lantern Quay pier");
        await second.Field("number").FillAsync("LQ-5002");
        await second.Button("Save and check").ClickAsync();
        await Assertions.Expect(second.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Somebody else changed draft 1");
        // Each one's own change is chosen already; where both changed a field, nothing is.
        var customer = second.GetByRole(AriaRole.Group, new() { Name = "Customer" });
        await Assertions.Expect(customer.GetByRole(AriaRole.Radio, new() { Checked = true })).ToHaveCountAsync(0);
        await customer.GetByLabel("Yours: Lantern Quay pier").CheckAsync();
        await second.Button("Keep what I chose").ClickAsync();
        await Assertions.Expect(second.Field("customer")).ToHaveValueAsync("Lantern Quay pier");

        var kept = new DraftShelf(shop.Database).Find(id)!.Form;
        Assert.Equal(("LQ-5002", "Lantern Quay pier", "2"), (kept.Number, kept.Customer, kept.Rope.Diameter));
    }

    [Fact]
    public async Task Script_in_a_name_is_shown_as_text_on_every_page()
    {
        const string evil = "<script>alert(1)</script><img src=x onerror=alert(2)>";
        await using var shop = await RunningShop.StartAsync();
        await shop.KeepPricesAsync();
        var id = await shop.DraftAsync(form => form with { Customer = evil, Lines = [form.Lines[0] with { Rows = [form.Lines[0].Rows[0] with { Mark = "<b>x</b>" }] }] });
        var page = await browser.OpenAsync(shop);
        var dialogs = 0;
        page.Dialog += (_, dialog) =>
        {
            dialogs++;
            _ = dialog.DismissAsync();
        };
        await page.GotoAsync("/drafts");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(evil);
        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"/drafts/{id}"));
        await Assertions.Expect(page.Field("customer")).ToHaveValueAsync(evil);
        await page.Field("due").FillAsync("2027-05-01");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.Locator("#saved")).ToHaveTextAsync("Saved");
        await page.Button("Make a quote").ClickAsync();
        await Assertions.Expect(page.Locator("article")).ToContainTextAsync(evil);
        await page.Button("Accept: make job LQ-5001").ClickAsync();
        await Assertions.Expect(page.Locator(".lead").First).ToHaveTextAsync(evil);
        await page.GotoAsync("/");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(evil);
        Assert.Equal(0, await page.Locator("main img, main script, main b").CountAsync());
        Assert.Equal(0, dialogs);
    }

    [Fact]
    public async Task A_changed_job_shows_what_was_cut_before_the_change_is_accepted()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        await shop.Database.WriteAsync(
            session => session.Execute("UPDATE cut_tickets SET state = 'cut' WHERE piece_id = (SELECT id FROM pieces WHERE run = 'A-top-1')"),
            TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, 820, 1180);
        await page.GotoAsync("/jobs/LQ-1042");
        await page.Button("Change this job").ClickAsync();
        await page.Field("lines[0].sections[0].width").FillAsync("80 in");
        await page.Button("Show what changes in the job").ClickAsync();
        await Assertions.Expect(page.Locator(".note.warn")).ToContainTextAsync("A-top-1, cut");
        await page.Button("Accept the change").ClickAsync();
        await page.WaitForURLAsync("**/jobs/LQ-1042");
        var dropped = page.GetByRole(AriaRole.Region, new() { Name = "Pieces no longer wanted" });
        await Assertions.Expect(dropped.GetByRole(AriaRole.Row, new() { Name = "A-top-1" })).ToContainTextAsync("surplus");

        var code = shop.Jobs.Find("LQ-1042")!.Dropped[0].Code.Plain;
        await page.GotoAsync($"/p/{code}");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("no longer wanted");
    }

    [Fact]
    public async Task A_job_is_cancelled_only_with_a_reason()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var page = await browser.OpenAsync(shop, 390, 844);
        await page.GotoAsync("/jobs/LQ-1042");
        await page.GetByRole(AriaRole.Link, new() { Name = "Cancel this job" }).ClickAsync();
        await page.Button("Cancel the job").ClickAsync();
        await Assertions.Expect(page.Locator("#reason-note")).ToContainTextAsync("a reason of 1 to 200");
        await page.Field("reason").FillAsync("The pier was sold.");
        await page.Button("Cancel the job").ClickAsync();
        await Assertions.Expect(page.Locator(".note.bad")).ToContainTextAsync("Cancelled");
        Assert.All(shop.Jobs.Find("LQ-1042")!.Pieces, piece => Assert.Equal("cancelled", piece.State));
        foreach (var address in new[] { "/jobs/LQ-1042/cut-tickets", "/jobs/LQ-1042/drill-tickets", "/pack/LQ-1042/list" })
        {
            await page.GotoAsync(address);
            await Assertions.Expect(page.Locator(".stamp").First).ToHaveTextAsync("CANCELLED: do not cut, drill or send");
            Assert.Equal(await page.Locator("article.sheet").CountAsync(), await page.Locator(".stamp").CountAsync());
        }
        await page.GotoAsync("/jobs/LQ-1042/labels");
        await Assertions.Expect(page.Locator(".note.bad").Last).ToContainTextAsync("was cancelled");
    }

    [Fact]
    public async Task A_number_of_a_stored_job_asks_before_the_draft_changes_that_job()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var page = await OpenDraftAsync(shop);
        await page.Field("number").FillAsync("LQ-1042");
        await Assertions.Expect(page.Locator("#standing")).ToHaveTextAsync("1 error");
        await Assertions.Expect(page.Locator("#number-note")).ToContainTextAsync("LQ-1042 is Lantern Quay boardwalk, north walk's released job.");
        await page.Button("Save and check").ClickAsync();
        await Assertions.Expect(page.Button("Make a quote")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Button("Show what changes in the job")).ToHaveCountAsync(0);
        await page.Button("Yes, change job LQ-1042").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Change of released job LQ-1042");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "See job LQ-1042" })).ToBeVisibleAsync();
        await page.Button("Show what changes in the job").ClickAsync();
        await page.WaitForURLAsync("**/change");
    }

    [Fact]
    public async Task A_draft_put_away_is_taken_up_again_from_the_list()
    {
        await using var shop = await RunningShop.StartAsync();
        Assert.True(await new DraftShelf(shop.Database).DropAsync(await shop.DraftAsync(), "test", TestContext.Current.CancellationToken));
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/drafts");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Drafts put away" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Open it again" }).ClickAsync();
        await Assertions.Expect(page.Button("Make a quote")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_copy_of_a_job_is_a_draft_without_its_number()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/jobs/LQ-1044");
        await page.Button("Copy to a new draft").ClickAsync();
        await Assertions.Expect(page.Field("number")).ToHaveValueAsync("");
        await Assertions.Expect(page.Field("lines[0].rows[0].at")).ToHaveValueAsync("C3: wrap 2.5");
        await Assertions.Expect(page.Locator("#standing")).ToHaveTextAsync("1 error");
    }

    [Fact]
    public async Task A_draft_put_away_by_mistake_is_taken_up_again()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await OpenDraftAsync(shop, scripts: false);
        await page.Field("customer").FillAsync("Lantern Quay harbour");
        await page.Button("Put the draft away").ClickAsync();
        await page.Button("Open it again").ClickAsync();
        await Assertions.Expect(page.Field("customer")).ToHaveValueAsync("Lantern Quay harbour");
    }

    [Theory]
    [InlineData("/drafts/1/save", "Draft 1")]
    [InlineData("/drafts/1/merge", "Draft 1")]
    [InlineData("/bits/hang", "threaded Forstner")]
    [InlineData("/jobs/LQ-1042/release", "Job LQ-1042")]
    public async Task Who_just_goes_to_the_address_of_a_step_sees_its_page(string address, string shown)
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.DraftAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        Assert.Contains(shown, await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_rack_takes_a_bit_and_gives_it_up()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/bits");
        await page.Field("diameter").FillAsync("wide");
        await page.Button("Hang it on the rack").ClickAsync();
        await Assertions.Expect(page.Locator("#diameter-note")).ToContainTextAsync("accepted");
        await page.Field("diameter").FillAsync("1 13/64 in");
        await page.Button("Hang it on the rack").ClickAsync();
        await page.Button("Take off 1 13/64 in threaded Forstner").ClickAsync();
        await Assertions.Expect(page.Button("Take off 1 13/64 in threaded Forstner")).ToHaveCountAsync(0);
    }

    /// <summary>Thirty posts: bands of three sections.</summary>
    private static Task<long> LongDraftAsync(RunningShop shop) =>
        shop.DraftAsync(form => Enumerable.Range(4, 26).Aggregate(form, (longer, posts) => DraftEdits.AddPost(longer, line: 0, after: posts - 1)));

    private async Task<IPage> OpenDraftAsync(RunningShop shop, bool scripts = true, long? id = null)
    {
        id ??= await shop.DraftAsync();
        var page = await browser.OpenAsync(shop);
        if (!scripts)
            await page.TurnScriptsOffAsync();
        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"/drafts/{id}"));
        return page;
    }
}
