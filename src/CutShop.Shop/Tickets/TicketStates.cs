using CutShop.Shop.Store;

namespace CutShop.Shop.Tickets;

/// <summary>The states of cut and drill tickets, and every move between them. There is no other way for a ticket to change its state.</summary>
public static class TicketStates
{
    /// <summary>In the queue, or not planned yet.</summary>
    public const string Waiting = "waiting";

    /// <summary>Somebody works on it.</summary>
    public const string AtTheBench = "at the bench";

    /// <summary>The piece is cut, measured, labelled and tied.</summary>
    public const string Cut = "cut";

    /// <summary>The piece is in its job's parcel.</summary>
    public const string Packed = "packed";

    /// <summary>All bores are in, and the rope goes through.</summary>
    public const string Drilled = "drilled";

    /// <summary>The post was spoiled and another is ordered.</summary>
    public const string ReOrdered = "re-ordered";

    /// <summary>Its piece or post is no longer wanted, and was not made.</summary>
    public const string Cancelled = "cancelled";

    /// <summary>Its piece or post was made, and is no longer wanted.</summary>
    public const string Surplus = "surplus";

    /// <summary>SQL: the states of what is still to be cut, or to be drilled from timber that is here.</summary>
    internal const string ToDo = $"'{Waiting}', '{AtTheBench}'";

    /// <summary>SQL: the states of posts that are still to be drilled.</summary>
    internal const string ToDrill = $"{ToDo}, '{ReOrdered}'";

    /// <summary>SQL: the states of pieces that are cut and wanted.</summary>
    internal const string CutOrPacked = $"'{Cut}', '{Packed}'";

    /// <summary>Every state that a ticket can have.</summary>
    internal static IReadOnlyList<string> All { get; } = [Waiting, AtTheBench, Cut, Packed, Drilled, ReOrdered, Cancelled, Surplus];

    /// <summary>True where a ticket's piece is cut or its post is drilled: no longer wanted, it is surplus.</summary>
    public static bool IsMade(string state) => state is Cut or Packed or Drilled;

    internal const string CutTickets = "cut_tickets";
    internal const string DrillTickets = "drill_tickets";

    internal static TicketMove ClaimCut { get; } = new(CutTickets, HistoryCodes.TakenToBench, Waiting, AtTheBench);

    internal static TicketMove HandBackCut { get; } = new(CutTickets, HistoryCodes.HandedBack, AtTheBench, Waiting);

    internal static TicketMove PutAside { get; } = new(CutTickets, HistoryCodes.CutPutAside, AtTheBench, Waiting);

    internal static TicketMove FinishCut { get; } = new(CutTickets, HistoryCodes.CutFinished, AtTheBench, Cut) { Counts = ShopCount.PieceCut };

    internal static TicketMove RejectCut { get; } = new(CutTickets, HistoryCodes.CutRejected, Cut, Waiting);

    internal static TicketMove UndoAtTheBench { get; } = new(CutTickets, HistoryCodes.Undone, AtTheBench, Waiting);

    internal static TicketMove UndoCut { get; } = new(CutTickets, HistoryCodes.Undone, Cut, Waiting);

    internal static TicketMove MeasureAgain { get; } = new(CutTickets, HistoryCodes.MeasureTakenBack, Cut, AtTheBench);

    internal static TicketMove Pack { get; } = new(CutTickets, HistoryCodes.Packed, Cut, Packed);

    internal static TicketMove Unpack { get; } = new(CutTickets, HistoryCodes.Unpacked, Packed, Cut);

    internal static TicketMove HangUpSurplus { get; } = new(CutTickets, HistoryCodes.SurplusHungUp, Surplus, Cancelled);

    internal static TicketMove ScrapSurplus { get; } = new(CutTickets, HistoryCodes.SurplusScrapped, Surplus, Cancelled);

    internal static TicketMove ClaimDrill { get; } = new(DrillTickets, HistoryCodes.TakenToBench, Waiting, AtTheBench);

    internal static TicketMove HandBackDrill { get; } = new(DrillTickets, HistoryCodes.HandedBack, AtTheBench, Waiting);

    internal static TicketMove FinishDrill { get; } = new(DrillTickets, HistoryCodes.PostDrilled, AtTheBench, Drilled) { Counts = ShopCount.PostDrilled };

    internal static TicketMove FinishAlike { get; } = FinishDrill with { What = HistoryCodes.PostDrilledAlike };

    internal static TicketMove DamageAtTheBench { get; } = new(DrillTickets, HistoryCodes.PostSpoiled, AtTheBench, ReOrdered);

    internal static TicketMove DamageLater { get; } = new(DrillTickets, HistoryCodes.PostSpoiled, Drilled, ReOrdered);

    internal static TicketMove UndoDamage { get; } = new(DrillTickets, HistoryCodes.PostNotSpoiled, ReOrdered, AtTheBench);

    internal static TicketMove NewPost { get; } = new(DrillTickets, HistoryCodes.NewPostHere, ReOrdered, Waiting);

    internal static TicketMove UndoDrill { get; } = new(DrillTickets, HistoryCodes.Undone, Drilled, Waiting);
}
