using System.Security.Cryptography;
using System.Text;

namespace CutShop.Shop.Store;

/// <summary>
/// The epoch of a shop's history. Within one, a line's number means that line alone. A restore takes lines away and numbers new ones
/// on from there, so it draws a new epoch, and so does an import, which makes a new database.
/// </summary>
/// <remarks>
/// A server's own restore knows nothing of this program. There the epoch is also of the database and of its timeline, which are
/// others after a dump was put into a new database, or after the server came back to an earlier moment.
/// </remarks>
public static class HistoryEpoch
{
    private const int Bytes = 6;

    /// <summary>The epoch: twelve hexadecimal digits.</summary>
    public static string Of(ShopDatabase database)
    {
        ArgumentNullException.ThrowIfNull(database);
        return database.Read(Of);
    }

    internal static string Of(ShopSession session)
    {
        var (id, place) = session.Value<(string, string)>($"SELECT id, {session.Dialect.HistoryPlace} AS place FROM history_epoch");
        return place.Length == 0 ? id : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{id} {place}")))[..(2 * Bytes)];
    }

    internal static void DrawAgain(ShopSession session) => session.Execute(
        "UPDATE history_epoch SET id = @id", new { id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes)) });
}
