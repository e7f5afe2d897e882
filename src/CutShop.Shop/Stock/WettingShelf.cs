using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Stock;

/// <summary>
/// Natural rope and water: coils that are soaked and dried before anything is cut from them, and what the rope of a lot lost, measured
/// before it was soaked and once it was dry again. New rope is soaked and dried slack before it is made fast: The Ashley Book of Knots, no. 118.
/// </summary>
public sealed class WettingShelf(ShopDatabase database)
{
    /// <summary>
    /// A new coil was soaked and dried: it is preshrunk from now on, and what it lost is a line of its ledger. Pieces that were to be cut
    /// from it wait for a new plan. Safe to send twice with the same key.
    /// </summary>
    /// <param name="mark">The mark of a coil of new natural rope in stock.</param>
    /// <param name="before">Its length before it was soaked; where its books say otherwise, they are corrected.</param>
    /// <param name="after">Its length once it was dry again.</param>
    /// <param name="who">Who measured it.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> PreshrinkAsync(string mark, Length before, Length after, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => CoilShelf.Once(session, requestKey, () => Preshrink(session, mark, before, after, who)), cancel);

    /// <summary>
    /// Takes back that a coil was soaked and dried: it is new again and has its length from before. Refused where its rope was cut or counted
    /// since. Safe to send twice with the same key.
    /// </summary>
    /// <param name="mark">The coil's mark.</param>
    /// <param name="who">Who takes it back.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> UndoPreshrinkAsync(string mark, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => CoilShelf.Once(session, requestKey, () => UndoPreshrink(session, mark, who)), cancel);

    /// <summary>Keeps what a sample of a coil's rope lost. The sample's own rope is not taken off the coil. Safe to send twice with the same key.</summary>
    /// <param name="mark">The mark of a coil of new natural rope, in stock or used up.</param>
    /// <param name="before">The sample's length before it was soaked.</param>
    /// <param name="after">Its length once it was dry again.</param>
    /// <param name="who">Who measured it.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> KeepSampleAsync(string mark, Length before, Length after, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => CoilShelf.Once(session, requestKey, () => KeepSample(session, mark, before, after, who)), cancel);

    /// <summary>Takes a sample back that was entered wrongly; it no longer counts. Safe to send twice with the same key.</summary>
    /// <param name="mark">The mark of the coil that the sample is of.</param>
    /// <param name="id">The sample.</param>
    /// <param name="who">Who takes it back.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> TakeSampleBackAsync(string mark, long id, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => CoilShelf.Once(session, requestKey, () => TakeSampleBack(session, mark, id, who)), cancel);

    /// <summary>What was measured of the rope and lot of a coil, the oldest first.</summary>
    public LotLoss Of(StockCoil coil)
    {
        ArgumentNullException.ThrowIfNull(coil);
        return new(coil.Lot, database.Read(session => session.All<Shrinking>(
            $"""
            SELECT shrinkings.id, mark AS coil, before_nm AS before, after_nm AS after, measured_at, use_id IS NULL AS is_sample
            FROM shrinkings JOIN coils ON coils.id = coil_id
            WHERE taken_back_at IS NULL AND lot = @Lot AND {IsLaidAs} ORDER BY shrinkings.id
            """,
            new { coil.Lot, coil.Kind.MaterialName, coil.Kind.Diameter, coil.Kind.Construction, coil.Kind.Colour })));
    }

    /// <summary>
    /// What new rope of a kind loses, as this shop measured it: of the lot that was measured last, one of which a coil is in stock before
    /// one of which none is. Null where the rope does not shrink or was not measured.
    /// </summary>
    /// <param name="rope">The rope as a job has it.</param>
    public LossOffer? Offer(Rope rope) => database.Read(session => Offer(session, rope));

    internal static LossOffer? Offer(ShopSession session, Rope rope) => rope.IsNatural
        ? session.FirstOrDefault<LossOffer>(
            $"""
            SELECT lot, count(*) AS samples, CAST(sum(before_nm) AS bigint) AS before, CAST(sum(after_nm) AS bigint) AS after
            FROM shrinkings JOIN coils ON coils.id = coil_id WHERE taken_back_at IS NULL AND {IsLaidAs}
            GROUP BY lot ORDER BY max(CASE WHEN state = '{CoilStates.InStock}' THEN 1 ELSE 0 END) DESC, max(shrinkings.id) DESC
            """,
            RopeKind.Of(rope))
        : null;

    /// <summary>New or preshrunk, it is the same rope.</summary>
    private const string IsLaidAs =
        "coils.material = @MaterialName AND coils.diameter_nm = @Diameter AND coils.construction = @Construction AND coils.colour = @Colour";

    private static StockAnswer Preshrink(ShopSession session, string mark, Length before, Length after, string who)
    {
        if (CoilShelf.Find(session, mark) is not { State: CoilStates.InStock } coil)
            return CoilShelf.Refused("CoilMark", mark);
        if ((IsNew(coil) ?? Measured(before, after, coil)) is { } problem)
            return problem;
        if (IsAtTheBench(session, coil))
            return CoilShelf.Refused("CoilInUse", mark);
        if (before != coil.Left)
            CoilShelf.Correct(session, coil, before, Reason.Because(HistoryCause.MeasuredBeforeSoaking), who);
        var useId = RopeLedger.Add(session, coil.Id, RopeLedger.Shrunk, before - after);
        Keep(session, coil, before, after, useId);
        Become(session, coil with { Left = before }, isPreshrunk: true, after, HistoryCodes.CoilPreshrunk, who);
        return CoilShelf.Done(mark);
    }

    private static StockAnswer UndoPreshrink(ShopSession session, string mark, string who)
    {
        if (CoilShelf.Find(session, mark) is not { State: CoilStates.InStock, Kind.IsPreshrunk: true } coil)
            return CoilShelf.Refused("PreshrunkCoilMark", mark);
        if (Last(session, coil) is not { } last)
            return CoilShelf.Refused("CamePreshrunk", mark);
        if (IsAtTheBench(session, coil) || session.Value<bool>(
            "SELECT EXISTS (SELECT 1 FROM rope_uses WHERE coil_id = @CoilId AND id > @UseId GROUP BY ticket_id HAVING sum(nm) <> 0)",
            new { CoilId = coil.Id, last.UseId }))
            return CoilShelf.Refused("UsedSincePreshrunk", mark);
        RopeLedger.Add(session, coil.Id, RopeLedger.Shrunk, last.After - last.Before);
        session.Execute("UPDATE shrinkings SET taken_back_at = @Now WHERE id = @Id", new { session.Now, last.Id });
        Become(session, coil, isPreshrunk: false, coil.Left + last.Before - last.After, HistoryCodes.PreshrinkingUndone, who);
        return CoilShelf.Done(mark);
    }

    private static StockAnswer KeepSample(ShopSession session, string mark, Length before, Length after, string who)
    {
        if (CoilShelf.Find(session, mark) is not { State: CoilStates.InStock or CoilStates.UsedUp } coil)
            return CoilShelf.Refused("CoilMark", mark);
        if ((IsNew(coil) ?? Measured(before, after, coil)) is { } problem)
            return problem;
        Keep(session, coil, before, after, useId: null);
        session.Record("coil", coil.Id, who, HistoryCodes.SampleMeasured, details: new { beforeNm = before.Nanometres, afterNm = after.Nanometres });
        return CoilShelf.Done(mark);
    }

    private static StockAnswer TakeSampleBack(ShopSession session, string mark, long id, string who)
    {
        if (session.FirstOrDefault<ShrinkingRow>(
            """
            SELECT shrinkings.id, coil_id, before_nm AS before, after_nm AS after, CAST(0 AS bigint) AS use_id FROM shrinkings JOIN coils ON coils.id = coil_id
            WHERE shrinkings.id = @id AND mark = @mark AND use_id IS NULL AND taken_back_at IS NULL
            """,
            new { id, mark }) is not { } sample)
            return CoilShelf.Refused("Sample", id);
        session.Execute("UPDATE shrinkings SET taken_back_at = @Now WHERE id = @id", new { session.Now, id });
        session.Record("coil", sample.CoilId, who, HistoryCodes.SampleTakenBack, details: new { beforeNm = sample.Before.Nanometres, afterNm = sample.After.Nanometres });
        return CoilShelf.Done(mark);
    }

    private static StockAnswer? IsNew(StockCoil coil) =>
        !coil.Kind.IsNatural ? CoilShelf.Refused("DoesNotShrink", coil.Mark, coil.Kind.MaterialName)
        : coil.Kind.IsPreshrunk ? CoilShelf.Refused("PreshrunkAlready", coil.Mark)
        : null;

    private static StockAnswer? Measured(Length before, Length after, StockCoil coil) =>
        !before.IsPositive || before > coil.Whole ? CoilShelf.Refused("BeforeSoaking", before, coil.Whole)
        : !after.IsPositive || after >= before || Share.Lost(before, after).ToTenths().Millionths >= Wetting.Most.Millionths
            ? CoilShelf.Refused("AfterDrying", after, before, Wetting.Most)
        : null;

    private static void Keep(ShopSession session, StockCoil coil, Length before, Length after, long? useId) => session.Insert(
        "INSERT INTO shrinkings (coil_id, before_nm, after_nm, measured_at, use_id) VALUES (@Id, @before, @after, @Now, @useId)",
        new { coil.Id, before, after, session.Now, useId });

    private static bool IsAtTheBench(ShopSession session, StockCoil coil) => session.Value<bool>(
        $"SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE state = '{TicketStates.AtTheBench}' AND cut_coil_id = @Id AND measured_nm IS NULL)", new { coil.Id });

    /// <summary>What made a coil preshrunk, or null where it came so or is an offcut of one that was.</summary>
    private static ShrinkingRow? Last(ShopSession session, StockCoil coil) => session.FirstOrDefault<ShrinkingRow>(
        "SELECT id, coil_id, before_nm AS before, after_nm AS after, use_id FROM shrinkings WHERE coil_id = @Id AND use_id IS NOT NULL AND taken_back_at IS NULL ORDER BY id DESC LIMIT 1",
        new { coil.Id });

    /// <summary>Its rope is of the other kind now, so no piece that waits keeps its place on it.</summary>
    private static void Become(ShopSession session, StockCoil coil, bool isPreshrunk, Length left, HistoryCode what, string who)
    {
        session.Execute("UPDATE coils SET preshrunk = @isPreshrunk WHERE id = @Id", new { isPreshrunk, coil.Id });
        CoilShelf.Take(session, coil, left, who, what);
        session.Execute(
            $"UPDATE cut_tickets SET plan_coil_id = NULL WHERE state = '{TicketStates.Waiting}' AND plan_coil_id IN (SELECT id FROM plan_coils WHERE coil_id = @Id)",
            new { coil.Id });
    }

    private sealed record ShrinkingRow(long Id, long CoilId, Length Before, Length After, long UseId);
}

/// <summary>Rope that was measured before it was soaked and once it was dry again.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Coil">The mark of its coil.</param>
/// <param name="Before">Its length before.</param>
/// <param name="After">Its length after, shorter.</param>
/// <param name="MeasuredAt">When that was entered, UTC.</param>
/// <param name="IsSample">True for a sample; false where the whole coil was soaked.</param>
public sealed record Shrinking(long Id, string Coil, Length Before, Length After, DateTimeOffset MeasuredAt, bool IsSample)
{
    /// <summary>The share that it lost, to a tenth of a percent.</summary>
    public Share Loses => Share.Lost(Before, After).ToTenths();
}

/// <summary>What was measured of one lot of a rope.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Measured">The samples and soaked coils, the oldest first.</param>
public sealed record LotLoss(string Lot, IReadOnlyList<Shrinking> Measured)
{
    /// <summary>What the lot loses by all of them together, or null before any was measured.</summary>
    public LossOffer? Together => Measured.Count == 0
        ? null
        : new(Lot, Measured.Count, Sum(shrinking => shrinking.Before), Sum(shrinking => shrinking.After));

    private Length Sum(Func<Shrinking, Length> of) => Measured.Aggregate(Length.Zero, (sum, shrinking) => sum + of(shrinking));
}

/// <summary>What a lot of rope loses, by all that was measured of it.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Samples">How many measurements.</param>
/// <param name="Before">Their lengths before they were soaked, together.</param>
/// <param name="After">Their lengths once they were dry again, together.</param>
public sealed record LossOffer(string Lot, long Samples, Length Before, Length After)
{
    /// <summary>The share of its length that the rope loses, to a tenth of a percent: <c>loses</c> of a job file's wetting.</summary>
    public Share Loses => Share.Lost(Before, After).ToTenths();

    /// <summary>The same as a share that is added to what is left, to a tenth of a percent: <c>shrink</c> of a job file.</summary>
    public Share Adds => Share.FromMillionths((int)((Int128)1_000_000 * (Before - After).Nanometres / After.Nanometres)).ToTenths();
}
