using System.Globalization;

namespace CutShop.Shop.Store;

/// <summary>Keeps what the shop has set for what it sends out; what it has not set has its default.</summary>
public sealed class SendingSettingsShelf(ShopDatabase database)
{
    /// <summary>What is typed and stored for yes.</summary>
    public const string Yes = "yes";

    /// <summary>What is typed and stored for no.</summary>
    public const string No = "no";

    private const string ParcelLb = "parcel lb";
    private const string Salt = "salt air";
    private const string ReSetMonths = "reset months";
    private const int HeaviestParcel = 2_000;
    private const int MostMonths = 60;

    /// <summary>What is set.</summary>
    public SendingSettings Current => database.Read(Read);

    /// <summary>Sets it, from texts as typed.</summary>
    /// <returns>The problems, by field; empty where all is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetAsync(SendingTyped typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var (pounds, salt, months) = (typed.ParcelLb.Trim(), typed.Salt.Trim(), typed.ReSetMonths.Trim());
        var problems = new List<FieldProblem>();
        if (pounds.Length > 0)
            CheckNumber(nameof(typed.ParcelLb), pounds, 1, HeaviestParcel);
        if (salt is not (Yes or No))
            problems.Add(new(nameof(typed.Salt), typed.Salt, SettingsReplies.Of("YesOrNo", Yes, No)));
        CheckNumber(nameof(typed.ReSetMonths), months, 0, MostMonths);
        if (problems.Count > 0)
            return problems;
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(session, who, (ParcelLb, pounds), (Salt, salt), (ReSetMonths, months));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];

        void CheckNumber(string field, string text, int least, int most)
        {
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < least || number > most)
                problems.Add(new(field, text, SettingsReplies.Of("WholeNumber", least, most)));
        }
    }

    internal static SendingSettings Read(ShopSession session)
    {
        var stored = StoredSettings.All(session);
        var standard = SendingSettings.Default;
        return new(
            stored.TryGetValue(ParcelLb, out var pounds) && pounds.Length > 0 ? int.Parse(pounds, CultureInfo.InvariantCulture) : standard.ParcelLb,
            stored.TryGetValue(Salt, out var salt) ? salt == Yes : standard.IsForSalt,
            stored.TryGetValue(ReSetMonths, out var months) ? int.Parse(months, CultureInfo.InvariantCulture) : standard.ReSetMonths);
    }
}
