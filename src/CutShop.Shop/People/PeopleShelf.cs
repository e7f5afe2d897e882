using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>The people of the shop: adding them, their roles, passwords and PINs, switching them off.</summary>
public sealed class PeopleShelf(ShopDatabase database)
{
    private const string OneOwner = "OneOwner";

    /// <summary>Everyone, active people first, by name.</summary>
    public IReadOnlyList<Person> All() => database.Read(PersonRows.All);

    /// <summary>A person by row id, or null.</summary>
    public Person? Find(long id) => database.Read(session => PersonRows.ById(session, id)?.ToPerson());

    /// <summary>A person by name, or null.</summary>
    public Person? Find(string name) => database.Read(session => PersonRows.Named(session, name)?.ToPerson());

    /// <summary>A password to hand over once; the person changes it.</summary>
    public static string DrawPassword() => Secrets.DrawPassword();

    /// <summary>A PIN to hand over once.</summary>
    public static string DrawPin() => Secrets.DrawPin();

    /// <summary>Adds a person.</summary>
    /// <param name="name">The name, unlike any other here.</param>
    /// <param name="role">What the person does.</param>
    /// <param name="password">The first password.</param>
    /// <param name="who">Who adds the person.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<PersonAnswer> AddAsync(string name, Role role, string password, string who, CancellationToken cancel = default)
    {
        if (database.Read(session => Secrets.ProblemWithPassword(session, password, PersonRows.Tidy(name))) is { } problem)
            return Task.FromResult(new PersonAnswer(0, problem));
        var hash = Secrets.Hash(password);
        return database.WriteAsync(session => Add(session, name, role, hash, who), cancel);
    }

    /// <summary>Gives a person another role. Whatever is signed in as that person ends.</summary>
    public Task<PersonAnswer> ChangeRoleAsync(long id, Role role, string who, CancellationToken cancel = default) =>
        ChangeAsync(id, (session, person) =>
        {
            if (role != Role.Owner && IsLastOwner(session, person))
                return PersonAnswer.Refused("role", RoleNames.NameOf(role), OneOwner);
            session.Execute("UPDATE people SET role = @role WHERE id = @id", new { role = RoleNames.NameOf(role), id });
            Restamp(session, id);
            session.Record("person", id, who, HistoryCodes.RoleChanged, person.Role, RoleNames.NameOf(role));
            return PersonAnswer.Done(id);
        }, cancel);

    /// <summary>Sets a person's password. Whatever is signed in as that person ends.</summary>
    public Task<PersonAnswer> SetPasswordAsync(long id, string password, string who, CancellationToken cancel = default)
    {
        var hash = Secrets.Hash(password);
        return ChangeAsync(id, (session, person) =>
        {
            if (Secrets.ProblemWithPassword(session, password, person.Name) is { } problem)
                return new(0, problem);
            session.Execute("UPDATE people SET password_hash = @hash WHERE id = @id", new { hash, id });
            SignInTries.Forget(session, person.Name);
            Restamp(session, id);
            session.Record("person", id, who, HistoryCodes.PasswordSet);
            return PersonAnswer.Done(id);
        }, cancel);
    }

    /// <summary>Sets a person's PIN, or takes it away. Whatever is signed in as that person ends.</summary>
    /// <param name="id">The person.</param>
    /// <param name="pin">The PIN, or null for none.</param>
    /// <param name="who">Who sets it.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<PersonAnswer> SetPinAsync(long id, string? pin, string who, CancellationToken cancel = default)
    {
        if (pin is not null && Secrets.ProblemWithPin(pin) is { } problem)
            return Task.FromResult(new PersonAnswer(0, problem));
        var hash = pin is null ? null : Secrets.Hash(pin);
        return ChangeAsync(id, (session, person) =>
        {
            session.Execute("UPDATE people SET pin_hash = @hash WHERE id = @id", new { hash, id });
            SignInTries.Forget(session, person.Name);
            Restamp(session, id);
            session.Record("person", id, who, hash is null ? HistoryCodes.PinRemoved : HistoryCodes.PinSet);
            return PersonAnswer.Done(id);
        }, cancel);
    }

    /// <summary>Switches a person off or on. Whatever is signed in as that person ends.</summary>
    public Task<PersonAnswer> SwitchAsync(long id, bool on, string who, CancellationToken cancel = default) =>
        ChangeAsync(id, (session, person) =>
        {
            if (!on && IsLastOwner(session, person))
                return PersonAnswer.Refused("state", PersonRows.SwitchedOff, OneOwner);
            var state = on ? PersonRows.Active : PersonRows.SwitchedOff;
            session.Execute("UPDATE people SET state = @state WHERE id = @id", new { state, id });
            Restamp(session, id);
            session.Record("person", id, who, on ? HistoryCodes.PersonSwitchedOn : HistoryCodes.PersonSwitchedOff, person.State, state);
            return PersonAnswer.Done(id);
        }, cancel);

    /// <summary>Keeps which unit leads on a person's pages.</summary>
    /// <param name="id">The person.</param>
    /// <param name="millimetresFirst">True for millimetres, false for feet and inches, null for whatever the shop's paper has.</param>
    /// <param name="who">Who chose.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<PersonAnswer> SetUnitsAsync(long id, bool? millimetresFirst, string who, CancellationToken cancel = default) =>
        ChangeAsync(id, (session, person) =>
        {
            session.Execute("UPDATE people SET millimetres_first = @millimetresFirst WHERE id = @id", new { millimetresFirst, id });
            session.Record("person", id, who, HistoryCodes.UnitsChosen, UnitsOf(person.ToPerson().MillimetresFirst), UnitsOf(millimetresFirst));
            return PersonAnswer.Done(id);
        }, cancel);

    internal static PersonAnswer Add(ShopSession session, string name, Role role, string passwordHash, string who)
    {
        if (PersonRows.ProblemWithName(session, name) is { } problem)
            return new(0, problem);
        var id = session.Insert(
            """
            INSERT INTO people (name, name_key, role, password_hash, state, stamp, added_at)
            VALUES (@name, @key, @role, @passwordHash, 'active', @stamp, @Now)
            """,
            new
            {
                name = PersonRows.Tidy(name),
                key = PersonRows.KeyOf(name),
                role = RoleNames.NameOf(role),
                passwordHash,
                stamp = Secrets.DrawToken(),
                session.Now,
            });
        Actors.AddPerson(session, id);
        session.Record("person", id, who, HistoryCodes.PersonAdded, after: RoleNames.NameOf(role));
        return PersonAnswer.Done(id);
    }

    private Task<PersonAnswer> ChangeAsync(long id, Func<ShopSession, PersonRow, PersonAnswer> change, CancellationToken cancel) =>
        database.WriteAsync(
            session => PersonRows.ById(session, id) is { } person
                ? change(session, person)
                : PersonAnswer.Refused("person", id.ToString(System.Globalization.CultureInfo.InvariantCulture), "Person"),
            cancel);

    private static bool IsLastOwner(ShopSession session, PersonRow person) =>
        person is { Role: "owner", IsActive: true }
        && session.Value<long>("SELECT count(*) FROM people WHERE role = 'owner' AND state = 'active'") == 1;

    private static void Restamp(ShopSession session, long id) =>
        session.Execute("UPDATE people SET stamp = @stamp WHERE id = @id", new { stamp = Secrets.DrawToken(), id });

    private static string UnitsOf(bool? millimetresFirst) => millimetresFirst switch
    {
        true => "millimetres",
        false => "feet-and-inches",
        null => "as-the-shop",
    };
}
