using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Site;

/// <summary>The address under which phones reach the shop's pages, which every label carries; set once by the shop.</summary>
public sealed class LabelAddressShelf(ShopDatabase database)
{
    /// <summary>The longest address, in characters: a label's code must hold it with the piece's own.</summary>
    public const int Longest = 100;

    private const string Setting = "site address";

    /// <summary>The address that is set, or null.</summary>
    public Uri? Current => database.Read(session => StoredSettings.Find(session, Setting)) is { Length: > 0 } text ? new Uri(text) : null;

    /// <summary>Sets the address, or with an empty text leaves it unset.</summary>
    /// <param name="typed">The address as typed.</param>
    /// <param name="who">Who sets it.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    /// <returns>The problems; empty where it is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetAsync(string typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var text = typed.Trim();
        if (text.Length > 0 && Parse(text).Reason is { } problem)
            return [new("Address", typed, problem)];
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(session, who, (Setting, text));
                return text;
            },
            cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>An address that labels can carry, or what is accepted.</summary>
    public static Parsed<Uri> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length <= Longest && Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is ("http" or "https")
            && address.Host.Length > 0 && address.Query.Length + address.Fragment.Length + address.UserInfo.Length == 0
            ? Parsed.Good(address)
            : Parsed.Bad<Uri>(new(SettingsReplies.List, "Address", Longest));
    }
}
