using System.Net;
using System.Text.Json;
using CutShop.Web.Tests.Benches;
using SkiaSharp;

namespace CutShop.Web.Tests.Site;

/// <summary>What a phone on site sends and is answered, with nothing but the label's code.</summary>
public sealed class SiteFormsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tap_without_sign_in_cookie_or_token_counts_and_leads_back_to_the_piece()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var page = await shop.Stranger.AskAsync($"/p/{code}");
        Assert.False(page.Headers.Contains("Set-Cookie"));

        using var answer = await shop.NewClient().MarkAsync(code, InstalledState.Installed, json: false);
        Assert.Equal((HttpStatusCode.SeeOther, $"/p/{code}#mark"), (answer.StatusCode, answer.Headers.Location!.OriginalString));
        Assert.True(shop.Jobs.Find("LQ-1042")!.Pieces[0].IsInstalled);
        // Who is signed in is not asked: the label is the only key.
        using var owners = await shop.Client.MarkAsync(code, InstalledState.NotInstalled);
        Assert.Equal(HttpStatusCode.OK, owners.StatusCode);
        Assert.Equal(["site", "site"], new HistoryShelf(shop.Database).Of("piece", 1).Select(line => line.Who));
    }

    [Fact]
    public async Task A_program_is_answered_in_json_and_a_late_tap_is_told_of_the_conflict()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var done = await shop.Stranger.MarkAsync(code, InstalledState.Installed);
        Assert.Equal("installed", (await JsonAsync(done)).GetProperty("state").GetString());
        using var late = await shop.Stranger.MarkAsync(code, InstalledState.NotInstalled, at: "2020-05-01T09:00:00Z");
        Assert.Equal((HttpStatusCode.Conflict, "application/problem+json"), (late.StatusCode, late.Content.Headers.ContentType!.MediaType));
        Assert.Equal("installed", (await JsonAsync(late)).GetProperty("now").GetProperty("state").GetString());

        using var shown = await shop.Stranger.MarkAsync(code, InstalledState.NotInstalled, json: false, at: "2020-05-01T09:00:00Z");
        Assert.Equal(HttpStatusCode.Conflict, shown.StatusCode);
        Assert.Contains("Nothing was changed", await shown.TextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("state", "up")]
    [InlineData("seen", "")]
    [InlineData("key", "not a key")]
    [InlineData("at", "yesterday")]
    public async Task A_tap_that_is_not_complete_is_422_and_changes_nothing(string field, string value)
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        var fields = new Dictionary<string, string> { ["state"] = "installed", ["seen"] = "not-installed", ["key"] = SiteShop.NewKey(), ["at"] = "" };
        fields[field] = value;
        using var answer = await shop.Stranger.TapAsync($"/p/{code}/installed", json: true, photo: null, [.. fields.Select(pair => (pair.Key, pair.Value))]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.False(shop.Jobs.Find("LQ-1042")!.Pieces[0].IsInstalled);
    }

    [Fact]
    public async Task A_mistyped_and_an_unknown_code_are_404_with_a_field_and_say_the_same_whatever_is_sent()
    {
        await using var shop = await RunningShop.StartAsync();
        var unknown = PieceCode.Draw().Plain;
        foreach (var address in new[] { "/p/XXXX", $"/p/{unknown}", $"/p/{unknown}/line", $"/p/{unknown}/bores", $"/p/{unknown}/bored", $"/p/{unknown}/set-out", $"/p/{unknown}/measure", $"/p/{unknown}/report", $"/p/{unknown}/dropped", $"/p/{unknown}/installed" })
        {
            using var page = await shop.Stranger.AskAsync(address);
            Assert.Equal((address, HttpStatusCode.NotFound), (address, page.StatusCode));
            Assert.Contains("name=\"code\"", await page.TextAsync(), StringComparison.Ordinal);
        }
        using var tap = await shop.Stranger.MarkAsync(unknown, InstalledState.Installed);
        Assert.Equal((HttpStatusCode.NotFound, "application/problem+json"), (tap.StatusCode, tap.Content.Headers.ContentType!.MediaType));
    }

    [Fact]
    public async Task A_revoked_label_is_410_and_does_not_tell_the_new_code()
    {
        await using var shop = await RunningShop.StartAsync();
        var old = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0];
        using var sent = await shop.Client.SendFormAsync("/jobs/LQ-1042/labels", ("code", old.Plain), ("reason", "lost"), ("key", SiteShop.NewKey()));
        var renewed = shop.Jobs.Find("LQ-1042")!.Codes[0];
        Assert.NotEqual(old, renewed);
        Assert.Contains($"{renewed}", await sent.TextAsync(), StringComparison.Ordinal);
        foreach (var page in new[] { "", "/line", "/bores", "/set-out", "/measure", "/report", "/dropped" })
        {
            using var answer = await shop.Stranger.AskAsync($"/p/{old.Plain}{page}");
            Assert.Equal((page, HttpStatusCode.Gone), (page, answer.StatusCode));
            var text = await answer.TextAsync();
            Assert.Contains("no longer valid", text, StringComparison.Ordinal);
            Assert.DoesNotContain(renewed.Plain, text, StringComparison.Ordinal);
            Assert.DoesNotContain(renewed.ToString(), text, StringComparison.Ordinal);
        }
        using var tap = await shop.Stranger.MarkAsync(old.Plain, InstalledState.Installed);
        Assert.Equal(HttpStatusCode.Gone, tap.StatusCode);
        using var good = await shop.Stranger.AskAsync($"/p/{renewed.Plain}");
        Assert.Equal(HttpStatusCode.OK, good.StatusCode);
        using var label = await shop.Client.AskAsync($"/jobs/LQ-1042/labels.pdf?piece={renewed.Plain}");
        Assert.Equal("application/pdf", label.Content.Headers.ContentType!.MediaType);
        using var none = await shop.Client.AskAsync($"/jobs/LQ-1042/labels.pdf?piece={old.Plain}");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task No_page_for_installers_tells_who_ordered_or_what_it_costs()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        Assert.NotEmpty(job.Takeoff.Job.Customer);
        foreach (var page in new[] { "", "/line", "/measure", "/report" })
        {
            using var answer = await shop.Stranger.AskAsync($"/p/{job.Codes[0].Plain}{page}");
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.DoesNotContain(job.Takeoff.Job.Customer, await answer.TextAsync(), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task A_report_is_taken_once_and_the_desk_sees_its_note_as_text_and_its_photo()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        var key = SiteShop.NewKey();
        for (var i = 0; i < 2; i++)
        {
            using var sent = await shop.Stranger.TapAsync($"/p/{code}/report", json: true, Photo(40, 20), ("kind", "damaged"), ("note", "<b>cut</b> through"), ("key", key));
            Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        }
        var page = await shop.Client.GetStringAsync(new Uri("/reports", UriKind.Relative), Cancel);
        Assert.Contains("&lt;b&gt;cut&lt;/b&gt; through", page, StringComparison.Ordinal);
        using var photo = await shop.Client.AskAsync("/reports/1/photo");
        Assert.Equal("image/jpeg", photo.Content.Headers.ContentType!.MediaType);
        using var second = await shop.Client.AskAsync("/reports/2/photo");
        Assert.Equal(HttpStatusCode.NotFound, second.StatusCode);
        Assert.Single(PhotosOf(shop));
    }

    /// <summary>The camera was held on its right side and wrote where it was: EXIF's orientation 6, and a place.</summary>
    [Fact]
    public async Task A_photo_is_kept_upright_and_without_what_the_camera_wrote_into_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        var photo = WithCamerasWords(Photo(40, 20), orientation: 6, "54.3210N");
        using var sent = await shop.Stranger.TapAsync($"/p/{code}/report", json: true, photo, ("kind", "damaged"), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        var kept = await File.ReadAllBytesAsync(Assert.Single(PhotosOf(shop)), Cancel);
        Assert.Equal(-1, kept.AsSpan().IndexOf("Exif"u8));
        Assert.Equal(-1, kept.AsSpan().IndexOf("54.3210N"u8));
        using var picture = SKBitmap.Decode(kept);
        Assert.Equal((20, 40), (picture.Width, picture.Height));
        // The left half of what was sent is red, and stands at the top now.
        Assert.True(picture.GetPixel(10, 5) is { Red: > 200, Blue: < 60 });
        Assert.True(picture.GetPixel(10, 35) is { Red: < 60, Blue: > 200 });
    }

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public async Task A_large_photo_of_each_kind_is_made_small_enough(SKEncodedImageFormat format)
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var sent = await shop.Stranger.TapAsync($"/p/{code}/report", json: true, Photo(3200, 1000, format), ("kind", "damaged"), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        using var picture = SKBitmap.Decode(Assert.Single(PhotosOf(shop)));
        Assert.Equal((1600, 500), (picture.Width, picture.Height));
    }

    [Fact]
    public async Task What_is_no_photo_is_damaged_or_is_too_large_is_refused_and_nothing_is_kept()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        var good = Photo(40, 20);
        await RefusedAsync("<svg onload='alert(1)'/>"u8.ToArray(), HttpStatusCode.UnprocessableEntity, "not a JPEG, PNG or WebP");
        await RefusedAsync("GIF89a"u8.ToArray(), HttpStatusCode.UnprocessableEntity, "not a JPEG, PNG or WebP");
        await RefusedAsync(good[..(good.Length / 3)], HttpStatusCode.UnprocessableEntity, "damaged");
        await RefusedAsync(TooManyPixels(), HttpStatusCode.UnprocessableEntity, "too many pixels");
        await RefusedAsync([.. good, .. new byte[(8 * 1024 * 1024) + 1 - good.Length]], HttpStatusCode.UnprocessableEntity, "too large");
        await RefusedAsync([.. good, .. new byte[33 * 1024 * 1024]], HttpStatusCode.RequestEntityTooLarge, "too large");
        Assert.Empty(PhotosOf(shop));
        Assert.Equal(0, shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM site_reports")));

        async Task RefusedAsync(byte[] photo, HttpStatusCode status, string said)
        {
            using var answer = await shop.NewClient().TapAsync($"/p/{code}/report", json: true, photo, ("kind", "damaged"), ("key", SiteShop.NewKey()));
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(said, (await JsonAsync(answer)).GetProperty("title").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_report_half_filled_keeps_what_was_typed()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var answer = await shop.Stranger.TapAsync($"/p/{code}/report", json: false, photo: null, ("note", "no kind chosen"), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("no kind chosen</textarea>", await answer.TextAsync(), StringComparison.Ordinal);
        using var tooLong = await shop.Stranger.TapAsync($"/p/{code}/report", json: true, photo: null, ("kind", "missing"), ("note", new string('n', 501)), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tooLong.StatusCode);
    }

    [Fact]
    public async Task The_labels_page_warns_of_an_address_that_no_phone_reaches_until_one_is_set()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        foreach (var (set, warned) in new[] { ("http://localhost:5080", "Do not print yet."), ("http://192.0.2.7:5080", "Warning:"), ("https://shop.example", "") })
        {
            using var stored = await shop.Client.SendFormAsync("/settings/address", ("address", set));
            var page = await shop.Client.GetStringAsync(new Uri("/jobs/LQ-1042/labels", UriKind.Relative), Cancel);
            Assert.Equal(warned, new[] { "Do not print yet.", "Warning:" }.FirstOrDefault(warning => page.Contains(warning, StringComparison.Ordinal)) ?? "");
        }
        var reader = await shop.WithKeyAsync(KeyScope.Read);
        var labels = await reader.GetStringAsync(new Uri("/api/jobs/LQ-1042/labels", UriKind.Relative), Cancel);
        Assert.Contains($"HTTPS://SHOP.EXAMPLE/P/{code}", labels, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measured_spans_are_answered_without_a_script()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var sent = await shop.NewClient().TapAsync($"/p/{code}/measure", json: false, photo: null, ("span", "71 in"), ("span", "6' 4"), ("key", SiteShop.NewKey()));
        Assert.Equal((HttpStatusCode.SeeOther, $"/p/{code}/measure#advice"), (sent.StatusCode, sent.Headers.Location!.OriginalString));
        using var page = await shop.Stranger.AskAsync($"/p/{code}/measure");
        var text = await page.TextAsync();
        Assert.Contains("Sag now", text, StringComparison.Ordinal);
        Assert.Contains("Does not reach", text, StringComparison.Ordinal);
        Assert.Contains("In total the rope is", text, StringComparison.Ordinal);
        Assert.Contains("Send it back as too short.", text, StringComparison.Ordinal);
        Assert.Contains("6' 4\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nonsense", "“nonsense” is not a length")]
    [InlineData("7200", "“7200” is 600' 0\" (182880 mm). Do you mean 23' 7 7/16\" (7200 mm)? Write the unit behind the figure.")]
    [InlineData("1829", "Do you mean 6' 0\" (1829 mm)?")]
    [InlineData("7200 in", "planned is 6' 0\" (1828.8 mm). Check the figure and its unit.")]
    [InlineData("7 in", "Check the figure and its unit.")]
    public async Task A_figure_that_no_span_can_be_is_asked_back_and_nothing_is_kept(string typed, string said)
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0];
        using var sent = await shop.Stranger.TapAsync($"/p/{code.Plain}/measure", json: false, photo: null, ("span", typed), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.StatusCode);
        Assert.Contains(said, WebUtility.HtmlDecode(await sent.TextAsync()).Replace('\u00A0', ' ').Replace("≈ ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        using var report = await shop.Stranger.TapAsync($"/p/{code.Plain}/report", json: true, photo: null, ("span", typed), ("kind", "too-short"), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, report.StatusCode);
        Assert.Null(new MeasuredSpans(shop.Database).Find(code));
        Assert.Empty(new SiteReports(shop.Database).Open());
    }

    [Fact]
    public async Task A_report_from_the_measure_page_brings_the_span_to_the_desk_and_shows_on_the_piece_and_the_line()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.PlanAndPackAsync()).Codes[0];
        using var sent = await shop.Stranger.TapAsync(
            $"/p/{code.Plain}/report", json: true, photo: null, ("span", "74 in"), ("kind", "too-short"), ("key", SiteShop.NewKey()));
        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        var desk = await shop.Client.GetStringAsync(new Uri("/reports", UriKind.Relative), Cancel);
        Assert.Contains("Measured on site: A1 – A2 6' 2\"", WebUtility.HtmlDecode(desk).Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Contains("Cut again for the span as measured: ", desk, StringComparison.Ordinal);
        foreach (var page in new[] { "", "/line" })
        {
            var text = await shop.Stranger.GetStringAsync(new Uri($"/p/{code.Plain}{page}", UriKind.Relative), Cancel);
            Assert.Contains("Reported: too short. The shop has not settled it yet.", text, StringComparison.Ordinal);
            Assert.Contains("This piece is reported as too short; is it hung anyway?", text, StringComparison.Ordinal);
        }
        using var unsure = await shop.Stranger.MarkAsync(code.Plain, InstalledState.Installed, sure: "");
        Assert.Equal(HttpStatusCode.Conflict, unsure.StatusCode);

        var next = (await new SiteReports(shop.Database).ReCutAsync(1, "test", "again", Cancel)).Outcome;
        Assert.Contains("Made for the span as measured on site", await shop.Client.GetStringAsync(new Uri($"/cut/{next}", UriKind.Relative), Cancel), StringComparison.Ordinal);
        Assert.Contains("Made for the span as measured on site", await shop.Stranger.GetStringAsync(new Uri($"/p/{next}", UriKind.Relative), Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_piece_that_is_not_cut_is_asked_about_and_the_desk_is_told()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var asked = await shop.NewClient().MarkAsync(code, InstalledState.Installed, json: false, sure: "");
        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        var text = await asked.TextAsync();
        Assert.Contains("The shop has not cut this piece; is it really hung?", text, StringComparison.Ordinal);
        Assert.Contains("name=\"sure\" value=\"yes\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Marked as installed, but not cut", await shop.Client.GetStringAsync(new Uri("/reports", UriKind.Relative), Cancel), StringComparison.Ordinal);
        using var sure = await shop.Stranger.MarkAsync(code, InstalledState.Installed);
        Assert.Equal(HttpStatusCode.OK, sure.StatusCode);
        Assert.Contains("Marked as installed, but not cut", await shop.Client.GetStringAsync(new Uri("/reports", UriKind.Relative), Cancel), StringComparison.Ordinal);
        Assert.Contains("installed, but not cut", await shop.Client.GetStringAsync(new Uri("/jobs/LQ-1042", UriKind.Relative), Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Posts_that_the_shop_has_drilled_are_not_shown_as_to_bore()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var post = job.Takeoff.Job.Lines[0].Posts[0].Mark;
        var line = new Uri($"/p/{job.Codes[0].Plain}/line", UriKind.Relative);
        Assert.DoesNotContain("drilled in the shop", await shop.Stranger.GetStringAsync(line, Cancel), StringComparison.Ordinal);
        var bench = new DrillBench(shop.Database);
        Assert.Null((await bench.TakeAsync((job.Number, post), "Dov", "take", Cancel)).Problem);
        foreach (var drilling in PostWork.Of(job.Takeoff).First().Drillings())
            Assert.Null((await bench.TickAsync((job.Number, post), drilling.Number, "Dov", $"drilling {drilling.Number}", Cancel)).Problem);
        Assert.Null((await bench.FitsAsync((job.Number, post), "Dov", "fits", Cancel)).Problem);
        var page = await shop.Stranger.GetStringAsync(line, Cancel);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(page, "· drilled in the shop</summary>", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5)));
        var pack = await shop.Stranger.GetStringAsync(new Uri($"/s/{(await shop.PackOfAsync(job)).Plain}/pack.html", UriKind.Relative), Cancel);
        Assert.Contains("Posts drilled in the shop: do not bore them again", pack, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("HTTPS://ANOTHER.EXAMPLE/P/{0}")]
    [InlineData("http://127.0.0.1/p/{0}/line")]
    public async Task The_field_for_a_code_takes_a_labels_whole_address_and_names_a_slip_in_it(string address)
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        using var found = await shop.NewClient().AskAsync($"/p?code={Uri.EscapeDataString(string.Format(System.Globalization.CultureInfo.InvariantCulture, address, code))}");
        Assert.Equal($"/p/{code}", found.Headers.Location!.OriginalString);
        var wrong = code[..^1] + (code[^1] == '2' ? '3' : '2');
        using var slip = await shop.NewClient().AskAsync($"/p?code={Uri.EscapeDataString(string.Format(System.Globalization.CultureInfo.InvariantCulture, address, wrong))}");
        Assert.Contains("the last character does not match the others", await slip.TextAsync(), StringComparison.Ordinal);
    }

    private static async Task<JsonElement> JsonAsync(HttpResponseMessage answer)
    {
        using var document = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel));
        return document.RootElement.Clone();
    }

    private static string[] PhotosOf(RunningShop shop)
    {
        var folder = Path.Combine(shop.Database.Folder, "photos");
        return Directory.Exists(folder) ? Directory.GetFiles(folder) : [];
    }

    /// <summary>A picture, red on the left and blue on the right.</summary>
    private static byte[] Photo(int width, int height, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg)
    {
        using var bitmap = new SKBitmap(width, height);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.Blue);
        using var red = new SKPaint { Color = SKColors.Red };
        canvas.DrawRect(0, 0, width / 2f, height, red);
        using var data = bitmap.Encode(format, 95);
        return data.ToArray();
    }

    /// <summary>A JPEG with an EXIF segment behind its start: one entry for the orientation, then some text.</summary>
    private static byte[] WithCamerasWords(byte[] jpeg, byte orientation, string words)
    {
        byte[] exif =
        [
            .. "Exif"u8, 0, 0, .. "MM"u8, 0, 42, 0, 0, 0, 8, 0, 1,
            0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0,
            .. System.Text.Encoding.ASCII.GetBytes(words),
        ];
        var length = exif.Length + 2;
        return [.. jpeg[..2], 0xFF, 0xE1, (byte)(length >> 8), (byte)length, .. exif, .. jpeg[2..]];
    }

    /// <summary>The head of a PNG that says it is 20,000 pixels square, and nothing more.</summary>
    private static byte[] TooManyPixels()
    {
        // The last four bytes are the head's CRC-32, as the format asks.
        byte[] head = [0, 0, 0, 13, .. "IHDR"u8, 0, 0, 0x4E, 0x20, 0, 0, 0x4E, 0x20, 8, 2, 0, 0, 0, 0x6C, 0x12, 0xD1, 0x6E];
        return [0x89, .. "PNG"u8, 0x0D, 0x0A, 0x1A, 0x0A, .. head, 0, 0, 0, 0, .. "IDAT"u8, 0x35, 0xAF, 0x06, 0x1E];
    }
}
