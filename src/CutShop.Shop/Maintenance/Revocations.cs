using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// What was shut since a backup was made stays shut when it is restored: keys, people, passwords, PINs, roles, tablets, sessions,
/// labels and site packs. Each is found by what opens the door, or by a person's name, since a row's number may have been used again.
/// </summary>
internal static class Revocations
{
    private const string Who = "restore";

    private static Reason Why => Reason.Because(HistoryCause.BeforeRestore);

    /// <summary>Brings what was shut in the present database into the one that is restored, each with its line of history.</summary>
    /// <param name="present">The database that is replaced.</param>
    /// <param name="restored">The database that is put in its place.</param>
    /// <returns>What was shut, a line each.</returns>
    public static IReadOnlyList<string> Keep(ShopSession present, ShopSession restored)
    {
        List<string> kept = [.. Keys(present, restored), .. Tablets(present, restored), .. People(present, restored), .. Labels(present, restored), .. Packs(present, restored)];
        if (Sessions(present, restored) is > 0 and var sessions)
            kept.Add(sessions == 1 ? StoreReplies.Say("OneSessionSignedOut") : StoreReplies.Say("SomeSessionsSignedOut", sessions));
        FirstOwner.EndLink(restored);
        return kept;
    }

    private static IEnumerable<string> Keys(ShopSession present, ShopSession restored)
    {
        foreach (var (hash, at) in present.All<(string, DateTimeOffset)>("SELECT key_hash, revoked_at FROM api_keys WHERE revoked_at IS NOT NULL ORDER BY id"))
        {
            if (restored.FirstOrDefault<Row>("SELECT id, name FROM api_keys WHERE key_hash = @hash AND revoked_at IS NULL", new { hash }) is not { } key)
                continue;
            restored.Execute("UPDATE api_keys SET revoked_at = @at WHERE id = @Id", new { at, key.Id });
            restored.Record("API key", key.Id, Who, HistoryCodes.KeyRevoked, "in use", "revoked", Why);
            yield return StoreReplies.Say("KeyRevoked", key.Name);
        }
    }

    private static IEnumerable<string> Tablets(ShopSession present, ShopSession restored)
    {
        foreach (var (hash, at) in present.All<(string, DateTimeOffset)>("SELECT token_hash, removed_at FROM tablets WHERE removed_at IS NOT NULL ORDER BY id"))
        {
            if (restored.FirstOrDefault<Row>("SELECT id, name FROM tablets WHERE token_hash = @hash AND removed_at IS NULL", new { hash }) is not { } tablet)
                continue;
            restored.Execute("UPDATE tablets SET removed_at = @at WHERE id = @Id", new { at, tablet.Id });
            restored.Record("tablet", tablet.Id, Who, HistoryCodes.TabletRemoved, "enrolled", "removed", Why);
            yield return StoreReplies.Say("TabletRemoved", tablet.Name);
        }
    }

    /// <summary>A stamp is drawn again with every change that shuts something, so the same stamp means that nothing was.</summary>
    private static IEnumerable<string> People(ShopSession present, ShopSession restored)
    {
        foreach (var known in PersonRows.AllRows(present))
        {
            if (PersonRows.Named(restored, known.Name) is not { } person || person.Stamp == known.Stamp)
                continue;
            // To become an owner shuts nothing; to be switched on neither.
            var role = known.Role == RoleNames.NameOf(Role.Owner) ? person.Role : known.Role;
            var state = known.IsActive ? person.State : known.State;
            restored.Execute(
                "UPDATE people SET password_hash = @PasswordHash, pin_hash = @PinHash, stamp = @Stamp, role = @role, state = @state WHERE id = @Id",
                new { known.PasswordHash, known.PinHash, known.Stamp, role, state, person.Id });
            var said = new List<string>();
            Note(person.State != state, HistoryCodes.PersonSwitchedOff, StoreReplies.Say("SwitchedOff"), person.State, state);
            Note(person.Role != role, HistoryCodes.RoleChanged, StoreReplies.Say("RoleChangedTo", role), person.Role, role);
            Note(person.PasswordHash != known.PasswordHash, HistoryCodes.PasswordSet, StoreReplies.Say("PasswordSet"), "", "");
            Note(person.PinHash != known.PinHash, known.PinHash is null ? HistoryCodes.PinRemoved : HistoryCodes.PinSet, StoreReplies.Say(known.PinHash is null ? "PinRemoved" : "PinSet"), "", "");
            yield return StoreReplies.Say("PersonChanged", known.Name, said.Count == 0 ? StoreReplies.Say("SignedOut") : string.Join(", ", said));

            void Note(bool isChanged, HistoryCode what, string words, string before, string after)
            {
                if (!isChanged)
                    return;
                restored.Record("person", person.Id, Who, what, before, after, Why);
                said.Add(words);
            }
        }
        if (restored.Value<bool>("SELECT EXISTS (SELECT 1 FROM people) AND NOT EXISTS (SELECT 1 FROM people WHERE role = 'owner' AND state = 'active')"))
            yield return StoreReplies.Say("NoOwnerLeft");
    }

    /// <summary>A label that was replaced, perhaps more than once: the piece has the code of its newest label, and the others are ended.</summary>
    private static IEnumerable<string> Labels(ShopSession present, ShopSession restored)
    {
        var ended = present.All<EndedLabel>(
            """
            SELECT ended_labels.code, ended_labels.piece_id, ended_at, reason, pieces.code AS newest
            FROM ended_labels JOIN pieces ON pieces.id = piece_id ORDER BY ended_at, ended_labels.code
            """);
        foreach (var ofPiece in ended.GroupBy(label => label.PieceId))
        {
            foreach (var label in ofPiece)
            {
                if (restored.FirstOrDefault<LabelledPiece>("SELECT pieces.id, run, number FROM pieces JOIN jobs ON jobs.id = job_id WHERE code = @Code", new { label.Code }) is not { } piece)
                    continue;
                restored.Execute("UPDATE pieces SET code = @Newest WHERE id = @Id", new { label.Newest, piece.Id });
                restored.Execute(
                    "INSERT INTO ended_labels (code, piece_id, ended_at, reason) VALUES (@Code, @Id, @EndedAt, @Reason) ON CONFLICT (code) DO NOTHING",
                    ofPiece.Select(one => new { one.Code, piece.Id, one.EndedAt, one.Reason }));
                restored.Record("piece", piece.Id, Who, HistoryCodes.LabelReplaced, label.Code.ToString(), label.Newest.ToString(), Why);
                yield return StoreReplies.Say("LabelReplaced", label.Code, piece.Run, piece.Number);
            }
        }
    }

    private static IEnumerable<string> Packs(ShopSession present, ShopSession restored)
    {
        const string Packs = "SELECT job_id, number, code FROM site_packs JOIN jobs ON jobs.id = job_id";
        foreach (var known in present.All<Pack>($"{Packs} ORDER BY job_id"))
        {
            if (restored.FirstOrDefault<Pack>($"{Packs} WHERE number = @Number", new { known.Number }) is not { } pack || pack.Code == known.Code)
                continue;
            restored.Execute("UPDATE site_packs SET code = @Code WHERE job_id = @JobId", new { known.Code, pack.JobId });
            restored.Record("job", pack.JobId, Who, HistoryCodes.SitePackReplaced, pack.Code.ToString(), known.Code.ToString(), Why);
            yield return StoreReplies.Say("SitePackReplaced", pack.Number);
        }
    }

    private static int Sessions(ShopSession present, ShopSession restored) => restored.Execute(
        "INSERT INTO ended_sessions (session_hash, ended_at) VALUES (@Hash, @At) ON CONFLICT (session_hash) DO NOTHING",
        present.All<(string Hash, DateTimeOffset At)>("SELECT session_hash, ended_at FROM ended_sessions").Select(ended => new { ended.Hash, ended.At }));

    private sealed record Row(long Id, string Name);

    private sealed record EndedLabel(PieceCode Code, long PieceId, DateTimeOffset EndedAt, string Reason, PieceCode Newest);

    private sealed record LabelledPiece(long Id, string Run, string Number);

    private sealed record Pack(long JobId, string Number, PieceCode Code);
}
