using System.Globalization;
using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>A person of the demo with new secrets, to be shown once.</summary>
/// <param name="Person">The person.</param>
/// <param name="Password">The password.</param>
/// <param name="Pin">The PIN.</param>
public sealed record DemoPerson(Person Person, string Password, string Pin);

/// <summary>The people of the demo: one of each role, with secrets drawn anew each time. A shop with people of its own gets none.</summary>
public sealed class DemoPeople(ShopDatabase database)
{
    private const string Setting = "demo people";
    private const string Who = "demo";

    private static readonly (string Name, Role Role)[] Names =
    [
        ("Maren", Role.Owner), ("Jory", Role.Desk), ("Tamsin", Role.Cutter), ("Odo", Role.Driller),
    ];

    /// <summary>Makes the demo's people where there is nobody, or draws new secrets for those it made before.</summary>
    /// <returns>The people and their secrets; none where the shop's people are not the demo's.</returns>
    public async Task<IReadOnlyList<DemoPerson>> MakeAsync(CancellationToken cancel = default)
    {
        var people = new PeopleShelf(database);
        if (people.All().Count == 0)
        {
            var hashes = Names.Select(_ => Secrets.Hash(PeopleShelf.DrawPassword())).ToList();
            await database.WriteAsync(session => AddWhereNobodyIs(session, hashes), cancel).ConfigureAwait(false);
        }

        var made = new List<DemoPerson>();
        foreach (var id in MadeBefore())
        {
            var (password, pin) = (PeopleShelf.DrawPassword(), PeopleShelf.DrawPin());
            await people.SetPasswordAsync(id, password, Who, cancel).ConfigureAwait(false);
            await people.SetPinAsync(id, pin, Who, cancel).ConfigureAwait(false);
            made.Add(new(people.Find(id)!, password, pin));
        }
        return made;
    }

    private static bool AddWhereNobodyIs(ShopSession session, IReadOnlyList<string> hashes)
    {
        if (PersonRows.All(session).Count > 0)
            return false;
        var ids = Names.Zip(hashes, (one, hash) => PeopleShelf.Add(session, one.Name, one.Role, hash, Who).Id).ToList();
        StoredSettings.Set(session, (Setting, string.Join(' ', ids.Select(id => id.ToString(CultureInfo.InvariantCulture)))));
        return true;
    }

    private IEnumerable<long> MadeBefore() =>
        (database.Read(session => StoredSettings.Find(session, Setting)) ?? "")
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(id => long.Parse(id, CultureInfo.InvariantCulture));
}
