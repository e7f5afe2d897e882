using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

/// <summary>A running shop with a demo job, coils on the rack and an accepted plan, and what people do at its benches.</summary>
internal static class BenchShop
{
    public const string NorthWalk = "lq-1042-north-walk.json";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Takes the job in, hangs coils of its rope and accepts a plan.</summary>
    public static async Task<StoredJob> PlanDemoAsync(this RunningShop shop, string file = NorthWalk)
    {
        var job = await shop.TakeInDemoAsync(file);
        var stock = new CoilShelf(shop.Database);
        var desk = new CutPlanDesk(shop.Database);
        foreach (var rope in job.Takeoff.Pieces.Select(piece => piece.Rope).DistinctBy(rope => (rope.Material, rope.Diameter)))
        {
            var kind = new RopeKind(rope.Material, rope.Diameter, RopeKind.ThreeStrand);
            for (var i = 0; i < 2; i++)
                await stock.ReceiveAsync(new(kind, "P-2611", Length.Foot * 300, "rack 1"), "Ada", $"coil {kind} {i}", Cancel);
            var draft = await desk.DraftAsync(kind, dueBy: null, new PlanBudget(TimeSpan.FromSeconds(10), UseSolver: false), "Ada", cancel: Cancel);
            Assert.Empty((await desk.AcceptAsync(draft.PlanId, "Ada", Cancel)).Problems);
        }
        return shop.Jobs.Find(job.Number)!;
    }

    /// <summary>Taps the one large button that a bench page has.</summary>
    public static Task TouchAsync(this IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).TapAsync();

    /// <summary>Cuts the piece that the page shows, from its first step to its last.</summary>
    public static async Task CutAsync(this IPage page, bool natural = false)
    {
        await page.TouchAsync("Done: pull and mark");
        await page.TouchAsync(natural ? "Done: prepare the ends and cut cold" : "Done: prepare the ends and cut hot");
        await page.Locator(".measures button.main").TapAsync();
        await page.TouchAsync("Done: label, coil and tie");
        await Assertions.Expect(page.GetByText("is done: cut.")).ToBeVisibleAsync();
    }

    /// <summary>Drills the post that the page shows, step by step or, where it is like the last one, with the one tap that it takes.</summary>
    /// <returns>How many taps it took.</returns>
    public static async Task<int> DrillAsync(this IPage page, PostWork post)
    {
        var (steps, taps) = (post.Steps(), 0);
        if (await page.GetByText("just like your last one").CountAsync() > 0)
        {
            await TapAsync("This post is done, the rope fits: next one");
        }
        else
        {
            var last = steps[^1].ScrewHoles.Count > 0 ? steps.Count - 1 : steps.Count;
            foreach (var step in steps.Take(last))
                await TapAsync($"Drilled: {step.Last} of {steps[^1].Last}");
            await TapAsync(last < steps.Count ? "All screw holes are in and the rope fits: post done" : "The rope fits: post done");
        }
        await Assertions.Expect(page.GetByText($"Post {post.Post.Mark} of ")).ToContainTextAsync("is done: drilled.");
        return taps;

        Task TapAsync(string name)
        {
            taps++;
            return page.TouchAsync(name);
        }
    }
}
