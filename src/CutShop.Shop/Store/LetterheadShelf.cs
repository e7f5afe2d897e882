namespace CutShop.Shop.Store;

/// <summary>Keeps the head of the shop's quotes.</summary>
public sealed class LetterheadShelf(ShopDatabase database)
{
    /// <summary>The longest name that fits the sheet.</summary>
    public const int LongestName = 80;

    /// <summary>The longest address, its line breaks counted.</summary>
    public const int LongestAddress = 400;

    private const string Name = "letterhead name";
    private const string Address = "letterhead address";

    /// <summary>The head as it is set now.</summary>
    public Letterhead Current => database.Read(session =>
    {
        var stored = StoredSettings.All(session);
        return new Letterhead(stored.GetValueOrDefault(Name, ""), stored.GetValueOrDefault(Address, ""));
    });

    /// <summary>The shop's name as a transaction sees it; empty where none is set.</summary>
    internal static string NameIn(ShopSession session) => StoredSettings.Find(session, Name) ?? "";

    /// <summary>Sets the head.</summary>
    /// <returns>The problems, by field; empty where all is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetAsync(Letterhead typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var tidy = new Letterhead(typed.Name.Trim(), typed.Address.ReplaceLineEndings("\n").Trim());
        FieldProblem?[] problems =
        [
            Problem(nameof(typed.Name), tidy.Name, LongestName, allowsLines: false),
            Problem(nameof(typed.Address), tidy.Address, LongestAddress, allowsLines: true),
        ];
        if (problems.Any(problem => problem is not null))
            return [.. problems.OfType<FieldProblem>()];
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(session, who, (Name, tidy.Name), (Address, tidy.Address));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];
    }

    private static FieldProblem? Problem(string field, string text, int longest, bool allowsLines) =>
        text.Length > longest ? new(field, text, SettingsReplies.Of("Longest", longest))
        : text.Any(c => char.IsControl(c) && !(allowsLines && c == '\n')) ? new(field, text, SettingsReplies.Of("PlainText"))
        : null;
}
