using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>
/// The first start: where there is no person yet, a one-time link lets whoever reads the console make the owner's account.
/// Only the link's hash is kept; a new link ends the one before.
/// </summary>
public sealed class FirstOwner(ShopDatabase database)
{
    private const string Setting = "first owner link";

    /// <summary>Draws the token of a new link.</summary>
    /// <returns>The token, or null where there are people already.</returns>
    public Task<string?> DrawLinkAsync(CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (HasPeople(session))
                return null;
            var token = Secrets.DrawToken();
            StoredSettings.Set(session, (Setting, Secrets.HashOfToken(token)));
            return token;
        },
        cancel);

    /// <summary>True where the link with this token still leads to an owner's account.</summary>
    public bool IsOpen(string token) => database.Read(session => IsOpen(session, token));

    /// <summary>Makes the owner's account and ends the link.</summary>
    public Task<PersonAnswer> MakeAsync(string token, string name, string password, CancellationToken cancel = default)
    {
        if (database.Read(session => Secrets.ProblemWithPassword(session, password, PersonRows.Tidy(name))) is { } problem)
            return Task.FromResult(new PersonAnswer(0, problem));
        var passwordHash = Secrets.Hash(password);
        return database.WriteAsync(
            session =>
            {
                if (!IsOpen(session, token))
                    return PersonAnswer.Refused("link", "", "OpenLink");
                var answer = PeopleShelf.Add(session, name, Role.Owner, passwordHash, PersonRows.Tidy(name));
                if (answer.IsDone)
                    EndLink(session);
                return answer;
            },
            cancel);
    }

    /// <summary>Ends the link that was drawn last.</summary>
    internal static void EndLink(ShopSession session) => StoredSettings.Clear(session, Setting);

    private static bool IsOpen(ShopSession session, string token) =>
        !HasPeople(session)
        && StoredSettings.Find(session, Setting) == Secrets.HashOfToken(token);

    private static bool HasPeople(ShopSession session) => session.Value<bool>("SELECT EXISTS (SELECT 1 FROM people)");
}
