using System.Globalization;
using CutShop.Testing.Jobs;

namespace CutShop.Testing.Trust;

/// <summary>Every public operation of the shop that writes, with how it is prepared and done.</summary>
internal static class WriteOperations
{
    private const string Key = "the key";
    private const string Reason = "a reason";
    private static readonly SignInPlace Somewhere = new("an address", IsKnown: false);

    public static IReadOnlyList<WriteOperation> All { get; } =
    [
        .. OfTheCutBench(),
        .. OfTheDrillBench(),
        .. OfStockAndPlans(),
        .. OfTheDesk(),
        .. OfPeople(),
        .. OfTheSite(),
        .. OfSettings(),
    ];

    private static Task Nothing(FaultShop shop) => Task.CompletedTask;

    private static IEnumerable<WriteOperation> OfTheCutBench() =>
    [
        new("CutBench.NextAsync", Nothing, async shop => (await shop.Cut.NextAsync("Cai", Key)).IsDone),
        new("CutBench.TakeAsync", Nothing, async shop => (await shop.Cut.TakeAsync(shop.Code, "Cai", Key)).IsDone),
        new("CutBench.TickAsync", shop => shop.CutUpToAsync(CutStep.Mark), async shop => (await shop.Cut.TickAsync(shop.Code, CutStep.Mark, "Cai", Key)).IsDone),
        new("CutBench.TickAsync", shop => shop.CutUpToAsync(CutStep.LabelAndTie), async shop => (await shop.Cut.TickAsync(shop.Code, CutStep.LabelAndTie, "Cai", Key)).IsDone),
        new("CutBench.MeasureAsync", shop => shop.CutUpToAsync(CutStep.Measure), shop => MeasureAsync(shop, "77 1/2", isSure: false)),
        new("CutBench.MeasureAsync", shop => shop.CutUpToAsync(CutStep.Measure), shop => MeasureAsync(shop, "80", isSure: false)),
        new("CutBench.MeasureAsync", shop => shop.CutUpToAsync(CutStep.Measure), shop => MeasureAsync(shop, "70", isSure: true)),
        new("CutBench.HandBackAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.HandBackAsync(shop.Code, "Cai", Key)).IsDone),
        new("CutBench.TakeOverAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.TakeOverAsync(shop.Code, "Ada", Key)).IsDone),
        new("CutBench.UndoAsync", shop => shop.FinishCutAsync(), async shop => (await shop.Cut.UndoAsync(shop.Code, Reason, "Cai", Key)).IsDone),
        new("CutBench.RejectAsync", shop => shop.FinishCutAsync(), async shop => (await shop.Cut.RejectAsync(shop.Code, Reason, isSound: true, "Cai", Key)).IsDone),
        new("CutBench.RejectAsync", shop => shop.FinishCutAsync(), async shop => (await shop.Cut.RejectAsync(shop.Code, Reason, isSound: false, "Cai", Key)).IsDone),
        new("CutBench.UndoStepAsync", shop => shop.CutUpToAsync(CutStep.Measure), async shop => (await shop.Cut.UndoStepAsync(shop.Code, CutStep.Cut, "Cai", Key)).IsDone),
        new("CutBench.UndoStepAsync", shop => shop.CutUpToAsync(CutStep.LabelAndTie), async shop => (await shop.Cut.UndoStepAsync(shop.Code, CutStep.Measure, "Cai", Key)).IsDone),
        new("CutBench.MeasureAgainAsync", shop => shop.FinishCutAsync(), async shop => (await shop.Cut.MeasureAgainAsync(shop.Code, "Cai", Key)).IsDone),
        new("CutBench.ScanAsync", shop => shop.CutUpToAsync(CutStep.Mark), async shop => (await shop.Cut.ScanAsync(shop.Code, "K0001", "Cai", Key)).IsDone),
        new("CutBench.ScanAsync", shop => shop.CutUpToAsync(CutStep.LabelAndTie), async shop => (await shop.Cut.ScanAsync(shop.Code, shop.Code.ToString(), "Cai", Key)).IsDone),
        new("CutBench.CoilEndsAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.CoilEndsAsync(shop.Code, FaultShop.Inches("30"), "Cai", Key)).IsDone),
        new("CutBench.BadStretchAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.BadStretchAsync(shop.Code, FaultShop.Inches("30"), "Cai", Key)).IsDone),
        new("CutBench.BadStretchAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.BadStretchAsync(shop.Code, FaultShop.Inches("560"), "Cai", Key)).IsDone),
        new("CutBench.CoilNotFoundAsync", shop => shop.CutUpToAsync(CutStep.Cut), async shop => (await shop.Cut.CoilNotFoundAsync(shop.Code, "Cai", Key)).IsDone),
        new(
            "CutBench.TakeCoilBackAsync",
            async shop =>
            {
                await shop.CutUpToAsync(CutStep.Cut);
                await shop.Cut.CoilEndsAsync(shop.Code, FaultShop.Inches("30"), "Cai", shop.Key());
            },
            async shop => (await shop.Cut.TakeCoilBackAsync("K0001", "Cai", Key)).IsDone),
        new(
            "CutBench.TakeCoilBackAsync",
            async shop =>
            {
                await shop.CutUpToAsync(CutStep.Cut);
                await shop.Cut.BadStretchAsync(shop.Code, FaultShop.Inches("30"), "Cai", shop.Key());
            },
            async shop => (await shop.Cut.TakeCoilBackAsync("K0001", "Cai", Key)).IsDone),
        new(
            "CutBench.TakeCoilBackAsync",
            async shop =>
            {
                await shop.CutUpToAsync(CutStep.Cut);
                await shop.Cut.CoilNotFoundAsync(shop.Code, "Cai", shop.Key());
            },
            async shop => (await shop.Cut.TakeCoilBackAsync("K0001", "Cai", Key)).IsDone),
        new("CutBench.RecordCutAsync", Nothing, async shop => (await shop.Cut.RecordCutAsync(shop.Code, "Cai", Key)).IsDone),
        new("PackingBench.PackAsync", shop => shop.FinishCutAsync(), async shop => (await shop.Packing.PackAsync("LQ-1", shop.Code, "Eva", Key)).IsDone),
        new(
            "PackingBench.UnpackAsync",
            async shop =>
            {
                await shop.FinishCutAsync();
                await shop.Packing.PackAsync("LQ-1", shop.Code, "Eva", shop.Key());
            },
            async shop => (await shop.Packing.UnpackAsync(shop.Code, "Eva", Key)).IsDone),
        new("PackingBench.PutPostAsync", shop => shop.DrillAsync(finish: true), async shop => (await shop.Packing.PutPostAsync("LQ-1", "A1", isIn: true, "Eva", Key)).IsDone),
        new(
            "PackingBench.PutPostAsync",
            async shop =>
            {
                await shop.DrillAsync(finish: true);
                await shop.Packing.PutPostAsync("LQ-1", "A1", isIn: true, "Eva", shop.Key());
            },
            async shop => (await shop.Packing.PutPostAsync("LQ-1", "A1", isIn: false, "Eva", Key)).IsDone),
        new("PackingBench.PutScrewsAsync", Nothing, async shop => (await shop.Packing.PutScrewsAsync("LQ-1", ScrewsOf(shop), isIn: true, "Eva", Key)).IsDone),
        new(
            "PackingBench.PutScrewsAsync",
            shop => shop.Packing.PutScrewsAsync("LQ-1", ScrewsOf(shop), isIn: true, "Eva", shop.Key()),
            async shop => (await shop.Packing.PutScrewsAsync("LQ-1", ScrewsOf(shop), isIn: false, "Eva", Key)).IsDone),
        new(
            "PackingBench.CloseAsync",
            async shop =>
            {
                await shop.FinishCutAsync();
                await shop.Packing.PackAsync("LQ-1", shop.Code, "Eva", shop.Key());
            },
            async shop => (await shop.Packing.CloseAsync("LQ-1", asItIs: true, "Eva", Key)).IsDone),
        new("PackingBench.BeginParcelAsync", PackedAsync, async shop => (await shop.Packing.BeginParcelAsync("LQ-1", 1, "Eva", Key)).IsDone),
        new(
            "PackingBench.TakeParcelBackAsync",
            async shop =>
            {
                await PackedAsync(shop);
                await shop.Packing.BeginParcelAsync("LQ-1", 1, "Eva", shop.Key());
            },
            async shop => (await shop.Packing.TakeParcelBackAsync("LQ-1", 2, "Eva", Key)).IsDone),
        new("ReSettings.ChooseAsync", Nothing, async shop => (await new ReSettings(shop.Database).ChooseAsync("LQ-1", "2099-05-01", "Ada", Key)).IsDone),
        new(
            "ReSettings.DoneAsync",
            shop => new ReSettings(shop.Database).ChooseAsync("LQ-1", "2099-05-01", "Ada", shop.Key()),
            async shop => (await new ReSettings(shop.Database).DoneAsync("LQ-1", "Ada", Key)).IsDone),
        new(
            "PackingBench.UnpackAsync",
            async shop =>
            {
                await shop.FinishCutAsync();
                await shop.Packing.PackAsync("LQ-1", shop.Code, "Eva", shop.Key());
                await shop.Packing.CloseAsync("LQ-1", asItIs: true, "Eva", shop.Key());
            },
            async shop => (await shop.Packing.UnpackAsync(shop.Code, "Eva", Key)).IsDone),
    ];

    private static async Task PackedAsync(FaultShop shop)
    {
        await shop.FinishCutAsync();
        await shop.Packing.PackAsync("LQ-1", shop.Code, "Eva", shop.Key());
    }

    private static string ScrewsOf(FaultShop shop) => shop.Packing.Find("LQ-1")!.Screws[0].Kind;

    private static async Task<bool> MeasureAsync(FaultShop shop, string inches, bool isSure) =>
        (await shop.Cut.MeasureAsync(shop.Code, FaultShop.Inches(inches), isSure, "Cai", Key)).IsDone;

    private static IEnumerable<WriteOperation> OfTheDrillBench() =>
    [
        new("DrillBench.NextAsync", Nothing, async shop => (await shop.Drill.NextAsync("Dov", Key)).IsDone),
        new("DrillBench.TakeAsync", Nothing, async shop => (await shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new("DrillBench.TickAsync", shop => shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", shop.Key()), async shop => (await shop.Drill.TickAsync(("LQ-1", "A1"), 1, "Dov", Key)).IsDone),
        new("DrillBench.TickAsync", shop => shop.DrillAsync(finish: false), async shop => (await shop.Drill.TickAsync(("LQ-1", "A1"), 2, "Dov", Key)).IsDone),
        new("DrillBench.FitsAsync", shop => shop.DrillAsync(finish: false), async shop => (await shop.Drill.FitsAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new("DrillBench.UntickAsync", shop => shop.DrillAsync(finish: false), async shop => (await shop.Drill.UntickAsync(("LQ-1", "A1"), 1, "Dov", Key)).IsDone),
        new(
            "DrillBench.HandBackUndrilledAsync",
            shop => shop.DrillAsync(finish: false),
            async shop => (await shop.Drill.HandBackUndrilledAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new(
            "DrillBench.FitsLikeLastAsync",
            async shop =>
            {
                await shop.DrillAsync(finish: true);
                await shop.Drill.TakeAsync(("LQ-1", "A2"), "Dov", shop.Key());
            },
            async shop => (await shop.Drill.FitsLikeLastAsync(("LQ-1", "A2"), "Dov", Key)).IsDone),
        new(
            "DrillBench.UndoDamageAsync",
            async shop =>
            {
                await shop.DrillAsync(finish: false);
                await shop.Drill.DamageAsync(("LQ-1", "A1"), Reason, "Dov", shop.Key());
            },
            async shop => (await shop.Drill.UndoDamageAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new("DrillBench.DamageAsync", shop => shop.DrillAsync(finish: true), async shop => (await shop.Drill.DamageAsync(("LQ-1", "A1"), Reason, "Dov", Key)).IsDone),
        new(
            "DrillBench.NewPostAsync",
            async shop =>
            {
                await shop.DrillAsync(finish: false);
                await shop.Drill.DamageAsync(("LQ-1", "A1"), Reason, "Dov", shop.Key());
            },
            async shop => (await shop.Drill.NewPostAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new("DrillBench.HandBackAsync", shop => shop.DrillAsync(finish: false), async shop => (await shop.Drill.HandBackAsync(("LQ-1", "A1"), "Dov", Key)).IsDone),
        new("DrillBench.TakeOverAsync", shop => shop.DrillAsync(finish: false), async shop => (await shop.Drill.TakeOverAsync(("LQ-1", "A1"), "Ada", Key)).IsDone),
        new("DrillBench.UndoAsync", shop => shop.DrillAsync(finish: true), async shop => (await shop.Drill.UndoAsync(("LQ-1", "A1"), Reason, "Dov", Key)).IsDone),
    ];

    private static IEnumerable<WriteOperation> OfStockAndPlans() =>
    [
        new("CoilShelf.ReceiveAsync", Nothing, async shop => (await shop.Stock.ReceiveAsync(new(FaultShop.Rope, "L2", Length.Foot * 60, "rack 2"), "Ada", Key)).IsDone),
        new("CoilShelf.ReceiveAsync", Nothing, async shop => (await shop.Stock.ReceiveAsync(new(FaultShop.Rope, "L2", Length.Foot * 60, "rack 2", WhenFull: Length.Foot * 600), "Ada", Key)).IsDone),
        new("CoilShelf.AdjustAsync", Nothing, async shop => (await shop.Stock.AdjustAsync("K0001", Length.Foot * 49, Reason, "Ada", Key)).IsDone),
        new(
            "CoilShelf.FoundAsync",
            shop => shop.Stock.RetireAsync("K0001", Reason, "Ada", shop.Key()),
            async shop => (await shop.Stock.FoundAsync("K0001", "Ada", Key)).IsDone),
        new("CoilShelf.RetireAsync", Nothing, async shop => (await shop.Stock.RetireAsync("K0001", Reason, "Ada", Key)).IsDone),
        new("WettingShelf.PreshrinkAsync", shop => shop.HangManilaAsync(), async shop => (await shop.Wetting.PreshrinkAsync("K0002", Length.Foot * 49, Length.Foot * 44, "Ada", Key)).IsDone),
        new(
            "WettingShelf.UndoPreshrinkAsync",
            async shop =>
            {
                await shop.HangManilaAsync();
                await shop.Wetting.PreshrinkAsync("K0002", Length.Foot * 50, Length.Foot * 44, "Ada", shop.Key());
            },
            async shop => (await shop.Wetting.UndoPreshrinkAsync("K0002", "Ada", Key)).IsDone),
        new("WettingShelf.KeepSampleAsync", shop => shop.HangManilaAsync(), async shop => (await shop.Wetting.KeepSampleAsync("K0002", Length.Foot * 10, Length.Foot * 9, "Ada", Key)).IsDone),
        new(
            "WettingShelf.TakeSampleBackAsync",
            async shop =>
            {
                await shop.HangManilaAsync();
                await shop.Wetting.KeepSampleAsync("K0002", Length.Foot * 10, Length.Foot * 9, "Ada", shop.Key());
            },
            async shop => (await shop.Wetting.TakeSampleBackAsync("K0002", 1, "Ada", Key)).IsDone),
        new("SurplusShelf.HangUpAsync", shop => shop.SurplusAsync(), async shop => (await new SurplusShelf(shop.Database).HangUpAsync(shop.Code, "Ada", Key)).IsDone),
        new("SurplusShelf.ScrapAsync", shop => shop.SurplusAsync(), async shop => (await new SurplusShelf(shop.Database).ScrapAsync(shop.Code, "Ada", Key)).IsDone),
        new("CutPlanDesk.DraftAsync", Nothing, async shop => (await shop.Plans.DraftAsync(FaultShop.Rope, dueBy: null, new PlanBudget(TimeSpan.FromSeconds(10), UseSolver: false), "Ada")).IsDone),
        new("CutPlanDesk.MendAsync", Nothing, async shop => (await shop.Plans.MendAsync(1, new PlanBudget(TimeSpan.FromSeconds(10), UseSolver: false), "Ada")).IsDone),
        new("CutPlanDesk.AcceptAsync", async shop => shop.Kept = Text(await shop.DraftPlanAsync()), async shop => (await shop.Plans.AcceptAsync(shop.KeptId, "Ada")).IsDone),
    ];

    private static IEnumerable<WriteOperation> OfTheDesk() =>
    [
        new("JobIntake.TakeInAsync", Nothing, async shop => await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-9"), "Ada") == IntakeOutcome.TakenIn),
        new("JobIntake.TakeInAnsweredAsync", Nothing, async shop => (await new JobIntake(shop.Database, ShopTables.Standard).TakeInAnsweredAsync(SmallJobs.OnePiece("LQ-9"), "Ada")).Outcome == IntakeOutcome.TakenIn),
        new("JobIntake.TakeInOnceAsync", Nothing, async shop => (await new JobIntake(shop.Database, ShopTables.Standard).TakeInOnceAsync(SmallJobs.OnePiece("LQ-9"), "Ada", Key, "a hash")).Outcome == IntakeOutcome.TakenIn),
        new("JobRelease.ReleaseAsync", Nothing, async shop => await new JobRelease(shop.Database).ReleaseAsync("LQ-3", "Ada") == ReleaseOutcome.Done),
        new("JobRelease.CancelAsync", shop => shop.FinishCutAsync(), async shop => await new JobRelease(shop.Database).CancelAsync("LQ-1", Reason, "Ada") == ReleaseOutcome.Done),
        new("JobRelease.TakeBackAsync", shop => new JobRelease(shop.Database).ReleaseAsync("LQ-3", "Ada"), async shop => await new JobRelease(shop.Database).TakeBackAsync("LQ-3", "Ada") == ReleaseOutcome.Done),
        new(
            "JobRelease.TakeUpAgainAsync",
            async shop =>
            {
                await shop.FinishCutAsync();
                await new JobRelease(shop.Database).CancelAsync("LQ-1", Reason, "Ada");
            },
            async shop => await new JobRelease(shop.Database).TakeUpAgainAsync("LQ-1", "Ada") == ReleaseOutcome.Done),
        new("DraftIntake.AcceptChangeAsync", PrepareChangeAsync, async shop => (await new DraftIntake(shop.Database, shop.Tables).AcceptChangeAsync(ChangeDraft(shop), shop.Kept, "Ada")).IsDone),
        new("JobChanging.AcceptRulesAsync", PrepareRulesAsync, async shop => (await new JobChanging(shop.Database, shop.Tables).AcceptRulesAsync("LQ-3", shop.Kept, "Ada")).IsDone),
        new("DraftShelf.StartAsync", Nothing, async shop => await shop.Drafts.StartAsync(SmallJobs.FourPosts("LQ-8"), "Ada", Key) > 0),
        new("DraftShelf.SaveAsync", Nothing, async shop => (await shop.Drafts.SaveAsync(shop.Draft, 1, SmallJobs.FourPosts("LQ-8"), "Ada"))!.Conflict is null),
        new("DraftShelf.DropAsync", Nothing, shop => shop.Drafts.DropAsync(shop.Draft, "Ada")),
        new("DraftShelf.ReopenAsync", shop => shop.Drafts.DropAsync(shop.Draft, "Ada"), shop => shop.Drafts.ReopenAsync(shop.Draft, "Ada")),
        new("DraftIntake.TakeInAsync", Nothing, async shop => (await new DraftIntake(shop.Database, shop.Tables).TakeInAsync(shop.Draft, 1, "Ada")).Problem is null),
        new("QuoteDesk.MakeAsync", Nothing, async shop => (await new QuoteDesk(shop.Database, shop.Tables).MakeAsync(shop.Draft, 1, "Ada")).Problem is null),
        new(
            "QuoteDesk.AcceptAsync",
            async shop => shop.Kept = (await new QuoteDesk(shop.Database, shop.Tables).MakeAsync(shop.Draft, 1, "Ada")).Value,
            async shop => (await new QuoteDesk(shop.Database, shop.Tables).AcceptAsync(shop.KeptId, "Ada")).Problem is null),
        new("PriceBook.KeepAsync", Nothing, async shop => await new PriceBook(shop.Database).KeepAsync(FaultShop.Prices(new(2021, 1, 1)), "Ada", Key) > 0),
        new("PriceBook.SetCurrencyAsync", Nothing, async shop => await new PriceBook(shop.Database).SetCurrencyAsync("€", "Ada") is null),
    ];

    private static async Task PrepareChangeAsync(FaultShop shop)
    {
        var form = DraftEdits.AddPost(SmallJobs.FourPosts("LQ-3"), 0, 3) with { Changes = "LQ-3" };
        await shop.Drafts.StartAsync(form, "Ada", "the change");
        shop.Kept = new JobChanging(shop.Database, shop.Tables).Compare(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job)!.Token;
    }

    private static async Task PrepareRulesAsync(FaultShop shop)
    {
        await OtherRules.MakeAsync(shop.Database, "LQ-3");
        shop.Kept = new JobChanging(shop.Database, shop.Tables).CompareWithRules("LQ-3")!.Token;
    }

    private static long ChangeDraft(FaultShop shop) => shop.Drafts.Open().Max(draft => draft.Id);

    private static IEnumerable<WriteOperation> OfPeople() =>
    [
        new("PeopleShelf.AddAsync", Nothing, async shop => (await shop.People.AddAsync("Eva", Role.Desk, FaultShop.Password, "Ada")).IsDone),
        new("PeopleShelf.ChangeRoleAsync", Nothing, async shop => (await shop.People.ChangeRoleAsync(shop.Cai, Role.Driller, "Ada")).IsDone),
        new("PeopleShelf.SetPasswordAsync", Nothing, async shop => (await shop.People.SetPasswordAsync(shop.Cai, FaultShop.Password, "Ada")).IsDone),
        new("PeopleShelf.SetPinAsync", Nothing, async shop => (await shop.People.SetPinAsync(shop.Cai, "8163", "Ada")).IsDone),
        new("PeopleShelf.SwitchAsync", Nothing, async shop => (await shop.People.SwitchAsync(shop.Cai, on: false, "Ada")).IsDone),
        new("PeopleShelf.SetUnitsAsync", Nothing, async shop => (await shop.People.SetUnitsAsync(shop.Cai, millimetresFirst: true, "Cai")).IsDone),
        new("SignIn.WithPasswordAsync", Nothing, async shop => (await new SignIn(shop.Database).WithPasswordAsync("Ada", FaultShop.Password, Somewhere)).Outcome == SignInOutcome.Right),
        new("SignIn.WithPinAsync", Nothing, async shop => (await new SignIn(shop.Database).WithPinAsync("Cai", FaultShop.Pin, Somewhere)).Outcome == SignInOutcome.Right),
        new("FirstOwner.DrawLinkAsync", shop => shop.SendEverybodyAwayAsync(), async shop => await new FirstOwner(shop.Database).DrawLinkAsync() is not null),
        new(
            "FirstOwner.MakeAsync",
            async shop =>
            {
                await shop.SendEverybodyAwayAsync();
                shop.Kept = (await new FirstOwner(shop.Database).DrawLinkAsync())!;
            },
            async shop => (await new FirstOwner(shop.Database).MakeAsync(shop.Kept, "Ada", FaultShop.Password)).IsDone),
        new("Sessions.EndAsync", Nothing, async shop => { await new Sessions(shop.Database).EndAsync(Sessions.Draw()); return true; }),
        new("Tablets.EnrolAsync", Nothing, async shop => (await new Tablets(shop.Database).EnrolAsync("Bench 2", "Ada")).Answer.IsDone),
        new(
            "Tablets.RemoveAsync",
            async shop => shop.Kept = Text((await new Tablets(shop.Database).EnrolAsync("Bench 2", "Ada")).Answer.Id),
            async shop => (await new Tablets(shop.Database).RemoveAsync(shop.KeptId, "Ada")).IsDone),
        new("ApiKeyShelf.MakeAsync", Nothing, async shop => (await new ApiKeyShelf(shop.Database).MakeAsync("a program", KeyScope.Read, "Ada")).Answer.IsDone),
        new(
            "ApiKeyShelf.RevokeAsync",
            async shop => shop.Kept = Text((await new ApiKeyShelf(shop.Database).MakeAsync("a program", KeyScope.Read, "Ada")).Answer.Id),
            async shop => (await new ApiKeyShelf(shop.Database).RevokeAsync(shop.KeptId, "Ada")).IsDone),
        new(
            "ApiKeyShelf.UseAsync",
            async shop => shop.Kept = (await new ApiKeyShelf(shop.Database).MakeAsync("a program", KeyScope.Read, "Ada")).Key,
            async shop => await new ApiKeyShelf(shop.Database).UseAsync(shop.Kept) is not null),
    ];

    private static IEnumerable<WriteOperation> OfTheSite() =>
    [
        new("InstalledMarks.MarkAsync", Nothing, async shop => (await new InstalledMarks(shop.Database).MarkAsync(
            shop.Code, new(InstalledState.Installed, InstalledState.NotInstalled, At: null, IsSure: true), "site", Key)).Outcome == SiteOutcome.Done),
        new("BoreTicks.TickAsync", StandingAsync, async shop => (await new BoreTicks(shop.Database).TickAsync(
            PieceCode.Parse(shop.Kept).OrThrow(), new(new("A1", "top", 1), Wanted: true, Seen: false, At: null), "site", Key)).Outcome == SiteOutcome.Done),
        new("MeasuredSpans.KeepAsync", Nothing, async shop => await new MeasuredSpans(shop.Database).KeepAsync(
            shop.Code, Measured, at: null, "site", Key) == SiteOutcome.Done),
        new("LabelShelf.ReplaceAsync", Nothing, async shop => (await new LabelShelf(shop.Database).ReplaceAsync(shop.Code, Reason, "Ada", Key)).IsDone),
        new("SitePackShelf.CodeOfAsync", Nothing, async shop => await PacksOf(shop).CodeOfAsync("LQ-1", "Ada") is not null),
        new(
            "SitePackShelf.ReplaceAsync",
            async shop => await PacksOf(shop).CodeOfAsync("LQ-1", "Ada"),
            async shop => (await PacksOf(shop).ReplaceAsync("LQ-1", Reason, "Ada", Key)).IsDone),
        new("SiteReports.SendAsync", Nothing, async shop => (await ReportAsync(shop)).Outcome == SiteOutcome.Done),
        new("SiteReports.ReCutAsync", ReportCutAsync, async shop => (await new SiteReports(shop.Database).ReCutAsync(shop.KeptId, "Ada", Key)).IsDone),
        new("SiteReports.ReCutAsync", MeasuredReportAsync, async shop => (await new SiteReports(shop.Database).ReCutAsync(shop.KeptId, "Ada", Key)).IsDone),
        new("SiteReports.CloseAsync", ReportCutAsync, async shop => (await new SiteReports(shop.Database).CloseAsync(shop.KeptId, Reason, "Ada", Key)).IsDone),
    ];

    private static Dictionary<int, Length> Measured => new() { [0] = Length.Inch * 80 };

    private static async Task StandingAsync(FaultShop shop)
    {
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.StandingArc("LQ-77"), "Ada");
        shop.Kept = new JobShelf(shop.Database).Find("LQ-77")!.Codes[0].Plain;
    }

    private static SitePackShelf PacksOf(FaultShop shop) => new(shop.Database);

    private static Task<SiteReportAnswer> ReportAsync(FaultShop shop) =>
        new SiteReports(shop.Database).SendAsync(shop.Code, new(SiteReportKind.TooShort, "by a hand", Photo: null, At: null), "site", "the report");

    private static async Task MeasuredReportAsync(FaultShop shop)
    {
        await ReportCutAsync(shop);
        await new MeasuredSpans(shop.Database).KeepAsync(shop.Code, Measured, at: null, "site", "the spans");
    }

    private static async Task ReportCutAsync(FaultShop shop)
    {
        await shop.FinishCutAsync();
        shop.Kept = Text((await ReportAsync(shop)).Id);
    }

    private static IEnumerable<WriteOperation> OfSettings() =>
    [
        new("LabelAddressShelf.SetAsync", Nothing, async shop => (await new LabelAddressShelf(shop.Database).SetAsync("https://shop.example", "Ada")).Count == 0),
        new("ShopTablesShelf.HangBitAsync", Nothing, async shop => await shop.Tables.HangBitAsync(new(BitKind.Spade, FaultShop.Inches("2 7/8")), "Ada") is null),
        new("ShopTablesShelf.TakeBitOffAsync", Nothing, shop => shop.Tables.TakeBitOffAsync(ShopTables.Standard.Rack.Bits[0], "Ada")),
        new("BenchSettingsShelf.SetAsync", Nothing, async shop => (await new BenchSettingsShelf(shop.Database).SetAsync(new("1/2 in", "1/8 in", "30", "8", "15"), "Ada")).Count == 0),
        new("SendingSettingsShelf.SetAsync", Nothing, async shop => (await new SendingSettingsShelf(shop.Database).SetAsync(new("50", "yes", "4"), "Ada")).Count == 0),
        new("LetterheadShelf.SetAsync", Nothing, async shop => (await new LetterheadShelf(shop.Database).SetAsync(new("Lantern Quay Rope", "1 Quay"), "Ada")).Count == 0),
        new("PullLimit.SetAsync", Nothing, async shop => (await new PullLimit(shop.Database).SetAsync("150", "Ada")).Count == 0),
        new("CuttingSettingsShelf.SetCuttingAsync", Nothing, async shop => (await new CuttingSettingsShelf(shop.Database).SetCuttingAsync(new("1/8 in", "1/8 in", "2 in", "8 ft", "600 ft"), "Ada")).Count == 0),
    ];

    private static string Text(long id) => id.ToString(CultureInfo.InvariantCulture);
}
