using CutShop.CutPlan;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Site;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;

namespace CutShop.Cli;

/// <summary>
/// What was done at Lantern Quay before the demo starts, so that each station has work that can start at once: cut plans are accepted, the
/// beach ramp is drilled, cut, packed and begun on site, and two pieces of the north walk wait to be packed.
/// </summary>
internal static class DemoWork
{
    private const string Who = "demo";
    private const string Ramp = "LQ-1043";
    private const string Walk = "LQ-1042";
    private const int CutOfTheWalk = 2;

    /// <summary>Does it once, however often it is called: what somebody changed since stays as it is.</summary>
    public static async Task DoAsync(ShopDatabase database, CancellationToken cancel)
    {
        await PlanAsync(database, cancel);
        var jobs = new JobShelf(database);
        await CutAsync(database, jobs.Find(Ramp)!, int.MaxValue, cancel);
        await CutAsync(database, jobs.Find(Walk)!, CutOfTheWalk, cancel);
        await DrillAsync(database, jobs.Find(Ramp)!, cancel);
        var packing = new PackingBench(database);
        foreach (var piece in jobs.Find(Ramp)!.Pieces)
            await packing.PackAsync(Ramp, piece.Code, Who, $"demo pack {piece.Run} of {Ramp}", cancel);
        var tap = new InstalledTap(InstalledState.Installed, InstalledState.NotInstalled, At: null);
        await new InstalledMarks(database).MarkAsync(jobs.Find(Ramp)!.Pieces[0].Code, tap, Who, "demo", cancel);
    }

    private static async Task PlanAsync(ShopDatabase database, CancellationToken cancel)
    {
        var (shelf, desk) = (new PlanShelf(database), new CutPlanDesk(database));
        if (shelf.List(most: 1).Count > 0)
            return;
        var coils = new CoilShelf(database).InHand();
        foreach (var rope in shelf.Waiting().Where(rope => rope.InStock(coils).IsPositive))
        {
            var plan = await desk.DraftAsync(rope.Kind, dueBy: null, PlanBudget.Default, Who, cancel: cancel);
            if (plan.IsDone)
                await desk.AcceptAsync(plan.PlanId, Who, cancel);
        }
    }

    private static async Task CutAsync(ShopDatabase database, StoredJob job, int most, CancellationToken cancel)
    {
        var bench = new CutBench(database);
        foreach (var piece in job.Pieces.Take(most))
            await bench.RecordCutAsync(piece.Code, Who, $"demo cut {piece.Run} of {job.Number}", cancel);
    }

    private static async Task DrillAsync(ShopDatabase database, StoredJob job, CancellationToken cancel)
    {
        var bench = new DrillBench(database);
        foreach (var post in job.Takeoff.Job.Lines.SelectMany(line => line.Posts).Select(post => (job.Number, post.Mark)))
        {
            var key = $"demo drill {post.Mark} of {post.Number}";
            await bench.TakeAsync(post, Who, key, cancel);
            while (bench.Find(post) is { IsFitDue: false, Next: { } next })
            {
                if (!(await bench.TickAsync(post, next, Who, $"{key}, {next}", cancel)).IsDone)
                    return;
            }
            await bench.FitsAsync(post, Who, $"{key}, done", cancel);
        }
    }
}
