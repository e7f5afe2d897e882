using System.Data.Common;
using System.Globalization;
using System.Text;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Museum;

/// <summary>
/// Pages of pieces and posts that a change took out. Release 0.1 cannot show them: what they said is kept from before the change, so
/// that a later version can be held to it.
/// </summary>
/// <param name="folder">The folder of a shop in a file; null for one on a server, of which nothing is kept.</param>
/// <param name="shop">The shop.</param>
internal sealed class GonePages(string? folder, WorkingShop shop)
{
    private readonly Dictionary<string, (string Number, IReadOnlyList<string> Lines)> _pages = [];
    private IReadOnlyDictionary<string, IReadOnlyList<string>> _before = new Dictionary<string, IReadOnlyList<string>>();
    private IReadOnlyList<JobPiece> _pieces = [];
    private IReadOnlyList<string> _posts = [];

    /// <summary>Keeps what is said of a job now, by a copy of the shop.</summary>
    public async Task KeepAsync(string number)
    {
        if (folder is null)
            return;
        var copy = Directory.CreateTempSubdirectory("cutshop-before-").FullName;
        var backup = new ShopBackups(ShopFolder.DatabaseIn(folder), ShopFolder.BackupsIn(copy), ShopTables.Standard, shop.Clock).Make(keep: null);
        File.Copy(backup.File.Path, ShopFolder.DatabaseIn(copy));
        await using (var site = await MuseumSite.StartAsync(new(copy), shop.Clock))
        {
            var says = new ShopSays(site, []);
            var parts = await says.PartsOfAsync(number);
            (_pieces, _posts) = (parts.Pieces, parts.DrillTickets);
            _before = ShopSays.Parts((await says.OfJobAsync(number))[ShopSays.FiguresFile]);
        }
        Directory.Delete(copy, recursive: true);
    }

    /// <summary>Finds what is gone since.</summary>
    public async Task FindAsync(string number)
    {
        if (folder is null)
            return;
        var escaped = Uri.EscapeDataString(number);
        var now = shop.Job(number);
        foreach (var piece in _pieces.Where(piece => now.Codes.All(code => code.Plain != piece.Plain)))
            Add($"/cut/{piece.Plain}", number, $"/cut/{piece.Plain}", $"/jobs/{escaped}/cut-tickets {piece.Run}");
        foreach (var mark in await OutAsync(number))
        {
            var was = mark[..mark.IndexOf(" (out, ", StringComparison.Ordinal)];
            if (!_posts.Contains(was) || _pages.ContainsKey($"/drill/{escaped}/{Uri.EscapeDataString(mark)}"))
                continue;
            Add($"/drill/{escaped}/{Uri.EscapeDataString(mark)}", number, $"/drill/{escaped}/{Uri.EscapeDataString(was)}", $"/jobs/{escaped}/drill-tickets {was}");
            if (now.Takeoff.Job.Posts.All(post => post.Mark != was))
                Add($"/drill/{escaped}/{Uri.EscapeDataString(was)}", number, $"/drill/{escaped}/{Uri.EscapeDataString(was)}", $"/jobs/{escaped}/drill-tickets {was}");
        }
    }

    /// <summary>All of them as text, with what release 0.1 answers.</summary>
    public async Task<string> TextAsync(MuseumSite site)
    {
        var text = new StringBuilder();
        foreach (var (address, (number, lines)) in _pages)
        {
            using var answer = await site.AskAsync(address);
            text.Append(CultureInfo.InvariantCulture, $"[{address}]\njob: {number}\n0.1 answered: {(int)answer.StatusCode}\n");
            foreach (var line in lines)
                text.Append(line).Append('\n');
        }
        return text.ToString();
    }

    private void Add(string address, string number, string page, string paper) =>
        _pages.Add(address, (number, [.. _before[page].Select(line => $"bench: {line}"), .. _before[paper].Select(line => $"paper: {line}")]));

    private async Task<IReadOnlyList<string>> OutAsync(string number)
    {
        await using var connection = Rows.OfFile(ShopFolder.DatabaseIn(folder!));
        return [.. (await Rows.OfAsync(connection, $"SELECT mark FROM posts JOIN jobs ON jobs.id = job_id WHERE number = '{number}' AND dropped_at IS NOT NULL ORDER BY posts.id")).Select(row => row[0])];
    }
}

/// <summary>Rows of a shop's database as text.</summary>
internal static class Rows
{
    public static DbConnection OfFile(string path)
    {
        var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={path};Pooling=False;Mode=ReadOnly");
        connection.Open();
        return connection;
    }

#pragma warning disable CA2100, MA0042 // The texts are this program's own.
    public static async Task<IReadOnlyList<string[]>> OfAsync(DbConnection connection, string sql)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await using var reader = await command.ExecuteReaderAsync();
        var rows = new List<string[]>();
        while (await reader.ReadAsync())
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture) ?? "")]);
        return rows;
    }
#pragma warning restore CA2100, MA0042
}
