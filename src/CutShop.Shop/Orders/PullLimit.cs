using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A rope that pulls more, at rest and by its own weight, than the shop wants to see without a second look.</summary>
/// <param name="Place">The section's clear width, or the row's sag where every section of the row pulls so.</param>
/// <param name="Says">How much it pulls, as a sentence.</param>
public sealed record StrongPull(JobPlace Place, Sentence Says);

/// <summary>
/// The pull over which the order desk warns, in pounds: ours, 200 lb unless the shop sets another (no source). It says nothing about
/// strength; it shows a span that was typed in the wrong unit. A straight rope and one of unknown weight have no pull that is known, and no warning.
/// </summary>
public sealed class PullLimit(ShopDatabase database)
{
    /// <summary>The limit of a shop that has set none, in pounds.</summary>
    public const int Default = 200;

    private const int Most = 10_000;
    private const string Setting = "desk pull lb";

    /// <summary>The limit, in pounds.</summary>
    public int Current => database.Read(Read);

    /// <summary>Sets the limit, from text as typed.</summary>
    /// <returns>The problem with it; empty where it is stored.</returns>
    public async Task<IReadOnlyList<FieldProblem>> SetAsync(string typed, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (!int.TryParse(typed.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var pounds) || pounds is < 1 or > Most)
            return [new("pull", typed, SettingsReplies.Of("WholeNumber", 1, Most))];
        await database.WriteAsync(
            session =>
            {
                StoredSettings.Change(session, who, (Setting, pounds.ToString(CultureInfo.InvariantCulture)));
                return who;
            },
            cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>The ropes of a job that pull more than the shop's limit, row by row and then along the line.</summary>
    public IReadOnlyList<StrongPull> Over(JobTakeoff takeoff) => Over(takeoff, Current);

    internal static int Read(ShopSession session) =>
        StoredSettings.Find(session, Setting) is { } pounds ? int.Parse(pounds, CultureInfo.InvariantCulture) : Default;

    internal static IReadOnlyList<StrongPull> Over(JobTakeoff takeoff, int limit)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        return
        [
            .. from line in takeoff.Job.Lines.Index()
               from row in line.Item.Rows.Index()
               from pull in OfRow(
                   new JobPlace(line.Index),
                   row,
                   [.. takeoff.Pieces.Where(piece => piece.Line == line.Item.Mark && piece.Row == row.Item.Mark).SelectMany(piece => piece.Sections.Select((section, i) => (piece.First + i, section)))],
                   limit)
               select pull,
        ];
    }

    private static IEnumerable<StrongPull> OfRow(JobPlace line, (int Index, Row Row) row, IReadOnlyList<(int Index, PieceSection Section)> sections, int limit)
    {
        var strong = sections.Where(one => one.Section.PullLb > limit).ToList();
        if (strong.Count > 1 && strong.Count == sections.Count)
        {
            var field = row.Row.Hang is { Kind: HangKind.Slack } ? "slack" : "sag";
            return [new(line["rows"][row.Index][field], OrderReplies.Of("PullOfRow", row.Row.Mark, Pounds(strong.Max(one => one.Section.PullLb!.Value)), Pounds(limit)))];
        }
        return strong.Select(one => new StrongPull(
            line["sections"][one.Index]["width"],
            OrderReplies.Of("PullOfSection", row.Row.Mark, one.Section.From.Mark, one.Section.To.Mark, Pounds(one.Section.PullLb!.Value), Pounds(limit))));
    }

    private static string Pounds(double pounds) => pounds.ToString("#,##0", CultureInfo.InvariantCulture);
}
