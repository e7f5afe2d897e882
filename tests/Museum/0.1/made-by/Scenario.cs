using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using CutShop.Shop;
using CutShop.Takeoff;
using SkiaSharp;

namespace CutShop.Museum;

/// <summary>A year's work of Lantern Quay in an afternoon: jobs in every state that the shop of release 0.1 knows.</summary>
internal sealed class Scenario(WorkingShop shop, MuseumSite site, GonePages gone)
{
    private static readonly RopeKind Poly = WorkingShop.Kind(RopeMaterial.Polypropylene, "1 1/2 in");
    private static readonly RopeKind Manila = WorkingShop.Kind(RopeMaterial.Manila, "1 1/2 in");
    private static readonly string[] Cutters = ["Cai", "Cleo", "Cora", "Curt", "Cyd", "Cass"];
    private static readonly string[] Drillers = ["Dov", "Dag", "Dido", "Dan"];

    /// <summary>Pages as they are seen by who has the ticket.</summary>
    public List<(string Who, string Address)> Views { get; } = [];

    public async Task PlayAsync()
    {
        await PeopleAsync();
        await SettingsAsync();
        await StockAsync();
        await TakeInAsync();
        await DeskAsync();
        await RackAsync();
        await shop.PlanAsync(Poly, new DateOnly(2026, 12, 31));
        await shop.PlanAsync(Manila);
        await shop.PlanAsync(WorkingShop.Kind(RopeMaterial.Polypropylene, "1 1/4 in"));
        await shop.PlanAsync(WorkingShop.Kind(RopeMaterial.Manila, "2 in"));
        await shop.PlanAsync(WorkingShop.Kind(RopeMaterial.Polyester, "1 1/4 in"));
        await PackedAsync();
        await OnSiteAsync();
        await CutAgainAsync();
        await DrillsAsync();
        await ChangedAsync();
        await CancelledAsync();
        await LargeAsync();
        await shop.PlanAsync(Poly, new DateOnly(2026, 12, 31));
        await LastHourAsync();
    }

    private async Task PeopleAsync()
    {
        var people = new Shop.People(shop.Database);
        await AddAsync(MuseumSite.Owner, Role.Owner);
        await AddAsync("Dee", Role.Desk);
        foreach (var cutter in Cutters)
            await AddAsync(cutter, Role.Cutter);
        foreach (var driller in Drillers)
            await AddAsync(driller, Role.Driller);
        var left = await AddAsync("Olga", Role.Driller);
        Done((await people.SwitchAsync(left, on: false, "Ada")).Problem);
        Done((await people.SetPinAsync(people.Find("Cai")!.Id, "7052", "Ada")).Problem);
        Done((await people.SetUnitsAsync(people.Find("Cleo")!.Id, millimetresFirst: true, "Cleo")).Problem);
        Done((await people.ChangeRoleAsync(people.Find("Cass")!.Id, Role.Desk, "Ada")).Problem);
        Done((await people.ChangeRoleAsync(people.Find("Cass")!.Id, Role.Cutter, "Ada")).Problem);
        var tablets = new Tablets(shop.Database);
        await tablets.EnrolAsync("Bench 1", "Ada");
        var old = await tablets.EnrolAsync("Bench 2", "Ada");
        Done((await tablets.RemoveAsync(old.Answer.Id, "Ada")).Problem);
        var keys = new ApiKeys(shop.Database);
        await keys.MakeAsync("stock sheet", KeyScope.Read, "Ada");
        var revoked = await keys.MakeAsync("old web form", KeyScope.TakeIn, "Ada");
        Done((await keys.RevokeAsync(revoked.Answer.Id, "Ada")).Problem);
        shop.Pass(10);

        async Task<long> AddAsync(string name, Role role)
        {
            var answer = await people.AddAsync(name, role, MuseumSite.Password, "Ada");
            Done(answer.Problem);
            shop.Pass(1);
            return answer.Id;
        }
    }

    private async Task SettingsAsync()
    {
        var database = shop.Database;
        Done(await new LabelAddressShelf(database).SetAsync("https://lantern-quay.example", "Ada"));
        Done(await new LetterheadShelf(database).SetAsync(new("Lantern Quay Rope", "1 Quay Road\nLantern Quay"), "Ada"));
        Done(await new BenchSettingsShelf(database).SetAsync(new("5/8 in", "1/8 in", "40", "11"), "Ada"));
        Done(await new SettingsShelf(database).SetCuttingAsync(new("3/16 in", "1/8 in", "2 in", "6 ft", "600 ft; 1200 ft"), "Ada"));
        Done(await new SettingsShelf(database).SetCuttingAsync(new("1/8 in", "1/8 in", "2 in", "6 ft", "600 ft"), "Ada"));
        var prices = new PriceBook(database);
        await prices.KeepAsync(Prices(new(2026, 1, 1), "2.00"), "Ada", shop.Key());
        await prices.KeepAsync(Prices(new(2026, 9, 1), "2.125"), "Ada", shop.Key());
        WorkingShop.Done(await prices.SetCurrencyAsync("$", "Ada"));
        shop.Pass(10);
    }

    private static PriceList Prices(DateOnly from, string foot) => new(
        0,
        from,
        [
            new(RopeMaterial.Polypropylene, WorkingShop.In("1 1/2 in"), Money.Parse(foot).OrThrow()),
            new(RopeMaterial.Polypropylene, WorkingShop.In("1 1/4 in"), Money.Parse("1.75").OrThrow()),
            new(RopeMaterial.Manila, WorkingShop.In("1 1/2 in"), Money.Parse("3.0625").OrThrow()),
        ],
        [new(WorkingShop.In("1 1/4 in"), Money.Parse("3").OrThrow()), new(WorkingShop.In("2 1/4 in"), Money.Parse("4.25").OrThrow())],
        Money.Parse("4.50").OrThrow(),
        Money.Parse("35").OrThrow(),
        Money.Parse("120").OrThrow(),
        Share.Parse("6.25%").OrThrow(),
        QuoteDays: 60);

    private async Task StockAsync()
    {
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-2611", "600 ft", "rack 1");
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-2604", "62 ft", "rack 1", "600 ft");
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-2604", "200 ft", "rack 1", "600 ft");
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-2620", "600 ft", "rack 2");
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-2620", "600 ft", "rack 2");
        await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/4 in", "P-2598", "200 ft", "rack 2");
        await shop.HangAsync(RopeMaterial.Manila, "1 1/2 in", "M-0417", "120 ft", "rack 3", "600 ft");
        var wrong = await shop.HangAsync(RopeMaterial.Manila, "1 1/2 in", "M-0433", "600 ft", "rack 3");
        await shop.HangAsync(RopeMaterial.Polyester, "1 1/4 in", "E-01", "36 ft", "rack 4");
        var chafed = await shop.HangAsync(RopeMaterial.Polypropylene, "1 1/2 in", "P-1999", "45 ft", "rack 9", "600 ft");
        WorkingShop.Done((await shop.Stock.AdjustAsync(wrong, WorkingShop.In("583 ft 6 in"), "counted", "Ada", shop.Key())).Problem);
        WorkingShop.Done((await shop.Stock.RetireAsync(chafed, "chafed", "Ada", shop.Key())).Problem);
        shop.Pass(10);
    }

    private async Task TakeInAsync()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "demo"), "*.json").Order(StringComparer.Ordinal))
            await shop.TakeInAsync(MuseumJobs.Read(await File.ReadAllTextAsync(file)));
        string[] texts =
        [
            MuseumJobs.Plain("LQ-2001", 5, "Lantern Quay, the steps", "2026-10-16"),
            MuseumJobs.Plain("LQ-2002", 3, "Lantern Quay, the gate", "2026-10-14", line: "P"),
            MuseumJobs.Lines("LQ-2003", "ABC", 3, "Lantern Quay, the terrace", "2026-10-23"),
            MuseumJobs.Lines("LQ-2004", "ABD", 6, "Lantern Quay, the bend", "2026-11-06", turnAt: "A4"),
            MuseumJobs.Lines("LQ-2005", "EF", 3, "Lantern Quay, the jetty", "2026-11-13"),
            MuseumJobs.Plain("LQ-2006", 6, "Lantern Quay, all of one colour", "2026-11-02", "manila", line: "M", more: "\"oneLot\": true, \"allowances\": { \"shrink\": \"10%\", \"perPiece\": \"1 in\" },"),
            MuseumJobs.Geometry,
            MuseumJobs.Warnings,
            MuseumJobs.Lines("LQ-2013", "KL", 3, "Lantern Quay, cut twice", "2026-10-26"),
            MuseumJobs.Marks,
            MuseumJobs.Plain("LQ-2020", 4, "Lantern Quay, no day", due: null, line: "N", sag: "0 in", clear: "1830 mm"),
            MuseumJobs.Large("LQ-2010"),
        ];
        foreach (var text in texts)
            await shop.TakeInAsync(MuseumJobs.Read(text));

        // By programs: as a sheet, and as a job file under a key of the request's own.
        using var program = new HttpClient { BaseAddress = site.Phone.BaseAddress };
        var (_, key) = await new ApiKeys(shop.Database).MakeAsync("web form", KeyScope.TakeIn, "Ada");
        program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        using (var sheet = new StringContent(MuseumJobs.Sheet, Encoding.UTF8, "text/csv"))
        using (var answer = await program.PostAsync(new Uri("/api/jobs/csv", UriKind.Relative), sheet))
            answer.EnsureSuccessStatusCode();
        using var file2 = new StringContent(MuseumJobs.Plain("LQ-2017", 3, "Lantern Quay, by a program", "2026-12-04", line: "Q"), Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
        file2.Headers.ContentType!.CharSet = null;
        program.DefaultRequestHeaders.Add("Idempotency-Key", "order-5521");
        using (var answer = await program.PostAsync(new Uri("/api/jobs", UriKind.Relative), file2))
            answer.EnsureSuccessStatusCode();
        shop.Pass(30);
    }

    private async Task DeskAsync()
    {
        // Drafts: open, with errors, put away, quoted and not answered.
        var form = DraftOf.Job(MuseumJobs.Read(MuseumJobs.Plain("LQ-2030", 4, "Lantern Quay, a draft", "2026-12-10")))!;
        await shop.DraftAsync(form);
        await shop.DraftAsync(form with { Number = "LQ-2031", Due = "soon", Rope = new() { Material = "hemp", Diameter = "thick" } });
        var away = await shop.DraftAsync(form with { Number = "LQ-2032" });
        await shop.Drafts.DropAsync(away, "Dee");
        var saved = await shop.DraftAsync(form with { Number = "LQ-2033", Customer = "Lantern Quay, typed twice" });
        await shop.Drafts.SaveAsync(saved, 1, form with { Number = "LQ-2033", Customer = "Lantern Quay, typed thrice", Unit = "mm" }, "Dee");
        var sent = await shop.DraftAsync(form with { Number = "LQ-2015", Customer = "Lantern Quay, quoted" });
        WorkingShop.Done((await shop.Quotes.MakeAsync(sent, 1, "Dee")).Problem);

        // Accepted quotes: one released, one only received. A job taken in without one, and one that was received and cancelled.
        await AcceptedAsync("LQ-2011", isReleased: true);
        await AcceptedAsync("LQ-2012", isReleased: false);
        await ReceivedAsync("LQ-2009");
        await ReceivedAsync("LQ-2018");
        await shop.Release.CancelAsync("LQ-2018", "paid by nobody", "Dee");
        shop.Pass(20);

        async Task AcceptedAsync(string number, bool isReleased)
        {
            var quote = await shop.Quotes.MakeAsync(await shop.DraftAsync(form with { Number = number, Customer = $"Lantern Quay, quote for {number}" }), 1, "Dee");
            WorkingShop.Done(quote.Problem);
            WorkingShop.Done((await shop.Quotes.AcceptAsync(long.Parse(quote.Value, CultureInfo.InvariantCulture), "Dee")).Problem);
            if (isReleased && await shop.Release.ReleaseAsync(number, "Dee") != ReleaseOutcome.Done)
                throw new InvalidOperationException($"{number} is not released.");
        }

        async Task ReceivedAsync(string number) => WorkingShop.Done(
            (await new DraftIntake(shop.Database, shop.Tables).TakeInAsync(await shop.DraftAsync(form with { Number = number, Customer = $"Lantern Quay, received {number}" }), 1, "Dee")).Problem);
    }

    /// <summary>The rack is another one after jobs were taken in: a spade for 1 1/4 in rope, a threaded Forstner for manila that was measured.</summary>
    private async Task RackAsync()
    {
        var rack = new RackOfBits(shop.Database, shop.Tables);
        WorkingShop.Done(await rack.HangAsync(new(BitKind.ThreadedForstner, WorkingShop.In("1 5/8 in")), "Ada"));
        if (!await rack.TakeOffAsync(new(BitKind.ThreadedForstner, WorkingShop.In("1 5/16 in")), "Ada"))
            throw new InvalidOperationException("The bit was not on the rack.");
        shop.Pass(15);
    }

    /// <summary>LQ-2002: cut, drilled and packed, every piece of it.</summary>
    private async Task PackedAsync()
    {
        foreach (var piece in shop.Job("LQ-2002").Pieces)
        {
            await shop.CutAsync(piece.Code, "Cai", CutStep.CoilAndTie, "1/4 in");
            await shop.DoneAsync(shop.Packing.PackAsync("LQ-2002", piece.Code, "Cai", shop.Key()));
        }
        foreach (var post in PostsOf("LQ-2002"))
            await shop.DrillAsync("LQ-2002", post, "Dov");
        var code = shop.Job("LQ-2002").Codes[0];
        await shop.DoneAsync(shop.Packing.UnpackAsync(code, "Cai", shop.Key()));
        await shop.DoneAsync(shop.Packing.PackAsync("LQ-2002", code, "Cai", shop.Key()));
        await new SitePacks(shop.Database, shop.Jobs).CodeOfAsync("LQ-2002", "Cai");
    }

    /// <summary>LQ-2001: packed and on site, with marks, reports, a photo, a piece cut again, a label and a site pack replaced.</summary>
    private async Task OnSiteAsync()
    {
        var codes = shop.Job("LQ-2001").Codes;
        foreach (var code in codes)
        {
            await shop.DoneAsync(shop.Cut.RecordCutAsync(code, "Cleo", shop.Key()));
            await shop.DoneAsync(shop.Packing.PackAsync("LQ-2001", code, "Cleo", shop.Key()));
        }
        foreach (var post in PostsOf("LQ-2001"))
            await shop.DrillAsync("LQ-2001", post, "Dag");
        var packs = new SitePacks(shop.Database, shop.Jobs);
        await packs.CodeOfAsync("LQ-2001", "Dee");
        await shop.DoneAsync(packs.ReplaceAsync("LQ-2001", "left on the bus", "Dee", shop.Key()));
        await shop.DoneAsync(new Labels(shop.Database).ReplaceAsync(codes[1], "the label is torn", "Dee", shop.Key()));
        codes = shop.Job("LQ-2001").Codes;

        await MarkAsync(codes[0], InstalledState.Installed);
        await MarkAsync(codes[1], InstalledState.Installed);
        await MarkAsync(codes[1], InstalledState.NotInstalled);
        await ReportAsync(codes[0], SiteReportKind.TooLong, "by a hand");
        await shop.DoneAsync(new SiteReports(shop.Database).CloseAsync(1, "cut on site", "Dee", shop.Key()));
        using (var form = new MultipartFormDataContent { { new StringContent("damaged"), "kind" }, { new StringContent("chafed <on> the kerb"), "note" }, { new StringContent(Guid.NewGuid().ToString("N")), "key" } })
        {
            form.Add(new ByteArrayContent(Photo()), "photo", "photo.jpg");
            using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/p/{codes[1].Plain}/report", UriKind.Relative)) { Content = form };
            request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
            using var answer = await site.Phone.SendAsync(request);
            answer.EnsureSuccessStatusCode();
        }
        await gone.KeepAsync("LQ-2001");
        await shop.DoneAsync(new SiteReports(shop.Database).ReCutAsync(2, "Dee", shop.Key()));
        await ReportAsync(codes[0], SiteReportKind.Missing, "the second of the two");
        await gone.FindAsync("LQ-2001");

        async Task MarkAsync(PieceCode code, InstalledState state)
        {
            var seen = state == InstalledState.Installed ? InstalledState.NotInstalled : InstalledState.Installed;
            var answer = await new InstalledMarks(shop.Database).MarkAsync(code, new(state, seen, At: null), "site", shop.Key());
            WorkingShop.Done(answer.Outcome == SiteOutcome.Done ? null : "The mark is refused.");
            shop.Pass(7);
        }

        async Task ReportAsync(PieceCode code, SiteReportKind kind, string note)
        {
            var answer = await new SiteReports(shop.Database).SendAsync(code, new(kind, note, Photo: null, At: null), "site", shop.Key());
            WorkingShop.Done(answer.Outcome == SiteOutcome.Done ? null : "The report is refused.");
            shop.Pass(7);
        }
    }

    /// <summary>LQ-2013: not taken and cut again, trimmed, put aside, undone, handed back.</summary>
    private async Task CutAgainAsync()
    {
        var codes = shop.Job("LQ-2013").Codes;
        await shop.CutAsync(codes[0], "Cai", CutStep.CoilAndTie);
        await shop.DoneAsync(shop.Cut.RejectAsync(codes[0], "a bad splice in the rope", "Cai", shop.Key()));
        await shop.CutAsync(codes[0], "Cleo", CutStep.CoilAndTie, "1/8 in");
        await shop.CutAsync(codes[1], "Cai", CutStep.Cut);
        await shop.DoneAsync(shop.Cut.MeasureAsync(codes[1], shop.Cut.Find(codes[1])!.Cut + WorkingShop.In("2 in"), putAside: false, "Cai", shop.Key()));
        await shop.DoneAsync(shop.Cut.MeasureAsync(codes[1], shop.Cut.Find(codes[1])!.Cut, putAside: false, "Cai", shop.Key()));
        await shop.DoneAsync(shop.Cut.TickAsync(codes[1], CutStep.Label, "Cai", shop.Key()));
        await shop.DoneAsync(shop.Cut.TickAsync(codes[1], CutStep.CoilAndTie, "Cai", shop.Key()));
        await shop.CutAsync(codes[2], "Cora", CutStep.Cut);
        await shop.DoneAsync(shop.Cut.MeasureAsync(codes[2], shop.Cut.Find(codes[2])!.Cut - WorkingShop.In("3 in"), putAside: true, "Cora", shop.Key()));
        await shop.CutAsync(codes[3], "Curt", CutStep.PullAndMark);
        await shop.DoneAsync(shop.Cut.HandBackAsync(codes[3], "Curt", shop.Key()));
        await shop.CutAsync(codes[3], "Cyd", CutStep.PullAndMark);
        await shop.DoneAsync(shop.Cut.TakeOverAsync(codes[3], "Ada", shop.Key()));
        await shop.DoneAsync(shop.Cut.HandBackAsync(codes[3], "Ada", shop.Key()));
        await shop.CutAsync(codes[3], "Curt", CutStep.CoilAndTie);
        await shop.DoneAsync(shop.Cut.UndoAsync(codes[3], "wrong ticket", "Curt", shop.Key()));
    }

    /// <summary>LQ-1042 and LQ-1043 at the drill bench: drilled, spoiled, ordered again, here again, undone.</summary>
    private async Task DrillsAsync()
    {
        var posts = PostsOf("LQ-1042");
        await shop.DrillAsync("LQ-1042", posts[0], "Dov");
        await shop.DrillAsync("LQ-1042", posts[1], "Dov");
        await shop.DoneAsync(shop.Drill.DamageAsync("LQ-1042", posts[1], "split", "Dov", shop.Key()));
        await shop.DrillAsync("LQ-1042", posts[2], "Dag", steps: 1);
        await shop.DoneAsync(shop.Drill.DamageAsync("LQ-1042", posts[2], "bored in the wrong place", "Dag", shop.Key()));
        await shop.DoneAsync(shop.Drill.NewPostAsync("LQ-1042", posts[2], "Dag", shop.Key()));
        await shop.DrillAsync("LQ-1042", posts[3], "Dag");
        await shop.DoneAsync(shop.Drill.UndoAsync("LQ-1042", posts[3], "tapped by mistake", "Dag", shop.Key()));
        await shop.DrillAsync("LQ-1043", PostsOf("LQ-1043")[1], "Dido", steps: 1);
        await shop.DoneAsync(shop.Drill.HandBackAsync("LQ-1043", PostsOf("LQ-1043")[1], "Dido", shop.Key()));
    }

    /// <summary>
    /// LQ-2004 changes after pieces are cut and posts are drilled: pieces kept, changed, added and gone; a drilled post changed; what was
    /// made hung up, scrapped and left. LQ-2011 changes by a quote. LQ-2020 changes in a figure that no piece has.
    /// </summary>
    private async Task ChangedAsync()
    {
        foreach (var (run, who) in new[] { ("A-top-1", "Cai"), ("A-low-2", "Cai"), ("B-top-1", "Cleo"), ("D-top-1", "Cora"), ("D-low-1", "Cora") })
            await shop.CutAsync(shop.Code("LQ-2004", run), who, CutStep.CoilAndTie);
        await shop.DoneAsync(shop.Packing.PackAsync("LQ-2004", shop.Code("LQ-2004", "D-low-1"), "Cora", shop.Key()));
        foreach (var post in new[] { "A2", "A4", "A5", "B2", "D1", "D3" })
            await shop.DrillAsync("LQ-2004", post, "Dan");
        await shop.DrillAsync("LQ-2004", "A6", "Dan", steps: 1);
        await shop.DoneAsync(shop.Drill.HandBackAsync("LQ-2004", "A6", "Dan", shop.Key()));
        var (scrapped, hung) = (shop.Code("LQ-2004", "D-top-1"), shop.Code("LQ-2004", "D-low-1"));
        await gone.KeepAsync("LQ-2004");
        await shop.ChangeAsync("LQ-2004", form =>
        {
            var a = form.Lines[0];
            var changed = a with
            {
                Posts = [.. a.Posts.Select(post => post.Mark == "A5" ? post with { Across = "6 1/4 in" } : post.Mark == "A6" ? post with { Height = "50 in" } : post)],
                Sections = [a.Sections[0] with { Width = "70 3/4 in" }, .. a.Sections.Skip(1)],
            };
            return DraftEdits.DuplicateLine(DraftEdits.RemoveLine(form with { Lines = [changed, .. form.Lines.Skip(1)] }, 2), 1) with { Due = "2026-11-09" };
        });
        await gone.FindAsync("LQ-2004");
        var shelf = new SurplusShelf(shop.Database);
        WorkingShop.Done((await shelf.HangUpAsync(hung, "Cora", shop.Key())).Problem);
        WorkingShop.Done((await shelf.ScrapAsync(scrapped, "Cora", shop.Key())).Problem);
        await gone.KeepAsync("LQ-2004");
        await shop.ChangeAsync("LQ-2004", form => DraftEdits.RemovePost(form, 1, 5));
        await gone.FindAsync("LQ-2004");

        await gone.KeepAsync("LQ-2011");
        var change = DraftEdits.AddPost(DraftOf.Job(shop.Job("LQ-2011").Takeoff.Job)!, 0, 3);
        var draft = await shop.DraftAsync(change);
        var quote = await shop.Quotes.MakeAsync(draft, 1, "Dee");
        WorkingShop.Done(quote.Problem);
        var changing = new JobChanging(shop.Database, shop.Tables);
        var token = changing.Compare(DraftReading.Of(change, shop.Tables.Current()).Takeoff!.Job)!.Token;
        WorkingShop.Done((await changing.AcceptAsync(draft, token, "Dee", long.Parse(quote.Value, CultureInfo.InvariantCulture))).Problem);
        await gone.FindAsync("LQ-2011");

        await gone.KeepAsync("LQ-2020");
        await shop.ChangeAsync("LQ-2020", form => form with { Lines = [form.Lines[0] with { Rows = [.. form.Lines[0].Rows.Select(row => row with { Sag = "1/4 in" })] }] });
        await gone.FindAsync("LQ-2020");
        // A change that is typed and not accepted.
        await shop.DraftAsync(DraftOf.Job(shop.Job("LQ-1042").Takeoff.Job)! with { Customer = "Lantern Quay, another customer", Due = "2026-12-12" });
    }

    /// <summary>LQ-2005 is cancelled with a piece cut, one packed, one cut off and not measured, and a post drilled.</summary>
    private async Task CancelledAsync()
    {
        var codes = shop.Job("LQ-2005").Codes;
        await shop.CutAsync(codes[0], "Cai", CutStep.CoilAndTie);
        await shop.CutAsync(codes[1], "Cai", CutStep.CoilAndTie);
        await shop.DoneAsync(shop.Packing.PackAsync("LQ-2005", codes[1], "Cai", shop.Key()));
        await shop.CutAsync(codes[2], "Cai", CutStep.Cut);
        await shop.DrillAsync("LQ-2005", "E1", "Dov");
        await shop.DrillAsync("LQ-2005", "E2", "Dov", steps: 1);
        if (await shop.Release.CancelAsync("LQ-2005", "the jetty is gone", "Ada") != ReleaseOutcome.Done)
            throw new InvalidOperationException("LQ-2005 is not cancelled.");
        WorkingShop.Done((await new SurplusShelf(shop.Database).HangUpAsync(codes[0], "Cai", shop.Key())).Problem);
        shop.Pass(10);
    }

    /// <summary>LQ-2010, two hundred posts: a tenth of them drilled.</summary>
    private async Task LargeAsync()
    {
        foreach (var (i, post) in PostsOf("LQ-2010").Take(20).Index())
            await shop.DrillAsync("LQ-2010", post, Drillers[i % 2]);
    }

    /// <summary>What is at the benches when the museum opens: each cutter at another step, each driller too.</summary>
    private async Task LastHourAsync()
    {
        var codes = shop.Job("LQ-2003").Codes;
        for (var i = 0; i < Cutters.Length; i++)
        {
            if (i == 0)
                await shop.DoneAsync(shop.Cut.TakeAsync(codes[0], Cutters[0], shop.Key()));
            else
                await shop.CutAsync(codes[i], Cutters[i], (CutStep)i, "1/16 in");
            Views.Add((Cutters[i], $"/cut/{codes[i].Plain}"));
        }
        var drills = PostsOf("LQ-2003");
        for (var i = 0; i < Drillers.Length; i++)
        {
            var work = shop.Drill.Find("LQ-2003", drills[i])!;
            await shop.DrillAsync("LQ-2003", drills[i], Drillers[i], i switch { 0 => 0, 1 => 1, 2 => (int)work.Drillings, _ => (int)work.Drillings + 1 });
            Views.Add((Drillers[i], $"/drill/LQ-2003/{Uri.EscapeDataString(drills[i])}"));
        }
        await LastPlansAsync();
    }

    /// <summary>The long walk is planned too, with coils to buy; some of it is cut from paper tickets, and a draft of a plan is left.</summary>
    private async Task LastPlansAsync()
    {
        await shop.PlanAsync(Poly);
        var large = shop.Job("LQ-2010").Pieces.Where(piece => piece.Place is not null).ToList();
        if (large.Count < 3 || new PlanShelf(shop.Database).ToBuy().Count == 0)
            throw new InvalidOperationException("The long walk is to have pieces on coils in stock and on coils to buy.");
        foreach (var piece in large.Take(3))
            await shop.DoneAsync(shop.Cut.RecordCutAsync(piece.Code, "Ada", shop.Key()));
        foreach (var piece in shop.Job("LQ-2007").Pieces.Where(piece => piece.Run is "G-top-1" or "G-mid-1" or "G-mid-2" or "G-mid-3"))
            await shop.DoneAsync(shop.Cut.RecordCutAsync(piece.Code, "Ada", shop.Key()));
        await shop.DraftPlanAsync(Poly);
    }

    private IReadOnlyList<string> PostsOf(string number) => [.. new JobNews(shop.Database).DrillTickets(number).Select(ticket => ticket.Post)];

    private static void Done(FieldProblem? problem) => WorkingShop.Done(problem?.Text);

    private static void Done(IReadOnlyList<FieldProblem> problems) => WorkingShop.Done(problems.Count == 0 ? null : problems[0].Text);

    private static byte[] Photo()
    {
        using var picture = new SKBitmap(160, 120);
        using (var canvas = new SKCanvas(picture))
        {
            canvas.Clear(SKColors.SteelBlue);
            using var paint = new SKPaint { Color = SKColors.BurlyWood, StrokeWidth = 14 };
            canvas.DrawLine(0, 20, 160, 100, paint);
        }
        using var data = picture.Encode(SKEncodedImageFormat.Jpeg, 70);
        return data.ToArray();
    }
}
