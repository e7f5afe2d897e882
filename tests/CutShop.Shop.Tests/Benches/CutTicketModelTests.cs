using CsCheck;

namespace CutShop.Shop.Tests.Benches;

/// <summary>Random work at the bench against a small model in memory: the states, and where every inch of rope is.</summary>
public sealed class CutTicketModelTests
{
    private const int Pieces = 4;

    private static readonly string[] People = ["Cai", "Dov"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private enum Deed
    {
        Next,
        Take,
        Tick,
        MeasureGood,
        MeasureShort,
        MeasureLong,
        PutAside,
        HandBack,
        TakeOver,
        UndoStep,
        MeasureAgain,
        Undo,
        Reject,
        Pack,
        Unpack,
        Plan,
        TimeGoesBy,
    }

    private static readonly Gen<(Deed Deed, int Piece, int Who)[]> Days = Gen.Select(
        Gen.Frequency(
            (20, Gen.Const(Deed.Tick)),
            (6, Gen.Const(Deed.MeasureGood)),
            (4, Gen.Const(Deed.Next)),
            (2, Gen.Const(Deed.HandBack)),
            (2, Gen.Const(Deed.MeasureLong)),
            (1, Gen.Const(Deed.PutAside)),
            (3, Gen.Const(Deed.UndoStep)),
            (2, Gen.Const(Deed.MeasureAgain)),
            (2, Gen.Const(Deed.Pack)),
            (4, Gen.Const(Deed.Unpack)),
            (10, Gen.Enum<Deed>())),
        Gen.Int[0, Pieces - 1],
        Gen.Int[0, People.Length - 1]).Array[60, 120];

    [Fact]
    public async Task Whatever_is_done_in_whatever_order_the_states_and_every_inch_of_rope_are_as_the_model_says()
    {
        var done = new HashSet<Deed>();
        await Days.SampleAsync(
            async deeds =>
            {
                using var shop = new PlannedShop();
                await shop.HangAsync("25 ft");
                await shop.HangAsync("20 ft", "L2");
                var codes = new List<PieceCode>();
                for (var i = 0; i < Pieces; i++)
                    codes.Add(await shop.TakeInAsync($"LQ-{i + 1}", $"{60 + 12 * i}"));
                await shop.PlanAsync();
                var model = new ModelShop(codes.ToDictionary(code => code, code => shop.Cut.Find(code)!.Cut));
                foreach (var (deed, piece, who) in deeds)
                {
                    var code = model.Likely(deed is Deed.Unpack, deed is Deed.Pack or Deed.Undo or Deed.MeasureAgain, deed is Deed.Tick or Deed.MeasureGood or Deed.MeasureLong or Deed.PutAside or Deed.HandBack or Deed.UndoStep, People[who]) ?? codes[piece];
                    if (await DoAsync(shop, model, deed, code, People[who]))
                        done.Add(deed);
                    Compare(shop, model);
                }
            },
            iter: 30,
            threads: 1);
        // The sample is worth something only where every deed succeeded in it.
        Assert.Equal(Enum.GetValues<Deed>().Except([Deed.MeasureShort]).Order(), done.Order());
    }

    private static async Task<bool> DoAsync(PlannedShop shop, ModelShop model, Deed deed, PieceCode code, string who)
    {
        var key = shop.Key();
        var cut = model.Tickets[code].Cut;
        switch (deed)
        {
            case Deed.Next:
                var given = await shop.Cut.NextAsync(who, key, Cancel);
                if (given.IsDone)
                    model.Given(PieceCode.Parse(given.Outcome).OrThrow(), who);
                else
                    Assert.Null(model.Has(who));
                return given.IsDone;
            case Deed.Take:
                return Same(model.CanTake(code, who), await shop.Cut.TakeAsync(code, who, key, Cancel), mayAlsoBeRefused: true, () => model.Given(code, who));
            case Deed.Tick:
                var step = shop.Cut.Find(code)!.Next ?? CutStep.Mark;
                return Same(model.CanTick(code, who), await shop.Cut.TickAsync(code, step, who, key, Cancel), false, () => model.Tick(code));
            case Deed.MeasureGood:
                return Same(model.CanMeasure(code, who), await shop.Cut.MeasureAsync(code, cut + Length.FromNanometres(1_234_567), false, who, key, Cancel), true,
                    () => model.Measure(code, cut + Length.FromNanometres(1_234_567)));
            case Deed.MeasureShort:
                Assert.False((await shop.Cut.MeasureAsync(code, cut - Length.Inch, isSure: false, who, key, Cancel)).IsDone);
                return false;
            case Deed.MeasureLong:
                return Same(model.CanMeasure(code, who), await shop.Cut.MeasureAsync(code, cut + Length.Inch, false, who, key, Cancel), true, () => model.TooLong(code, cut + Length.Inch));
            case Deed.PutAside:
                return Same(model.CanMeasure(code, who), await shop.Cut.MeasureAsync(code, cut - Length.Inch, isSure: true, who, key, Cancel), true,
                    () => model.Refuse(code, cut - Length.Inch));
            case Deed.HandBack:
                return Same(model.CanHandBack(code), await shop.Cut.HandBackAsync(code, who, key, Cancel), false, () => model.Free(code));
            case Deed.TakeOver:
                return Same(model.CanTakeOver(code, who), await shop.Cut.TakeOverAsync(code, who, key, Cancel), false, () => model.Tickets[code].Who = who);
            case Deed.UndoStep:
                var last = shop.Cut.Find(code)!.LastDone ?? CutStep.Mark;
                return Same(model.CanUndoStep(code, who), await shop.Cut.UndoStepAsync(code, last, who, key, Cancel), false, () => model.UndoStep(code));
            case Deed.MeasureAgain:
                return Same(model.CanMeasureAgain(code, who), await shop.Cut.MeasureAgainAsync(code, who, key, Cancel), false, () => model.MeasureAgain(code, who));
            case Deed.Undo:
                return Same(model.IsCut(code), await shop.Cut.UndoAsync(code, "a slip", who, key, Cancel), true, () => model.Undo(code));
            case Deed.Reject:
                return Same(model.IsCut(code), await shop.Cut.RejectAsync(code, "wrong length", isSound: true, who, key, Cancel), false, () => model.Reject(code));
            case Deed.Pack:
                return Same(model.Tickets[code].State == "cut", await shop.Packing.PackAsync(shop.Cut.Find(code)!.Job, code, who, key, Cancel), false, () => model.Tickets[code].State = "packed");
            case Deed.Unpack:
                return Same(model.Tickets[code].State == "packed", await shop.Packing.UnpackAsync(code, who, key, Cancel), false, () => model.Tickets[code].State = "cut");
            case Deed.Plan:
                return (await shop.PlanAsync()).IsDone;
            case Deed.TimeGoesBy:
                shop.Shop.Time.Advance(TimeSpan.FromMinutes(1));
                return true;
            default:
                throw new ArgumentOutOfRangeException(nameof(deed), deed, message: null);
        }
    }

    /// <summary>What the model allows must be done, but for what depends on the rope that is left; what it forbids must not be.</summary>
    private static bool Same(bool allowed, BenchAnswer answer, bool mayAlsoBeRefused, Action then)
    {
        if (answer.IsDone)
            Assert.True(allowed, "The bench did what the model forbids.");
        else
            Assert.True(!allowed || mayAlsoBeRefused, $"The model allows it, the bench says: {answer.Problem}");
        if (answer.IsDone)
            then();
        return answer.IsDone;
    }

    private static void Compare(PlannedShop shop, ModelShop model)
    {
        foreach (var (code, ticket) in model.Tickets)
        {
            var work = shop.Cut.Find(code)!;
            Assert.Equal((ticket.State, ticket.Steps, ticket.Who), (work.State, (int)work.Steps, work.ClaimedBy));
            Assert.Equal((ticket.Measured, ticket.Longest), (work.Measured, work.Longest));
            // Whoever has it can hand it back, or undo what keeps them from it.
            Assert.True(ticket.Who is null || model.CanHandBack(code) || model.CanUndoStep(code, ticket.Who));
        }
        Assert.Empty(shop.Missing());
        Assert.Empty(shop.WrongCounts());
        Assert.Equal(model.RopeInPieces, shop.Shop.Database.Read(session => Length.FromNanometres(
            session.Value<long>("SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE kind = 'piece'"))));
        // Rope that became an offcut hangs as that offcut, or is part of its coil again.
        Assert.Equal(0, shop.Shop.Database.Read(session => session.Value<long>(
            """
            SELECT count(*) FROM coils WHERE parent_id IS NOT NULL
              AND (SELECT sum(nm) FROM rope_uses WHERE to_coil_id = coils.id)
                  <> whole_nm - (SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE coil_id = coils.id AND kind = 'correction')
            """)));
    }
}
