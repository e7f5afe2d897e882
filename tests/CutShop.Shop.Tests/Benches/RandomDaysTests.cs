namespace CutShop.Shop.Tests.Benches;

/// <summary>
/// Days at the cut bench and at packing on which people slip: they tap twice, out of turn and at another's piece, send a tap again whose answer was
/// lost, type wrong figures, scan wrong labels, take over, hand back, and lose coils. Whatever they did, the books are whole, each piece
/// can be finished by whoever has it, and what is finished can be taken back until it is packed.
/// </summary>
public sealed class RandomDaysTests
{
    private const int Days = 120;
    private const int SlipsADay = 40;

    private static readonly string[] People = ["Cai", "Dot", "Ada"];
    private static readonly string[] Lengths = ["77 1/2", "70", "77 7/16", "78", "92", "1012 1/4", "10", "78 1/2", "0"];
    private static readonly string[] Cuts = ["77 1/2", "101 1/2", "65 1/2", "77 1/2", "89 1/2"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Whatever_slips_the_books_are_whole_and_everybody_has_a_way_on(int part)
    {
        for (var day = part; day < Days; day += 4)
            await DayAsync(new Random(day), day);
    }

    private static async Task DayAsync(Random random, int day)
    {
        using var shop = new PlannedShop();
        await shop.HangAsync("60 ft");
        await shop.HangAsync("40 ft", "L2");
        var codes = new List<PieceCode>();
        foreach (var (cut, i) in Cuts.Select((cut, i) => (cut, i)))
            codes.Add(await shop.TakeInAsync($"LQ-{i + 1}", cut));
        Assert.True((await shop.PlanAsync()).IsDone);

        var lastKey = shop.Key();
        for (var slip = 0; slip < SlipsADay; slip++)
        {
            // Now and then a tap comes again with the key of the one before, as after a lost answer.
            lastKey = random.Next(6) == 0 ? lastKey : shop.Key();
            await SlipAsync(shop, random, codes, lastKey);
        }

        Assert.Equal([], shop.Missing());
        foreach (var who in People)
            await WayOnAsync(shop, who, day);
        foreach (var code in codes)
            await TakenBackAsync(shop, code);
        Assert.Equal([], shop.Missing());
        Assert.Empty(shop.Shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
    }

    private static async Task SlipAsync(PlannedShop shop, Random random, List<PieceCode> codes, string key)
    {
        var (cut, who) = (shop.Cut, People[random.Next(People.Length)]);
        // Most taps are at the piece that the person has, some at another.
        var code = random.Next(4) > 0 && cut.Of(who) is { } mine ? mine.Code : codes[random.Next(codes.Count)];
        var length = PlannedShop.Inches(Lengths[random.Next(Lengths.Length)]);
        _ = random.Next(18) switch
        {
            0 or 1 => await cut.NextAsync(who, key, Cancel),
            2 => await cut.TakeAsync(code, who, key, Cancel),
            3 or 4 or 5 or 6 => await cut.TickAsync(code, (CutStep)random.Next(1, 5), who, key, Cancel),
            7 or 8 or 9 => await cut.MeasureAsync(code, random.Next(2) == 0 ? cut.Find(code)!.Cut : length, isSure: random.Next(3) == 0, who, key, Cancel),
            10 => await cut.UndoStepAsync(code, (CutStep)random.Next(1, 5), who, key, Cancel),
            11 => await cut.HandBackAsync(code, who, key, Cancel),
            12 => await cut.TakeOverAsync(code, who, key, Cancel),
            13 => await cut.ScanAsync(code, random.Next(3) == 0 ? codes[random.Next(codes.Count)].ToString() : $"K000{random.Next(4)}", who, key, Cancel),
            14 => random.Next(3) switch
            {
                0 => await cut.CoilEndsAsync(code, length, who, key, Cancel),
                1 => await cut.BadStretchAsync(code, length, who, key, Cancel),
                _ => await cut.CoilNotFoundAsync(code, who, key, Cancel),
            },
            15 => await cut.RejectAsync(code, "frayed", isSound: random.Next(2) == 0, who, key, Cancel),
            16 => await cut.UndoAsync(code, "tapped by mistake", who, key, Cancel),
            _ => random.Next(2) == 0
                ? await shop.Packing.PackAsync(cut.Find(code)!.Job, code, who, key, Cancel)
                : await shop.Packing.UnpackAsync(code, who, key, Cancel),
        };
    }

    /// <summary>Somebody who has a piece gets on: by doing what is to be done next, or else by undoing what was done and handing it back.</summary>
    private static async Task WayOnAsync(PlannedShop shop, string who, int day)
    {
        while (shop.Cut.Of(who) is { } work)
        {
            var answer = work.Next == CutStep.Measure
                ? await shop.Cut.MeasureAsync(work.Code, work.Cut, isSure: true, who, shop.Key(), Cancel)
                : await shop.Cut.TickAsync(work.Code, work.Next!.Value, who, shop.Key(), Cancel);
            if (answer.IsDone)
                continue;
            while (shop.Cut.Find(work.Code)!.LastDone is { } last)
            {
                answer = await shop.Cut.UndoStepAsync(work.Code, last, who, shop.Key(), Cancel);
                Assert.True(answer.IsDone, $"Day {day}: {who} cannot undo {last} of {work.Code}: {answer.Problem}");
            }
            answer = await shop.Cut.HandBackAsync(work.Code, who, shop.Key(), Cancel);
            Assert.True(answer.IsDone, $"Day {day}: {who} cannot hand back {work.Code}: {answer.Problem}");
        }
    }

    /// <summary>A finished piece that is not packed can be measured again, and its rope is on its coil or on the books as before.</summary>
    private static async Task TakenBackAsync(PlannedShop shop, PieceCode code)
    {
        if (shop.Cut.Find(code) is not { State: TicketStates.Cut } work)
            return;
        PlannedShop.AssertDone(await shop.Cut.MeasureAgainAsync(code, "Ada", shop.Key(), Cancel));
        Assert.Null(shop.Cut.Find(code)!.Measured);
        PlannedShop.AssertDone(await shop.Cut.MeasureAsync(code, work.Cut, isSure: true, "Ada", shop.Key(), Cancel));
        PlannedShop.AssertDone(await shop.Cut.TickAsync(code, CutStep.LabelAndTie, "Ada", shop.Key(), Cancel));
    }
}
