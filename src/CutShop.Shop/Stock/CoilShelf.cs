using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Stock;

/// <summary>The coils and offcuts on the rack: what comes in, what is corrected, what goes.</summary>
public sealed class CoilShelf(ShopDatabase database)
{
    private const int LongestWord = 60;

    // The sentences in StockReplies name these two limits.
    private static readonly Length LongestCoil = Length.Metre * 10_000;
    private static readonly Length ThickestRope = Length.FromInches(12);

    /// <summary>All coils in stock, by rope and then by mark.</summary>
    public IReadOnlyList<StockCoil> InHand() => database.Read(session => Select(session, $"WHERE coils.state = '{CoilStates.InStock}'", values: null));

    /// <summary>A coil by its mark, in stock or not; null where there is none.</summary>
    public StockCoil? Find(string mark) => database.Read(session => Find(session, mark));

    /// <summary>Hangs up a coil that came in. Safe to send twice with the same key.</summary>
    /// <param name="coil">The coil.</param>
    /// <param name="who">Who received it.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> ReceiveAsync(CoilReceived coil, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(coil);
        return database.WriteAsync(session => Once(session, requestKey, () => Receive(session, coil, who)), cancel);
    }

    /// <summary>Corrects what is left of a coil, with a reason.</summary>
    public Task<StockAnswer> AdjustAsync(string mark, Length left, string reason, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => Once(session, requestKey, () => Adjust(session, mark, left, reason, who)), cancel);

    /// <summary>Takes a coil off the rack, with a reason.</summary>
    public Task<StockAnswer> RetireAsync(string mark, string reason, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => Once(session, requestKey, () => Retire(session, mark, reason, who)), cancel);

    /// <summary>Hangs a coil that was off the rack there again, with what its books say is left of it. Safe to send twice with the same key.</summary>
    /// <param name="mark">The mark of a retired coil.</param>
    /// <param name="who">Who found it.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> FoundAsync(string mark, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(session => Once(session, requestKey, () => Found(session, mark, who)), cancel);

    /// <summary>The constructions and colours that coils and pieces have had, to be offered where one is typed.</summary>
    public RopeWordsUsed WordsUsed() => database.Read(session => new RopeWordsUsed(
        session.All<string>($"SELECT construction FROM coils UNION SELECT construction FROM pieces UNION SELECT '{RopeKind.ThreeStrand}' ORDER BY 1"),
        session.All<string>("SELECT colour FROM coils WHERE colour <> '' UNION SELECT colour FROM pieces WHERE colour <> '' ORDER BY 1")));

    internal static IReadOnlyList<StockCoil> OfKind(ShopSession session, RopeKind kind) =>
        Select(session, $"WHERE coils.state = '{CoilStates.InStock}' AND {SqlTypes.IsRope("coils")}", kind);

    internal static StockCoil? ById(ShopSession session, long id) =>
        Select(session, "WHERE coils.id = @id", new { id }).SingleOrDefault();

    /// <summary>What is left of a coil beside the rope of pieces that are at the bench.</summary>
    internal static Length Free(ShopSession session, long id) => session.Value<Length>("SELECT free_nm FROM coils_free WHERE id = @id", new { id });

    /// <summary>Takes rope off a coil and says so in the history; a coil with nothing left is used up.</summary>
    internal static void Take(ShopSession session, StockCoil coil, Length left, string who, HistoryCode what, Reason reason = default, object? details = null) =>
        Take(session, coil.Id, coil.Left, left, who, what, reason, details);

    /// <summary>The same, of a coil of which no more is known than what was left of it.</summary>
    internal static void Take(
        ShopSession session, long id, Length before, Length left, string who, HistoryCode what, Reason reason = default, object? details = null)
    {
        var state = left == Length.Zero ? CoilStates.UsedUp : CoilStates.InStock;
        session.Execute("UPDATE coils SET left_nm = @left, state = @state WHERE id = @id", new { left, state, id });
        session.Record("coil", id, who, what, reason: reason, beforeLength: before, afterLength: left, details: details);
    }

    /// <summary>Hangs up an offcut as a coil of its own, with its coil's lot.</summary>
    internal static string HangOffcut(ShopSession session, StockCoil from, Length length, string who) =>
        Insert(session, new(from.Kind, from.Lot, length, from.Place), from.Id, who, HistoryCodes.OffcutHungUp, new { coil = from.Mark });

    private static StockAnswer Receive(ShopSession session, CoilReceived coil, string who)
    {
        if (!coil.Length.IsPositive || coil.Length > LongestCoil)
            return Refused("Length", coil.Length);
        if (!coil.Kind.Diameter.IsPositive || coil.Kind.Diameter > ThickestRope)
            return Refused("Diameter", coil.Kind.Diameter);
        if (!IsWord(coil.Lot))
            return Refused("Lot", coil.Lot, LongestWord);
        if (!IsWord(coil.Kind.Construction))
            return Refused("Construction", coil.Kind.Construction, LongestWord);
        if (coil.Kind.Colour.Length > 0 && !IsWord(coil.Kind.Colour))
            return Refused("Colour", coil.Kind.Colour, LongestWord);
        if (coil.Kind is { IsPreshrunk: true, IsNatural: false })
            return Refused("PreshrunkNotNatural", coil.Kind.MaterialName);
        if (coil.Place.Length > LongestWord)
            return Refused("Place", coil.Place, LongestWord);
        if (coil.WhenFull is not { } full)
            return Done(Insert(session, coil, parentId: null, who, HistoryCodes.CoilReceived));
        if (full <= coil.Length || full > LongestCoil)
            return Refused("WhenFull", full, coil.Length);
        var mark = Insert(session, coil with { Length = full }, parentId: null, who, HistoryCodes.CoilReceived);
        Correct(session, Find(session, mark)!, coil.Length, Reason.Because(HistoryCause.OpenedBefore), who);
        return Done(mark);
    }

    private static string Insert(ShopSession session, CoilReceived coil, long? parentId, string who, HistoryCode what, object? details = null)
    {
        var next = session.Value<long>("SELECT coalesce(max(id), 0) + 1 FROM coils");
        var mark = string.Create(CultureInfo.InvariantCulture, $"K{next:0000}");
        var id = session.Insert(
            $"""
            INSERT INTO coils (mark, {RopeKind.Columns}, lot, place, parent_id, whole_nm, left_nm, state, came_at)
            VALUES (@mark, {RopeKind.Values}, @Lot, @Place, @parentId, @Length, @Length, '{CoilStates.InStock}', @Now)
            """,
            new
            {
                mark,
                coil.Kind.MaterialName,
                coil.Kind.Diameter,
                coil.Kind.Construction,
                coil.Kind.Colour,
                coil.Kind.IsPreshrunk,
                coil.Lot,
                coil.Place,
                parentId,
                coil.Length,
                session.Now,
            });
        session.Record("coil", id, who, what, afterLength: coil.Length, details: details);
        return mark;
    }

    private static StockAnswer Adjust(ShopSession session, string mark, Length left, string reason, string who)
    {
        // A coil that was used up by a wrong tap or figure has its rope again.
        if (Find(session, mark) is not { State: CoilStates.InStock or CoilStates.UsedUp } coil)
            return Refused("CoilMark", mark);
        if (!left.IsPositive || left > coil.Whole - coil.Shrunk)
            return Refused("Left", left, coil.Whole - coil.Shrunk);
        if (!IsWord(reason))
            return Refused("Reason", reason, LongestWord);
        Correct(session, coil, left, reason, who);
        return Done(mark);
    }

    internal static void Correct(ShopSession session, StockCoil coil, Length left, Reason reason, string who)
    {
        RopeLedger.Add(session, coil.Id, RopeLedger.Correction, coil.Left - left);
        Take(session, coil, left, who, HistoryCodes.CoilCorrected, reason);
    }

    private static StockAnswer Retire(ShopSession session, string mark, string reason, string who)
    {
        if (Find(session, mark) is not { State: CoilStates.InStock } coil)
            return Refused("CoilMark", mark);
        if (!IsWord(reason))
            return Refused("Reason", reason, LongestWord);
        Retire(session, coil, reason, who);
        return Done(mark);
    }

    internal static void Retire(ShopSession session, StockCoil coil, Reason reason, string who)
    {
        session.Execute($"UPDATE coils SET state = '{CoilStates.Retired}' WHERE id = @Id", new { coil.Id });
        session.Record("coil", coil.Id, who, HistoryCodes.CoilRetired, CoilStates.InStock, CoilStates.Retired, reason);
    }

    private static StockAnswer Found(ShopSession session, string mark, string who)
    {
        if (Find(session, mark) is not { State: CoilStates.Retired } coil)
            return Refused("RetiredCoilMark", mark);
        Found(session, coil, who);
        return Done(mark);
    }

    internal static void Found(ShopSession session, StockCoil coil, string who)
    {
        session.Execute($"UPDATE coils SET state = '{CoilStates.InStock}' WHERE id = @Id", new { coil.Id });
        session.Record("coil", coil.Id, who, HistoryCodes.CoilFound, CoilStates.Retired, CoilStates.InStock);
    }

    private static bool IsWord(string text) => text.Trim().Length is > 0 and <= LongestWord && !text.Any(char.IsControl);

    internal static StockAnswer Done(string mark) => new(mark, Problem: null);

    internal static StockAnswer Refused(string key, params IReadOnlyList<object?> values) => new(Mark: "", StockReplies.Of(key, values));

    internal static StockAnswer Once(ShopSession session, string requestKey, Func<StockAnswer> work) =>
        RequestLog.Once(session, requestKey, work, answer => answer.IsDone ? answer.Mark : null, Done);

    internal static StockCoil? Find(ShopSession session, string mark) =>
        Select(session, "WHERE coils.mark = @mark", new { mark }).SingleOrDefault();

    private static IReadOnlyList<StockCoil> Select(ShopSession session, string where, object? values) => session.All<StockCoil>(
        $"""
        SELECT coils.id, coils.mark, {SqlTypes.RopeOf("coils")} AS kind, coils.lot, coils.place,
          parent.mark AS "from", coils.whole_nm AS whole, coils.left_nm AS left,
          (SELECT CAST(coalesce(sum(nm), 0) AS bigint) FROM rope_uses WHERE coil_id = coils.id AND kind = '{RopeLedger.Shrunk}') AS shrunk, coils.state, coils.came_at
        FROM coils LEFT JOIN coils AS parent ON parent.id = coils.parent_id
        {where}
        ORDER BY {SqlTypes.Columns("coils")}, coils.mark
        """,
        values);
}
