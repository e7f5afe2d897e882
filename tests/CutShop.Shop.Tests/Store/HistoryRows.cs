namespace CutShop.Shop.Tests.Store;

/// <summary>The history as it is stored.</summary>
internal static class HistoryRows
{
    /// <summary>SQL of all text of a line.</summary>
    public const string Text = "(subject || ';' || what || ';' || before || ';' || after || ';' || details || ';' || cause || ';' || reason)";

    /// <summary>All lines, with every column.</summary>
    public static IReadOnlyList<string> Of(ShopDatabase database) => database.Read(session => session.All<string>(
        $"SELECT concat(id, ' ', at, ' ', actor_id, ' ', from_actor_id, ' ', subject_id, ' ', before_nm, ' ', after_nm, ' ', {Text}) FROM history ORDER BY id"));
}
