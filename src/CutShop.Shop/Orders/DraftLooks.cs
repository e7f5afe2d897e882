using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>A draft with all that the order desk is shown of it.</summary>
/// <param name="Form">What was typed.</param>
/// <param name="Reading">What was understood.</param>
/// <param name="Prices">The prices that count today, or null.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="IsCancelled">True where the job of its number was cancelled, so that nothing can come of it.</param>
public sealed record DraftLook(DraftForm Form, DraftReading Reading, PriceList? Prices, string Currency, bool IsCancelled);

/// <summary>
/// Looks at drafts while they are typed. While nothing changes in the shop a draft is not read from the database again, and what was
/// read a moment ago of the same posts and sections is not read again either, so that a look after a keystroke costs little more
/// than the takeoff.
/// </summary>
public sealed class DraftLooks(ShopDatabase database, ShopTablesShelf tables, JobChanging changing)
{
    /// <summary>More drafts than are typed at once.</summary>
    private const int Places = 32;

    private readonly Kept?[] _kept = new Kept?[Places];
    private readonly JobFileMemory _memory = new();

    /// <summary>
    /// A version of a draft with what was typed since in some of its fields; null where there is no such draft, or the version is too old
    /// to be kept.
    /// </summary>
    public DraftLook? Of(long id, long version, IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (Started(id, version) is not { } started)
            return null;
        var form = DraftFields.With(started.Form, typed);
        var isCancelled = form.Number == started.Form.Number ? started.IsCancelled : changing.IsCancelled(form.Number.Trim());
        return Of(started with { Form = form, IsCancelled = isCancelled });
    }

    /// <summary>A form as it stands.</summary>
    public DraftLook Of(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return Of(database.Read(session => Seen(session, form)));
    }

    private DraftLook Of(Shop shop) => new(shop.Form, DraftReading.Of(shop.Form, shop.Tables, _memory), shop.Prices, shop.Currency, shop.IsCancelled);

    private Shop? Started(long id, long version)
    {
        // The number is taken first: what changes meanwhile makes another, and is read next time.
        var key = new Key(id, version, database.ChangeNumber, DateOnly.FromDateTime(database.Time.GetLocalNow().DateTime));
        ref var place = ref _kept[(id & long.MaxValue) % Places];
        if (place is { } kept && kept.Key == key)
            return kept.Shop;
        var shop = database.Read(session => DraftShelf.FormOf(session, id, version) is { } form ? Seen(session, form) : null);
        place = shop is null ? null : new(key, shop);
        return shop;
    }

    private Shop Seen(ShopSession session, DraftForm form) => new(
        form, tables.Current(session), PriceBook.On(session, session.Today), PriceBook.Currency(session), JobChanging.IsCancelled(session, form.Number.Trim()));

    /// <summary>A form and what the shop has to say to it, as of one moment.</summary>
    private sealed record Shop(DraftForm Form, ShopTables Tables, PriceList? Prices, string Currency, bool IsCancelled);

    private readonly record struct Key(long Draft, long Version, long ChangeNumber, DateOnly Day);

    private sealed record Kept(Key Key, Shop Shop);
}
