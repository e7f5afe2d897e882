using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>A shared tablet where a PIN is enough to sign in.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Name">What the shop calls it.</param>
/// <param name="EnrolledBy">Who enrolled it.</param>
/// <param name="EnrolledAt">When, UTC.</param>
public sealed record Tablet(long Id, string Name, string EnrolledBy, DateTimeOffset EnrolledAt);

/// <summary>The shop's tablets. A tablet is known by a random token that it alone keeps; the shop keeps its hash.</summary>
public sealed class Tablets(ShopDatabase database)
{
    private const int LongestName = 60;
    private const string Enrolled = "SELECT id, name, enrolled_by, enrolled_at FROM tablets WHERE removed_at IS NULL";

    /// <summary>The enrolled tablets, by name.</summary>
    public IReadOnlyList<Tablet> All() => database.Read(session => session.All<Tablet>($"{Enrolled} ORDER BY name, id"));

    /// <summary>The tablet with this token, or null.</summary>
    public Tablet? Find(string token) => database.Read(session =>
        session.FirstOrDefault<Tablet>($"{Enrolled} AND token_hash = @hash", new { hash = Secrets.HashOfToken(token) }));

    /// <summary>Enrols a tablet.</summary>
    /// <returns>The answer, and the token that the tablet keeps.</returns>
    public async Task<(PersonAnswer Answer, string Token)> EnrolAsync(string name, string who, CancellationToken cancel = default)
    {
        var tidy = PersonRows.Tidy(name);
        if (tidy.Length is 0 or > LongestName || tidy.Any(char.IsControl))
            return (PersonAnswer.Refused("name", tidy, "TabletName", LongestName), "");
        var token = Secrets.DrawToken();
        var id = await database.WriteAsync(
            session =>
            {
                var id = session.Insert(
                    "INSERT INTO tablets (name, token_hash, enrolled_by, enrolled_at) VALUES (@tidy, @hash, @who, @Now)",
                    new { tidy, hash = Secrets.HashOfToken(token), who, session.Now });
                session.Record("tablet", id, who, HistoryCodes.TabletEnrolled, after: "enrolled");
                return id;
            },
            cancel).ConfigureAwait(false);
        return (PersonAnswer.Done(id), token);
    }

    /// <summary>Removes a tablet: no PIN is taken there any more.</summary>
    public Task<PersonAnswer> RemoveAsync(long id, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (session.Execute("UPDATE tablets SET removed_at = @Now WHERE id = @id AND removed_at IS NULL", new { session.Now, id }) == 0)
                return PersonAnswer.Refused("tablet", "", "EnrolledTablet");
            session.Record("tablet", id, who, HistoryCodes.TabletRemoved, "enrolled", "removed");
            return PersonAnswer.Done(id);
        },
        cancel);
}
